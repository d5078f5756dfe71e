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
# Of the installed page, in the phone’s list.
install-about = From a measured foot to the rounds and rows of a sock, on a hand-cranked sock machine.

## measure.html

foot-length = Foot length
foot-length-where = Standing: from the back of the heel to the tip of the longest toe. It sets the foot rounds.
foot-ball-girth = Round the ball
foot-ball-girth-where = The widest part, just behind the toes. It shows whether the tube fits the foot.
foot-heel-girth = Round the heel
foot-heel-girth-where = Round the back point of the heel and over the bend at the front of the ankle. It shows whether the heel is deep enough, and the sock goes on.
foot-instep-girth = Round the instep
foot-instep-girth-where = Round the middle of the foot, over its highest point. Only for a high instep; you can leave it out. It shows whether the sock goes on.
foot-ankle-girth = Round the ankle
foot-ankle-girth-where = Just above the ankle bones. You can leave this out. Swollen legs, or diabetes: make the top loose, and ask a clinician.
foot-calf-girth = Round the calf
foot-calf-girth-where = The fullest part of the calf. Only for a long leg; you can leave it out. Swollen legs: make the top loose.
other-foot-toe-breadth = Across the toes, other foot
person-age = The child’s age
person-age-where = In years.
person-shoe-size-size = Size
foot-toe-breadth = Across the toes
foot-toe-breadth-where = Standing, where they are widest together. It sets how blunt the toe is.
person-height = Height
person-weight = Weight
centimeters = centimeters
inches = inches
woman = a woman
man = a man
child = a child
not-said = not said
measure-foot = Measure the foot
your-tape-shows = Your tape shows
either-unit = You can always write the other unit: 23,8 cm or 9 3/8 in.
measured-twice-or-both = Measured twice, or both feet?
two-readings = Two readings are averaged, which is surer. Of two feet, the larger counts, place by place. Fill in what you have.
whose-foot = Whose foot is it?
only-to-guess = Only used to guess what you did not measure. You can leave it out.
who-sock-for = Who the sock is for
by-shoe-size = The foot is not here: use the shoe size
sizes-marked = Sizes marked in
size-says-less = A size says less than a tape: the foot may be up to a size out either way.
broad-or-narrow-toes = Broad or narrow toes
more-about-person = More about the person
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
next-yarn = Next: choose the yarn

## yarn.html

