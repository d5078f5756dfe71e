"""The calculator behind Heelwise: people, fabric and machine in; counts for a sock out.

Pure Python. It holds no clock, no chance, no file, no network and no browser, so the same request
gives the same answer in a terminal, in a test and on a phone. Inside, lengths are floats in mm,
weights in grams (of people: kg), yarn numbers in tex; units are met only in `reading` and `units`.

Data flows one way: foot, fabric, cylinder -> short rows, cuff, leg -> fit, supply -> steps -> plan
-> picture, link -> api.
"""

VERSION = "1.2.0"  # of how it counts: another wherever anybody's numbers move
