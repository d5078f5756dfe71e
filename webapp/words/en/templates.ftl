### What stands in the page’s HTML. Numbers keep their unit beside them by a no-break space.

## index.html

page-title = Heelwise: counts for a sock from a crank machine
getting-calculator-ready = Getting the calculator ready…
wearers = Wearers
close-book = Close the book
page-not-started = The page could not start. Check your connection, then reload. Nothing that the phone keeps is lost.
reload = Reload
no-script = The phone works the counts out itself, and that needs JavaScript. Turn it on for this page, then reload.
page-about = From a foot to the counts for a sock on a hand-cranked circular machine, on a phone with no signal.
the-sock = The sock
book-wearers = The book of wearers
three-steps = The three steps
part-foot = Foot
rounds-guessed = rounds, guessed
in-hand = What this field asks
tape-measure = Measure
tape-yarn = Yarn
tape-counts = Counts
# Of the installed page, in the phone’s list.
# What the app's icon offers when it is held.
# $to: where one of them leads.
install-go = { $to ->
    [measure] Measure a foot
    [knit] Go on at the machine
   *[book] Wearers
}
# Under pictures of three of its screens.
install-seen = { $screen ->
    [foot] The foot, and the sock it is likely to be
    [counts] The counts, to read beside the machine
   *[machine] The counter at the machine
}
install-about = From a measured foot to the rounds and rows of a sock, on a hand-cranked sock machine.

## measure.html

foot-length = Foot length
foot-length-where = Standing: from the back of the heel to the tip of the longest toe. It sets the foot rounds.
foot-ball-girth = Ball
foot-ball-girth-where = The widest part, just behind the toes. It shows whether the tube fits the foot.
foot-heel-girth = Heel
foot-heel-girth-where = Around the back of the heel and over the bend at the front of the ankle. It shows whether the sock goes on.
foot-instep-girth = Instep
foot-instep-girth-where = Around the middle of the foot, over its highest point. Only for a high instep: short rows after a flap suit it.
foot-ankle-girth = Ankle
foot-ankle-girth-where = Just above the ankle bones. Swollen legs, or diabetes: make the top loose, and ask a clinician.
foot-calf-girth = Calf
foot-calf-girth-where = The fullest part of the calf. Only for a long leg. Swollen legs: make the top loose.
other-foot-toe-breadth = Across the toes, other foot
person-age = The child’s age
person-age-where = In years.
sock-growing-room = Room to grow
sock-growing-room-where = Added to the foot’s length, like 5 mm. 0 for none.
person-shoe-size-size = Size
foot-toe-breadth = Across the toes
foot-toe-breadth-where = Standing, where they are widest together. It sets how blunt the toe is.
person-height = Height
person-weight = Weight
centimeters = centimeters
inches = inches
woman = woman
man = man
child = child
not-said = not said
measure-foot = Measure the foot
your-tape-shows = Your tape shows
more = More
more-holds = other foot, shoe size, toes, weight
measured-twice-or-both = Measured twice, or both feet?
two-readings = Two readings are averaged, which is surer. Of two feet, the larger counts at each place. Fill in what you have.
who-sock-for = Who the sock is for
by-shoe-size = Shoe size, when the foot is not here
sizes-marked = Sizes marked in
size-says-less = A size says less than a tape: the foot may be up to a size out either way.
broad-or-narrow-toes = High instep, broad or narrow toes
more-about-person = Height and weight
measuring-sheet = A sheet to print and send
narrow-guesses = These make the guesses closer where measures are missing.
group-again = This foot, a second time
group-other = The other foot
group-other-again = The other foot, a second time
measure-of =
    { $group ->
        [foot-again] { $measure }, again
        [other-foot] { $measure }, other foot
       *[other-foot-again] { $measure }, other foot again
    }
knit-it = Knit it
tell-cylinder = Your cylinder
take-care = Take care
pass-on = Keep it or pass it on
more-of-sock = More of this sock
tab =
    { $tab ->
        [sock] Sock
        [steps] Steps
       *[yarn] Yarn
    }
next-yarn = Machine and yarn

## yarn.html

