### What a sock is made of: what to do at the machine, and what each part is.

## Names

part-title =
    { $part ->
        [waste] Waste yarn
        [cuff] Cuff
        [leg] Leg
        [heel] Heel
        [foot] Foot
        [before_toe] Before the toe
        [toe] Toe
        [end] After the toe
        [between] Between the socks
       *[finish] Off the machine
    }
cuff-name =
    { $kind ->
        [hem] hung hem
        [rib] rib
        [mock-rib] mock rib
        [picot-hem] picot hem
        [mock-rib-hem] mock rib hem
       *[set-up-rib] rib on a set-up edge
    }
# After "is too small for".
counted-on-a-sock =
    { $what ->
        [cuff-rounds] the rounds of a cuff
        [every] the repeat of a rib
        [cuff-width] the flat width of a cuff
        [leg-rounds] the rounds of a leg
        [leg-height] the height of a sock’s top
        [band-rounds] the rounds of a band
        [girth-height] a height on the leg
        [girth] a girth of the leg
        [after-toe] the rounds after a toe
        [before-toe] the rounds before a toe
        [plain] the plain rounds before a heel
        [needles] a heel or toe on this cylinder
        [flap] the rows of a heel’s flap
       *[left] the needles left in work
    }
# The place of a needle or stitch: every 2nd, the 3rd.
nth =
    { $n ->
        [1] { $n }st
        [2] { $n }nd
        [3] { $n }rd
        [21] { $n }st
        [22] { $n }nd
        [23] { $n }rd
        [31] { $n }st
        [32] { $n }nd
        [33] { $n }rd
        [41] { $n }st
        [42] { $n }nd
        [43] { $n }rd
        [51] { $n }st
        [52] { $n }nd
        [53] { $n }rd
       *[other] { $n }th
    }

## Rounds

knit-rounds =
    { $part ->
        [cuff] Cuff
        [leg] Leg
        [foot] Foot
        [before_toe] Before the toe
        [end] After the toe
       *[waste] Waste yarn
    }: knit { $rounds ->
        [one] { $rounds } round.
       *[other] { $rounds } rounds.
    }
knit-more-rounds =
    { $part ->
        [cuff] Cuff, continued
        [foot] Foot, continued
        [before_toe] Before the toe, continued
        [end] After the toe, continued
       *[leg] Leg, continued
    }: knit { $rounds ->
        [one] { $rounds } round.
       *[other] { $rounds } rounds.
    }
knit-on-both-beds = Cuff: knit 1 round on both beds.
knit-on-the-cylinder =
    { $rounds ->
        [one] Cuff, continued: knit { $rounds } round on the cylinder alone.
       *[other] Cuff, continued: knit { $rounds } rounds on the cylinder alone.
    }
# $rib: as 1×1 or 3×1.
knit-rib =
    { $rounds ->
        [one] Cuff, continued: knit { $rounds } round of { $rib } rib.
       *[other] Cuff, continued: knit { $rounds } rounds of { $rib } rib.
    }
knit-leg-rib =
    { $rounds ->
        [one] Leg: knit { $rounds } round of { $rib } rib.
       *[other] Leg: knit { $rounds } rounds of { $rib } rib.
    }

## Waste yarn, before and after

thread-waste = Thread waste yarn in a color other than the sock’s.
cast-on = Cast on over the needles in work.
hang-weight-on-edge = Hang the weight on the cast-on edge, evenly all around.
change-to-sock-yarn = Change to the sock yarn. Leave a hand’s length of it hanging.
cut-for-grafting = Cut the sock yarn. Leave { $tail } for grafting.
cut-sock-yarn = Cut the sock yarn. Leave { $tail }.
change-to-waste = Change to waste yarn.
cut-waste = Cut the waste yarn.
crank-off = Crank the { $stitches } stitches off the needles. Mind the weight: it falls with the sock.
bind-off-top =
    { $socks ->
        [each] Bind off the first round of each cuff loosely, so that it stretches.
       *[one] Bind off the first round of the cuff loosely, so that it stretches.
    }
graft-toe =
    { $socks ->
        [each] Graft the toe of each sock.
       *[one] Graft the toe.
    }
pull-out-waste =
    { $socks ->
        [each] Pull out the waste yarn of each sock.
       *[one] Pull out the waste yarn.
    }
darn-ends =
    { $socks ->
        [each] Weave in the ends of each sock.
       *[one] Weave in the ends.
    }
