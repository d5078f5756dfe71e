### What goes to paper: the card, the orders, the tag, and what is asked before a tag is printed.

## The card and the orders

for-line = For
date-line = Date
orders-title = { $title }, { $day }
done = Done
promised-for = Promised for
how-far = How far
price = Price
allergy = <strong>Allergy:</strong> <bdi>{ $allergy }</bdi>
late = <strong>late:</strong>

## The tag

fiber = Fiber
finished = Finished
tag-for = for <bdi>{ $label }</bdi>
scan-again = Scan it to knit the same pair again.

## Before a tag is printed

tag-title = The tag for a pair
close = Close
tag-what = It goes with the pair: whom it fits, how to wash it, and a code for the same counts. Cut it out, fold it and punch it.
for-whom = For whom
can-leave-out = You can leave this out.
fiber-where = As on the yarn’s band. Left empty, it prints a line to write on.
how-to-wash = How to wash it
how-to-dry = How to dry it
more-on-washing = More on washing
more-where = In your own words, or the band’s. You can leave this out.
words-at-top = Words at the top
words-where = Your name, or what you like. You can leave this out.
finished-on = Finished on
no-counts = This pair has no counts yet, so the tag shows no size and no code. Plan the pair first, or print it without.
tag-not-made = The tag could not be made. Tap again; what you wrote is still here.
print-tags =
    { $tags ->
        [one] Print the tag
       *[other] Print the tags
    }
print-later = Print it later, with others
later-where = Until it is printed, it waits on this phone.
fibers-offered = Fibers of your other tags and your shelf
tags-wait =
    { $tags ->
        [one] One more tag waits to be printed with this one, three to a sheet.
       *[other] { $tags } more tags wait to be printed with this one, three to a sheet.
    }
leave-tags-out = Leave them out

## Washing and drying

wash-hand = by hand, cold
wash-machine = machine, wool program
wash-band = as the yarn’s band says
says-wash-hand = Wash by hand in cold water with a little wool soap. Press it out, do not wring.
says-wash-machine = Wash in the machine on its wool program, cool, inside out.
says-wash-band = Wash as the yarn’s band says.
dry-flat = lying flat
dry-line = on a line
dry-band = as the band says
says-dry-flat = Dry flat, away from heat.
says-dry-line = Dry on a line, away from heat.
says-dry-band = Dry as the yarn’s band says.
says-both-band = Wash and dry as the yarn’s band says.