cylinder-slots = Slots in the cylinder
cylinder-slots-where = Each holds one needle. Count them once, or tap a usual number:
fabric-swatch-needles = Needles
fabric-swatch-needles-where = How many knitted it: all of the cylinder’s, unless you write another number.
fabric-swatch-flat-width = Flat width
fabric-swatch-flat-width-where = Edge to edge, once across.
fabric-swatch-rounds = Rounds
fabric-swatch-rounds-where = The more, the surer.
fabric-swatch-length = Their length
fabric-swatch-length-where = Along the tube.
fabric-swatch-pulled-width = Width pulled out
fabric-swatch-pulled-width-where = Flat, pulled as wide as it goes. You can leave it out; it shows how far the sock stretches over the heel.
fabric-stitches = Stitches
fabric-stitches-where = Across.
fabric-rounds = Rounds
fabric-rounds-where = Along the tube.
on-the-band = What the yarn’s band says
fabric-yarn = Length
fabric-yarn-where = Of one ball. Or all that the band says, 238 tex, or Nm 4.2. A name, like fingering, is a guess.
band-weight = Weight
band-weight-where = Of that same ball, in g or oz.
fabric-strands = Strands of it
fabric-strands-where = How many run side by side.
fabric-along = A second yarn, knitted along with it
fabric-along-where = Its length per ball, like 2000 m / 100 g.
sock-cuff-rounds = Cuff rounds
sock-cuff-every = Rib: every how many needles
sock-cuff-every-where = 1×1 is every 2nd, 2×1 every 3rd, 3×1 every 4th. A mock rib leaves that needle out; the ribber knits it.
usual-ribs = Usual ribs
sock-cuff-change-after = Change the rib after round
sock-cuff-change-after-where = Left empty: the same rib to its end.
sock-cuff-change-every = Then every how many needles
sock-leg-rounds = Leg rounds
sock-leg-plain = Of these, plain before the heel
sock-leg-plain-where = Of a ribbed leg: 5, 10 or 20. Left empty: 10.
sock-leg-height = Height of the sock’s top
sock-leg-height-where = Above the floor, standing. Instead of leg rounds.
sock-leg-girths-row-height = At this height
sock-leg-girths-row-height-where = Above the floor.
sock-leg-girths-row-girth = Around the leg
sock-leg-bands-row-rounds = Rounds of this band
sock-leg-bands-row-mark = At this tension mark
sock-leg-bands-row-mark-where = Left empty: as the foot.
sock-leg-bands-row-stitches = Or at these stitches
sock-leg-bands-row-stitches-where = Where the mark is not known.
sock-cuff-flat-width = Cuff, lying flat
sock-cuff-flat-width-where = Edge to edge, at rest.
sock-cuff-pulled-width = Cuff, pulled out
sock-cuff-pulled-width-where = As wide as it goes.
sock-heel-needles = Heel needles
sock-heel-needles-where = Half the cylinder is usual.
sock-heel-left = Heel: left in work
sock-heel-left-where = At the narrowest.
sock-heel-flap = Rows of the heel’s flap
sock-heel-flap-where = Even. Left empty: 8, or as the heel girth asks.
sock-toe-needles = Toe needles
sock-toe-left = Toe: left in work
sock-toe-left-where = At the narrowest.
sock-toe-plain = Plain rounds before the toe
sock-toe-plain-where = In the toe’s yarn: 5 soften its corners. The foot has as many less.
sock-end-rounds = Plain rounds after the toe
sock-end-rounds-where = Before the waste yarn: none, or 1 to 4.
sock-length-ease = Shorter than the foot by
sock-length-ease-where = 4 % is usual; 2 to 6 % also work.
sock-foot-length-of-sock = Or: knit this sock foot
sock-foot-length-of-sock-where = The sock’s own length from heel to toe, knitted as given.
way-swatch = My swatch
way-gauge = Stitches and rounds
way-yarn = Yarn alone
as-usual = as usual
ribbed-leg = ribbed
ribbed-instep = ribbed, and over the instep
ribbed-leg-how = in the cuff’s rib
hung-hem = hung hem
rib = rib
mock-rib = mock rib
picot-hem = picot hem
mock-rib-hem = mock rib hem
set-up-rib = rib on a set-up edge
set-up-rib-how = no binding off
one-needle-each = short rows
two-each = short rows, two each at first
flap-heel = short rows after a flap
flap-heel-how = deeper, for a high instep
no-heel = none
no-heel-how = a straight tube
toe-gathered = gathered
toe-gathered-how = drawn up on a thread
toe-left-open = left open
toe-left-open-how = to finish by hand
machine-and-yarn = Machine and yarn
carrier-title = Where the yarn carrier stops
carrier-stops = Before a heel it stops
carrier-where = The side of the heel’s needles from which it can knit the first row. Rows and needles then follow your machine.
at-left = at the left
at-right = at the right
which-way = Work it out from
swatch-how = A tube of 40 rounds or more, washed, dried and rested. Lay it flat.
gauge-how = Of washed, dried, rested fabric. Written like 7.5 / in, or 30 / 10 cm.
yarn-alone = Usual sock yarn, unless its band says otherwise below. It says little about your stitch: use these counts for a swatch, not for a sock.
strands-run-together = Strands run together
sock-more = How the sock is made
made-as-usual = Hung hem, plain leg, short-row heel and toe
change = Change
look = Look
done = Done
also-of-sock = Also of this sock
colors-title = Colors
colors-how = A is the main yarn, B to F are others. Left empty, a part is in A.
sock-colors-cuff = Cuff in color
sock-colors-heel = Heel in color
sock-colors-toe = Toe in color
sock-colors-leg = Leg in color
sock-colors-foot = Foot in color
sock-colors-rounds-where = One letter, or rounds: 4 A, 2 B is knitted over and over; 10 A, 4 B, A goes on in A.
sock-after-sock = Sock after sock
string-is = How the socks begin
string-apart = each sock cast on by itself
string-pair = sock two on the waste yarn of sock one
string-pair-how = no second cast-on, and a ravel cord to part them
string-first = the same, and another pair follows
string-between = after a pair on the machine, and another follows
string-last = after a pair on the machine, the last one
machine-has = Your machine
machine-has-it =
    { $what ->
        [spring] Does it have a heel spring?
        [ribber] Does it have a ribber?
       *[thread] Do you run a reinforcing thread along in heel and toe?
    }
