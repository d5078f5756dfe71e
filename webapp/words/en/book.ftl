### The book of wearers. $day is a date as the phone's owner writes dates, $label what a wearer is called.

## The list

wearers = Wearers
all-wearers = All wearers
new-wearer = New wearer
book-elsewhere = Is your book on another phone? Save a copy there, and load it here.
find = Find
order = Order
by-due = by day
by-newest = newest first
by-label = by name
found-of = { $found } of { $total }
none-found = No wearer is called that. Try fewer letters, or a color from their wishes.
wearers-count =
    { $wearers ->
        [one] { $wearers } wearer
       *[other] { $wearers } wearers
    }
show-more = Show more
not-today = Not today
save-all = Save all to a file
copies-and-lists = Copies and lists
sets-kept =
    { $sets ->
        [one] Instructions: { $sets } set
       *[other] Instructions: { $sets } sets
    }
sets-not-loaded = They could not be loaded. Tap again, or reload.
allergy-of = <strong>allergy:</strong> <bdi>{ $allergy }</bdi>
wearer-deleted = <bdi>{ $label }</bdi> is deleted, with every visit. You can bring them back until you close the book.
bring-wearer-back = Bring them back
set-aside =
    { $store ->
        [wearers] A wearer in the book cannot be read and was set aside. All others are as they were.
        [visits] A visit in the book cannot be read and was set aside. All others are as they were.
       *[gone] The mark of a deleted wearer cannot be read and was set aside. All others are as they were.
    }
wrong-due = <strong>correct the day:</strong> { $day }
late-due = <strong>late:</strong> { $day }
due-for = for { $day }
nobody-yet = No one is in the book yet.
begin-book = At a fair or at home, write a name for each person, then measure their foot. Machine and yarn come from your own page.
sheets-saved = Every sheet is saved as you type. Plan the socks when you have time.
tap-new = Tap “New wearer” to begin.

## What is wrong, and what may be lost

wrong-year = The promised day has the year { $year }. Write a year from 2000 to 2199, or leave the field empty.
keep-the-book = Keep the book
safari-may-delete = <strong>Safari may delete this book.</strong>
safari-when = It does so once you use Safari on seven days without opening this page. On the home screen it stays:
home-save = Save a copy: the page on the home screen starts empty.
home-add = Tap Share, then “Add to Home Screen”. On a Mac, choose File, then “Add to Dock”.
home-take = Open the page there. Under Wearers, tap “Copies and lists”, then load the copy.
home-close = Don’t show this again
last-copy = Last copy: { $day }.
no-copy = No copy saved yet.
your-page = your own page
your-shelf = your cylinders and yarns
size-table = the table of sizes
# $things is a list of what is missing.
not-in-a-copy = Newer than your last copy: { $things }. If you lose your phone, you lose that too.
copy-old = The last copy is more than a week old.
book-not-saved = Your phone isn’t saving the book. Go on: all of it is here until you close the page, and is saved as soon as the phone allows it.
book-unreadable = This version of the page cannot read the book on this phone. The book stays as it was, for the next version.
book-unreadable-new = What you write now is here until you close the page. Save it to a file first.
book-outdated = This page is older than the book on this phone. Reload: a newer version reads it, and nothing is lost. What you write before that is not saved.
reload = Reload
copies-missing = Copies could not be loaded. Check your connection, then reload. Everything in the book is safe.
old-child = Measured on { $day }, over half a year ago. A child’s foot grows: measure it again before you knit.
old-measures = Measured on { $day }, over a year ago. Ask if the foot is still the same, or measure it again.
shoe-size = Shoe size

## A new wearer

no-label = The name is missing. Write a name, a number, or anything you will know them by.
new-from-page = New wearer, from this page
label = Name
label-where = A name, a number, anything you will know them by.
ask-first = Ask before you write down anyone’s measures; for a child, ask a parent.
measures-stay = They stay on this phone until you delete them. You can note who was asked on the wearer’s page.
keep-in-book = Save in the book
measure-foot = Measure the foot

## Counts that are kept

as-knitted = Counts as knitted
as-planned = Counts as planned
from-day = From { $day }.
on-day = On { $day }.
sock-one = sock one
sock-two = sock two
part =
    { $part ->
        [cuff] Cuff
        [leg] Leg
        [heel] Heel
        [foot] Foot
        [before_toe] Before the toe
        [end] After the toe
       *[toe] Toe
    }
part-unit =
    { $part ->
        [heel] needles
        [toe] needles
        [cuff] rounds
        [leg] rounds
        [before_toe] rounds
        [end] rounds
       *[foot] rounds
    }
# $problem: what the calculator says is wrong, whole sentences.
counts-no-longer = The calculator no longer counts this: { $problem } What was knitted stays as it was.

## How far a pair is

to-measure = to measure
measured = measured
planned = planned
on-sock-one = sock one
on-sock-two = sock two
grafted = grafted
washed = washed
handed-over = handed over

# What is next to do.
plan-socks = Plan the socks
knit-sock = Knit sock { $sock } of 2
wash-pair = Wash the pair
hand-over = Hand it over
# $place is where the sock on the machine stands, as the counter says it.
at-machine = On the machine: { $place }
next = Next
next-by = Next, for { $day }
is-washed = Mark as washed
is-handed-over = Mark as handed over

# At the machine, of both socks.
pair-took =
    { $hours ->
        [0] Both socks took { $minutes } min at the machine.
       *[other] Both socks took { $hours } h { $minutes } min at the machine.
    }
took-how = That is the time from count to count. Pauses of more than 90 seconds are left out.

## A wearer's page

nothing-measured = Nothing is measured yet.
getting-measures = Getting the measures…
foot-yarn-counts = Foot, yarn and counts
how-far = How far is the pair?
how-far-now = This pair: { $state }
feet = Feet
add-more = Add wishes, price, contact…
how-many = How many pairs
deposit = Deposit
contact = Contact
contact-where = Phone, mail, address…
promised-for = Promised for
who-asked = Who was asked?
who-asked-where = Ask if you may keep their measures. For a child, ask a parent. Note who said yes. All of it stays on this phone until you delete it here.
asked-wearer = the wearer
asked-parent = a parent
wishes = Wishes
how-long = How long
how-long-where = To the ankle, over the calf…
how-close = How close
snug = snug
as-usual = as usual
loose = loose
colors = Colors
allergy = Allergy
allergy-where = Wool, lanolin, a dye…
price = Price
measuring-sheet = A sheet to print and send
come-again = Another visit
come-again-means = Their wishes stay. Cylinder and yarn come from your own page. Earlier measures stay below.
another-pair = Another pair, same feet
measure-again = Measure again
delete-means = This deletes <bdi>{ $label }</bdi> from this phone, with every measure and wish.
delete-them = Delete them
keep-them = Keep them
delete-wearer = Delete this wearer…
day-not-whole = The day is not complete. Pick it from the calendar, or leave the field empty.
write-tag = Write the tag
no-tag = The tag could not be made. Tap again, or reload.
earlier-visits = Earlier visits
nothing-then = Nothing was measured then.
left-at = Last stage: “<bdi>{ $state }</bdi>”.
was-promised = Promised for <bdi>{ $day }</bdi>.
price-was = Price: <bdi>{ $price }</bdi>.
