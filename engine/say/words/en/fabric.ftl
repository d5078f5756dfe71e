### Yarn, swatches, tension marks, and what they say of the fabric.

## What a figure is of, within a sentence

of-stitches = stitches per length in a sock
of-rounds = rounds per length in a sock
of-mark = a tension mark
of-swatch =
    { $what ->
       *[needles] the needles of a swatch
        [width] the flat width of a tube
        [rounds] the rounds of a swatch
        [length] the length of a swatch
        [weight] the weight of a swatch
        [hung] the weight hung
        [whole] the stitches of a whole sock
    }
of-strands = the strands of a yarn
of-knitter =
    { $what ->
       *[scatter] how much a knitter’s socks differ
        [weight] how sure that difference is
        [habit] a sock over its swatch
        [unsure] how unsure a habit is
        [pairs] the pairs that were knitted
    }
of-stock =
    { $what ->
       *[margin] a margin
        [ball] a ball of yarn
        [left] the yarn left
        [sock] a sock
        [repeat] one repeat of colors
        [repeat_rounds] the rounds of one repeat
    }

## How a yarn is written

yarn-like = Write it like 400 m / 100 g, 437 yd / 100 g, 238 tex, Nm 4.2, or fingering.
yarn-too-fine = { $text } would be finer than sewing thread ({ $tex } tex).
yarn-too-thick = { $text } would be thicker than rug yarn ({ $tex } tex).
yarn-length-of-what = { $text } of what? A length of yarn needs its weight.
yarn-unreadable = { $text } is not a yarn that we can read.
yarn-two-bands = { $text } describes two different yarns.
yarn-weighs-what = How much does that length of yarn weigh?
yarn-number-zero = A yarn number cannot be 0.
yarn-of-what = { $text } of what?
yarn-two-names = { $text } names two yarns.
yarn-itself-missing = The length per ball of the yarn itself is missing.
fill-its-field = Write it in its field, or empty this one.
yarn-category =
    { $category ->
       *[lace] lace yarn, { $fewest } to { $most } m per 100 g
        [super_fine] super fine yarn, { $fewest } to { $most } m per 100 g
        [fine] fine yarn, { $fewest } to { $most } m per 100 g
        [light] light yarn, { $fewest } to { $most } m per 100 g
        [medium] medium yarn, { $fewest } to { $most } m per 100 g
        [bulky] bulky yarn, { $fewest } to { $most } m per 100 g
        [super_bulky] super bulky yarn, { $fewest } to { $most } m per 100 g
        [jumbo] jumbo yarn, { $fewest } to { $most } m per 100 g
    }
yarn-usual = sock yarn, { $length } m per 100 g
yarns-together = { LIST($yarns) }
no-color-apart = { $text } has no color of its own.
name-what-is-apart = Name cuff, heel, or toe.

## A swatch

needles-with-width = The swatch’s needles and flat width go together.
rounds-with-length = The swatch’s rounds and the length over them go together.
fill-both-or-neither = Fill in both or neither.
wrong-for-needles =
    { $size ->
        [small] Too small for so many needles.
       *[large] Too large for so many needles.
    }
wrong-for-rounds =
    { $size ->
        [small] Too small for so many rounds.
       *[large] Too large for so many rounds.
    }
measure-flat = Measure the tube lying flat, and check the unit.
pulled-too-far = Pulled, a tube is wider than at rest, but not by that much.
pull-the-same-tube = Pull the same tube as far as a heel would, and measure it flat.
needles-taken = Left empty: taken as the cylinder’s { $slots }.
swatch-short = A short swatch says little. Knit at least 40 rounds, wash it, and let it rest a day.
sock-not-weighed = A whole sock has more stitches than these. Fill in how many, so that its weight can be used.
not-washed = Not washed yet: these counts may be far off. Wash it, dry it, and measure it again.
not-washed-as-before = Not washed yet: we assume that it changes as this yarn did before.
wash-made-it = The wash made it { LIST($changes) }.
by-the-wash =
    { $change ->
       *[narrower] { $percent } % narrower
        [wider] { $percent } % wider
        [shorter] { $percent } % shorter
        [longer] { $percent } % longer
    }

## What is known of the fabric

nothing-of-fabric = Nothing is known of the fabric yet.
tell-of-fabric = Give a swatch, or stitches and rounds per length, or what the label says.
from-swatches =
    { $swatches ->
        [one] From your swatch.
       *[other] From { NUMBER($swatches) } swatches.
    }
from-socks =
    { $socks ->
        [one] From your sock.
       *[other] From { NUMBER($socks) } socks.
    }
from-swatches-and-socks =
    { $swatches ->
        [one] { $socks ->
            [one] From 1 swatch and 1 sock.
           *[other] From 1 swatch and { NUMBER($socks) } socks.
        }
       *[other] { $socks ->
            [one] From { NUMBER($swatches) } swatches and 1 sock.
           *[other] From { NUMBER($swatches) } swatches and { NUMBER($socks) } socks.
        }
    }
at-marks = They were knitted at marks { $low } to { $high }.
tubes-scattered = They differ by more than errors of measuring. Were all knitted in this yarn, at these marks?
from-gauge = From the stitches and rounds you gave.
guessed-from-length = Guessed from its length per ball, for a sock of usual tightness.
guessed-from-name = Guessed from its name alone ({ $yarn }), for a sock of usual tightness.
guessed-by-shape =
    { $side ->
       *[rounds] Rounds per length are guessed from the stitches.
        [stitches] Stitches per length are guessed from the rounds.
    }
left-out = Left empty, but the counts depend on it. Measure it; until then we take about { $rate }.
hung-otherwise = This was knitted with { $there } hung, and the sock gets { $here }. That changes stitches and rounds. Swatch with the weight you will hang.
far-from-others = This is far from what the others say. Same yarn, same mark? Measure it again.
one-mark-tried = Only mark { $only } was tried, which says nothing of mark { $wanted }.
try-that-mark = Knit a swatch at another mark too, or write { $only }.
mark-far-off = Mark { $mark } is far from the marks tried, { $low } to { $high }.
swatch-nearer = Knit a swatch nearer to it, or choose a mark nearer to those.
without-mark = Without its mark, this piece is left out. Fill it in.
beyond-marks-tried = That is beyond the marks tried, { $low } to { $high }, so it is less sure. Swatch there first.
stitches-too-heavy = So many stitches of a sock cannot weigh that.
weigh-swatch-alone = Weigh the swatch alone, and check the unit.
weight-does-not-fit = This does not fit the yarn’s length per ball. Weigh it again?
odd-shape = That makes { $shape } rounds to the width of a stitch, where plain knit has 1.3. Are stitches and rounds swapped?
fabric-loose = This is loose fabric for so fine a yarn: it will wear out soon.
fabric-firm = This is very firm fabric for so thick a yarn: it may crank hard.
