### The machine: its cylinder, and where a needle stands on it.

cylinder-slots = the slots of a cylinder
cylinder-missing = The cylinder is missing.
count-the-slots = Count its slots, for example 60 or 72.
slots-are-odd = A cylinder has an even number of slots, and { $slots } is odd.
count-again = Count again. Is it { EITHER($slots) }?
half-marks = The half marks, at your left and right, divide the cylinder’s front half from its back half. The needle next to a mark is the 1st from it.
needle-from-mark =
    { $where ->
        [before-left] { LIST($nths) } needle before the left half mark
        [past-right] { LIST($nths) } needle past the right half mark
        [left] { LIST($nths) } needle from the left half mark
        [right] { LIST($nths) } needle from the right half mark
       *[middle] middle needle, { LIST($nths) } from both half marks
    }
needles-from-marks = { LIST($places) }
