### A request made into a sock: what is wrong with it, and what is worth knowing.

length-ease = a length ease
room-to-grow = the room to grow
foot-of-sock = the foot of a sock
first-sock-rounds = the foot rounds of a sock
first-sock-width = the flat width of a sock
no-request = This is not a request for a plan.
send-fields = Send a group of fields.
more-needles-than-slots = This cylinder has only { $slots } slots. Was the swatch knitted on another? Then swatch again.
unlike-feet = That is more than feet usually differ. Two different socks may fit better: knit each to its own foot rounds.
unlike-feet-rounds =
    { $shorter ->
        [one] That is more than feet usually differ. Two different socks may fit better: about { $shorter } foot round for the shorter foot, { $longer } for the longer.
       *[other] That is more than feet usually differ. Two different socks may fit better: about { $shorter } foot rounds for the shorter foot, { $longer } for the longer.
    }
no-length = There is no length to knit to.
measure-or-size = Measure the foot from the heel to the longest toe, or give a shoe size.
top-at-knee = The top would be { $height } above the floor, at the knee or above it.

## Sock one

sock-one-too-short = By this first sock, heel and toe alone are longer than the foot.
check-sock-one = Check its length and rounds, or leave more needles in heel and toe.
knit-sock-two =
    { $like ->
       *[foot] Knit { $rounds } foot rounds in sock two: that makes the length the foot asks for. Sock one has { $before }. Cuff, leg, heel and toe stay the same.
        [between] Knit { $rounds } foot rounds in sock two: its length is then between the foot’s and sock one’s. Sock one has { $before }. Cuff, leg, heel and toe stay the same.
        [one] Knit { $rounds } foot rounds in sock two: that comes closest to sock one’s length. Sock one has { $before }. Cuff, leg, heel and toe stay the same.
    }
sock-one-missing =
    { $what ->
        [rounds] The number of foot rounds of the first sock is missing.
       *[length] The length of the first sock’s foot is missing.
    }
fill-or-empty = Fill it in, or empty the others.
from-first-sock =
    { $way ->
        [swatch] From your first sock and your swatch: the surer one counts more.
        [gauge] From your first sock and the stitches and rounds you gave: the surer one counts more.
       *[yarn] From your first sock and a guess from the yarn’s length per ball: the surer one counts more.
    }
rounds-and-length = So many rounds do not fit this length.
measure-sock-one = Measure the washed sock from heel to toe, and check the rounds.
stitches-and-width = So many stitches do not fit this width.
measure-across = Measure the washed sock lying flat, once across.
sock-one-far-off = This is far from what was known of the fabric. Same yarn, same mark? Measure it again.

## Too short a foot

too-short = Heel and toe alone make { $turned }, which leaves no foot rounds for a sock of { $aimed }.
toe-too-long = The toe alone makes { $turned }, which leaves no foot rounds for a sock of { $aimed }.
heel-too-long = The heel alone makes { $turned }, which leaves no foot rounds for a sock of { $aimed }.
too-many-slots = { $slots } slots are many for this foot: about { $suited } would suit it.
leave-in-heel-and-toe = Leave { $heel } needles in the heel and { $toe } in the toe.
leave-in =
    { $part ->
        [heel] Leave { $left } needles in the heel.
       *[toe] Leave { $left } needles in the toe.
    }
shortest-that-works =
    { $thing ->
        [sock] The shortest sock that works with these settings is { $length }.
       *[foot] The shortest foot that works with these settings is { $length }.
    }
knit-finer = Knit finer, with rounds at { $rounds } or more.
fewer-slots = Use a cylinder with fewer slots.
one-of-these = One of these helps. { SENTENCES($ways) }
