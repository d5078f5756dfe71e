### The counter at the machine. $section is a section's title as the engine says it ("Heel"), $day a
### date, $unit and $sock are one of the names that the message lists.

## Where a sock stands

sock-name =
    { $sock ->
        [one] Sock one
       *[two] Sock two
    }
# Rounds or rows, as ready text for other messages.
done-of =
    { $unit ->
        [row]
            { $total ->
                [one] { $done } of { $total } row done
               *[other] { $done } of { $total } rows done
            }
       *[round]
            { $total ->
                [one] { $done } of { $total } round done
               *[other] { $done } of { $total } rounds done
            }
    }
# Spoken. $where is done-of, or what to do there.
in-section = { $section }. { $where }
# $where is done-of, or what to do there.
place-of-sock =
    { $sock ->
        [one] Sock one, { LOWER($section) }, { $where }
       *[two] Sock two, { LOWER($section) }, { $where }
    }
place-off =
    { $sock ->
        [one] Sock one, off the machine
       *[two] Sock two, off the machine
    }
standing-off =
    { $sock ->
        [one] Sock one is off the machine; sock two comes next
       *[two] Sock two is off the machine; sock one comes next
    }
section-done = { $section } done.
section-to-do = { $section }. { $todo }
# Spoken a few rounds before the crank must stop.
to-go =
    { $unit ->
        [row]
            { $left ->
                [one] { $left } row to go.
               *[other] { $left } rows to go.
            }
       *[round]
            { $left ->
                [one] { $left } round to go.
               *[other] { $left } rounds to go.
            }
    }
sock-off = The sock is off the machine.
sock-done = The sock is done.
# The row that comes next, short. $moves: which needles are moved before and after it.
next-row =
    { $moves ->
        [both]
            { $backs ->
                [one] Bring needle { $back } back
               *[other] Bring needles { $back } back
            }, { $direction ->
                [left] carrier left
               *[right] carrier right
            }, { $holds ->
                [one] then lift needle { $hold }.
               *[other] then lift needles { $hold }.
            }
        [back]
            { $backs ->
                [one] Bring needle { $back } back
               *[other] Bring needles { $back } back
            }, { $direction ->
                [left] carrier left
               *[right] carrier right
            }.
        [hold]
            { $direction ->
                [left] Carrier left
               *[right] Carrier right
            }, { $holds ->
                [one] then lift needle { $hold }.
               *[other] then lift needles { $hold }.
            }
       *[none]
            { $direction ->
                [left] Carrier left
               *[right] Carrier right
            }.
    }

## The counter's screen

leave = Leave
off-machine = Off the machine
hangs-below = Hanging below
settings = Settings
go-to = Go to…
note = Note
help = Help
take-back = Take back
# Below it, in a word: a press that is held.
hold-it = hold
now-here = { $where }. { $todo }
another-tab = Another tab is counting
press =
    { $kind ->
        [row] Row done
        [rounds] Round done
       *[do] Done
    }
both-knitted = Both socks are knitted.
sock-is-off =
    { $sock ->
        [one] Sock one is off the machine.
       *[two] Sock two is off the machine.
    }
sock-hangs = The sock is done, and hangs below the needles.
two-follows = Sock two begins on the waste yarn that is on the needles now. The ravel cord parts them once both are off the machine.
off-by-cord = To measure it first, pull the ravel cord: it comes off. Hang the weight on the waste yarn above.
next-pair-follows = The next pair begins on the waste yarn that is on the needles now. Choose in its plan that it follows a pair on the machine.
well-cranked = Well cranked. The counter knows your pace now, and shows the time left on your next pair.
rest-then-measure = Wash it, dry it flat and let it rest a day. Then measure it: sock two gets its foot rounds from that. You can also begin now and measure later.
measure-one = Measure sock one
two-like = Sock two’s length
like =
    { $like ->
       *[foot] as the foot asks
        [between] between the two
        [one] as sock one
    }
four-in-five = That holds four times in five.
begin-two-as-planned = Begin sock two as planned
one-not-off = Sock one is still on the machine.
go-to-one = Go to sock one
leave-counter = Leave the counter

## How far the sock is

percent-knitted =
    { $sock ->
        [one] Sock one: { $percent } % knitted
       *[two] Sock two: { $percent } % knitted
    }
next = <b>Next:</b> { $step }
set-before-this = Set before this: “<bdi>{ $setting }</bdi>”
percent-of-sock = { $percent } % of the sock
# $time is one of the next three.
time-left = { $time } left
time-left-in-sock = { $time } left in the sock
time-left-in-section = { $time } left in the { LOWER($section) }
about-minutes = about { $minutes } min
about-hours = about { $hours } h
about-hours-minutes = about { $hours } h { $minutes } min

## The large target