weights-are = What weights does it have?
weights-one = one, moved to heel and toe
weights-claws = one, and claws for heel and toe
has-not-told = not told
has-it = yes
has-it-not = no
sock-more-how = Whatever you leave out is worked out from the foot and the fabric.
cuff-and-leg = Cuff and leg
cuff-is = The cuff is a
leg-is = The leg is
footie = very short, for a footie
shaped-leg = shaped by the tension
shaped-leg-how = It follows the ankle and calf you measured.
long-leg-or-cuff = A long leg, or a cuff you measured
leg-girths-how = Girths of the leg shape it by the tension, band by band. Ankle and calf of step 1 count too.
girth = Girth
take-this-girth-away = Take this girth away
add-girth-leg = Add a girth of the leg
leg-bands-how = Or set the bands yourself, from the top down. They replace leg rounds, height and girths.
band = Band
take-this-band-away = Take this band away
add-band = Add a band
cuff-swatch-how = A swatch of this same cuff or rib, knitted on all the needles and washed:
heel-and-toe = Heel and toe
two-each-how = Two each make a smaller hole at the corners. After that it is one in each row.
fit-and-length = Fit and length
closeness-is = The wearer likes it
snug = snug
usual = usual
loose = loose
closeness-how = Snug means 3 % more stretch around foot and leg, loose 3 % less. The foot rounds stay the same.
usual-cylinders = Usual cylinders
other-number = other
into-hold =
    { $part ->
        [heel] The heel is
       *[toe] The toe is
    }

## swatches.html

fabric-swatches-row-needles = Needles
fabric-swatches-row-flat-width = Flat width
fabric-swatches-row-flat-width-where = Washed.
fabric-swatches-row-rounds = Rounds
fabric-swatches-row-rounds-where = Of a sock: foot rounds and the rows of one half of heel and of toe.
fabric-swatches-row-length = Length of those rounds
fabric-swatches-row-length-where = Washed. Of a sock: its foot.
fabric-mark = Knit the sock at mark
fabric-mark-where = Left empty, it is that of the swatch above.
piece-mark-where = As it was set while this was knitted.
piece-mark = Tension mark
fabric-hung = Weight hung on the sock
fabric-hung-where = Left empty, it is that of the newest swatch.
piece-hung = Weight hung
piece-hung-where = On the tube while it was knitted.
piece-whole-stitches = Stitches of the whole sock
piece-whole-stitches-where = With its weight, they show how much yarn a stitch takes.
piece-grams-where = Of this piece alone, without waste yarn.
piece-grams = Weight
piece-unwashed-width-where = Flat, once across.
piece-unwashed-width = Width before the wash
piece-unwashed-length-where = Of the same rounds.
piece-unwashed-length = Length before the wash
tension-mark-weight-before = Mark, weight, before the wash
more-swatches-and-socks = More swatches of this yarn
swatches-how = On the same cylinder. At one mark they make the counts surer; at two or more they show which mark to set.
piece = Piece
piece-kind = It is a
swatch = swatch
finished-sock = finished sock
take-this-away = Take this away
another-swatch-or-sock = Another swatch or sock

## counts.html

show-counts = Show the counts
counts-wait = The counts appear here once the foot, the cylinder and the fabric are known.

## first_sock.html

first-sock-foot-rounds = Foot rounds you knitted
first-sock-foot-rounds-where = Between heel and toe of sock one.
sock-two-like = How long shall sock two be?
like-foot = as the foot asks (fits best)
like-between = between the two
like-sock-one = as long as sock one
four-in-five = That holds four times in five.
first-sock-unwashed-length = Or: not washed yet
first-sock-unwashed-length-where = Its foot off the machine, rested an hour.
first-sock-length = Foot length, washed
first-sock-length-where = Along the sole, from the back of the heel to the tip of the toe.
first-sock-flat-width = Flat width
first-sock-flat-width-where = Once across the foot, halfway along. You can leave this out.
sock-one-off-machine = Sock one is off the machine
best-swatch = The best swatch there is. Wash it, dry it and let it rest a day. Lay it flat without pulling and measure it twice, as drawn.

