### Instructions over sizes, that a stranger can knit from.

## What is asked for

set-without-sizes = No sizes are chosen yet.
set-sizes-like =
    { $by ->
        [length] Write some foot lengths, like 22 cm; 23.5 cm; 25 cm.
       *[size] Write some sizes, like 36, 38, 40.
    }
set-fewer-sizes = Choose { $most } sizes or fewer.

set-sizes-alike = Two of these are both { $size } on the tape.
set-leave-one-out = Leave one of them out.

## Why a cylinder does not fit a size

set-stretches = Around the ball of the foot it would stretch { $percent } %: { $verdict }.
set-too-wide = Around the ball it would be { $percent } % wider than the foot: baggy.
set-unstretched = Around the ball it would be just wider than the foot: baggy.
set-not-over-heel = It may not go on over the heel.
set-other-cylinder = A cylinder with { $slots } slots would fit.
set-no-cylinder = In this fabric no cylinder would fit.
set-misfit = Size { $size } does not fit this cylinder. { $words }

## Headings

set-title = Socks on { $slots } slots
set-heading =
    { $of ->
        [made] What this makes
        [care] Take care
        [sizes] Sizes
        [machine] Machine and tools
        [yarn] Yarn
        [gauge] Gauge and swatch
        [ease] Ease
        [measures] The sock measured
        [terms] Words used here
        [instructions] Instructions
        [counts] Counts for each size
        [row_gauge] With another row gauge
        [colors] Colors
        [washing] Washing
        [sure] How sure the counts are
        [notes] Notes
        [errata] Mistakes and questions
       *[access] Accessibility
    }
set-caption =
    { $of ->
        [sizes] Whose foot each size is for, and the washed sock
        [shoes] Shoe sizes of such a foot, about
        [terms] Words and short forms
        [colors] Parts in each color
       *[sure] Foot rounds, and how far they may be out
    }
set-rows =
    { $part ->
        [heel] Heel rows, { $needles } needles down to { $left } and back
       *[toe] Toe rows, { $needles } needles down to { $left } and back
    }
# $words: the maker's own.
set-detail =
    { $name ->
        [maker] By { $words }
        [version] Version { $words }
        [date] Date: { $words }
        [licence] License: { $words }
        [contact] Contact: { $words }
        [errata] Corrections: { $words }
       *[fibre] Fiber: { $words }
    }
set-head =
    { $of ->
        [what] What
        [size] Size
        [foot] Foot length
        [ball] Around the ball
        [sock_foot] Sock’s foot
        [sock_girth] Sock around
        [sock_height] Sock’s height
        [fits] Fits this cylinder
        [word] Word
        [meaning] Meaning
        [part] Part
        [knit] Knit
        [color] Color
        [parts] Parts
        [pair_takes] The pair takes
        [have] Have ready
        [have_length] Have ready, length
        [foot_rounds] Foot rounds
        [likely] Most likely
        [aim] Sock’s foot to aim at
        [foot_mm] Foot length, mm
        [ball_mm] Around the ball, mm
        [sock_foot_mm] Sock’s foot, mm
        [sock_girth_mm] Sock around, mm
        [sock_height_mm] Sock’s height, mm
        [grams] Yarn to have ready, g
        [metres] Yarn to have ready, m
       *[slots] Slots that would fit
    }
set-fits =
    { $fits ->
        [yes] yes
       *[no] no
    }

## What is made

set-one-size = For size { $size } alone.
set-makes = A pair of socks, knitted from the top down on a hand-cranked sock machine with { $slots } slots.
set-cuff = At the top is a { $cuff }.
set-heel =
    { $kind ->
        [two-at-first] The heel is turned in short rows that hold two needles at first.
        [flap] The heel has a flap, then short rows.
        [none] There is no heel: the sock is a tube.
       *[short-rows] The heel is turned in short rows.
    }
set-toe =
    { $kind ->
        [two-at-first] The toe is turned in short rows that hold two needles at first, then grafted.
        [gathered] The toe is drawn up on a thread.
        [left-open] The toe is left open, to finish by hand.
       *[short-rows] The toe is turned in short rows, then grafted.
    }
# $sizes: as 36 (38, 40).
set-reading = Sizes: { $sizes }. Counts are in the same order everywhere, the smallest size first. One count alone is for all sizes. A dash means none.
set-for-sizes =
    { $count ->
        [one] For size { LIST($sizes) }:
       *[other] For sizes { LIST($sizes) }:
    }
set-no-string = Here each sock is cast on and taken off by itself. The maker knits sock after sock, with rounds of waste yarn between.
set-knit-two = Knit two alike. Read each part through before you begin it.

## Machine and tools

set-cylinder = A cylinder with { $slots } slots, and a needle in each.
set-carrier =
    { $side ->
        [left] A yarn carrier that stands at the left before a heel or toe.
       *[right] A yarn carrier that stands at the right before a heel or toe.
    }
