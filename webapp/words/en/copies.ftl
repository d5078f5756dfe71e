### Copies of all that is kept, and lists of orders. $things is a list of what a copy holds or would change.

## Lists

# The last of a list, and those before it.
list-last = { $rest } and { $last }
list-next = { $rest }, { $next }
wearers-counted =
    { $many ->
        [one] one wearer
       *[other] { $many } wearers
    }
pairs-counted =
    { $many ->
        [one] one pair at the machine
       *[other] { $many } pairs at the machine
    }
# A title as it stands within a sentence.
inside = { LOWER($title) }
sheet-mine = Your own page
sheet-before = What was on your own page before
sheet-shelf = Your cylinders and yarns
sheet-chart = What was typed for the table of sizes
sheet-sets = Your instructions over sizes
machine-settings = The settings at the machine
moment = One moment…

## The screen

copies-and-lists = Copies and lists
orders-table = Orders for a spreadsheet
orders-table-holds = Names, contacts, promised days, wishes, and prices, without measures.
save-orders = Save the orders as CSV
orders-saved = The orders were saved.
orders-on-paper = Orders on paper
orders-listed = A list with a box to tick for each order, the earliest promised day first.
which-orders = Which orders
still-open = still open
all = all
measures = Measures
without = without
with-them = with them
no-order = There is no order to print.
print-orders = Print the orders
all-orders = All orders
open-orders = Open orders
list-not-made = The list could not be made. Tap again, or reload.
column =
    { $name ->
        [label] Name
        [state] How far
        [due] Promised for
        [length] How long
        [ease] How close
        [colours] Colors
        [allergy] Allergy
        [price] Price
        [deposit] Deposit
        [pairs] How many pairs
        [contact] Contact
       *[asked] Who was asked
    }

## Saving a copy

save-a-copy = Save a copy
copy-holds = Everything this page keeps, in one file: wearers with every visit, your own page, cylinders and yarns, the table of sizes, counts and settings at the machine.
copy-away = Store it away from this phone, and safely: it holds people’s measures.
browser-keeps = The browser has promised to keep all this until you delete it.
browser-may-delete = The browser has not promised to keep all this: it may delete it when the phone runs short of room.
browser-silent = The browser does not say whether it keeps all this for good.
save-all =
    { $locked ->
        [yes] Save all to a locked file
       *[no] Save all to a file
    }
send-as =
    { $locked ->
        [yes] Send it as a locked file…
       *[no] Send it as a file…
    }
file-ready = The file is ready.
send-now = Send it now
saved-to =
    { $locked ->
        [yes] Saved to a locked file: { $things }.
       *[no] Saved to a file: { $things }.
    }
handed-on = Passed on: { $things }.
not-sent = It was not sent. Nothing has changed.
not-taken = Your phone did not take the file. Save it to a file instead.
not-locked = The copy could not be locked. Nothing was saved. Try again.
visits-silent = Not all visits could be read from your phone. Nothing was saved. Try again in a moment.
counts-not-loaded = The counts at the machine could not be loaded, so nothing was saved. Check your connection, and try again.
pairs-missing = Not all pairs at the machine could be read from your phone, so some are missing. Save another copy in a moment.
aside-left-out = What was set aside is not in it.
all-you-typed = all that you typed
all-of-it = all of it
not-as-here = The saved file differs from this phone in: { $things }. Keep that on this phone, too.
quoted = “{ $label }”
the-pair = the pair “{ $label }”
dates-and-deleted = what was deleted and when things were changed

## A passphrase

lock-it = Lock it with a passphrase
lock-means = Without the passphrase, nobody can read the file. Four words picked at random are hard to guess.
lock-forgotten = <strong>Nobody can bring back a passphrase that you forget: the copy stays locked for good.</strong> Write it down, and keep it apart from the file.
passphrase = Passphrase
passphrase-again = Passphrase again
show-typed = Show what I type
no-lock-here = A copy can be locked only on a page that came by https. Open the page by https, or keep the file where nobody else can read it.
passphrase-short = The passphrase is too short: it takes at least { $characters } characters. Add a word to it.
passphrase-other = The second one is not the same as the first. Write it again.
its-passphrase = Its passphrase
copy-locked = This copy is locked. Write the passphrase that it was saved with.
open-it = Open it
passphrase-wrong = The passphrase does not open this copy. Check capitals and spaces, and write it again.
locked-damaged = This locked copy is damaged, and nothing in it can be opened. Save another copy on the other phone, and pick that file.
locked-newer = This copy was locked by a newer version of this page. Connect to a network and reload, then pick the file again.
locked-no-https = This browser opens locked copies only on a page that came by https. Open the page by https, and pick the file there.

