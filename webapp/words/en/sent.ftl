### Counts that came with a link, before the calculator of this phone is there.

# $slots: of the cylinder. $socks is two where sock one is knitted.
sent =
    { $socks ->
        [two] Counted on the sender’s phone, for sock two on { $slots } slots. This phone checks it in a moment.
       *[both] Counted on the sender’s phone, for { $slots } slots. This phone checks it in a moment.
    }
same = Checked: this phone counts the same as the sender’s.
otherwise = This phone counts differently from the sender’s:
# $title: a part of the sock. $now and $before: rounds, or needles as 30→10→30.
counted-otherwise = { $title }: { $now } here, { $before } on the sender’s phone.
part =
    { $part ->
        [cuff] Cuff
        [leg] Leg
        [heel] Heel
        [foot] Foot
       *[toe] Toe
    }
rounds =
    { $rounds ->
        [one] round
       *[other] rounds
    }
needles = needles
turned = { $needles } needles down to { $left } and back to { $needles }
