### Instructions over sizes, to publish.

## The sets that are kept

sets-title = Instructions over sizes
sets-mean = From this sock, instructions for as many sizes as you like, to print or to pass on.
sets-begin = A new set begins at the counts of a sock: pass it on, then Instructions over sizes.
new-set = New set from these counts
kept-sets = Sets you keep
open-set = Open
copy-set = Copy
delete-set = Delete
open-set-of = Open { $title }
copy-set-of = Copy { $title }
delete-set-of = Delete { $title }
copy-of = { $title }, copy
set-deleted = { $title } is deleted.
bring-back-set = Bring it back
all-sets = All sets
back-to-words = Change what is written
no-title = Without a title
close = Close
moment = One moment…

## What is written of one

set-title = Title
set-maker = Made by
set-version = Version
set-date = Date, such as 2026-11-28
set-licence = License: what others may do with it
set-contact = Contact
set-errata = Where mistakes are told
set-fibre = Fiber
set-notes = Notes
sizes-of = Sizes of
by-length = Foot lengths
which-sizes = Sizes
more-of-set = Version, date, license, notes
read-set = Show the instructions

## How it reads

which-size = Size
size-of = Size { $size }
all-sizes = All sizes
print-or-save = Print or save
file-holds = What you print or save is what you chose above: one size, or all of them. The spreadsheet always holds all.
which-paper = Paper
folded-card = Card, folded once
print-set = Print
save-html = Save as a web page
save-epub = Save as an e-book
save-text = Save as plain text
save-csv = Save as CSV

## In the files

caution = Take care:
contents = Contents
accessibility-summary = Steps are numbered lists, tables have heads, and the one drawing is described in words. Nothing is told by color alone.

## A link to a set, and its reader

link-to-set = A link or a code
link-opens = It opens on any phone that has this page. The reader chooses a size or a foot, and knits from it.
copy-link = Copy the link
show-code = Show a code to scan
copied = Copied. Paste it wherever you like.
not-copied = The phone did not copy it. Press and hold the link below.
no-link = There is no link: title and maker are too long for one. Shorten them.
reader-about = Choose a size, or your own foot. Then you see the counts, and can knit them at the counter.
made-by = By { $maker }.
reader-for = For { $by } sizes { $sizes }, on { $slots } slots.
reader-for-lengths = For foot lengths { $sizes }, on { $slots } slots.
read-all = Read the instructions
keep-set = Keep them on this phone
set-kept = Kept. You find them under Wearers, at “Instructions”.
back-to-foot = Back to the choice of size
reader-foot = For which foot
own-foot = My own foot
own-length =
    { $units ->
        [in] Foot length, in inches
       *[cm] Foot length, in cm
    }
own-ball =
    { $units ->
        [in] Around the ball, in inches, if measured
       *[cm] Around the ball, in cm, if measured
    }
own-gauge = My own gauge
own-gauge-about =
    { $units ->
        [in] Washed, such as 7.5 / in. Left empty, the gauge of the instructions is used.
       *[cm] Washed, such as 30 / 10 cm. Left empty, the gauge of the instructions is used.
    }
own-stitches = Stitches
own-rounds = Rounds
see-counts = See the counts
reader-moment = Working out the sizes…
