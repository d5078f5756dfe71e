### The three steps. $title is a field's or a section's name as the page or the engine says it.

## Screens

at-the-machine = At the machine
screen =
    { $name ->
        [list] Wearers
        [new] New wearer
        [card] One wearer
       *[copies] Copies and lists
    }

## Lines above the work

new-version = A new version is here.
new-version-about = It is on the phone already. What you typed stays.
use-it-now = Use it now
try-again = Try again
reload = Reload
nothing-kept = This phone does not let the page save anything: what you type is gone once you close it. Copy the plan’s link to keep it.
changed-elsewhere = Another tab changed this sheet.
is-now = { $title }: <bdi>{ $before }</bdi> is now <bdi>{ $now }</bdi>.
is-deleted = { $title }: <bdi>{ $before }</bdi> is deleted.
# Nothing else is lost with what is set aside.
set-aside =
    { $what ->
        [mine] Your own page cannot be read and was set aside. All else is as it was.
        [visit] The sheet that was open last cannot be read and was set aside. All else is as it was.
        [before] What was on your own page before cannot be read and was set aside. All else is as it was.
        [chart] What was typed for the table of sizes cannot be read and was set aside. All else is as it was.
        [sets] Your instructions over sizes cannot be read and were set aside. All else is as it was.
        [shelf] Your cylinders and yarns cannot be read and were set aside. All else is as it was.
       *[unkept] A wearer’s sheet that was not in the book yet cannot be read and was set aside. All else is as it was.
    }
what-it-holds = What it holds
save-to-file = Save it to a file
delete-for-good = Delete it for good
save-a-copy = Save a copy
not-today = Not today
counts-coming = What you typed is kept. Its counts come in a few seconds.
from-last-time = From last time, being checked…
counted-otherwise = { $title }: this version counts { $now } where last time it was { $before }.
# After the number.
rounds-counted =
    { $rounds ->
        [one] round
       *[other] rounds
    }

## Whose sheet it is

opening-shared = Opening the shared plan…
shared-not-opened = The shared plan could not be opened. Reload to try again.
deleted-elsewhere = This wearer was deleted in another tab.
# $problem: what is wrong with the link, whole sentences.
link-refused = { $problem } Your own page is below, as you left it.
understood = Got it
before-kept = Your last sheet is kept.
bring-it-back = Bring it back
measure-next = Measure the next wearer
back-to-book = Back to the book
back-to-mine = My own page
keep-in-book =
    { $what ->
        [foot] Save this foot in the book
       *[counts] Save these counts in the book
    }
see-example = Just looking? See it with an invented example: a lifeboat station’s open day.
show-example = Show the example
# $who is example-who.
example = <strong>Invented:</strong> { $who }
example-of = A lifeboat station’s open day. Your own page is kept apart.
example-who =
    { $who ->
        [coxswain] Coxswain
        [mechanic] Mechanic
        [helper] Shore helper
       *[youngest] Youngest visitor
    }
example-about =
    { $who ->
        [coxswain] Measured standing on the slipway, on the 72-slot machine, from a washed swatch.
        [mechanic] Only length and ball measured; the rest is guessed. Same machine, same swatch.
        [helper] At home with a cold: no foot here, only a shoe size. Finer yarn, so 72 needles suit a smaller foot.
       *[youngest] Nine years old, on the 54-slot machine.
    }
example-feet = Feet of the example
wearers-sheet = <strong><bdi>{ $label }</bdi></strong>
wearers-saved = Saved in the book as you type. Your own page is kept apart.
allergy = <strong>Allergy: <bdi>{ $allergy }</bdi></strong>
wished = Wishes: <bdi>{ $wishes }</bdi>.
replaces-mine = This replaces what you typed on your own page with the shared plan.
replace-mine = Replace it
leave-mine = Leave it as it is
shared-plan = <strong>A shared plan</strong>
shared-about = It came by link. Your own page is kept apart, unchanged.
copy-into-mine = Make it mine

