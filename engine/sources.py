"""Every figure that the calculator takes from somewhere else, once, with where it is from.

Each name is a `Cited` number: it computes like a float and carries its source in words. Where no
published source is known the figure says so; such a figure is an assumption that a measured swatch
or a measured foot replaces.

Figures about people live in `population_table` (made from survey data by a script in `build/`),
figures about shoe sizes in `shoe_size`; both cite their own sources where they stand.
"""

from __future__ import annotations

TRADE = "common practice, no published source"


class Cited(float):
    """A float with the source it was taken from, in `source`."""

    source: str

    def __new__(cls, value: float, source: str) -> Cited:
        """Make the number; `source` may not be empty."""
        if not source.strip():
            raise ValueError("a figure without a source")
        number = super().__new__(cls, value)
        number.source = source
        return number


# --- Plain knitted fabric -------------------------------------------------------------------------
_MUNDEN = (
    "D. L. Munden, The geometry and dimensional properties of plain-knit fabrics, J. Textile "
    "Institute 50 (1959) T448; fully relaxed constants as in GATE 2015 Textile Engineering, q. 54"
)
COURSES_TIMES_LOOP = Cited(5.5, _MUNDEN)  # rounds per cm times loop length in cm
WALES_TIMES_LOOP = Cited(4.2, _MUNDEN)  # stitches per cm times loop length in cm
LOOPS_TIMES_LOOP_SQUARED = Cited(23.1, _MUNDEN)  # loops per cm2 times (loop length in cm)2
SHAPE_SD = Cited(0.06, TRADE)  # relative, how far plain knit strays from Munden's shape
USUAL_SHAPE = tuple(Cited(x, TRADE) for x in (1.0, 1.7))  # beyond, two figures are swapped
USUAL_PULL = tuple(Cited(x, TRADE) for x in (1.05, 3.5))  # what a pulled tube can be over at rest
TIGHTNESS_SOCK = Cited(
    1.1,
    "sqrt(tex)/mm for a sock fabric of 30 stitches and 39 rounds per 10 cm in 238 tex, by the "
    "Munden constants above; the trade's 8 in tube on 60 slots gives the same",
)
TIGHTNESS_LOOSE = Cited(0.9, TRADE)  # below it, fabric is sleazy
TIGHTNESS_FIRM = Cited(
    1.6, "industrial plain knit, upper end: Spencer, Knitting Technology; from memory"
)

# --- Yarn -----------------------------------------------------------------------------------------
USUAL_SOCK_YARN_TEX = Cited(
    1e5 / 412.0, "middle of 400 to 425 m per 100 g: " + TRADE + "; a CYC category 1 yarn"
)
TAIL = Cited(200.0, TRADE)  # mm of yarn left at each end, and in the needle after grafting
PLAIN_BEFORE_HEEL = Cited(  # rounds under a leg that is ribbed; 5 and 20 are published too
    10.0, "needlesofsteel.org.uk/knitpatterns/pat-csm03.html, angoravalley.com: 10 rounds"
)
TOE_BY_HAND = Cited(  # mm of a toe that is finished by hand
    50.0, "katyafrankel.com/2015/12/how-to-shape-star-toe-sock-knitting.html: 2 in or 5 cm"
)
YARN_MARGIN = Cited(0.10, TRADE)  # what to have over
SURE = Cited(0.97, TRADE)  # how likely yarn must be enough, to say yes
SCALE = Cited(1.0, TRADE)  # g, a kitchen scale (one standard deviation, as are all below)
TEX_AS_TOLD = Cited(0.05, TRADE)  # relative, a yarn's metres per 100 g against its label
TEX_NOT_TOLD = Cited(0.12, TRADE)  # relative, sock yarns against the usual one
LOOP_BY_STATE = Cited(
    0.034, _MUNDEN + "; sqrt(23.1 / 21.6), fully relaxed against wet relaxed, - 1"
)
BALL_LIGHTEST = Cited(0.92, TRADE)  # over what its label says; the heaviest are 4 % over it
LABEL_STEP = Cited(25.0, TRADE)  # g, labels say multiples of it: another weight was weighed
REPEAT_EVEN = Cited(0.02, TRADE)  # relative, one repeat of colors against the next
ROUND_SEEN = Cited(0.5, TRADE)  # rounds, where a color is seen to begin

