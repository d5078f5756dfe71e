### Sock two after sock one.

pair-within =
    { $rounds ->
        [one] 1 foot round. At most { $off } from the length the foot asks for, and { $apart } from sock one’s.
       *[other] { NUMBER($rounds) } foot rounds. At most { $off } from the length the foot asks for, and { $apart } from sock one’s.
    }
pair-aim =
    { $like ->
        [one] Sock one is taken to be { $aimed } long.
       *[between] Half way between sock one and the length for the foot is { $aimed }.
    }

like-one-otherwise =
    { $again ->
       *[shorter] Why not { $one } again? Sock one is long partly by chance: { $one } again would likely come out shorter. { $two } come closest to it.
        [longer] Why not { $one } again? Sock one is short partly by chance: { $one } again would likely come out longer. { $two } come closest to it.
    }

## Off the machine, before the wash

off-machine = Off the machine, before the wash, its foot should measure about { $length }. Anything from { $span } is as expected.
off-machine-unknown = Measure a swatch before and after the wash, to see what the sock’s foot should measure before it.
wash-not-known = How this yarn changes in the wash is not known yet.
wash-or-swatch = Wash sock one first, or give a swatch’s length before and after the wash.
taken-after-wash =
    { $change ->
       *[shorter] Not washed yet: we assume that it gets { $percent } % shorter, as your swatches did. Measure it again after the wash.
        [longer] Not washed yet: we assume that it gets { $percent } % longer, as your swatches did. Measure it again after the wash.
    }