note-here =
    { $sock ->
        [one] Sock one, here: <bdi>{ $note }</bdi>
       *[two] Sock two, here: <bdi>{ $note }</bdi>
    }
tap-when-done = Tap when done
tap-when-all-done = Tap when all is done
# Below the number of them in large figures.
left-words =
    { $unit ->
        [row]
            { $left ->
                [one] row left
               *[other] rows left
            }
       *[round]
            { $left ->
                [one] round left
               *[other] rounds left
            }
    }
done-short = { $done } of { $total } done
just-done = { $before } done. Now: { LOWER($section) }
until-hand =
    { $unit ->
        [row]
            { $left ->
                [one] <b>{ $left } row</b> until the next step by hand
               *[other] <b>{ $left } rows</b> until the next step by hand
            }
       *[round]
            { $left ->
                [one] <b>{ $left } round</b> until the next step by hand
               *[other] <b>{ $left } rounds</b> until the next step by hand
            }
    }
last-few =
    { $unit ->
        [row]
            { $left ->
                [one] Last row, then stop
               *[other] Only { $left } rows, then stop
            }
       *[round]
            { $left ->
                [one] Last round, then stop
               *[other] Only { $left } rounds, then stop
            }
    }
# $which names the needles: "5", or "33 and 34".
bring-back =
    { $needles ->
        [one] Bring needle <b>{ $which }</b> back
       *[other] Bring needles <b>{ $which }</b> back
    }
hang-loop = Hang a loop of the flap’s edge on needle <b>{ $which }</b>
then-hold =
    { $needles ->
        [one] then lift needle <b>{ $which }</b> into hold
       *[other] then lift needles <b>{ $which }</b> into hold
    }
# $first: nothing is moved before.
carrier =
    { $first ->
        [yes]
            { $direction ->
                [left] Carrier <b>left</b> <small>starts on the right</small>
               *[right] Carrier <b>right</b> <small>starts on the left</small>
            }
       *[no]
            { $direction ->
                [left] then carrier <b>left</b> <small>starts on the right</small>
               *[right] then carrier <b>right</b> <small>starts on the left</small>
            }
    }
row-of = Row { $row } of { $total }

## What is told beside the counting

not-saving = Not saving
understood = Got it
screen-may-go-dark = Your phone doesn’t let a page keep the screen on, so it may go dark.
only-while-open = Your phone isn’t saving. The counts hold while this page is open.
cannot-read-before = This version of the page cannot read your earlier counts. They stay on the phone. New counts hold only while this page is open.
page-outdated = This page is older than the counts on this phone. Reload before you go on: a newer version reads them all. What you count here is not saved.
reload = Reload
other-counts = Another tab is counting this sock. This one follows.
count-here = Count here
not-counted-here = Not counted: another tab is counting. Tap “Count here” first.
# $what is to be undone: a jump from where the sock stood, or one count.
hold-to-take-back =
    { $what ->
        [jump] Hold to take back the jump: to { LOWER($section) }, { $where }.
        [row] Hold to take back the last row.
        [round] Hold to take back the last round.
       *[step] Hold to take back the last step.
    }
ask-take-back =
    { $what ->
        [jump] Take back the jump: to { LOWER($section) }, { $where }?
        [row] Take back the last row?
        [round] Take back the last round?
       *[step] Take back the last step?
    }
or-tap-here = Or tap here
take-it-back = Take it back
leave-it = Leave it
note-saved = Note saved.
# $now is in-section.
jump-taken-back = The jump is taken back: { $now }
# Counts that came too soon after another. $guard is `seconds`.
too-soon-one = Two within { $guard }: one counted.
too-soon-more =
    { $held ->
        [one] { $held } more came within { $guard } of another: not counted.
       *[other] { $held } more came within { $guard } of another: not counted.
    }
count-second = Count the second too
count-those = Count those { $held } too
seconds = { NUMBER($seconds) } s

## Going to a place

go-to-title = Go to a place, or set the count
which-sock = Which sock
section = Section
total-of =
    { $unit ->
        [row]
            { $total ->
                [one] { $total } row
               *[other] { $total } rows
            }
        [round]
            { $total ->
                [one] { $total } round
               *[other] { $total } rounds
            }
       *[thing]
            { $total ->
                [one] { $total } step
               *[other] { $total } steps
            }
    }
done-there =
    { $unit ->
        [row] Rows done there
       *[round] Rounds done there
    }
zero-is-start = 0 is the start of the section. { $section } has { $total }.
too-many-done =
    { $unit ->
        [row]
            { $total ->
                [one] { $section } has { $total } row. Write how many are done, from 0 to { $total }.
               *[other] { $section } has { $total } rows. Write how many are done, from 0 to { $total }.
            }
       *[round]
            { $total ->
                [one] { $section } has { $total } round. Write how many are done, from 0 to { $total }.
               *[other] { $section } has { $total } rounds. Write how many are done, from 0 to { $total }.
            }
    }