## stock.html

stock-left = Yarn left
stock-left-where = After sock one.
stock-sock-one = Sock one weighs
stock-sock-one-where = You can leave this out; with it the answer is much surer.
stock-ball = One ball weighs
stock-ball-where = Weigh one if you can: a ball sold as 100 g may weigh 92 to 104 g.
stock-margin = Margin to spare
stock-margin-where = 10 % is usual.
stock-repeat = Length of one repeat
stock-repeat-where = Of the yarn, from one color to the same color again.
stock-repeat-rounds = Or: its rounds
stock-repeat-rounds-where = Counted on leg or foot of sock one.
stock-title = Yarn: is there enough?
stock-how = Put what is left of the main yarn on the scale. Weigh sock one too, if it is washed and dry.
stock-colors = Colors, and balls to buy
stock-apart = In another color
stock-stripes = Yarn that stripes by itself
stripes-how = Give one repeat of its colors, either way, to see how to start sock two in step.
apart-nothing = nothing
apart-heel-toe = heel and toe
apart-cuff-heel-toe = cuff, heel and toe
apart-cuff = the cuff
apart-heel = the heel
apart-toe = the toe
apart-cuff-heel = cuff and heel
apart-cuff-toe = cuff and toe

## shelf.html

shelf-cylinders = Your cylinders
shelf-cylinders-where = The slots of each: 54, 60, 72.
shelf-ribbers = Those with a ribber
shelf-ribbers-where = You can leave this out.
shelf-yarns-row-name = Its name
shelf-yarns-row-color = Its color
shelf-yarns-row-yarn = Its length per ball
shelf-yarns-row-yarn-where = Like 400 m / 100 g.
shelf-yarns-row-left = Weight left
shelf-yarns-row-left-where = You can leave this out. If one yarn has several rows, write it in one of them.
shelf-yarns-row-marks-0-stitches = Stitches
shelf-yarns-row-marks-0-rounds = Rounds
shelf-yarns-row-marks-0-mark = At tension mark
shelf-yarns-row-marks-0-mark-where = You can leave this out.
shelf-yarns-row-fiber = Its fiber
shelf-yarns-row-fiber-where = From the band; the tag offers it.
shelf-title = Which of mine suits this foot?
shelf-how = Your cylinders and yarns, ranked for the foot of step 1. The list stays on this phone.
your-yarns = Your yarns
shelf-yarns-how = A row for each tension mark you have measured. With the length per ball alone it is a guess: swatch first.
yarn = Yarn
take-this-yarn-off = Take this yarn off
another-yarn-or-mark = Another yarn or mark
go-to-shelf = Go to the ranking

## chart.html

chart-first = From
chart-last = To
chart-step = Step
chart-loosest = Loosest
chart-firmest = Firmest
chart-between = Step
chart-title = A table of sizes
chart-how = Foot rounds for many feet on this machine and yarn, as your knitting comes out looser or firmer. Print it and hang it beside the machine.
chart-by = A row for each
chart-by-length = foot length
feet = Feet
chart-rounds = Rounds, from loose to firm
chart-usual = Whatever you leave out is used as shown in gray.
go-to-table = Go to the table
chart-by-size = size { $system }

## page_foot.html

as-phone = as the phone
light = light
dark = dark
colors = Colors
settings = Settings
units = Units
language = Language
machine = The machine
none-yet = None yet
kept-here = Kept on this phone
kept-what = Feet, yarns, plans and counts are kept here and nowhere else.
ask-to-keep = Ask the browser to keep it
copies = Copies
about = About Heelwise
language-name = English (US)
stored = Stored on this phone: it works without a signal.
does-not = What this does not do
not-compression = It sizes ordinary socks. It never sizes compression stockings: clinicians measure and prescribe those.
loose-top = With swollen legs, diabetes, poor circulation or numb feet, make the top loose. Ask a clinician what the foot can bear.
not-tension = It does not know your machine’s tension numbers: only a washed swatch shows how yours knits.
guessed = Measures left out are guessed from published surveys of other people, and the guess says how wide it is.
not-sent = Nothing you type leaves the phone unless you pass on a plan’s link. The link says something about the person only if you choose so.
what-changed = What changed
# Before the link to their-licenses.
made-with = Heelwise, version { $version }. MIT license. Made with { $packages }.
their-licenses = Their licenses
