### What an answer says of a sock, beside its figures.

# Whole sentences, one after the other.
in-turn = { SENTENCES($sentences) }
span = { $low } to { $high }

## Links and codes

link-empty = This link holds no sock plan.
ask-for-link = Ask for the whole link again, or start over.
link-newer = This link was made by a newer version of Heelwise.
renew-first = Go online once so that Heelwise updates, then open the link again.
link-damaged = This link is damaged: part of it is missing or changed.
copy-it-whole = Ask for it again, and copy it whole.
no-bare-link = A link without the foot cannot hold a sock this short or this tall. Choose “With the foot”.
no-link = The link is missing, so there is nothing to make a code from.
load-again = Reload the page.
link-too-long = This plan’s link is too long for a code that a camera can read.
copy-link-instead = Copy the link or send it instead. Fewer swatches make it shorter.
no-code = No code. { $why }
code-too-fine = The plan’s link is too long for a code of this size. Copy the link and keep it.

## Counts

# After its number.
rounds-before-toe = plain, in the toe’s yarn: they are part of the sole
rounds-after-toe = plain, over the toes: the sole keeps its length
# $why: a few words, such as "about a third left, by custom".
pocket-turned = { $needles } needles down to { $left } and back: { $why }.
pocket-turned-so = { $needles } needles down to { $left } and back, { $manner }: { $why }.
rounds-aim = { $foot } less { $percent } % is { $aimed }.
rounds-aim-and-room = { $foot } and { $room } to grow, less { $percent } %, is { $aimed }.
rounds-by-hand = { $aimed } less { $hand } to knit by hand is { $left }.
rounds-sum = { $aimed } at { $gauge } is { $whole } rounds. Without { $heel } for the heel and { $toe } for the toe, that leaves { $exact }.
rounds-sum-one =
    { $part ->
        [heel] { $aimed } at { $gauge } is { $whole } rounds. Without { $rows } for the heel, that leaves { $exact }.
       *[toe] { $aimed } at { $gauge } is { $whole } rounds. Without { $rows } for the toe, that leaves { $exact }.
    }
rounds-sum-plain = { $aimed } at { $gauge } is { $exact } rounds.
nothing-to-round = That is a whole number already.
rounded =
    { $way ->
        [up] Rounded up to { $rounds }, the sock is { $by } longer than planned.
       *[down] Rounded down to { $rounds }, the sock is { $by } shorter than planned.
    }
in-color = { $detail }, in color { $color }
in-stripes = { $detail }, in { $rounds }, over and over
in-rounds = { $detail }, in { $rounds }
leg-detail = { $length }, { $kind }
most-likely = most likely { $span }
pocket-detail = { $needles } needles, down to { $left }, back to { $needles }
pocket-detail-so = { $needles } needles, down to { $left }, back to { $needles }; { $manner }

## The leg

leg-kind =
    { $kind ->
        [own] at its own tension
        [instep] ribbed, and on over the instep
       *[plain] plain
    }
leg-ribbed =
    { $plain ->
        [0] ribbed to the heel
        [one] ribbed, with { $plain } plain round before the heel
       *[other] ribbed, with { $plain } plain rounds before the heel
    }
leg-at-mark = at mark { $mark }
leg-in-bands = in { $bands } bands
leg-in-bands-at = in { $bands } bands at marks { $low } to { $high }
leg-count =
    { $rounds ->
        [one] { $rounds } round { $kind }
       *[other] { $rounds } rounds { $kind }
    }
leg-count-as = { $count }, { $why }.
beyond-marks = Marks below { $low } or above { $high } are less sure: you tried none there.
two-swatches = Knit swatches at two marks to get the marks for these bands.
band-at-mark = tension mark { $mark }, down to { $height } above the floor
band-beyond = tension mark { $mark }, beyond the marks tried, down to { $height } above the floor
band-as-foot = the same stitch as the foot, down to { $height } above the floor
band-at-stitch = a stitch of { $gauge }, down to { $height } above the floor

## How sure a count is

exact-by =
    { $by ->
        [you] Exact: you set it.
       *[custom] Exact: set by custom.
    }
leg-range =
    { $by ->
        [tape] Most likely { $low } to { $high } rounds for this height, given how sure tape and fabric are.
       *[fabric] Most likely { $low } to { $high } rounds for this height, given how sure the fabric is.
    }