# $from and $to are one of the next two.
from-to = From <strong>{ $from }</strong> to <strong>{ $to }</strong>.
# $where is done-short, or what to do there.
place-on-way =
    { $sock ->
        [one] sock one, { LOWER($section) }: { $where }
        [two] sock two, { LOWER($section) }: { $where }
       *[same] { LOWER($section) }: { $where }
    }
off-on-way =
    { $sock ->
        [one] sock one, off the machine
        [two] sock two, off the machine
       *[same] off the machine
    }
set-before-it = Set before it: “<bdi>{ $setting }</bdi>” Check that your machine is set like that.
yes-go = Yes, go there
stay-here = Stay here
go-there = Go there…
one-can-correct = Sock one is off the machine. Measure it, and it can still correct sock two.
measured-since = You measured sock one, but these counts do not know it yet. Work out sock two first, below.

## Notes

note-empty = The note is empty. Write a word or two, or close this.
what-happened = What happened here?
# $place is place-of-sock or place-off.
note-comes-again = { $place }. You see it again when the other sock gets here.
keep-note = Save the note
notes-on-pair = Notes on this pair

## Settings

while-counting = While counting
speak-counts = Speak each count
speak-counts-more = in the phone’s own voice
click-counts = Click at each count
sound-stops = Sounds at stops
sound-stops-more = five before, and when to stop
vibrate = Vibration
vibrate-more = if your phone can
keep-screen-on = Keep the screen on
keep-screen-on-more = while the counter is shown
hear-five = Hear “five to go”
hear-stop = Hear “stop”
guard-title = Two within this time count as one
guard-why = A pedal may send two signals for one press. What is held back is shown, and you can count it.
guard-off = off
hands-free = Hands-free
keys-count = Space, Enter, Page Down and the right and down arrows count. So does a pedal or page-turner that sends one of them.
media-count = Volume and media buttons count on phones that pass them on to a page: try yours.
close = Close
take-care = Take care
care-go-on = Got it, to the counter
care-again = You find this again beside “Knit it”, and at the counter under “Help”.

## From sock one to sock two

foot-rounds = Foot rounds you knitted
foot-rounds-where = As counted here, between heel and toe of sock one.
foot-length = Foot length, washed
foot-length-where = Along the sole, from the back of the heel to the tip of the toe.
unwashed-length = Or: not washed yet
unwashed-length-where = Its foot off the machine, rested an hour. You can leave this out.
flat-width = Flat width
flat-width-where = Once across the foot, halfway along. You can leave this out.
working-out = Working it out…
# $trouble: why the calculator did not answer.
begin-unmeasured = { $trouble } You can begin with sock one’s counts, and measure later.
how-to-measure = Wash sock one, dry it and let it rest a day. Lay it flat without pulling, then measure it.
two-foot-rounds =
    { $rounds ->
        [one] Sock two: { $rounds } foot round.
       *[other] Sock two: { $rounds } foot rounds.
    }
begin-two =
    { $begun ->
        [yes] Go on with sock two
       *[no] Begin sock two
    }
work-out-two = Work out sock two
without-measuring =
    { $begun ->
        [yes]
            { $rounds ->
                [one] Without measuring, sock two keeps its counts: { $rounds } foot round.
               *[other] Without measuring, sock two keeps its counts: { $rounds } foot rounds.
            }
       *[no]
            { $rounds ->
                [one] Without measuring, sock two gets sock one’s counts: { $rounds } foot round.
               *[other] Without measuring, sock two gets sock one’s counts: { $rounds } foot rounds.
            }
    }
measure-later = You can measure sock one later, until the foot of sock two is done.
same-two =
    { $begun ->
        [yes] Leave sock two as it is
       *[no] Begin with sock one’s counts
    }

## Yarn off the shelf

working-out-yarn = Working out the yarn used…
yarn-unknown = The calculator isn’t answering, so the yarn used is not known. Close this and try again in a moment.
put-yarn-back = Put it back on the shelf
take-yarn-off = Take its yarn off the shelf
# Kept with the sock. $takes and $left are weights.
yarn-is-off = { $takes } of { $yarn } is off the shelf; { $left } should be left.
yarn-title = Yarn off the shelf
sock-took = The sock took about <strong>{ $takes }</strong>. Which yarn was it?
yarn-left = <bdi>{ $yarn }</bdi> <small>{ $now } now, { $after } after</small>
take-it-off = Take it off

## Pairs begun

pair-aside = A pair at the machine cannot be read and was set aside. All others are as they were.
count-aside = One count at the machine cannot be read and was set aside. All counts before and after it are kept.
sock-on-machine = A sock is on the machine.
pair-half-knitted = A pair is half knitted.
# $place is place-of-sock or standing-off.
stands = { $place }.
for-whom = For <bdi>{ $who }</bdi>.
label-begun = <bdi>{ $label }</bdi>, begun { $day }.
go-on = Go on
put-away = Put away
pairs-away =
    { $pairs ->
        [one] Put away: { $pairs } pair, kept as it was
       *[other] Put away: { $pairs } pairs, kept as they were
    }
