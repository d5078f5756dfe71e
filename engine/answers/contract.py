"""What each door answers, as types: the page's own types are made from these.

Every quantity has `value` in its `unit` (lengths in mm), `text` in the knitter's units and `other`
in the other ones. A name that is not here is not in the answer, and one that is here is, but for
those marked as not required.
"""

# Without postponed annotations, for what is not required can be asked of a type only so.
from typing import Any, Literal, NotRequired, TypedDict

Units = Literal["cm", "in"]
Level = Literal["good", "loose", "tight", "bad", "apart"]
PartName = Literal["cuff", "leg", "heel", "foot", "toe", "end"]
_Whence = TypedDict("_Whence", {"from": Literal["measured", "estimated"]})
_Way = TypedDict("_Way", {"from": Literal["swatch", "gauge", "yarn"]})


class Problem(TypedDict):
    """What is wrong at a field, and the way out; `offers` are texts that would mend it."""

    field: str
    message: str
    way_out: str
    offers: NotRequired[list[str]]


class Note(TypedDict):
    """A question or remark, beside a field where it has one."""

    field: str | None
    text: str


class Quantity(TypedDict):
    """A figure with its unit, in words of both systems."""

    value: float
    unit: str
    text: str
    other: str


class Measure(Quantity, _Whence):
    """A measure of the foot with its middle 80 %."""

    low: float
    high: float
    range_text: str
    words: str


class Reach(TypedDict):
    """The middle 80 % of a count."""

    low: int
    high: int
    words: str


class Pocket(TypedDict):
    """A heel or toe as it is turned."""

    needles: int
    left: int
    rows: int
    rows_each_way: int
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
    """The rounds after the toe."""

    rounds: int
    words: str


class Counts(TypedDict):
    """Every count of a sock; `end` where there are rounds after its toe."""

    needles: int
    cuff: CuffCount
    leg: LegCount
    heel: Pocket
    foot: FootCount
    toe: Pocket
    end: NotRequired[EndCount]


class Part(TypedDict):
    """What is knitted in a part, and how much of it."""

    part: PartName
    title: str
    count: int
    unit: str
    detail: str


class Place(_Whence):
    """The fit at one place; `stretch` is body over fabric.

    `chance` is how likely the verdict is right, and `sure` how it may be said for that.
    """

    place: str
    title: str
    body: Quantity
    fabric: Quantity
    stretch: float
    level: Level
    verdict: str
    sure: Literal["plain", "likely", "open"]
    chance: float
    words: str


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


class Colour(Amount):
    """One colour of the pair; `balls` is None where nobody said what a ball weighs."""

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
    """How a repeat of colours falls."""

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
    colours: list[Colour]
    enough: Enough | None
    stripes: Stripes | None


class Step(TypedDict):
    """One thing to do: by hand, some rounds, or a row of heel or toe."""

    part: PartName | Literal["waste", "finish"]
    title: str
    kind: Literal["do", "rounds", "row"]
    text: str
    sets: NotRequired[Literal["tension"]]
    makes: NotRequired[Literal["grafted", "washed"]]
    rounds: NotRequired[int]
    row: NotRequired[int]
    direction: NotRequired[Literal["right", "left"]]
    back: NotRequired[int | list[int] | None]
    knits: NotRequired[list[int]]
    hold: NotRequired[int | list[int] | None]
    in_work: NotRequired[int]


class Plan(TypedDict):
    """The whole sheet of counts; `sizes` and `measures` by name."""

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
    steps: list[Step]
    cautions: list[str]
    notes: list[Note]


class Fact(TypedDict):
    """A name and its text, "" where it is written in by hand."""

    name: str
    text: str


class Counted(TypedDict):
    """What is kept of a sock's counts: the version that counted, by part, and for what."""

    engine: str
    figures: dict[str, str]
    facts: list[Fact]


class Page(TypedDict):
    """A plan with its picture and links; `counts_link` holds no person, None where it cannot."""

    plan: Plan
    picture: str
    link: str
    counts_link: str | None
    counts_link_words: str
    counted: Counted


class Moved(TypedDict):
    """A count that is another by now."""

    title: str
    then: str
    now: str


class Again(TypedDict):
    """What is counted otherwise by now; no words where nothing is."""

    engine: str
    moved: list[Moved]
    words: str


class OffTheShelf(TypedDict):
    """A yarn of the shelf before and after a sock."""

    row: int
    name: str
    left: Quantity
    after: str
    likely: bool


class Used(TypedDict):
    """What a sock took off the shelf."""

    takes: Quantity
    yarns: list[OffTheShelf]


class PocketPlace(TypedDict):
    """A heel or toe on the cylinder; `first_slot` is its needle 1, from the left half mark."""

    needles: int
    first_slot: int
    left: int
    rows: int


class _Due(TypedDict):
    part: PartName | Literal["waste", "finish"]
    title: str
    text: str
    tension: NotRequired[str]