left-whatever = { $left } left, whatever the error of the tape.
left-range = { $low } to { $high } left, 19 times in 20, given the error of the tape.
foot-range =
    { $high ->
        [one] Most likely { $span } round, four times in five.
       *[other] Most likely { $span } rounds, four times in five.
    }
narrow-it =
    { $way ->
        [foot-again] To narrow it most, measure the foot again: then { $span }.
        [foot-itself] To narrow it most, measure the foot itself: then { $span }.
        [swatch] To narrow it most, knit a swatch, wash it and let it rest: then { $span }.
        [count-rounds] To narrow it most, count the swatch’s rounds over a length too: then { $span }.
        [another-swatch] To narrow it most, knit another swatch: then { $span }.
       *[more-rounds] To narrow it most, measure over more rounds of swatch: then { $span }.
    }
sock-one-narrows = Wash and measure sock one to narrow it to { $span } for sock two.
rest-is-tubes = The rest is how one tube differs from the next.

## Heel and toe beside their neighbors

pocket-choice = { $needles } needles down to { $left }: { $girth } around.
pocket-choice-feels = { $needles } needles down to { $left }: { $girth } around, { $feel }.
foot-rounds-then =
    { $rounds ->
        [one] { $rounds } foot round.
       *[other] { $rounds } foot rounds.
    }

## The fabric

# $known: a sentence that says how it is known.
fabric-known = { $known } Stitches are right to within { $stitches }, rounds to within { $rounds }, four times in five.
tube-seen =
    { $kind ->
        [sock] Sock: { LIST($counted) }. Counts for { $share } %.
       *[swatch] Swatch: { LIST($counted) }. Counts for { $share } %.
    }
tube-seen-at =
    { $kind ->
        [sock] Sock at mark { $mark }: { LIST($counted) }. Counts for { $share } %.
       *[swatch] Swatch at mark { $mark }: { LIST($counted) }. Counts for { $share } %.
    }
counted-across = { $gauge } across
counted-along = { $gauge } along
marks-tell-nothing = Marks { $low } to { $high } do not show how much the mark changes the stitch. Try other marks.
marks-tell =
    { $size ->
        [larger] Marks { $low } to { $high }: each whole mark makes the stitch about { $percent } % larger.
       *[smaller] Marks { $low } to { $high }: each whole mark makes the stitch about { $percent } % smaller.
    }
mark-too-far = The mark for this foot, about { $mark }, is far from those you tried. Knit a swatch nearer to it on this cylinder, in this yarn.
mark-for-ball = For a foot { $girth } around the ball, set the mark to about { $mark }: somewhere from { $low } to { $high }.

## Yarn

yarn-for-pair = For the pair, with ends and grafting, without waste yarn. Have { $weight } ({ $length }) to be safe.
grams-a-round = By your scale, a round takes { $weight }.
weight-is-usual = The weight is for a usual { $yarn }. For yours, see its band.
balls-if-light =
    { $balls ->
        [one] A ball sold as 100 g may weigh 92 to 104 g, so weigh it. If it is light, you need { NUMBER($balls) } ball.
       *[other] A ball sold as 100 g may weigh 92 to 104 g, so weigh them. If they are light, you need { NUMBER($balls) } balls in all.
    }
sock-one-weighs = By its stitches and the length per ball, sock one weighs about { $weight }. Weigh it again, or check the length per ball.
weigh-the-rest = Weigh what is left too, to see whether it is enough for a sock.
repeat-at-odds = These rounds and this length cannot both be one repeat. Check both.
enough =
    { $level ->
        [yes] Yes: { $left } is left, and sock two takes about { $needed }. The chance that it is enough is { $chance }.
        [maybe] Perhaps: { $left } is left, and sock two takes about { $needed }. The chance that it is enough is { $chance }.
       *[no] No: { $left } is left, and sock two takes about { $needed }. The chance that it is enough is { $chance }.
    }
enough-of-main =
    { $level ->
        [yes] Yes: { $left } of main yarn is left, and sock two takes about { $needed }. The chance that it is enough is { $chance }.
        [maybe] Perhaps: { $left } of main yarn is left, and sock two takes about { $needed }. The chance that it is enough is { $chance }.
       *[no] No: { $left } of main yarn is left, and sock two takes about { $needed }. The chance that it is enough is { $chance }.
    }
