### What passes a plan on: links, codes, and what goes to paper (the card, the orders, the tag).

## Links and codes

link-means = A link opens with the same counts on any phone that has this page, with or without a signal.
goes-along = What the link holds
counts-only = Counts only
with-foot = With the foot
bare-link = It holds cylinder, yarn, counts, and the sock’s length, but no measure of the person.
whole-link = It holds every measure and what you said about the person, so that the fit can be shown.
with-record = With what your finished pairs taught
record-means = Without it, the other phone’s range differs from yours, and its foot rounds may differ a little.
on-paper = On paper: a card with boxes to tick, a tag for the finished pair, and instructions for other sizes.
write-tag = Write the tag
write-set = Instructions over sizes
sets-not-loaded = They could not be loaded. Tap again, or reload.
card-not-made = The card could not be made. Tap again, or reload.
sock-plan = A sock plan
show-code = Show a code to scan
copy-link = Copy the link
send-it = Send it…
next-foot = The next foot
next-foot-means = Cylinder, fabric and yarn stay. Everything else is cleared, but you can bring it back.
measure-next-foot = Measure the next foot
copied = Copied. Paste it wherever you like.
not-copied = The phone did not copy it. Press and hold the link, then copy:
plans-link = The plan’s link
code-not-made = The code could not be made.
code-way-out = Try again, or copy the link.
code-picture = The link as a code for a camera
scan-code = Scan it with the other phone
hold-camera = Hold its camera over the code and tap the link that it shows.

## The card and the orders

for-line = For
date-line = Date
card-title = The card for a pair
tap-to-write-card = A box for every ten rounds. Tap a line to write on it, or leave it for the pen.
print-card = Print the card
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
tap-to-write = Tap a line to write on it. Cut it out, fold it, and punch it.
for-whom = For whom
as-on-band = as on the yarn’s band
how-to-care = How to wash and dry it:
how-to-wash = How to wash it
how-to-dry = How to dry it
more-on-washing = More on washing
words-at-top = Words at the top
no-counts = This pair has no counts yet, so the tag shows no size and no code. Plan the pair first, or print it without.
tag-not-made = The tag could not be made. Tap again; what you wrote is still here.
print-tags =
    { $tags ->
        [one] Print the tag
       *[other] Print all { $tags } tags
    }
print-later = Print it later
later-where = Until it is printed, it waits on this phone. Three tags print on one sheet.
fibers-offered = Fibers of your other tags and your shelf
tags-wait =
    { $tags ->
        [one] One tag waits to be printed.
       *[other] { $tags } tags wait to be printed.
    }
# Those that wait, and no other.
print-waiting =
    { $tags ->
        [one] Print that one
       *[other] Print those { $tags }
    }
delete-tags = Delete them
tag-kept = The tag is saved. Three print on one sheet.

## Washing and drying

wash-hand = by hand, cold
wash-machine = machine, wool program
wash-band = as the yarn’s band says
says-wash-hand = Wash by hand in cold water with a little wool soap. Press the water out; do not wring.
says-wash-machine = Wash in the machine on its wool program, cool, inside out.
says-wash-band = Wash as the yarn’s band says.
dry-flat = lying flat
dry-line = on a line
dry-band = as the band says
says-dry-flat = Dry flat, away from heat.
says-dry-line = Dry on a line, away from heat.
says-dry-band = Dry as the yarn’s band says.
says-both-band = Wash and dry as the yarn’s band says.

## A measuring sheet for a foot that is far away

measuring-title = A sheet to measure a foot
measuring-means = Print it, or send the print as a PDF. What comes back filled in is typed in here.
which-paper = Paper
print-measuring = Print the sheet
sheet-one = The first of two pages
scale-picture = A scale across the page for the foot, a bar of 100 mm, and the outline of a bank card
came-back = It came back: type it in
came-back-how = A printer may change the size. The bar says by how much, and the foot length is corrected by it.
how-long-bar = How long is the bar?
read-at-toe = Foot length, read on the sheet
put-in-foot = Put it in the foot
nothing-typed = Type what stands on the sheet first.
sheet-for = For { $label }
heel-line = Fold here. The fold goes against a wall.
ball-of = ball, foot of { $foot } cm
card-fits = A bank card fits this outline
card-true = if the sheet is in its true size.
bar-words = This bar should be 100 mm long. Measure it.
# At the top left corner of the paper, above the foot: a line each, of at most 44 letters.
stand-print = 1. Print at 100 %, not “fit to page”.
stand-fold = 2. Fold the corner along the thick line.
stand-wall = 3. Put the fold against a wall.
stand-scale = 4. Stand on the scale, heel at the wall.
stand-book = 5. Stand a book up at the longest toe,
stand-read = square to the lines. Read there.
tapes-title = Where each tape goes
tapes-how = Measure standing, on the bare foot. Pull the tape snug, not tight. Write the unit: cm, mm or in.
bar-where = On the first page, with a ruler, in mm.
toe-where = On the first page, where the book stands at the longest toe.
sheet-caution = Swollen legs, diabetes or numb feet: say so on the sheet, and ask a clinician about socks.