## Taking a copy in

take-a-copy = Load a copy
take-where = A file saved here or on another phone. You see what it would change before anything is changed.
no-copy = This file is not a copy from this page. Pick one that “Save all to a file” made: its name begins with heelwise-.
copy-newer = This copy was made by a newer version of this page. Connect to a network and reload, then pick the file again.
copy-no-version = This copy names no version. Nothing was loaded. Save a new copy on the other phone, and pick that file.
copy-odd-version = This copy names version { $version }, which does not exist. Nothing was loaded. Save a new copy on the other phone, and pick that file.
file-not-opened = The file could not be opened. Nothing was loaded. Pick it again.
nothing-compared = Not all visits could be read from your phone, so nothing can be compared. Nothing was loaded. Pick the file again in a moment.
nothing-changed = Nothing was changed.
all-here = All of that copy is here already. Nothing was changed.
not-stored = Your phone did not store { $things }: that is as it was. Everything else is loaded. Pick the file again.
taken-in = Loaded: { $things }.
taken-not-saved = Your phone isn’t saving all of it. Don’t delete the file: what is not saved is lost when you close the page.
taken-nothing = nothing
done =
    { $how ->
        [added] { $things } added
        [back] { $things } brought back
        [newer] { $things } brought up to date
        [gone] { $things } deleted
       *[chosen] { $things } as you chose
    }

## What a copy would change

would-change = What the copy would change
to-add = <strong>To add: { $things }.</strong>
nothing-to-add = <strong>To add: nothing.</strong>
further = Counted further than here: { $things }.
same-as-here = The same as here: { $things }.
changed-later = Changed later than here: { $things }.
gone-there = Deleted on the other phone: { $things }.
gone-here = Deleted here since: { $things }; left out, unless you choose otherwise.
differs = Different from here: { $things }; choose which to keep.
altered = Not as it was saved: { $things }; look closely before you rely on it.
cannot-read = { $what } cannot be read.
take-it-in = Load it
leave-all = Leave all as it is
what-changes = What changes
and-more = And { $more } more.
col-here = here
col-file = in the file
col-after = afterwards
leave-out = leave it out
take-file = take the file’s
keep-here = keep what is here
keep-them = keep them here
delete-too = delete them here, too
leave-them-out = leave them out
bring-back = bring them back
damaged = <strong>This file is damaged.</strong>
things-unread =
    { $many ->
        [one] One thing in it cannot be read and stays out.
       *[other] { $many } things in it cannot be read and stay out.
    }
missing = Missing from it: { $things }.
rest-good = Everything else can be loaded. If the other phone still has it all, save another copy there.
altered-one = Not as it was saved.
gone-there-one = Deleted on the other phone.
gone-here-one = Deleted here, after this copy was saved.
numbered =
    { $kind ->
        [wearer] Wearer number { $number }
        [pair] Pair at the machine number { $number }
       *[ended] Knitted pair number { $number }
    }
called = { $what } (“{ $label }”)
visit-of = Visit number { $number } of “{ $label }”
count-of = Count number { $number } of “{ $label }”
deleted-number = Number { $number } of what was deleted
sheet-dates = When your own pages were changed
what-was-deleted = What was deleted
# Of a set of instructions over sizes.
of-set =
    { $field ->
        [title] Title
        [maker] Made by
        [version] Version
        [date] Date
        [licence] License
        [contact] Contact
        [errata] Where mistakes are told
        [fibre] Fiber
        [notes] Notes
        [by] Sizes of
       *[sizes] Sizes
    }
something-else = Something else
in-row = { $field } ({ $number })

## Side by side

written-before = What was written before
this-phones = this phone’s
the-files = the file’s
visits = Visits
where-it-stands = How far
counted-last = Counted last
nothing-yet = nothing yet
counts-and-notes = Counts and notes
knitted = knitted
for-whom = For
notes = Notes
on = on
off = off
