"""What is usual: estimates of the measures of a foot and leg that were not taken.

Measures of one body go together: a long foot is likely a wide one. Among people alike in sex they
are close to jointly normal, so what is known bends the mean and narrows the spread of what is not:

    mean = m + B (k - m_k),   variance = V - B V_k + B diag(sd_k^2) B',   B = V_xk V_kk^-1

with m and V from a survey, k the known values and sd_k how unsure each reading is. The last term
passes the error of tape or shoe size on to the estimate.

Adults come from soldiers (ANSUR II 2012; Gordon et al. 2014, NATICK/TR-15/007), of known or unknown
sex. Children never come from adults: their length, ankle and calf come from the US child survey of
1975-77 (Snyder et al. 1977, UM-HSRI-77-17), computed in logarithms because children spread in
proportion; an estimate is then a median. That survey took no girth of the foot: a knitters' rule of
thumb stands in, with a wide spread, and the words say "coarser".

A person is a child if under 18, or said to be one. If neither is given, both a small child and an
adult are supposed, each as much as the evidence weighs (Bayes), and the estimate is the mean of the
mixture with its whole spread:

    share of the child = c C(x) / (c C(x) + (1 - c) A(x))

where x is the foot's length, or without it the stature, a girth or the weight; C and A are how
often the surveys have such a one among small children and among adults, and c is how often a child
is meant. So no estimate jumps as a foot grows: at most 6 mm with a millimetre of length alone.

Limits: soldiers are fitter than most people and mostly 18 to 58 years old; the children are
American and of the 1970s. Under 2 years nobody was measured.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache, lru_cache
from typing import Literal, NamedTuple, TypeAlias

from engine.people import measures
from engine.people import population_table as table
from engine.say import messages as say
from engine.say.message import Message
from engine.sources import TO_80_PERCENT, Cited

MEASURES = measures.ESTIMATED
KNOWNS = (*MEASURES, "stature", "weight")  # mm, weight in kg

ADULT_AGE = 18.0  # years
YOUNGEST = float(table.CHILD_AGES[0])  # years, of the child survey
ODD = 200  # a reading rarer than one in this many is worth asking about
RAREST = 5_000  # a survey of so many people cannot tell what is rarer

# --- The rule of thumb for children's feet -----------------------------------------------------
_GUIDELINE = "an editor's guideline of a hand-knitting magazine (sizing page of knitty.com)"
BALL_OVER_LENGTH = Cited(0.95, _GUIDELINE)
HEEL_OVER_BALL = Cited(1.35, _GUIDELINE)
# How far one foot strays from it, relative (one standard deviation): the adults' own spread of the
# ratio (4.5 %, 3.6 %), the guideline's miss on the adults' mean (2.4 %, 0.9 %), and 4 % for what
# changes as feet grow: breadth over length falls by 6 % from the age of 2 to that of 8.
_STRAYS = (
    "ANSUR II 2012 (ratios of adults) and Snyder et al. 1977 (breadth over length of children)"
)
BALL_STRAYS = Cited(0.065, _STRAYS)
HEEL_STRAYS = Cited(0.055, _STRAYS)
# --- A child or an adult, where nobody says so ----------------------------------------------------
CHILD_UNSAID = Cited(0.2, "those under 18 among all people: US Census 2020, rounded; from memory")
CHILD_CALLED_GROWN = Cited(
    0.05, "of those called a woman or a man whose age is not told; our choice, no published source"
)
ADULTS_SPREAD_MORE = Cited(
    1.15,
    "times the survey's spread: soldiers are taken from about 58 in tall on, so the smallest "
    "adults are rarer among them than elsewhere; our choice, no published source",
)
_LARGEST = 3.0  # our choice: 1 adult in 740
_CERTAIN = 1e-6  # a share of which this much is wanting moves nothing that anybody sees
_IN_THE_TENTH = 1.6449  # standard deviations: 1 in 20 normal draws lies beyond (any table)
_SAID = 0.05  # a share below which it is not worth speaking of
# --------------------------------------------------------------------------------------------------

Sex: TypeAlias = Literal["woman", "man"]
Who: TypeAlias = Literal["woman", "man", "either"]  # of whom a table is
Known: TypeAlias = Mapping[str, tuple[float, float]]  # measure: (value, sd of the reading)


class NothingKnown(Exception):
    """Raised where there is nothing to estimate a person from."""


@dataclass(frozen=True, slots=True)
class Estimate:
    """A measure nobody took: usual value and its standard deviation, mm, and who it comes from."""

    value: float
    sd: float
    people: Message


class Heavy(NamedTuple):
    """The heaviest tenth of adults, in kg: where it begins, and its middle."""

    begins: float
    middle: float


@dataclass(frozen=True)
class _People:
    """A group of people as figures; a logged measure is a logarithm in `means` and `spread`."""

    words: Message
    coarse_words: Message  # of what a rule of thumb stands in for
    names: tuple[str, ...]
    ages: tuple[float, ...]  # years, one row of `means` each; one age: means for all ages
    means: table.Rows
    spread: table.Rows  # covariance, whole
    logged: frozenset[str]
    coarse: frozenset[str] = frozenset()  # measures that a rule of thumb stands in for


@dataclass(frozen=True)
class _Line:
    """One measure from the known ones: its place, their coefficients in order, variance left."""

    name: str
    place: int
    coefficients: tuple[float, ...]
    variance: float
    logged: bool
    people: Message


def _whole(triangle: table.Rows) -> table.Rows:
    """The full matrix of a lower triangle."""
    size = range(len(triangle))
    return tuple(tuple(triangle[max(i, j)][min(i, j)] for j in size) for i in size)


def _adults(key: Who) -> _People:
    women, men = (f"{table.PEOPLE[sex][0]:,}" for sex in ("woman", "man"))
    said = say.guessed_from_grown(who=key, women=women, men=men)
    return _People(
        words=said,
        coarse_words=said,
        names=table.ADULT_NAMES,
        ages=(0.0,),
        means=(table.ADULT_MEANS[key],),
        spread=_whole(table.ADULT_SPREADS[key]),
        logged=frozenset({"weight"}),
    )


def _children(
    key: Who, ages: tuple[float, ...], means: table.Rows, triangle: table.Rows
) -> _People:
    """Children with the two girths of the foot put in by the rule of thumb, errors independent.

    log ball = log length + log 0.95 + e, log heel = log ball + log 1.35 + f; so the ball goes with
    everything as the length does, and the heel as the ball does.
    """
    ball, heel = math.log(BALL_OVER_LENGTH), math.log(BALL_OVER_LENGTH * HEEL_OVER_BALL)
    spread = _whole(triangle)
    at = table.CHILD_NAMES.index("length")
    ball_variance = spread[at][at] + BALL_STRAYS**2
    beside = spread[at]
    column, until = (1, table.CHILD_UNTIL) if len(ages) > 1 else (2, table.AGELESS_UNTIL)
    told = {
        "number": f"{table.PEOPLE[key][column]:,}",
        "youngest": f"{YOUNGEST:.0f}",
        "oldest": f"{until - 1}",
    }
    return _People(
        words=say.guessed_from_children(who=key, **told),
        names=(*table.CHILD_NAMES, "ball_girth", "heel_girth"),
        ages=ages,
        means=tuple((*row, row[at] + ball, row[at] + heel) for row in means),
        spread=(
            *((*row, row[at], row[at]) for row in spread),
            (*beside, ball_variance, ball_variance),
            (*beside, ball_variance, ball_variance + HEEL_STRAYS**2),
        ),
        logged=frozenset(KNOWNS),
        coarse=frozenset({"ball_girth", "heel_girth"}),
        coarse_words=say.guessed_by_thumb(who=key, **told),
    )


def _unmeasured(people: _People) -> _People:
    """The same figures for those under the survey's ages, in words that say so."""
    nobody = say.none_so_young(years=f"{YOUNGEST:.0f}")
    words, coarse_words = (
        say.in_turn(sentences=(nobody, said)) for said in (people.words, people.coarse_words)
    )
    return replace(people, words=words, coarse_words=coarse_words)