wash-and-rest =
    { $socks ->
        [each] Wash the socks and dry them flat. Let them rest a day before you measure them.
       *[one] Wash the sock and dry it flat. Let it rest a day before you measure it.
    }

## Sock after sock on the machine

weight-up-the-string = Move the weight up to the waste yarn. Roll up the sock that hangs below it.
thread-cord = Cut the waste yarn. Thread the ravel cord: a smooth, strong one in another color.
knit-cord = Ravel cord: knit 1 round.
change-back-to-waste = Cut the cord. Leave a hand’s length at both ends, and change back to waste yarn.
pull-cord = Pull out every ravel cord. The socks come apart.
move-and-take-out = Move every { $nth } stitch onto the needle at its left, and take its needle out: { $stay } of { $slots } stay in work.
string-is =
    { $place ->
        [first] Sock two begins on the waste yarn of sock one, and the next pair on that of sock two.
        [between] This pair begins on the waste yarn of the pair before, and the next pair begins on its own.
        [last] This pair begins on the waste yarn of the pair before.
       *[pair] Sock two begins on the waste yarn of sock one.
    }
string-unmeasured = Sock one hangs below meanwhile. To measure it for sock two, pull the ravel cord: it comes off, and the waste yarn above stays on.
string-on-a-card = Between the socks: waste yarn { $before }, ravel cord 1, waste yarn { $after }.
gathered-ends-a-string = A gathered toe comes off the needles, so no sock can follow it.
another-toe-or-apart = Choose another toe, or cast each sock on by itself.

## Colors

change-color = Change to color { $color }. Leave a hand’s length of both yarns hanging.
begin-color = Change to color { $color }. Leave a hand’s length of it hanging.
color-is = Knit in color { $color }.
no-such-color = We cannot read { $text } as colors.
one-letter = Write one letter, A to { $last }. A is the main yarn.
rounds-and-letters = Write one letter, such as B, or a list of rounds, such as 4 A, 2 B.
only-the-last-goes-on = Only the last color of a list goes on without its rounds.
colors-set-too = The colors are planned as well.
ribbed-in-one-color = What is ribbed has one color.
nothing-knitted-there = Nothing is knitted there at the machine.
empty-this = Empty this.
main-color-unused = Color A is the main yarn, and no part is knitted in it.
call-it-a = Call the color of which you need most A.

## Toes that are no short rows

thread-the-end = Cut the sock yarn. Leave { $tail }, and thread a darning needle with it.
take-onto-thread = With the darning needle, take all { $stitches } stitches off onto that thread, twice around. Hold the weight.
draw-up = Draw the toe up tight, and fasten the thread.
knit-toe-by-hand =
    { $socks ->
        [each] Put the last round of sock yarn on knitting needles, and knit the toe by hand, for each sock.
       *[one] Put the last round of sock yarn on knitting needles, and knit the toe by hand.
    }
toe-manner =
    { $kind ->
        [gathered] drawn up on a thread
       *[left-open] left open, to finish by hand
    }
toe-has-no-needles =
    { $kind ->
        [gathered] A gathered toe has no needles of its own.
       *[left-open] A toe left open has no needles of its own.
    }
toe-has-no-rounds-after =
    { $kind ->
        [gathered] A gathered toe has no rounds after it.
       *[left-open] A toe left open has no rounds after it.
    }
no-heel-no-needles = A sock without a heel has no needles for one.
empty-or-short-rows = Empty this, or choose short rows.

## Cuffs

weight-off-tube = Take the weight off before you hang the hem.
hem-is-hung = Check that each needle holds both loops. Hang the weight again, and knit on slowly for a round.
hang-hem = Hang the hem: lift each loop of the first sock round onto its own needle. Leave the crank alone.
hang-hem-on = Hang the hem: lift each of the { $loops } loops of its first round onto its own needle in work.
take-out-needles = Take out every { $nth } needle: { $stay } of { $slots } stay in work.
put-needles-back = Put back the { $out } needles that were out, each with a loop lifted from the stitch beside it.
picot-stitches = Move every second stitch onto the needle at its right, all around. Leave the empty needles in work.
set-ribber = Set the ribber on the cylinder.
half-to-ribber = Move every second stitch to the ribber: { $each } on each bed.
to-ribber = Move every { $nth } stitch to the ribber: { $cylinder } on the cylinder, { $ribber } on the ribber.
ribber-idle = Set the ribber to idle: its needles keep their stitches and do not knit.
ribber-knits = Set the ribber to knit again.
change-rib = Move { $back } of the ribber’s stitches back to the cylinder: every { $nth } stitch stays, { $left } in all.
ribber-back = Move the ribber’s stitches back to the cylinder.
ribber-and-pin-off =
    { $part ->
        [toe] Take the ribber off, and its drive pin out: a pin left in ruins the toe.
       *[heel] Take the ribber off, and its drive pin out: a pin left in ruins the heel.
    }