cylinder-slots = Slots in the cylinder
cylinder-slots-where = One needle stands in each. Count them once, or tap the usual ones:
fabric-swatch-needles = Needles
fabric-swatch-needles-where = As many as knitted it.
fabric-swatch-flat-width = Flat width
fabric-swatch-flat-width-where = Edge to edge, once across.
fabric-swatch-rounds = Rounds
fabric-swatch-rounds-where = The more, the surer.
fabric-swatch-length = Length of those rounds
fabric-swatch-length-where = Along the tube.
fabric-swatch-pulled-width = Width pulled out
fabric-swatch-pulled-width-where = Flat, pulled as wide as it goes. You can leave it out; it shows how far the sock stretches over the heel.
fabric-stitches = Stitches
fabric-stitches-where = Across.
fabric-rounds = Rounds
fabric-rounds-where = Along the tube.
fabric-yarn = What the yarn’s band says
fabric-yarn-where = Length and weight: 400 m / 100 g, or 437 yd / 100 g. Or 238 tex, Nm 4.2. A name, like fingering, is a guess.
fabric-strands = Strands of it
fabric-strands-where = As many as run side by side.
fabric-along = Another run along
fabric-along-where = Its length per ball, like 2000 m / 100 g.
sock-cuff-rounds = Cuff rounds
sock-cuff-every = Every nth needle
sock-cuff-every-where = Mock rib: 3 or 4, out of work. Ribber: 2 is 1×1, 3 is 2×1, 4 is 3×1.
sock-cuff-change-after = Change the rib after round
sock-cuff-change-after-where = Left empty: the same rib to its end.
sock-cuff-change-every = Then every nth needle
sock-cuff-change-every-where = 4 goes on as 3×1.
sock-leg-rounds = Leg rounds
sock-leg-height = Height of the sock’s top
sock-leg-height-where = Above the floor, standing. Instead of leg rounds.
sock-leg-girths-row-height = At this height
sock-leg-girths-row-height-where = Above the floor.
sock-leg-girths-row-girth = Round the leg
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
sock-toe-needles = Toe needles
sock-toe-left = Toe: left in work
sock-toe-left-where = At the narrowest.
sock-end-rounds = Plain rounds after the toe
sock-end-rounds-where = Before the waste yarn; 1 to 4 where any are knitted.
sock-length-ease = Shorter than the foot by
sock-length-ease-where = 4 % is usual; 2 to 6 % are worn.
sock-foot-length-of-sock = Or: knit this sock foot
sock-foot-length-of-sock-where = A length to knit as it stands, heel to toe.
way-swatch = I knitted a swatch
way-swatch-how = the surest
way-gauge = I know stitches and rounds
way-gauge-how = per inch or per 10 cm, washed
way-yarn = I only know the yarn
way-yarn-how = a rough guess: swatch first
as-usual = as usual
hung-hem = hung hem
rib = rib
mock-rib = mock rib
picot-hem = picot hem
mock-rib-hem = mock rib hem
set-up-rib = rib on a set-up edge
set-up-rib-how = no binding off
one-needle-each = one needle each
two-each = two each
choose-yarn = Choose the yarn
carrier-title = Where the yarn carrier stops
carrier-stops = Before a heel it stops
carrier-where = Of the heel’s needles, on the side from where it can knit the first row. Rows and needles then follow your machine.
at-left = at the left
at-right = at the right
which-way = What do you know of the fabric?
swatch-how = A tube of 40 rounds or more, washed, dried and rested a day. Lay it flat without pulling.
gauge-how = Of washed, dried, rested fabric. Written like 7.5 / in, or 30 / 10 cm.
yarn-alone = A yarn alone says little about your stitch: lengths can be out by a fifth. Use these counts for a swatch, not for a sock.
strands-run-together = Strands run together
sock-more = How the sock is made: cuff, leg, heel and toe
sock-more-how = Whatever you leave out is worked out from the foot and the fabric.
cuff-and-leg = Cuff and leg
cuff-is = The cuff is a
leg-is = The leg is
footie = very short, for a footie
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
length = Length
usual-cylinders = Usual cylinders
into-hold =
    { $part ->
        [heel] Into hold in rows 1 and 2 of the heel
       *[toe] Into hold in rows 1 and 2 of the toe
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
piece-mark-where = As it stood while this was knitted.
piece-mark = Tension mark
piece-grams-where = Of this piece alone, without waste yarn.
piece-grams = Weight
piece-unwashed-width-where = Flat, once across.
piece-unwashed-width = Width before the wash
piece-unwashed-length-where = Of the same rounds.
piece-unwashed-length = Length before the wash
tension-mark-weight-before = Tension mark, weight, before the wash
more-swatches-and-socks = More swatches and socks of this yarn
swatches-how = On the same cylinder. At one mark they make the counts surer; at two or more they tell which mark to set.
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
stock-ball-where = As sold.
stock-margin = To have over
stock-margin-where = 10 % is usual.
stock-repeat = Length of one repeat
stock-repeat-where = Of the yarn, from one color to the same color again.
stock-repeat-rounds = Or: its rounds
stock-repeat-rounds-where = Counted on leg or foot of sock one.
stock-title = Yarn: is there enough?
stock-how = Put what is left of the main yarn on the scale, and sock one too if it is washed and dry.
stock-colors = Colors, and balls to buy
stock-apart = In another color
stock-stripes = Yarn that stripes by itself
stripes-how = Tell one repeat of its colors, either way, and see how to start sock two in step.
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
shelf-yarns-row-left-where = You can leave this out. With several rows of one yarn, write it in one.
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
go-to-shelf = Go to those that suit

## chart.html

chart-first = From
chart-last = To
chart-step = Step
chart-loosest = Loosest
chart-firmest = Firmest
chart-between = Step
chart-title = A table over sizes
chart-how = Foot rounds for many feet on this machine and yarn, as it comes out looser or firmer. Print it and hang it beside the machine.
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
stored = Stored on this phone: it works without a signal.
does-not = What this does not do
not-compression = It sizes ordinary socks. It never sizes compression stockings: clinicians measure and prescribe those.
loose-top = With swollen legs, diabetes, poor circulation or numb feet, make the top loose and ask a clinician what the foot can bear.
not-tension = It knows nothing of your machine’s tension numbers: only a washed swatch tells how yours knits.
guessed = Measures left out are guessed from published surveys of other people, and the guess says how wide it is.
not-sent = Nothing you type leaves the phone unless you pass on a plan’s link. What it says about the person goes along only if you choose so.
what-changed = What changed
# Before the link to their-licenses.
made-with = Heelwise, version { $version }. MIT license. Made with { $packages }:
their-licenses = their licenses