nearly-sure = more than 99 %
hardly = less than 1 %
get-more-yarn = Get more yarn: neither a shorter leg nor another yarn for heels and toes would be enough.
in-another-yarn =
    { $parts ->
        [toe] To be sure, knit both toes in another yarn: ravel sock one back to its foot. That saves about { $saved }.
        [heel] To be sure, knit both heels in another yarn: ravel sock one back to its leg. That saves about { $saved }.
       *[heel-and-toe] To be sure, knit heels and toes in another yarn: ravel sock one back to its leg. That saves about { $saved }.
    }
shorter-leg =
    { $rounds ->
        [one] To be sure, knit sock two’s leg { $rounds } round shorter than sock one’s.
       *[other] To be sure, knit sock two’s leg { $rounds } rounds shorter than sock one’s.
    }
or-shorter-leg =
    { $rounds ->
        [one] Or knit sock two’s leg { $rounds } round shorter than sock one’s.
       *[other] Or knit sock two’s leg { $rounds } rounds shorter than sock one’s.
    }
weigh-sock-one = Weigh sock one to make this much surer.
repeat-makes = One repeat makes { $rounds } rounds of plain tube.
heel-moves-stripes = The heel takes the yarn of { $rounds } rounds, so the stripes move on there.
sock-one-repeats = Sock one takes { $repeats } repeats.
wind-off-by-eye = Over so many repeats the start may be off by { $reach }, more than half a repeat. Wind off by eye, to the color that sock one began with.
wind-off = Before sock two, wind off { $length } ({ $rounds } rounds), right to within { $reach } four times in five. Then look for the color that sock one began with.
wind-off-weighs = It weighs about { $weight }: subtract that from what is left.

## At the machine

sock-on-slots =
    { $rounds ->
        [one] { $slots } slots, { $rounds } foot round
       *[other] { $slots } slots, { $rounds } foot rounds
    }
move-the-weight =
    { $weights ->
        [claws] Move both claws up.
       *[unknown] Move the weight up.
    }
from-here-back = From here a needle comes back before each row. Check that its latch is open.
from-here-joined = From here each row joins the flap.
last-row = The last row: as you crank it, push the held needles down. Where the carrier stops, it covers the nearest ones.

## On paper

card-title =
    { $socks ->
        [second] Sock two on { $slots } slots
       *[pair] A pair on { $slots } slots
    }
card-band = Round { $first }: mark { $mark }
card-band-stitch = Round { $first }: { $gauge }
# After the number.
card-rounds =
    { $rounds ->
        [one] round, { $words }
       *[other] rounds, { $words }
    }
card-foot =
    { $rounds ->
        [one] round, from heel to toe
       *[other] rounds, from heel to toe
    }
card-end =
    { $rounds ->
        [one] round, before the waste yarn
       *[other] rounds, before the waste yarn
    }
card-pocket = needles, { $down } rows down and { $back } back
card-pocket-so = needles, { $down } rows down and { $back } back; { $manner }
fact =
    { $name ->
        [cylinder] Cylinder
        [origin] Origin
        [yarn] Yarn
        [tension] Tension
        [gauge] Stitches × rounds
        [fits] Fits a foot of
        [shoe] Shoe size
        [shoes] Shoe size, about
       *[foot] Sock’s foot
    }
so-many-slots = { $slots } slots
at-mark = mark { $mark }
strands-of = { $strands } × { $yarn }
with-along = { $yarn }, with { $along }

## Counted before and now

part-moved =
    { $part ->
        [cuff] cuff { $now }, not { $before }
        [leg] leg { $now }, not { $before }
        [heel] heel { $now }, not { $before }
        [foot] foot { $now }, not { $before }
        [toe] toe { $now }, not { $before }
        [before_toe] before the toe { $now }, not { $before }
       *[end] after the toe { $now }, not { $before }
    }
counts-moved = This counts differently now: { LIST($moved) }. What was knitted stays as it was.
counts-moved-since = This counts differently since version { $version }: { LIST($moved) }. What was knitted stays as it was.

## A table over sizes

