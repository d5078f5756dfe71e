### What is wrong with what was typed, and the way out.

## The whole of a request

not-a-call = This cannot be read.
send-one-object = Send one JSON object.
no-such-door = This is not something we do.
known = Known: { LIST($names) }.
not-utf8 = This is not text in UTF-8.
save-as-utf8 = Save it as UTF-8 and try again.
no-such-file = { $file } cannot be read.
name-a-file = Name a JSON file, or - to type it.
more-wrong =
    { $more ->
        [one] { NUMBER($more) } more thing is wrong.
       *[other] { NUMBER($more) } more things are wrong.
    }
fix-these-first = Fix these first, then ask again.
not-a-group = This should be a group of fields.
send-a-group = Leave it out or send a group.
not-a-list = This should be a list of groups.
send-a-list = Leave it out or send a list.
too-many = { $number } are too many.
keep-the-best = Keep the best { $most } of them.
unknown-name = { $name } is not known here.

## Any text

not-text = This should be a number or text.
as-on-paper = Write it as you would on paper.
far-too-large = This number is far too large.
too-long = That is too long to be a measure.
one-number-and-unit = Write one number and its unit.
nothing-to-read = There is nothing to read here.
cannot-be-read = { $text } cannot be read.
not-clear = { $text } is not clear.
not-a-choice = { $text } is not one of the choices.
choose = Choose { EITHER($choices) }.
did-you-mean = Did you mean { EITHER($offers) }?
write-it-like = Write it like { $example }.
write-either = Write { EITHER($offers) }.

## Numbers

not-a-number = { $text } is not a number.
number-like = Write a number like 20 or 6 1/2.
fraction-below-zero = A fraction cannot have 0 below its line.
count-below-zero = A count cannot be below zero.
not-whole = { $number } is not a whole number.
write-whole = Write a whole number from { $low } to { $high }.
write-number = Write a number from { $low } to { $high }.
too-much = { $percent } % is too much for { $what }.
write-percent = Write 0 to { $high } %.

## Lengths, weights, and counts over a length

measure-below-zero = A measure cannot be below zero.
length-example = 23.8 cm or 9 3/8 in
yarn-example = 5.2 m or 5.7 yd
person-example = 60 kg or 132 lb
grams-example = 50 g or 1.8 oz
two-measures = { $text } holds two measures.
write-one = Write one of them.
not-over-a-length = { $text } cannot be read as a count over a length.
over-a-length-like = Write it like 7.5 / in or 30 / 10 cm.
over-no-length = A count over no length says nothing.
ten-cm-like = Write it like 30 / 10 cm.
no-such-unit = { $unit } is not a unit we know.
other-unit =
    { $of ->
        [weight] { $unit } is not a unit of weight.
       *[length] { $unit } is not a unit of length.
    }
write-unit =
    { $of ->
        [weight] Write g, kg, oz or lb.
       *[length] Write cm, mm or in.
    }
too-small = { $shown } is too small for { $what }.
too-large = { $shown } is too large for { $what }.
very-small = { $shown } is very small for { $what }.
measure-again = Measure again.
