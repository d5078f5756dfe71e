### How finished socks came out.

came-out-within = Planned { $planned }, measured { $measured }: within the range, { $span }.
came-out-beyond = Planned { $planned }, measured { $measured }: outside the range, { $span }.
came-out-held =
    { $socks ->
        [one] { $held ->
            [one] The one sock you measured came out within its range.
           *[other] The one sock you measured was outside its range.
        }
       *[other] { NUMBER($held) } of { NUMBER($socks) } socks came out within their range. Four in five should.
    }
came-out-few = Measure { $fewest } pairs or more to see how much your socks differ.
came-out-scatter = Your socks differ from one to the next by about { $percent } % of their length, { $length } either way.
came-out-habit =
    { $habit ->
       *[longer] Your socks come out { $percent } % longer than your swatches say.
        [shorter] Your socks come out { $percent } % shorter than your swatches say.
    }
came-out-no-habit = There is no clear difference between your swatches and your socks.
came-out-next = Your next plans with other yarns go by this. For its own yarn, use a finished sock as one more swatch.
came-out-head =
    { $of ->
       *[name] Pair
        [day] Day
        [rounds] Foot rounds
        [planned] Planned, mm
        [low] Range from, mm
        [high] Range to, mm
        [measured] Measured, mm
        [held] Within the range
    }
pairs-taught =
    { $range ->
       *[same] Going by { $pairs } finished pairs, socks differ by about { $percent } % from one to the next.
        [narrower] Going by { $pairs } finished pairs, socks differ by about { $percent } % from one to the next, so the range is narrower.
        [wider] Going by { $pairs } finished pairs, socks differ by about { $percent } % from one to the next, so the range is wider.
    }
habit-taken =
    { $size ->
       *[longer] Socks came out longer than swatches said, so { $percent } % is taken into account.
        [shorter] Socks came out shorter than swatches said, so { $percent } % is taken into account.
    }
record-left-out = The link leaves out how the sender’s finished pairs came out, so rounds and range may differ a little from theirs.
