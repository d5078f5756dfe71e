### The foot, its wearer, and what is usual for what was not measured.

## What a figure is of, within a sentence

of-measure =
    { $measure ->
       *[length] a foot length
        [ball_girth] a girth around the ball of the foot
        [instep_girth] a girth around the instep
        [heel_girth] a girth around heel and ankle bend
        [ankle_girth] a girth above the ankle
        [calf_girth] a girth of a calf
    }
of-toe-breadth = a breadth across the toes
of-bar = the sheet’s bar
of-stature = a person’s height
of-age = an age
of-shoe-size = a shoe size in { $system }

## What is wrong, and the way out

not-a-persons-weight = { $weight } is not a person’s weight.
shoe-size-without-system = The system of this shoe size is missing.

## Where a measure comes from

measured =
    { $readings ->
        [one] Measured.
       *[other] Measured twice.
    }
measured-larger =
    { $readings ->
        [one] Measured, the larger of both feet.
       *[other] Measured twice, the larger of both feet.
    }
by-shoe-size = By shoe size { $system } { $size }. Measure the foot if you can.
by-sock-length = The foot that a sock of this length is for.
guessed-from-grown =
    { $who ->
        [woman] From { $women } women of the US Army in 2012, mostly 18 to 58 years old.
        [man] From { $men } men of the US Army in 2012, mostly 18 to 58 years old.
       *[either] From { $women } women and { $men } men of the US Army in 2012, mostly 18 to 58 years old.
    }
guessed-from-children =
    { $who ->
        [woman] Roughly, from { $number } American girls of { $youngest } to { $oldest } years in 1975 to 1977. Measure if you can.
        [man] Roughly, from { $number } American boys of { $youngest } to { $oldest } years in 1975 to 1977. Measure if you can.
       *[either] Roughly, from { $number } American children of { $youngest } to { $oldest } years in 1975 to 1977. Measure if you can.
    }
guessed-by-thumb =
    { $who ->
        [woman] Very roughly: a knitters’ rule of thumb, and { $number } American girls of { $youngest } to { $oldest } years. Measure if you can.
        [man] Very roughly: a knitters’ rule of thumb, and { $number } American boys of { $youngest } to { $oldest } years. Measure if you can.
       *[either] Very roughly: a knitters’ rule of thumb, and { $number } American children of { $youngest } to { $oldest } years. Measure if you can.
    }
none-so-young = No child under { $years } was measured.
guessed-unknown-age = Guessed as if this were a small child { $tenths } times in 10. Type the age to make it surer.

## What is asked about the measures

readings-apart = The two readings are { $gap } apart, more than a tape is usually off. Measure a third time, and keep the two that agree.
feet-alike = Both feet are alike here.
planned-on =
    { $foot ->
        [this] The pair is planned on this foot: the first is { $gap } smaller.
       *[first] The pair is planned on the first foot: this one is { $gap } smaller.
    }
feet-far-apart = Feet usually differ less. Measure both again?
less-than = less than { $length }
rare-alone =
    { $who ->
        [woman] This is { $side ->
            [small] small
           *[large] large
        } for a woman: about 1 foot in { $oneIn } is like that. Measure it again?
        [man] This is { $side ->
            [small] small
           *[large] large
        } for a man: about 1 foot in { $oneIn } is like that. Measure it again?
       *[either] This is { $side ->
            [small] small
           *[large] large
        } for an adult: about 1 foot in { $oneIn } is like that. Measure it again?
    }
rare-beside =
    { $side ->
        [small] This is small beside the other measures: about 1 foot in { $oneIn } is like that. Measure it again?
       *[large] This is large beside the other measures: about 1 foot in { $oneIn } is like that. Measure it again?
    }
or-fewer = { $number } or fewer
toes-too-broad = Toes this broad would measure more around than the ball of the foot. Measure both again?
room-of-what-age = How much room to grow? Left empty, none is added. Type the age to see what is usual.
room-usual = How much room to grow? Left empty, none is added. At this age a foot usually grows { $gap } in half a year (American children, 1975 to 1977).
room-usual-under = How much room to grow? Left empty, none is added. At { $years } a foot usually grows { $gap } in half a year, and faster before that.
weight-asked = Heavier than { $weight }? Then type the weight: the guessed girths are too small.
