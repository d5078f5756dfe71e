### Sock two after sock one.

pair-within =
    { $rounds ->
        [one] 1 foot round: within { $off } of the length for the foot, and within { $apart } of sock one.
       *[other] { NUMBER($rounds) } foot rounds: within { $off } of the length for the foot, and within { $apart } of sock one.
    }
pair-aim =
    { $like ->
        [one] Sock one is taken to be { $aimed } long.
       *[between] Half way between sock one and the length for the foot is { $aimed }.
    }

like-one-otherwise = Sock one took { $one }, but part of its length was chance: { $two } come closest to it.

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