# What a cuff is, after its rounds.
hem-words = hung hem, folded to { $rounds }
picot-hem-words = picot hem, folded to { $rounds }
rib-words = rib with the ribber
mock-rib-words = mock rib: every { $nth } needle out
mock-rib-hem-words = mock rib: every { $nth } needle out, hung, folded to { $rounds }
set-up-rib-words = { $rib } rib on a set-up edge ({ $edge } of the rounds)
changed-rib-words = { $rib } rib on a set-up edge ({ $edge } of the rounds); { $then } after round { $after }

hem-too-short = A hem of fewer than { $rounds } rounds tends to roll and grip poorly.
hem-too-long = A hem of more than { $rounds } rounds tends to fit the leg badly.
picot-usual = A picot hem usually has { $low } to { $high } rounds.
hem-is-odd =
    { $kind ->
        [picot-hem] A picot hem needs an even number of rounds, and { $rounds } is odd.
        [mock-rib-hem] A mock rib hem needs an even number of rounds, and { $rounds } is odd.
       *[hem] A hung hem needs an even number of rounds, and { $rounds } is odd.
    }
knit-either = Knit { EITHER($rounds) }.
width-is-missing = Its width lying flat is missing.
measure-both = Measure both.
no-such-pull = Pulled, a cuff is wider than at rest, but not by that much.
measure-the-same-cuff = Measure the same cuff lying flat and pulled.
needles-not-even = Every { $nth } needle does not come out even on { $slots } slots.
take-out-either = Take out every { EITHER($nths) }.
rib-not-even = Every { $nth } stitch on the ribber does not make an even rib on { $slots } slots.
move-either = Move every { EITHER($nths) }.
only-the-edge = The set-up edge alone has { $rounds } rounds.
knit-or-more = Knit { $rounds } or more in all.
no-rib-to-change-to = No rib of fewer stitches follows a { $rib } rib on { $slots } slots.
begin-one-by-one = Leave the change out, or begin with every 2nd stitch.
ribber-keeps-some = After a { $rib } rib, the ribber can only keep stitches that it has already.
keep-either = Keep every { EITHER($nths) }.
rib-changes-within = A rib changes after its set-up edge and before its last round.
write-a-round = Write a round from { $low } to { $high }.

## Leg

leg-words =
    { $why ->
        [told-bands] from the top down, as you set them
        [told] as you set it
        [footie] for a footie
        [height] to the height you set
        [shaped] from the top down, shaped to the leg by small turns of the tension
        [one-tension] one tension suits the leg all the way
       *[custom] in the customary proportion to the foot, about half its length
    }
rounds-set-too = Leg rounds are set as well.
mark-set-too = The mark is set as well.
empty-one = Empty one of the two.
bands-set-too = The leg’s bands are set as well.
empty-or-no-bands = Empty this, or take the bands away.
instep-stays =
    { $stay ->
        [one] Move the ribber’s stitches back to the cylinder, except { $stay } over the instep.
       *[other] Move the ribber’s stitches back to the cylinder, except the { $stay } over the instep.
    }
ribber-waits = Set the ribber out of action. Its needles wait while the heel is turned.
knit-instep-rib =
    { $rounds ->
        [one] Foot: knit { $rounds } round, { $rib } rib over the instep and plain on the sole.
       *[other] Foot: knit { $rounds } rounds, { $rib } rib over the instep and plain on the sole.
    }
