"""The calculator behind Heelwise: people, fabric and machine in; counts for a sock out.

Pure Python. It holds no clock, no chance, no file, no network and no browser, so the same request
gives the same answer in a terminal, in a test and on a phone. Inside, lengths are floats in mm,
weights in grams (of people: kg), yarn numbers in tex; units are met only in `reading` and `units`.

A request is read into a sock; a sock is a list of sections, a section a list of operations, and the
needle bed counts what they knit. Everything else looks at that list.
"""

VERSION = "1.6.0"  # of how it counts: another wherever anybody's numbers move