_SEXES: tuple[Sex, ...] = ("woman", "man")
_EITHER: Literal["either"] = "either"
_GROUPS: dict[tuple[str, str], _People] = {}
for _key in (*_SEXES, _EITHER):
    _GROUPS["adult", _key] = _adults(_key)
    _GROUPS["child", _key] = _children(
        _key, table.CHILD_AGES, table.CHILD_MEANS[_key], table.CHILD_SPREADS[_key]
    )
    _small = _children(_key, (0.0,), (table.AGELESS_MEANS[_key],), table.AGELESS_SPREADS[_key])
    _GROUPS["small child", _key] = _small
    _GROUPS["baby", _key] = _unmeasured(_small)

# Which known measure tells a child from an adult when the age is not given: the first one there is.
_TELLS = ("length", "stature", *MEASURES[1:], "weight")
_Shares: TypeAlias = dict[tuple[str, str], float]  # people, a key of `_GROUPS`: how much they count


def _shares(known: Known, sex: Sex | None, age: float | None, child: bool) -> _Shares:
    """Which people to ask, and how much each counts; 1 in sum."""
    key = sex or "either"
    if age is not None:
        group = "adult" if age >= ADULT_AGE else "child" if age >= YOUNGEST else "baby"
        return {(group, key): 1.0}
    if child:
        return {("small child", key): 1.0}
    grown, small = ("adult", key), ("small child", key)
    name = next((name for name in _TELLS if name in known), None)
    share = 0.0 if name is None else _share_of_child(name, *known[name], sex)
    if share < _CERTAIN or share > 1 - _CERTAIN:
        return {small if share > 0.5 else grown: 1.0}
    return {grown: 1 - share, small: share}