instep-needs-a-leg = A rib goes on over the instep from a ribbed leg.
instep-needs-a-heel = Without a heel there is no instep to rib.
heel-or-the-leg-alone = Choose another heel, or a leg that is ribbed alone.
ribbed-is-plain = A ribbed leg is not shaped.
only-a-ribbed-leg = Only a ribbed leg has plain rounds of its own before the heel.
empty-or-ribbed = Empty this, or choose a ribbed leg.
too-many-plain = The leg has { $rounds } rounds in all.
write-up-to = Write 0 to { $most }.
cuff-has-no-rib = This cuff has no rib to go on with.
choose-a-rib = Choose a rib on a set-up edge as the cuff, or a usual leg.
footie-rounds = A footie’s leg has { $most } rounds at most.
footie-or-usual = Knit 0 to { $most }, or choose a usual leg.
footie-is-plain = A footie has a short, plain leg.
empty-or-usual = Empty this, or choose a usual leg.
band-rounds-missing = The rounds of this band are missing.
fill-them-in = Fill them in.
bands-too-long = These bands make too long a leg.
most-rounds = { $most } rounds are the most for a leg.
no-such-stitch = Fabric like this cannot have that stitch.
check-the-figure = Check the figure.
mark-is-unknown = How large a stitch this mark makes is not known yet.
stitches-or-swatch = Write the stitches there instead, or add a swatch at this mark.
mark-is-far = This mark is too far from those you tried.
nearer-or-swatch = Set one nearer to them, or add a swatch at this mark.
height-with-girth = Height and girth go together.
fill-both = Fill in both or neither.
girth-is-there = There is a girth at this height already.
keep-one = Keep one of them.
steep-leg = A leg seldom widens or narrows so fast. Measure both girths again?
measure-leg = Measure around the ankle and the calf, and the leg is shaped to them.
too-low-a-top = Heel and cuff alone are { $height } high.
higher-or-shallower = Write { $height } or more, or choose a shallower cuff.
mark-beyond-leg = At { $height } above the floor, the leg needs about mark { $mark }, too far from those you tried. Knit a swatch nearer to it.
leg-unreached =
    { $side ->
        [loosest] At { $height } above the floor, the leg is { $girth } around. About { $needles } needles would suit it; { $slots } at their loosest stretch { $percent } % there.
       *[firmest] At { $height } above the floor, the leg is { $girth } around. About { $needles } needles would suit it; { $slots } at their firmest stretch { $percent } % there.
    }
leg-unreached-loose =
    { $side ->
        [loosest] At { $height } above the floor, the leg is { $girth } around. About { $needles } needles would suit it; { $slots } at their loosest lie loose there.
       *[firmest] At { $height } above the floor, the leg is { $girth } around. About { $needles } needles would suit it; { $slots } at their firmest lie loose there.
    }

## The tension

set-mark = Set the tension mark to { $mark }.
set-stitch = Set the tension for a stitch of { $stitches } once it is washed.
set-other-stitch =
    { $size ->
        [smaller] Set the tension for a smaller stitch: { $stitches } once it is washed.
       *[larger] Set the tension for a larger stitch: { $stitches } once it is washed.
    }
set-foot-stitch =
    { $size ->
        [smaller] Set the tension for a smaller stitch, as in the foot: { $stitches } once it is washed.
       *[larger] Set the tension for a larger stitch, as in the foot: { $stitches } once it is washed.
    }

## Heel and toe

# $place: where on the cylinder.
stop-at-needle =
    { $side ->
        [left] Stop with the yarn carrier left of needle { $needle }, the { $place }.
       *[right] Stop with the yarn carrier right of needle { $needle }, the { $place }.
    }
hold-back-half =
    { $part ->
        [heel] Lift the { $rest } needles behind the half marks into hold: the { $needles } of the heel stay in work.
       *[toe] Lift the { $rest } needles behind the half marks into hold: the { $needles } of the toe stay in work.
    }
hold-the-rest =
    { $part ->
        [heel] Lift { $rest } needles into hold: the { $needles } of the heel stay in work, up to needle { $needles }, the { $place }.
       *[toe] Lift { $rest } needles into hold: the { $needles } of the toe stay in work, up to needle { $needles }, the { $place }.
    }
hang-heel-weight =
    { $weights ->
        [one]
            { $part ->
                [heel] Move the weight to the middle of the heel. Move it up every { $rows } rows.
               *[toe] Move the weight to the middle of the toe. Move it up every { $rows } rows.
            }
        [claws] Hang a claw between the 2nd and 3rd needle from each side. Move both up every { $rows } rows.
       *[unknown]
            { $part ->
                [heel] Hang the heel weight on the heel. Move it up every { $rows } rows.
               *[toe] Hang the heel weight on the toe. Move it up every { $rows } rows.
            }
    }
make-ready =
    { $part ->
        [heel] Make ready for the heel.
       *[toe] Make ready for the toe.
    }
back-to-the-tube =
    { $part ->
        [heel] The heel is turned. Go back to the whole tube.
       *[toe] The toe is turned. Go back to the whole tube.
    }
