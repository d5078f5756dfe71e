### What each version brought, the newest first: whose counts move, and by how much.

turns-title = A leg without a line
turns = A shaped leg turns the tension by half a mark at a time. Its rounds may move by a few.
loose-ankle = A loose ankle offers a tighter leg at one tap. No count moves.
weights = Say which weights your machine has. A rib can go on over the instep. No count moves.

sets-published = From one plan, instructions for many sizes: to print, or to save.
measured-far = A sheet to print measures a foot that is far away.
book-title = The book, the tag, and the card
book-redrawn = The book shows what is next for each wearer, and how long a pair took at the machine.
paper-redrawn = Tag and card are written on as they will be printed.
sent-counts = A plan you send now brings its counts along. They show at once, and the other phone then checks them.
bare-links = A link without the foot no longer says how the sock fits. No count moves.

now-title = How sure the counts are
wash = A swatch not washed yet is taken to change a little less than your others did. A foot may move by one round.
wish = Ask for a snug or a loose sock, and for room to grow in a child’s. Without either, no count moves.
wish-leg = A wish changes the suggested tension mark and a shaped leg. Foot rounds stay.
shoe-size = A foot guessed from a shoe size has a wider range. Foot rounds stay; a shaped leg may move by one round.
verdicts = The fit says how sure it is: comfortable, likely snug, or unknown. No count moves.
ranges = Ranges now include how much your next sock may differ from your last, so they are wider.
sock-one = Sock one counts as one more of your swatches. Sock two’s foot rounds move by half a round on average, by three at most.
pair = Sock two can be knitted to the foot, like sock one, or between, and you see what to expect. Without a choice, no count moves.
heavy = Where a heavy wearer’s guessed girths matter, you are asked for the weight. No count moves.
hung = A swatch keeps the weight hung on it, and a plan warns when the sock gets another. A ball may weigh less than its label says.
enough = The shelf says whether the yarn there is enough for this pair. No count moves.
weighed-sock = A finished sock that you weighed shows how much yarn the next one takes.
came-out = Below your knitted pairs, see how your socks came out.
taught = With three finished pairs or more, your next plan goes by how your socks came out. Foot rounds may move by one or two.
off-machine = With a swatch measured before and after the wash, you see what sock one should measure off the machine. No count moves.
swatches = With two or more swatches, a count may move by one. With one, or with a gauge you gave, none moves.
small-feet = Small feet of nobody in particular are guessed between child’s and adult’s. Measured feet keep theirs to within a round.
asked = Text that may be a slip, such as 93/8, is asked about. No count moves.
grams = With inches, too, yarn is weighed in grams. Weights you wrote before stay in ounces.
ways = More cuffs, heels and toes: a set-up edge, picot hem, mock rib hem, two needles at first. No count moves.
flap = A heel that begins with a flap gives a high instep room, and leaves the instep its needles. Without one, no count moves.
instep = You can measure a high instep and see whether the sock goes over it. No count moves.
half = With a heel or toe not on half the needles, a pair’s yarn may move by 0.4 %. No count moves.

alike-title = Heel and toe alike
custom = Heel and toe depart from custom only where they would not be comfortable. Measured heels and toes may move by 2 to 8 needles, foot rounds too.
grafting = The end for grafting is as long as its stitches need. A pair’s yarn grows by up to 10 cm, or 70 cm off half the needles.
leg-in-links = A shaped leg is part of every link and code. No count moves.

fair-title = At the machine and at the fair
machine = A counter that keeps every count, a book of wearers, cards, codes, and your own shelf. No count moves.

fit-title = A fit worth trusting
bands = Swatches at two marks set the mark for each band of a long leg. Without them, a band may move by a round.
heel-fit = Where no heel on half the needles suits a measured heel, it takes more or fewer. Other socks keep their counts.
two-feet = Second readings, both feet, several swatches and weighed yarn make the counts surer. Without them, no count moves.

table-title = A table of sizes
table-lines = Foot rounds for many feet, and sock one corrects sock two. No count moves.

first-title = First version
first-lines = From a foot, a cylinder and a fabric to every count of a cuff-down sock.