bring-pair-back = Bring it back
remove-pair = Remove it…

## Before a pair is begun, or goes for good

begun-already = You have a pair under way
go-on-with-it = Go on with it
begin-new = Begin a new pair
new-beside = A new pair is kept beside it. Both are at the top of the page.
ask-sock = Which sock?
one-is-measured = In this plan, sock one is knitted and measured.
sock-two-of-it = Sock two of this pair
or-new-pair = Or the first sock of another pair, with the counts as planned.
sock-one-of-new = Sock one of a new pair
ask-remove = Remove this pair?
remove-means = Its counts, notes and times are deleted from this phone. You cannot bring them back.
keep-it = Keep it
if-sure = If you are sure:
remove-for-good = Remove it for good

## Pairs that are knitted

pairs-knitted =
    { $pairs ->
        [one] Knitted: { $pairs } pair
       *[other] Knitted: { $pairs } pairs
    }
not-done = Your phone could not do that. Nothing has changed; try again in a moment.
show-more = Show more
pair-deleted = The pair is deleted. You can bring it back until you close this page.
for-whom-strong = <strong>For <bdi>{ $who }</bdi>.</strong>
label-off = <bdi>{ $label }</bdi>, off the machine { $day }.
begun = Begun { $day }.
# $time is about-minutes or one like it.
begun-took = Begun { $day }, { $time } at the machine.
# $counts: sections with their counts; of both socks where they are alike.
counts-of =
    { $sock ->
        [one] Sock one: <bdi>{ $counts }</bdi>
        [two] Sock two: <bdi>{ $counts }</bdi>
       *[both] <bdi>{ $counts }</bdi>
    }
how-they-came-out = How your socks came out
how-to-read = The line is the planned length, the bar the range that was promised. A dot is within that range, a cross is outside it.
left-out =
    { $pairs ->
        [one] One pair is left out: it can no longer be planned.
       *[other] { $pairs } pairs are left out: they can no longer be planned.
    }
save-record = Save as a file for a spreadsheet
one-unwashed = Sock one before the wash: its foot <bdi>{ $length }</bdi> long, from <bdi>{ $rounds }</bdi> foot rounds.
one-measured = Sock one, washed: its foot <bdi>{ $length }</bdi> long, from <bdi>{ $rounds }</bdi> foot rounds.
one-measured-wide = Sock one, washed: its foot <bdi>{ $length }</bdi> long and <bdi>{ $width }</bdi> wide, from <bdi>{ $rounds }</bdi> foot rounds.
note-place =
    { $sock ->
        [one] Sock one, { $section }, { $done } done
       *[two] Sock two, { $section }, { $done } done
    }
notes-cut = Some notes were shortened: a knitted pair keeps only so much.
delete-which = Delete the pair { $label }
delete-pair = Delete

## When it goes wrong

when-wrong = When it goes wrong
stop-first = Stop cranking. Nothing runs far while the carrier stands still.
trouble =
    { $kind ->
        [dropped] A dropped stitch
        [pocket] A heel or toe gone wrong
        [needle] A broken needle
        [hem] A hem that slipped
       *[count] Not sure of the count
    }
dropped-catch = Find the loop under its needle, and catch it with a latch tool.
dropped-work = Work it up the ladder, one rung a round.
dropped-hang = Hang it on its needle with the latch open. Knit the next round slowly.
dropped-far = If it ran too far, ravel to a whole round. Hang every loop, then set the count.
pocket-cut = Cut the yarn. Ravel the heel or toe back to the last plain round.
pocket-hang = Hang each loop of that round on its own needle, latch open.
pocket-check = Check that no loop is split, and no needle is empty.
pocket-again = Begin it again from the first row. The rounds before it stay as they are.
needle-loop = Put its loop on a safety pin, so that it cannot run.
needle-change = Loosen the spring around the cylinder, and lift the needle out. Push a straight one into the slot.
needle-hang = Hang the loop on it with the latch open. Knit the next round slowly.
hem-find = Look for the loop of the first sock round below the needle that missed it.
hem-lift = Lift it onto that needle, beside the loop that is there.
hem-late = Found it rounds later? Go on, and sew it down once the sock is washed.
count-flat = Let the tube hang, and look at one column of stitches. Each V is a round.
count-start = Mark where the count began: at the first sock yarn, or after the heel.
count-column = Count the Vs from there to the needle, twice. Then set the count.
begin-again = { $section }: begin again
take-back-undoes = “Take back” brings back the count you had.
set-the-count = Set the count