@lru_cache(maxsize=256)  # asked anew at each keystroke, and for estimate and oddness alike
def _share_of_child(name: str, value: float, sd: float, sex: Sex | None) -> float:
    """How likely a small child is meant, by one measure read with this standard deviation.

    A measure larger than nearly all adults' tells as much as one as large as theirs: children's,
    which spread in proportion, would be the likelier again far above all of them.
    """
    prior = CHILD_UNSAID if sex is None else CHILD_CALLED_GROWN
    sexes = ("woman", "man") if sex is None else (sex,)
    value = min(value, max(_largest(one, name) for one in sexes))
    child = _log_density("small child", sex or "either", name, value, sd)
    adults = [_log_density("adult", one, name, value, sd) for one in sexes]
    most = max(child, *adults)  # taken out: far from all of them each density is 0
    young = prior * math.exp(child - most)
    grown = (1 - prior) * sum(math.exp(one - most) for one in adults) / len(adults)
    return young / (young + grown)


@cache
def _largest(sex: Sex, name: str) -> float:
    """A measure so many standard deviations above the adults' mean that few have a larger one."""
    people = _GROUPS["adult", sex]
    place = people.names.index(name)
    above = people.means[0][place] + _LARGEST * math.sqrt(people.spread[place][place])
    return math.exp(above) if name in people.logged else above


def _log_density(group: str, key: str, name: str, value: float, sd: float) -> float:
    """The logarithm of how densely people of a group stand about a value (but for a constant)."""
    people = _GROUPS[group, key]
    place = people.names.index(name)
    apart, variance, stretch = value - people.means[0][place], people.spread[place][place], 0.0
    if name in people.logged:  # the density is of the value itself
        apart, sd, stretch = math.log(value) - people.means[0][place], sd / value, math.log(value)
    spread = math.sqrt(variance + sd * sd) * (ADULTS_SPREAD_MORE if group == "adult" else 1.0)
    return -0.5 * (apart / spread) ** 2 - math.log(spread) - stretch


