### What is spelled otherwise in Britain.

wind-off-by-eye = Over so many repeats the start may be off by { $reach }, more than half a repeat. Wind off by eye, to the colour that sock one began with.
wind-off = Before sock two, wind off { $length } ({ $rounds } rounds), right to within { $reach } four times in five. Then look for the colour that sock one began with.
in-color = { $detail }, in colour { $color }