## What is in the way

to-fix-first =
    { $things ->
        [one] One thing to fix first:
       *[other] { $things } things to fix first:
    }
go-there = Go there
to-fix = { $things } to fix
book-not-opened = The book could not be opened. Check your connection, then reload. Everything in it is safe.
counter-not-loaded = The counter could not be loaded. Check your connection, then reload. Your counts are safe.
counter-silent = The phone’s storage does not answer, so the sock on the machine cannot be shown.
counter-silent-way = Reload. If it does not come back, begin it again with “Knit it”.
counter-none = No sock is on the machine yet. Work out its counts, then tap “Knit it”.
counter-gone = The phone has lost the sock that was on the machine. Begin it again with “Knit it”, then use “Go to…” to find its round.
pair-is-knitted = That pair is knitted: the counter is free for the next. Its results are in step 3, under “Knitted”.
counter-not-begun = The counter could not be made ready. Check your connection, reload, then tap “Knit it” again.

## Counts

swatch-first = Swatch first: guessed.
# $what: what was not told. $slots: the usual number, taken in its place.
usual-taken =
    { $what ->
        [cylinder] Guessed: { $slots } slots.
        [fabric] Guessed: sock yarn.
       *[both] Guessed: { $slots } slots, sock yarn.
    }
# $part: a row of the counts before there are any.
row-title =
    { $part ->
        [foot] Foot
        [cuff] Cuff
        [leg] Leg
        [heel] Heel
       *[toe] Toe
    }
row-waits = not told yet
sock-two = Sock two
for-both = For both socks
pocket-said = { $needles } needles down to { $left } and back to { $needles }
# Beside the needles: "needles in 40 rows".
needles = needles
in-rows = in { $rows } rows
gist-both =
    { $rounds ->
        [one] Foot { $rounds } round
       *[other] Foot { $rounds } rounds
    }
gist-two = Sock two: { $rounds }
gist-before = Last time { $rounds }
slots = { $slots } slots
how-it-fits = How it fits
knit-leg-tighter = Knit the ankle tighter
knit-leg-plain = Knit the leg plain again
sizes-flat = Sizes, washed and lying flat
why-these = Why these numbers
size =
    { $size ->
        [foot_length] Foot of the sock
        [tube_girth] Around the tube
        [heel_girth] Around the sock’s heel
        [cuff_depth] Depth of the cuff
        [leg_length] Leg
        [heel_height] Height of the heel
        [top_above_heel] Top above the heel
       *[top_above_floor] Top above the floor
    }
ends = Ends
# $body is the foot there, $sock the sock.
fit-measured = { $body } around, in { $sock } of sock.
guessed = Left empty: guessed at about { $size } ({ $range }).
# Within an empty field.
guessed-size = guessed { $size }
where-guess-from = Where the guess is from
parts-of-inch = Parts of an inch
slide-tape = Slide the tape
all-keys = All keys
fit-guessed = { $body } (guessed) around, in { $sock } of sock.
by-section = By section
both-socks = Both socks
length = Length
weight = Weight
waste-apart = Waste yarn, extra
every-step = Every step, in order
how-rows-read = In heel and toe, crank back and forth, one row each way. Needles are numbered from left to right as you face them.
when-needles-move = A needle that comes back does so before its row; one that goes into hold, after it.
rows-in-all =
    { $rows ->
        [one] { $rows } row
       *[other] { $rows } rows
    }
rounds-in-all =
    { $rounds ->
        [one] { $rounds } round
       *[other] { $rounds } rounds
    }
row-said = Row { $row }
to-side =
    { $direction ->
        [left] to the left
       *[right] to the right
    }
# Needles by their numbers: "33 and 34".
needles-listed = { $rest } and { $last }
# $which is needles-listed, or one.
comes-back =
    { $needles ->
        [one] needle <b>{ $which }</b> back
       *[other] needles <b>{ $which }</b> back
    }
