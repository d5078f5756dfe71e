set-licence = Licence: what others may do with it
more-of-set = Version, date, licence, notes
set-fibre = Fibre
accessibility-summary = Steps are numbered lists, tables have heads, and the one drawing is described in words. Nothing is told by colour alone.
own-gauge = My own tension
own-gauge-about =
    { $units ->
        [in] Washed, such as 7.5 / in. Left empty, the tension of the instructions is used.
       *[cm] Washed, such as 30 / 10 cm. Left empty, the tension of the instructions is used.
    }