class KnitDo(_Due):
    """One thing by hand; `makes` is how far the sock is once it is done."""

    kind: Literal["do"]
    sets: NotRequired[Literal["tension"]]
    makes: NotRequired[Literal["grafted", "washed"]]


class KnitRounds(_Due):
    """Rounds of the whole tube."""

    kind: Literal["rounds"]
    rounds: int


class KnitRow(_Due):
    """One row of heel or toe; needles are numbered from 1 in the pocket."""

    kind: Literal["row"]
    row: int
    direction: Literal["right", "left"]
    half: Literal["narrow", "widen"]
    back: int | list[int] | None
    knits: list[int]
    hold: int | list[int] | None
    in_work: int
    back_where: str | None
    hold_where: str | None
    remind: list[str]


KnitStep = KnitDo | KnitRounds | KnitRow


class Knit(TypedDict):
    """One sock as the counter at the machine follows it."""

    slots: int
    every: int | None
    half_marks: str
    pockets: dict[str, PocketPlace]
    parts: list[Part]
    words: str
    foot_rounds: int
    notes: list[Note]
    steps: list[KnitStep]
    counted: Counted


class CardPart(TypedDict):
    """A part of the card, with the rounds or rows that its boxes end with."""

    title: str
    figure: str
    words: str
    boxes: list[int]


class Card(TypedDict):
    """What a card to knit from says; `code_words` tell why there is no code."""

    title: str
    socks: list[str]
    parts: list[CardPart]
    bands: list[str]
    facts: list[Fact]
    code: str | None
    code_words: str


class Tag(TypedDict):
    """What goes with a finished pair."""

    facts: list[Fact]
    code: str | None
    code_words: str
    caution: str


class Code(TypedDict):
    """A link as a square code."""

    svg: str
    version: int
    across: int


class FootAlone(TypedDict):
    """What the foot tells before there is a plan."""

    measures: dict[str, Measure]
    notes: list[Note]


class ChartRow(TypedDict):
    """A foot of the table; None where heel and toe alone are longer."""

    label: str
    length: Quantity
    rounds: list[int | None]


class OwnRow(ChartRow):
    """The row of this very foot, to stand before the row `at`."""

    at: int


class OwnColumn(TypedDict):
    """The column of this fabric, or the nearest to it."""

    at: int
    exact: bool


class Chart(TypedDict):
    """A table over sizes."""

    title: str
    by: str
    head: str
    columns: list[Quantity]
    rows: list[ChartRow]
    taken: dict[str, str]
    own: OwnRow | None
    column: OwnColumn | None
    assumptions: list[str]
    csv: str


class Reason(TypedDict):
    """How a place of a candidate would be felt."""

    place: str
    title: str
    value: float
    level: Level
    verdict: str
    words: str
    discomfort: float


class Candidate(TypedDict):
    """A cylinder with a yarn at a mark; `choose` holds the groups of a request that adopt it."""

    rank: int
    slots: int
    cylinder: str | None
    yarn: str
    mark: str | None
    left: Quantity | None
    verdict: Literal["fits well", "can be worn", "does not fit"]
    score: float
    lacks: str | None
    swatch_first: bool
    stitches: Quantity
    rounds: Quantity
    tube: Quantity
    ball: Quantity
    reasons: list[Reason]
    choose: dict[str, Any]


class Wanted(TypedDict):
    """What would fit."""

    words: str
    slots: NotRequired[int]
    yarn: NotRequired[str]
    mark: NotRequired[str]
    stitches: NotRequired[Quantity]
    rounds: NotRequired[Quantity]


class Shelf(TypedDict):
    """A shelf, ranked: the `best` of all, and the best of each of the `yarns`."""

    words: str
    fits: bool
    tried: int
    best: list[Candidate]
    yarns: list[Candidate]
    wanted: list[Wanted]
    assumptions: list[str]
    notes: list[Note]


class Opened(TypedDict):
    """What a link holds."""

    request: dict[str, Any]


class Readings(TypedDict):
    """What was typed, read back."""

    readings: dict[str, Quantity]
    errors: list[Problem]


class RequestField(TypedDict):
    """A field of a request."""

    name: str
    kind: str
    echoed: bool


class RequestList(TypedDict):
    """A list of rows."""

    name: str
    most: int


class FieldList(TypedDict):
    """Every field of a request."""

    fields: list[RequestField]
    lists: list[RequestList]


class Refusal(TypedDict):
    """What any door answers where something is in the way."""

    errors: list[Problem]


# By the name that a call has in `do`.
DOORS: dict[str, type] = {
    "plan": Plan,
    "page": Page,
    "knit": Knit,
    "again": Again,
    "used": Used,
    "card": Card,
    "tag": Tag,
    "code": Code,
    "foot": FootAlone,
    "chart": Chart,
    "shelf": Shelf,
    "open": Opened,
    "read": Readings,
    "fields": FieldList,
}
