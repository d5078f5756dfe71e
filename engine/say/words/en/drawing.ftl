### The sock drawn: its name for who cannot see it, and the words on and beside it.

sock-from-the-side = The sock from the side: { LIST($parts) }.
# One of the parts in that list.
so-much-of =
    { $unit ->
        [rows] { $part ->
            [heel] heel { $count } rows
           *[toe] toe { $count } rows
        }
       *[rounds] { $part ->
            [cuff] cuff { $count } rounds
            [leg] leg { $count } rounds
            [heel] heel { $count } rounds
            [foot] foot { $count } rounds
            [toe] toe { $count } rounds
            [before_toe] before the toe { $count } rounds
           *[end] after the toe { $count } rounds
        }
    }
stretch-when-worn = Stretch when worn: { LIST($places) }.
# Under the number of its rounds or rows.
drawn-part =
    { $part ->
        [cuff] cuff
        [leg] leg
        [heel] heel
        [foot] foot
       *[toe] toe
    }
cuff-and-rounds = cuff { $rounds }
worn-wider =
    { $place ->
        [ball] ball { $percent } % wider
        [heel] heel { $percent } % wider
        [ankle] ankle { $percent } % wider
        [calf] calf { $percent } % wider
       *[cuff] cuff { $percent } % wider
    }
worn-stretched =
    { $place ->
        [ball] ball +{ $percent } %
        [heel] heel +{ $percent } %
        [ankle] ankle +{ $percent } %
        [calf] calf +{ $percent } %
       *[cuff] cuff +{ $percent } %
    }
# Neither stretched nor wider.
worn-alike =
    { $place ->
        [ball] ball: no stretch
        [heel] heel: no stretch
        [ankle] ankle: no stretch
        [calf] calf: no stretch
       *[cuff] cuff: no stretch
    }
worn-and-felt = { $stretch } { $verdict }
not-sure = { $verdict }?