def _exact(age: float) -> float:
    """Age in years; a whole number is taken for years completed, so half a year is added."""
    return age + 0.5 if age == int(age) else age


def _means(people: _People, age: float | None) -> table.Row:
    """Every measure's mean at this age: straight between the ages of the table, level outside."""
    if len(people.ages) == 1 or age is None:
        return people.means[0]
    return _means_at(people, _exact(age))


def _means_at(people: _People, years: float) -> table.Row:
    """Every measure's mean at exactly so many years."""
    place = max(people.ages[0], min(years, people.ages[-1]))
    after = next(i for i in range(1, len(people.ages)) if place <= people.ages[i])
    low, high = people.ages[after - 1], people.ages[after]
    part = (place - low) / (high - low)
    return tuple(
        a + part * (b - a)
        for a, b in zip(people.means[after - 1], people.means[after], strict=True)
    )


def growth(length: float, sex: Sex | None, age: float, years: float) -> float:
    """Return by how many mm a child's foot of `length` mm grows in so many years, as the means do.

    age: in years; under `YOUNGEST` as at that age, where feet grow faster.
    """
    people = _GROUPS["child", sex or "either"]
    now = max(_exact(age), YOUNGEST)
    at = people.names.index("length")
    by = _means_at(people, now + years)[at] - _means_at(people, now)[at]
    return length * (math.exp(by) - 1)


def _swept(spread: table.Rows, places: tuple[int, ...]) -> list[list[float]]:
    """The covariance with `places` eliminated, by Gauss and Jordan.

    Row k of such a place then holds the coefficient of k in every column that was not eliminated;
    where neither row nor column was stands the covariance that is left.
    """
    rows = [list(row) for row in spread]
    for k in places:
        pivot = rows[k][k]
        swept = [x / pivot for x in rows[k]]
        for i, row in enumerate(rows):
            if i != k:
                factor = row[k]
                rows[i] = [x - factor * y for x, y in zip(row, swept, strict=True)]
        rows[k] = swept
    return rows


@cache
def _lines(group: tuple[str, str], known: tuple[str, ...]) -> tuple[_Line, ...]:
    """How the weight and each of MEASURES follow from `known`, where they are not in it."""
    people = _GROUPS[group]
    places = tuple(people.names.index(name) for name in known)
    rows = _swept(people.spread, places)
    lines = []
    for name in (*MEASURES, "weight"):
        if name in known:
            continue
        place = people.names.index(name)
        coefficients = tuple(rows[k][place] for k in places)
        leans_on = {n for n, c in zip(known, coefficients, strict=True) if abs(c) > 1e-9}
        coarse = people.coarse & {name, *leans_on}
        lines.append(
            _Line(
                name=name,
                place=place,
                coefficients=coefficients,
                variance=rows[place][place],
                logged=name in people.logged,
                people=people.coarse_words if coarse else people.words,
            )
        )
    return tuple(lines)


def estimate(
    known: Known, sex: Sex | None, age: float | None, child: bool = False, *, anybody: bool = False
) -> dict[str, Estimate]:
    """Estimate every one of MEASURES that is not known.

    known: name out of KNOWNS -> (value, sd of that reading), positive, in mm or kg; age in years (a
    whole number counts as years completed); `child` tells of one whose age is not known. Raises
    NothingKnown when there is nothing to go by: no measure, and not the age of a child from 2 years
    on; ValueError for a name not in KNOWNS. With `anybody`, nothing to go by gives everybody's.
    """
    if not known.keys() <= set(KNOWNS):
        raise ValueError(f"not a measure: {sorted(known.keys() - set(KNOWNS))}")
    shares = _shares(known, sex, age, child)
    if not (known or anybody) and ("child", sex or "either") not in shares:
        raise NothingKnown
    return {**_estimated(tuple(known.items()), tuple(shares.items()), age)}