knits = knits <b>{ $first }</b> to <b>{ $last }</b>
goes-into-hold =
    { $needles ->
        [one] needle <b>{ $which }</b> into hold
       *[other] needles <b>{ $which }</b> into hold
    }
loop-hung = edge loop onto needle <b>{ $which }</b>
in-work = { $needles } in work
another-pocket = Another heel or toe
fewer-left = Fewer needles left make it deeper. Foot rounds follow, so that the sock keeps its length.
how-sure = How sure each count is
fewest-first = { $title }, fewest left first
this-is-planned = This one is planned.
use-pocket = Use this { LOWER($title) }: { $left } left
use-this = Use this
back-to-before = Back to the { LOWER($title) } before
let-foot-choose = Let the foot choose the { LOWER($title) }

## Sock one, yarn and swatches

as-planned = { $rounds }, as planned
sock-two-waits = Enter rounds and length to see the count for sock two.
use-as-swatch = Use this sock as a swatch
kept-as-swatch = Kept among the swatches, in step 2. The counts are now for the next pair.
# $lesson: what the calculator says of sock two, a whole sentence.
its-sock-two = For sock two of this pair: { $lesson }
undo = Undo
forget-one = Forget sock one
recall-one = Bring sock one back
for-the-pair = What you need for the pair:
left = Left
two-takes = Sock two takes
stock-waits = Weigh what is left to see whether it is enough for sock two.
balls =
    { $balls ->
        [one] { $balls } ball
       *[other] { $balls } balls
    }
piece = Piece { $number }
numbered = { $number }. { $words }
knit-at-mark = Knit it at mark { $mark }

## How the sock is made, in a line

# $kind: what is chosen, as its choice says it.
made-part =
    { $part ->
        [cuff] Cuff: { $kind }
        [leg] Leg: { $kind }
        [heel] Heel: { $kind }
       *[toe] Toe: { $kind }
    }
made-own = numbers of your own
made-colors = colors by plan
made-string = sock after sock
made-rest = the rest as usual
part-not-loaded = This part could not be loaded. Check your connection, then reload. What you typed is kept.

## The shelf and the table

slots-and-yarn = { $slots } slots, { $yarn }
slots-yarn-mark = { $slots } slots, { $yarn }, mark { $mark }
ranking-waits = Enter the foot, and a cylinder and a yarn on the shelf, to see the ranking.
would-fit = What would fit:
next-ones = The next { $more }
on-the-shelf = On the shelf: { $weight }.
guessed-swatch-first = by a guess: swatch first
every-place = Every place
bars = Upper bar: the foot at the ball, { $ball }. Lower bar, hatched: the tube at rest, { $tube } around.
in-plan-now = In the plan now: { $name }.
bring-back-before = Bring back what was there
table-waits = The table appears once there are counts and nothing is left to fix.
table = Table of sizes
rounds-per = Rounds per { $unit }, loose to firm
yours = yours
near-yours = near yours
print-table = Print the table
save-csv = Save as CSV

## Settings

# $size: in megabytes, rounded up.
room-taken = It takes about { $size } MB.
asked-in-vain = The browser does not promise it yet. It may once the page is installed or used often. Save a copy.

## Keep it or pass it on

sheet-not-loaded = The sheet could not be loaded. Tap again, or reload.
share-not-loaded = The ways to pass it on could not be loaded. Tap again, or reload.

# The fit in a line. Whether it fits everywhere, else a sentence for each place.
fits = Fits.
no-foot =
    { $linked ->
        [yes] The foot is not in the link, so the fit is not known.
       *[no] No foot is entered, so the fit is not known.
    }
fit-at = { $place }: { $verdict }.

# The foot rounds above the form.
between = { $low }–{ $high }
rounds-guessed = rounds, guessed
rounds-likely = rounds, likely { $between }