set-tool =
    { $tool ->
        [ribber] A ribber that fits this cylinder.
        [spring] A heel spring, or a hand to take up the slack.
        [weights] A weight for the tube, and a smaller one for heel and toe.
        [latch] A latch tool to lift loops and needles.
        [waste] Waste yarn, about as thick, in another color.
        [darning] A darning needle and scissors.
       *[needles] Knitting needles to finish the toe by hand.
    }

## Yarn

set-yarn-length = The yarn has { $length } ({ $other }) in 100 g.
set-yarn-guessed = The length per ball was not told: weights and lengths here are rough.
set-yarn-number = Nearest by length in the Craft Yarn Council’s system is number { $number }: { $yarn }.
set-yarn-table = Yarn for a pair
set-both = { $text } ({ $other })
set-one-color = The whole sock is one color.
set-change-color = Change color where its part begins. Leave a hand’s length of both ends hanging.
set-parts = { LIST($parts) }

## Gauge, ease, measures

set-gauge = Washed and rested: { $stitches } stitches and { $rounds } rounds over 10 cm, or { $stitchesIn } stitches and { $roundsIn } rounds over 4 in.
set-swatch-first = Knit the swatch before anything else.
set-swatch-knit = Knit a tube of { $rounds } rounds or more on all { $slots } needles, with the weight you will hang on the sock.
set-swatch-wash = Wash it as you will wash the socks, dry it flat, and let it rest a day.
set-swatch-across = Measure the width of the flat tube: { $width } ({ $other }) is right.
set-swatch-along = Count the rounds over 10 cm or 4 in, away from the edges.
set-swatch-then = Too wide? Set a smaller stitch. Too narrow? Set a larger one. If only the rounds differ, see the table for other rounds per length.
set-around = Around the ball of the foot it stretches { $percent } %.
set-schematic = A sock from the side. A is its foot, B around it, C its height from the floor, D its cuff, E its leg, F its heel.
set-letter =
    { $letter ->
        [A] A, foot
        [B] B, around
        [C] C, height
        [D] D, cuff
        [E] E, leg
       *[F] F, heel
    }
set-letters = What the letters measure, washed and not stretched

## Counts

set-counts = Size { $size }
set-count =
    { $unit ->
        [rows] { $count ->
            [one] { $count } row
           *[other] { $count } rows
        }
       *[rounds] { $count ->
            [one] { $count } round
           *[other] { $count } rounds
        }
    }
set-count-of = { $part }, knit
set-how-sure = In this fabric, a foot of the size needs a count in this range, four times in five. A measured foot is surer.
set-row-rule = Multiply the sock’s foot that you aim at by your rounds per length. Take off { $others } for heel and toe. Round to a whole number.
set-row-rule-by-hand = First take off { $length }, which is knitted by hand.
set-row-others = For cuff and leg, multiply the rounds by your rounds per length and divide by { $gauge }. Heel and toe stay as they are.
set-example = For size { $size } at { $gauge }:
set-rounds-at = Rounds at { $gauge }
set-row-table = Foot rounds at other row gauges

set-caution = Caution: { $words }

## Washing, and what these instructions meet

set-washing = Wash the socks as the yarn’s band says, dry them flat, and let them rest a day.
set-access-rules = So they meet these rules of WCAG 2.2: words for the drawing (1.1.1), structure and order (1.3.1, 1.3.2), no color alone (1.4.1), and headings (2.4.6).
set-access = What the drawing shows also stands in words. Steps are numbered, tables have heads, and nothing is told by color alone. Units are the only short forms.

## Words used here

set-term =
    { $term ->
        [slot] Slot
        [round] Round
        [row] Row
        [carrier] Yarn carrier
        [half_mark] Half mark
        [work] In work
        [hold] Hold
        [waste] Waste yarn
        [graft] Graft
        [cm] cm
        [in] in
        [g] g
        [oz] oz
        [m] m
       *[yd] yd
    }
set-meaning =
    { $term ->
        [slot] A groove of the cylinder, with one needle.
        [round] Once around the whole cylinder.
        [row] Once across the needles in work, to the right or to the left.
        [carrier] The part of the machine that brings the yarn to the needles.
        [half_mark] One of two marks, at your left and right, between the front and the back half.
        [work] A needle in work knits when the carrier passes it.
        [hold] A needle in hold is lifted: it keeps its stitch and does not knit.
        [waste] Yarn that holds stitches for a time and is pulled out at the end.
        [graft] Join two edges with a row of stitches, made with a needle by hand.
        [cm] centimeters
        [in] inches
        [g] grams
        [oz] ounces
        [m] meters
       *[yd] yards
    }

## A plan made from instructions

set-untitled = Socks without a title
set-adopted = From “{ $title }”.
set-adopted-by = From “{ $title }” by { $maker }.
set-adopted-version = From “{ $title }”, version { $version }.
set-adopted-by-version = From “{ $title }” by { $maker }, version { $version }.
set-no-foot = Nothing says whose foot it is for.
set-no-such-size = This set has no size { $size }.
set-foot-or-size = Choose a size of this set, or measure your foot.