chart-title = Foot rounds on { $slots } slots
chart-by-length = Foot length
chart-by-size = Shoe size { $system }
chart-in-mm = Foot length in mm
chart-rounds = { $rounds } rounds per { $per }
this-foot = This foot
ends-exchanged = The last comes before the first.
exchange-ends = Swap the two.
fill-other-end = Fill in the other end too, or check this one.
table-too-large = That makes { $count } values, too many for one page.
larger-step = Take a larger step or a shorter range: { $most } at most.
chart-pockets = Heel { $heel } needles down to { $heelLeft } and back, toe { $toe } down to { $toeLeft } and back.
chart-toe-alone = A tube without a heel, toe { $toe } needles down to { $left } and back.
chart-tube = A tube without a heel, toe { $manner }.
chart-heel-and-toe = Heel { $heel } needles down to { $left } and back, toe { $manner }.
chart-heel-is = The heel: { $manner }.
chart-ease = The sock is { $percent } % shorter than the foot.
chart-ease-and-room = The sock is { $percent } % shorter than the foot with { $room } to grow.
chart-washed = Rounds per length of the washed, rested tube. Counts are to the nearest whole round.
chart-sizes-differ = Feet of one shoe size differ. Measure if you can.
chart-dash = A dash means that heel and toe alone are longer than that foot.

## The shelf

shelf-nothing = Nothing on this shelf fits this foot.
shelf-only =
    { $fit ->
        [fits] There is one way to knit it, and it would fit well.
       *[worn] There is one way to knit it, and it can be worn.
    }
shelf-none-well = Of { $ways } ways to knit it, none would fit well, and { $worn } can be worn.
shelf-well = Of { $ways } ways to knit it, { $well } would fit well.
shelf-well-and-worn = Of { $ways } ways to knit it, { $well } would fit well and { $worn } more can be worn.
shelf-ranked = Ranked by how far each place is likely to be from comfortable, with the doubt of tape and fabric included. Ankle, calf and firmness count half.
shelf-turned = Heel and toe are worked out for each cylinder.
shelf-plain-leg = Here the leg is a plain tube. The plan shapes it by the tension.
shelf-one-gauge = The stitches and rounds you gave are used for every cylinder. They are only roughly the same from one to another, so swatch on the one you choose.
shelf-between-marks = A mark between two of yours is worked out from those two. Swatch at that mark first.
shelf-by-band = A yarn with only a length per ball is a guess, and is ranked as one. Swatch first.
shelf-firmness = Firmness is judged only where the yarn’s length per ball is given.
standing =
    { $standing ->
        [fits] fits well
        [worn] can be worn
       *[not] does not fit
    }
no-ribber-here = No ribber for this cylinder. A hem or a mock rib needs none.
place-besides =
    { $place ->
        [firmness] Firmness
       *[length] Length of the foot
    }
shelf-enough =
    { $level ->
        [yes] Enough for the pair: it takes about { $needed }, and there is { $left }.
        [maybe] Perhaps enough for the pair: it takes about { $needed }, and there is { $left }.
       *[no] Too little for the pair: it takes about { $needed }, and there is { $left }.
    }
length-felt =
    { $level ->
        [bad] too short
       *[good] long enough
    }
heel-and-toe-longer = Heel and toe alone are longer than this foot. Use fewer slots.
rounds-between =
    { $rounds ->
        [one] { $rounds } foot round between heel and toe.
       *[other] { $rounds } foot rounds between heel and toe.
    }
firmness-felt =
    { $felt ->
        [unjudged] not judged
        [usual] usual
        [far-loose] loose
        [loose] loose
        [far-firm] firm
       *[firm] firm
    }
firmness-unjudged =
    { $why ->
        [guessed] Not judged: the fabric is guessed, at usual firmness.
       *[length] Not judged: the yarn’s length per ball is not given.
    }
firmness-words =
    { $felt ->
        [usual] { $value }: usual for a sock.
        [far-loose] { $value }, where 1.1 is usual: loose fabric. It will wear out soon.
        [loose] { $value }, where 1.1 is usual: loose fabric. A finer stitch wears longer.
        [far-firm] { $value }, where 1.1 is usual: firm fabric. It may crank hard.
       *[firm] { $value }, where 1.1 is usual: firm fabric. It wears well, and is stiff.
    }
slots-for-yarn = For { $yarn }: a cylinder of about { $slots } slots.
slots-for-mark = For { $yarn }, mark { $mark }: a cylinder of about { $slots } slots.
gauge-for-slots = On { $slots } slots: about { $stitches } stitches and { $rounds } rounds.
no-tube-fits = No plain tube fits this foot as it is. See what is in the way below.

## What a step of the table of sizes can be

of-chart-step =
    { $between ->
        [lengths] a step between lengths
        [sizes] a step between sizes
       *[columns] a step between columns
    }