# --- Ease and stretch -----------------------------------------------------------------------------
LENGTH_EASE_MOST = Cited(0.15, TRADE)
GROWING_ROOM_MOST = Cited(30.0, "mm, a child's growth in two to three years; " + TRADE)
GROWN_INTO = Cited(0.5, "years that a child's sock has room for; our choice, no published source")
LENGTH_EASE = Cited(0.04, TRADE + " (2 to 6 %)")
LENGTH_EASE_USUAL = tuple(Cited(x, TRADE) for x in (0.02, 0.06))
BALL_STRETCH = tuple(Cited(x, TRADE) for x in (1.00, 1.05, 1.18, 1.25))
BALL_STRETCH_WANTED = Cited(1.10, TRADE)
HEEL_STRETCH = tuple(Cited(x, TRADE) for x in (1.00, 1.08, 1.28, 1.38))
LEG_STRETCH = tuple(Cited(x, TRADE) for x in (0.90, 1.02, 1.25, 1.40))
LEG_STRETCH_WANTED = Cited(1.135, "middle of what is comfortable, 1.02 to 1.25: " + TRADE)
CUFF_GIVE = tuple(Cited(x, TRADE) for x in (0.0, 0.08, 0.65, 0.85))  # share of its give in use
GIRTH_RISE_MOST = Cited(1.0, TRADE)  # mm of girth to a mm of height; beyond it, ask
TURN_MARK = Cited(0.5, TRADE)  # of a tension mark, what the screw is turned at a time in a leg
TURN_STITCH = Cited(0.05, "about half a mark, where marks are not known; " + TRADE)  # of a stitch
TURN_ROUNDS = Cited(2, TRADE)  # fewest between two turns
BANDS_MOST = Cited(40, TRADE)  # of a leg
SAME_PLACE = Cited(20.0, TRADE)  # mm of height, two girths of one place
CLOSER = Cited(0.03, "our choice; " + TRADE)  # of stretch, what a wish for snug or loose moves
HEEL_STRETCH_WANTED = Cited(
    1.18,
    "what the customary heel (a third of its needles left) gives an average woman (ANSUR II) on "
    "60 slots at 7.5 stitches and 9.6 rounds per inch; " + TRADE,
)
PLAIN_PULL = Cited(1.8, "middle of 1.6 to 2 for plain knit: " + TRADE)  # pulled over relaxed girth
HEM_PULL_SHARE = Cited(0.92, TRADE)  # a hung hem is double and gives less
MOCK_RIB_PULL_SHARE = Cited(0.96, TRADE)
RIB_RELAXED_WIDTH = Cited(0.70, "1x1 rib relaxes to about 70 % of its width: " + TRADE)
GOES_ON_EASILY_SHARE = Cited(0.93, TRADE)  # of the pull: up to here a sock goes on without a tug

# --- Ranking a shelf ------------------------------------------------------------------------------
_CHOICE = "our choice; " + TRADE
FIRMNESS = (TIGHTNESS_LOOSE, Cited(1.0, _CHOICE), Cited(1.4, _CHOICE), TIGHTNESS_FIRM)
# What weighs less than a whole place: what a stitch of the leg's own, or habit, would cure.
DISCOMFORT_LESSER = Cited(0.5, _CHOICE)  # ankle, calf and firmness

# --- How sure readings are (one standard deviation) -----------------------------------------------
TAPE_ON_LENGTH = Cited(2.5, TRADE)  # mm, a foot length read on a rule or tape
TAPE_ON_GIRTH = Cited(3.0, TRADE)  # mm, a tape round a foot or leg
READINGS_APART = Cited(
    2.8,
    "times the sd of one reading, wider than which two readings of one thing come 1 time in 20: "
    "repeatability limit, 1.96 sqrt 2 rounded, ISO 5725-6:1994; from memory",
)
FEET_APART = Cited(8.0, TRADE)  # mm of length between the feet of a person, beyond is unusual
FEET_GIRTHS_APART = Cited(0.1, TRADE)  # share of a girth, as above
TOLD_STATURE = Cited(10.0, TRADE)  # mm, a person's height as told
TOLD_WEIGHT = Cited(1.5, TRADE)  # kg, a person's weight as told
TAPE_ON_SWATCH = Cited(1.5, TRADE)  # mm, a rule along a flat tube
TAPE_ON_SOCK = Cited(3.0, TRADE)  # mm, a rule along a sock's foot, from heel to toe
MISCOUNTED = Cited(0.15, TRADE)  # rounds^2, of a swatch: now and then one is counted wrong
SOCK_TO_SWATCH = Cited(0.02, TRADE)  # relative, the next tube at the same mark
_ASSUMED = "1.4 to 3 % is what knitters tell; assumed, no published source"
SCATTER_USUAL = Cited(0.019, _ASSUMED)  # relative, one tube against the next, before any is seen
SCATTER_WEIGHT = Cited(3, _ASSUMED)  # degrees of freedom: four knitters in five have 1.3 to 4.3 %
SWATCH_HABIT = Cited(0.0125, "socks against swatches of one mark; assumed, no published source")
HUNG_ALIKE = Cited(0.1, "our choice; " + TRADE)  # relative, two weights hung that count as one
WASH_AS_BEFORE = Cited(0.02, TRADE)  # relative, one wash against another of the same yarn
WASH_NOT_KNOWN = Cited(0.06, TRADE)  # relative, what a first wash may do to a tube
FAR_APART = Cited(3.5, TRADE)  # standard deviations between two readings, to ask about it
# relative, stitches or rounds per length told without a swatch: at best one swatch's, written short
GAUGE_AS_TOLD = Cited(0.03, TRADE)
STITCHES_FROM_YARN = Cited(0.08, TRADE)  # relative, from the yarn's number alone
ROUNDS_FROM_YARN = Cited(0.09, TRADE)
LENGTH_FROM_SOCK = Cited(6.0, TRADE)  # mm, the foot a sock of given length is meant for
TO_80_PERCENT = Cited(
    1.2816,
    "standard normal, 90th percentile: NIST/SEMATECH e-Handbook, section 1.3.6.7.1",
)
UPPER_1_PERCENT = Cited(
    2.3263,
    "standard normal, 99th percentile: NIST/SEMATECH e-Handbook, section 1.3.6.7.1",
)