put-heel-tension-on =
    { $spring ->
        [yes] Put the heel spring on.
        [no] Take up the slack by hand at each turn.
       *[unknown] Put the heel spring on. Without one, take up the slack by hand at each turn.
    }
run-thread-along =
    { $thread ->
        [yes] Run the reinforcing thread along.
       *[unknown] Run the reinforcing thread along, if you use one.
    }
return-held = Put the { $held } held needles back in work, latches open.
take-heel-tension-off = Take the heel spring off.
take-thread-out =
    { $thread ->
        [yes] Take the reinforcing thread out.
       *[unknown] Take the reinforcing thread out, if you ran one along.
    }
weight-on-tube =
    { $weights ->
        [claws] Take both claws off. The weight on the whole tube is enough.
       *[unknown] Move the weight back to the whole tube.
    }
no-ribber = This cuff needs a ribber, and your machine has none.
cuff-without-ribber = Choose a mock rib or a hem.
lift-corners =
    { $part ->
        [heel] Lift the loose strand at each corner of the heel onto the needle beside it. That closes a hole.
       *[toe] Lift the loose strand at each corner of the toe onto the needle beside it. That closes a hole.
    }
knit-and-hold =
    { $direction ->
        [right] Knit to the right, needle { $first } to { $last }.
       *[left] Knit to the left, needle { $first } to { $last }.
    } { $held ->
        [one] Lift needle { LIST($hold) } into hold.
       *[other] Lift needles { LIST($hold) } into hold.
    } { $stay } of { $needles } in work.
return-and-knit =
    { $direction ->
        [right] Bring needle { $back } back. Knit to the right, needle { $first } to { $last }.
       *[left] Bring needle { $back } back. Knit to the left, needle { $first } to { $last }.
    } { $stay } of { $needles } in work.
# A row of the flap that some heels begin with.
knit-flap-row =
    { $direction ->
        [right] Knit a row of the flap to the right, needle { $first } to { $last }.
       *[left] Knit a row of the flap to the left, needle { $first } to { $last }.
    }
join-and-knit =
    { $direction ->
        [right] Hang a loop of the flap’s edge on needle { $last }. Knit to the right, needle { $first } to { $last }.
       *[left] Hang a loop of the flap’s edge on needle { $last }. Knit to the left, needle { $first } to { $last }.
    }
flap-manner = after a flap of { $rows } rows, joined again under the heel
no-flap = Only a heel that begins with a flap has rows of one.
empty-or-flap = Empty this, or choose short rows after a flap as the heel.
odd-flap = A flap has an even number of rows, and { $rows } is odd.
knit-rows = Knit { EITHER($rows) } rows.
high-instep = You measured a high instep. Short rows after a flap make a deeper heel for it, and the instep keeps its needles.
two-at-first-manner = two needles held in rows 1 and 2
# Why a heel or toe has its needles.
pocket-why =
    { $why ->
        [told] as you set it
        [measure-heel] about a third left, by custom; measure around the heel, and it is set to that foot
        [custom] about a third left, by custom
        [more-needles] more needles than half, as no heel on { $usual } is deep enough for this heel girth
        [fewer-needles] fewer needles than half, as every heel on { $usual } is too deep for this heel girth
        [deeper] fewer left than the customary third: a deeper heel for this heel girth
        [shallower] more left than the customary third: a shallower heel for this heel girth
        [flap-suits] the flap for this heel girth
        [suits-heel] the customary third suits this heel girth
        [suits-toes] the customary third suits toes of this breadth
        [narrow-toes] fewer left than the customary third, for narrow toes
       *[broad-toes] more left than the customary third, for broad toes
    }
narrow-instep = { $needles } needles are left for the instep: { $width } wide, where half the cylinder makes { $usual }. Short rows after a flap deepen the heel and keep the instep.
uneven-toe = The sides of this toe have { $few } and { $many } stitches. As you graft, take two of the longer side together here and there.
nothing-to-narrow =
    { $what ->
        [narrow] { $left } left of { $needles } leaves nothing to narrow.
       *[knit] { $left } left of { $needles } leaves nothing to knit on.
    }
usual-third = Usual is about a third: { $left }.
odd-rows = From { $needles } needles down to { $left } is an odd number of rows. The carrier would be on the wrong side when held needles come back.
leave-either = Leave { EITHER($left) }.
two-at-first-leaves = Lifting two needles in rows 1 and 2 leaves fewer than { $left } of { $needles }.
fewer-or-one-a-row = Leave { $left } or fewer, or lift one needle a row.
