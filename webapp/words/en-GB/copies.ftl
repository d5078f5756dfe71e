column =
    { $name ->
        [label] Label
        [state] How far
        [due] Promised for
        [length] How long
        [ease] How close
        [colours] Colours
        [allergy] Allergy
        [price] Price
       *[asked] Who was asked
    }