@lru_cache(maxsize=64)  # a foot is typed once, and looked at with every yarn
def _estimated(
    told: tuple[tuple[str, tuple[float, float]], ...],
    shares: tuple[tuple[tuple[str, str], float], ...],
    age: float | None,
) -> dict[str, Estimate]:
    """`estimate` for people already chosen, with how much each counts."""
    known = dict(told)
    found = [(share, _estimates(known, group, age)) for group, share in shares]
    wanted = [name for name in MEASURES if name not in known]
    if len(found) == 1:
        return {name: found[0][1][name] for name in wanted}
    return {name: _mixed([(share, one[name]) for share, one in found]) for name in wanted}


def heavy(known: Known, sex: Sex | None, age: float | None, child: bool) -> Heavy | None:
    """Return where the heaviest tenth of adults begins; None of children, and where it is known.

    `known` as for `estimate`: of those alike in it.
    """
    group = ("adult", sex or "either")
    if "weight" in known or not known or _shares(known, sex, age, child).get(group, 0.0) < 0.5:
        return None
    usual = _estimates(known, group, age)["weight"]
    spread = usual.sd / usual.value  # of the logarithm
    return Heavy(*(usual.value * math.exp(z * spread) for z in (TO_80_PERCENT, _IN_THE_TENTH)))


def _mixed(parts: Sequence[tuple[float, Estimate]]) -> Estimate:
    """The mean of a mixture and its standard deviation, by the law of total variance."""
    value = sum(share * one.value for share, one in parts)
    square = sum(share * (one.sd**2 + (one.value - value) ** 2) for share, one in parts)
    share, most = max(parts, key=lambda part: part[0])
    if 1 - share < _SAID:
        return Estimate(value, math.sqrt(square), most.people)
    tenths = min(9, max(1, round(10 * parts[1][0])))
    return Estimate(value, math.sqrt(square), say.guessed_unknown_age(tenths=str(tenths)))


def _estimates(known: Known, group: tuple[str, str], age: float | None) -> dict[str, Estimate]:
    """`estimate` for people already chosen; from nothing known come that group's mean and sd."""
    people = _GROUPS[group]
    means = _means(people, age)
    names = tuple(name for name in KNOWNS if name in known)
    apart, variances = [], []
    for name in names:
        value, sd = known[name]
        if name in people.logged:
            value, sd = math.log(value), sd / value
        apart.append(value - means[people.names.index(name)])
        variances.append(sd * sd)
    found = {}
    for line in _lines(group, names):
        value, variance = means[line.place], line.variance
        for b, distance, error in zip(line.coefficients, apart, variances, strict=True):
            value += b * distance
            variance += b * b * error
        sd = math.sqrt(variance)
        if line.logged:
            value = math.exp(value)
            sd *= value
        found[line.name] = Estimate(value, sd, line.people)
    return found


def unlikely(
    known: Known, sex: Sex | None, age: float | None, child: bool = False
) -> list[tuple[str, int, Literal["small", "large"]]]:
    """Measures that go badly with the others, as (measure, one in how many people, which side).

    Each of MEASURES in `known` (as for `estimate`; give only what was measured) is compared with
    what the other known ones lead to; alone, with all people of that sex. Listed when fewer than
    one in ODD would be as far off, on either side, by the normal curve (of the survey's own people
    0.5 to 1.0 % are, as real tails are longer); RAREST means so rare or rarer. Adults only: for
    children the list is empty.
    """
    group = ("adult", sex or "either")
    found: list[tuple[str, int, Literal["small", "large"]]] = []
    if _shares(known, sex, age, child).get(group, 0.0) < 0.5:
        return found
    for name in MEASURES:
        if name not in known:
            continue
        value, sd = known[name]
        others = {other: reading for other, reading in known.items() if other != name}
        usual = _estimates(others, group, age)[name]
        off = (value - usual.value) / math.hypot(usual.sd, sd)
        chance = math.erfc(abs(off) / math.sqrt(2))
        if chance * ODD < 1:
            one_in = RAREST if chance * RAREST < 1 else round(1 / chance)
            found.append((name, one_in, "small" if off < 0 else "large"))
    return found