# --- Counts by custom -----------------------------------------------------------------------------
SLOTS_USUAL = tuple(  # of cylinders that are about
    Cited(x, TRADE) for x in (48, 54, 60, 64, 72, 80, 84, 96, 100)
)
SLOTS_FEWEST, SLOTS_MOST = Cited(24, TRADE), Cited(120, TRADE)
HEM_ROUNDS = Cited(20, TRADE)
HEM_ROUNDS_MOST = Cited(40, TRADE)
PICOT_ROUNDS = tuple(Cited(x, TRADE) for x in (10, 20))  # fewest and most of a picot hem, in all
LEG_OVER_FOOT = Cited(
    0.54, "50 leg rounds at 9.6 per inch under an average woman's 246 mm foot: " + TRADE
)
FOOTIE_ROUNDS, FOOTIE_ROUNDS_MOST = Cited(4, TRADE), Cited(6, TRADE)  # of its leg
WASTE_ROUNDS = Cited(10, TRADE)
STRING_ROUNDS = Cited(20, TRADE)  # of scrap between two socks, one of them a ravel cord
WEIGHT_ROWS = Cited(6, TRADE)  # of heel or toe, after which its weight is moved up
KNEE_HEIGHT_OVER_FOOT = Cited(
    1.73, "tibial height over foot length, mean of the men, 1.78 of the women: ANSUR II 2012"
)
CALF_REACHED = Cited(0.85, TRADE)  # of its height, from where the calf's girth counts
FLAP_ROWS, FLAP_ROWS_MOST = Cited(8, TRADE), Cited(40, TRADE)  # of a heel's flap: usual, most
LEFT_SHARES = tuple(
    Cited(x, TRADE) for x in (1 / 6, 1 / 3, 1 / 2)
)  # of heel needles: least, usual, most
HEEL_SHARE_MOST = Cited(2 / 3, TRADE)  # of the slots, in the heel or toe
HEEL_SHARE_LEAST = Cited(1 / 3, TRADE)  # of the slots, in a heel that we choose
TOES_ROUND_OVER_BREADTH = Cited(
    2.14, "an ellipse a quarter as thick as it is broad; our derivation, no published source"
)
TOE_ROUND_OVER_BREADTH = Cited(
    1.77,
    "halfway along a toe, so that the customary third (30 to 10 on 60 slots at 7.5 stitches per "
    "inch) suits toes 84 mm broad at a ball's usual stretch; our derivation, no published source",
)
SWATCH_ROUNDS_FEWEST = Cited(40, TRADE)
CALF_HEIGHT_OVER_FOOT = Cited(
    1.37,
    "mean of 329 people of 14 to 19 years: Snyder et al. 1977, UM-HSRI-77-17 (calf circumference "
    "height over foot length); 1.27 at 6 to 9 years",
)
ANKLE_HEIGHT_OVER_FOOT = Cited(
    0.43,
    "the outer ankle bone stands at 0.26 (women) to 0.27 (men) of the foot length: ANSUR II 2012; "
    "the leg is slimmest about 4 cm above: " + TRADE,
)
BALL_OVER_FOOT = Cited(
    0.74, "ball of foot length over foot length, mean of the women and of the men: ANSUR II 2012"
)
