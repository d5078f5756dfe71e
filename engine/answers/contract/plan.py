"""The sheet of counts: the door `plan`."""

from typing import Literal, NotRequired, TypedDict

from engine.answers.contract.foot import Measure, Place
from engine.answers.contract.shown import Level, Note, Part, PartName, Quantity, Reach, Units

_Way = TypedDict("_Way", {"from": Literal["swatch", "gauge", "yarn"]})


class Pocket(TypedDict):
    """A heel or toe as it is turned; `manner` tells how it differs from the usual."""

    needles: int
    left: int
    rows: int
    rows_each_way: int
    words: str
    manner: NotRequired[str]


class BareToe(TypedDict):
    """A toe for which nothing is knitted at the machine."""

    kind: str
    words: str


class PocketChoice(TypedDict):
    """A heel or toe beside the planned one, and what would come of it."""

    needles: int
    left: int
    rows: int
    girth: Quantity
    foot_rounds: int
    chosen: bool
    stretch: float | None
    verdict: str
    level: Level | Literal[""]
    words: str


class Band(TypedDict):
    """Rounds of a leg at one tension."""

    rounds: int
    from_round: int
    to_round: int
    mark: float | None
    stitches: Quantity
    from_height: Quantity
    to_height: Quantity
    words: str


class CuffCount(TypedDict):
    """The cuff of the counts."""

    kind: str
    rounds: int
    needles: int
    words: str


class LegCount(TypedDict):
    """The leg of the counts; `bands` where it is shaped."""

    rounds: int
    words: str
    bands: list[Band]


class FootCount(TypedDict):
    """The foot rounds, and before they were rounded."""

    rounds: int
    exact: float
    words: str


class EndCount(TypedDict):
    """The rounds after the toe, or before it."""

    rounds: int
    words: str


class Counts(TypedDict):
    """Every count of a sock; `end` where there are rounds after its toe."""

    needles: int
    cuff: CuffCount
    leg: LegCount
    heel: NotRequired[Pocket]
    foot: FootCount
    before_toe: NotRequired[EndCount]
    toe: Pocket | BareToe
    end: NotRequired[EndCount]


class Observation(TypedDict):
    """A tube that says something of the fabric."""

    field: str
    mark: float | None
    stitches: Quantity | None
    rounds: Quantity | None
    share: float
    off: float
    words: str


class MarkForBall(TypedDict):
    """The mark that suits the ball of the foot; None where it is too far to be known."""

    mark: float | None
    low: float | None
    high: float | None
    use: str | None
    words: str


class Fabric(_Way):
    """The fabric, and how it is known; `keep` is sock one as a row of swatches, but its sizes."""

    stitches: Quantity
    rounds: Quantity
    loop_length: Quantity
    swatch_first: bool
    guessed: list[Literal["stitches", "rounds"]]
    mark: float | None
    line: str | None
    mark_for_ball: MarkForBall | None
    observations: list[Observation]
    keep: dict[str, str] | None
    words: str


class Amount(TypedDict):
    """An amount of yarn."""

    metres: Quantity
    grams: Quantity


class Color(Amount):
    """One color of the pair; `balls` is None where nobody said what a ball weighs."""

    name: str
    sections: list[str]
    with_margin: Amount
    balls: int | None


class Enough(TypedDict):
    """Whether the yarn left is a sock."""

    probability: float
    level: Literal["yes", "maybe", "no"]
    words: str
    left: Quantity
    needed: Quantity


class WindOff(TypedDict):
    """What to wind off so that the stripes begin alike."""

    length: Quantity
    rounds: float
    within: Quantity
    by_eye: bool


class Stripes(TypedDict):
    """How a repeat of colors falls."""

    rounds_per_repeat: float
    wind_off: WindOff
    words: str


class Yarn(Amount):
    """The yarn of a pair; None where nothing was told of it."""

    words: str
    with_margin: Amount
    sections: dict[str, Amount]
    stitches: dict[str, int]
    waste: Amount
    colors: list[Color]
    enough: Enough | None
    stripes: Stripes | None


class Step(TypedDict):
    """One thing to do: by hand, some rounds, or a row of heel or toe.

    A row for a page has no `title` and no `text`.
    """

    part: PartName | Literal["waste", "between", "finish"]
    title: NotRequired[str]
    kind: Literal["do", "rounds", "row"]
    text: NotRequired[str]
    sets: NotRequired[Literal["tension", "color"]]
    makes: NotRequired[Literal["grafted", "washed"]]
    rounds: NotRequired[int]
    row: NotRequired[int]
    direction: NotRequired[Literal["right", "left"]]
    back: NotRequired[int | list[int] | None]
    knits: NotRequired[list[int]]
    hold: NotRequired[int | list[int] | None]
    in_work: NotRequired[int]
    joins: NotRequired[int]


class PairWish(TypedDict):
    """Sock two as it may be: within `off` of the foot's length, `apart` from sock one, 4 in 5."""

    like: Literal["foot", "between", "sock one"]
    rounds: int
    chosen: bool
    off: Quantity
    apart: Quantity
    words: str


class Pair(TypedDict):
    """Sock one's own length, by its measure and by what else is known, and what sock two may be."""

    one: Quantity
    wishes: list[PairWish]
    why: str | None


class OffMachine(TypedDict):
    """What sock one's foot should measure before the wash, 4 in 5; None where nobody knows."""

    length: Quantity | None
    low: Quantity | None
    high: Quantity | None
    words: str


class Plan(TypedDict):
    """The whole sheet of counts; `sizes` and `measures` by name, a heel's where there is one."""

    units: Units
    counts: Counts
    parts: list[Part]
    measures: dict[str, Measure]
    fabric: Fabric
    sizes: dict[str, Quantity]
    fit: list[Place]
    yarn: Yarn
    range: dict[str, Reach]
    choices: dict[str, list[PocketChoice]]
    pair: Pair | None
    off_machine: OffMachine | None
    steps: list[Step]
    cautions: list[str]
    origin: str
    notes: list[Note]
