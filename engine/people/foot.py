"""The foot: what was measured, and what is usual for what was not.

A measured one of `measures` carries the error of the tape; a missing one is estimated by
`population` with the spread of the people it is taken from, where a survey took it. Intervals are
the middle 80 %.

Two readings of one measure count as their mean, with the error of the tape over sqrt 2; a gap wider
than two readings of one thing usually have is pointed out, and half of it is then the error. Of two
feet the larger counts, measure by measure, since both socks of a pair are knitted alike and a sock
stretches but does not shrink; a measure of one foot only stands for both.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from math import sqrt
from typing import NamedTuple

from engine.people import population, shoe_size
from engine.people.measures import ESTIMATED, MEASURES
from engine.read import reading, units
from engine.read.fields import Fields, Span
from engine.say import messages as say
from engine.say.message import Message, Words
from engine.sources import (
    FEET_APART,
    FEET_GIRTHS_APART,
    GROWN_INTO,
    LENGTH_FROM_SOCK,
    READINGS_APART,
    TO_80_PERCENT,
    TOES_ROUND_OVER_BREADTH,
    TOLD_STATURE,
    TOLD_WEIGHT,
)

TOE_BREADTH = Span(say.of_toe_breadth(), 30, 150)
STATURE = Span(say.of_stature(), 600, 2300, rarely=780)  # as of two-year-olds
_WEIGHT = 5.0, 300.0  # kg
AGE = Span(say.of_age(), 0, 120)
_SEXES: dict[str, population.Sex] = {"woman": "woman", "man": "man"}


@dataclass(frozen=True)
class Person:
    """What is known of the wearer: sex, stature in mm, weight in kg, age in years, shoe size.

    `child` is True for one said to be a child, whose age need not be known.
    """

    sex: population.Sex | None = None
    stature: float | None = None
    weight: float | None = None
    age: float | None = None
    shoe: tuple[str, float] | None = None
    child: bool = False


_ONCE = say.measured(readings=1)


@dataclass(frozen=True)
class Measure:
    """One measure in mm with the standard deviation of its error, and where it is from."""

    value: float
    sd: float
    measured: bool
    words: Message = _ONCE

    @property
    def low(self) -> float:
        """Return the lower end of the 80 % interval."""
        return self.value - TO_80_PERCENT * self.sd

    @property
    def high(self) -> float:
        """Return the upper end of the 80 % interval."""
        return self.value + TO_80_PERCENT * self.sd


@dataclass(frozen=True)
class Foot:
    """What was measured, by the names of `MEASURES`: the larger of both feet where both were.

    `of_other` names the measures taken from the other foot, `smaller_length` is the length in mm of
    the shorter foot that was measured, `notes` are (field, message). `toe_breadth` is in mm, the
    larger of both too.
    """

    taken: Mapping[str, Measure] = field(default_factory=dict)
    person: Person = field(default_factory=Person)
    of_other: frozenset[str] = frozenset()
    smaller_length: float | None = None
    notes: tuple[tuple[str, Message], ...] = ()
    toe_breadth: float | None = None

    @property
    def measured(self) -> dict[str, float]:
        """Return the measures that were taken, in mm."""
        return {name: measure.value for name, measure in self.taken.items()}

    @property
    def unlike(self) -> bool:
        """Tell whether the feet differ more in length than feet usually do."""
        smaller = self.smaller_length
        return smaller is not None and self.taken["length"].value - smaller > FEET_APART


def read(foot: Fields, other: Fields, person: Fields) -> Foot:
    """Return the feet of a request; problems are noted in its fields."""
    notes: list[tuple[str, Message]] = []
    foot.only((*MEASURES, "again", "toe_breadth"))
    other.only((*MEASURES, "again", "toe_breadth"))
    wearer = read_person(person)
    grown = not _small(wearer)
    first, second = _read_one(foot, notes, grown), _read_one(other, notes, grown)
    taken, of_other = {**first, **second}, set(second)
    for name in (name for name in MEASURES if name in first and name in second):
        if second[name].value <= first[name].value:
            taken[name] = first[name]
            of_other.discard(name)
        twice = not other.part("again").blank(name) and name in of_other
        twice |= not foot.part("again").blank(name) and name not in of_other
        words = say.measured_larger(readings=1 + twice)
        taken[name] = replace(taken[name], words=words)
        apart = abs(first[name].value - second[name].value)
        said = _pair(name in of_other, apart, foot.system)
        share = apart / taken[name].value
        if name != "length" and not units.reaches(FEET_GIRTHS_APART, share):
            said = say.in_turn(sentences=(said, say.feet_far_apart()))
        notes.append((other.where(name), said))
    lengths = [one["length"].value for one in (first, second) if "length" in one]
    toes, others = (one.length("toe_breadth", TOE_BREADTH) for one in (foot, other))
    if others is not None and others > (toes or 0.0):
        of_other.add("toe_breadth")
    if toes is not None and others is not None:
        words = _pair("toe_breadth" in of_other, abs(toes - others), foot.system)
        notes.append((other.where("toe_breadth"), words))
    return Foot(
        {name: taken[name] for name in MEASURES if name in taken},
        wearer,
        frozenset(of_other),
        min(lengths, default=None),
        tuple(notes),
        max((mm for mm in (toes, others) if mm is not None), default=None),
    )


def _small(person: Person) -> bool:
    """Tell whether a figure that is rare among two-year-olds may be this wearer's."""
    return person.child if person.age is None else person.age < population.YOUNGEST + 1


def _read_one(fields: Fields, notes: list[tuple[str, Message]], grown: bool) -> dict[str, Measure]:
    """Return the measures of one foot, each read once or twice; wide gaps go to `notes`.

    Of one who is `grown` a bare number too small for a two-year-old is asked about.
    """
    again = fields.part("again")
    again.only(MEASURES)
    found: dict[str, Measure] = {}
    if fields.empty():
        return found
    for name, kind in MEASURES.items():
        readings = [one.length(name, kind.span, asked=grown) for one in (fields, again)]
        told = [mm for mm in readings if mm is not None]
        if not told:
            continue
        tape, words = kind.tape, say.measured(readings=len(told))
        sd, apart = tape / sqrt(len(told)), max(told) - min(told)
        if apart > READINGS_APART * tape:
            sd = apart / 2  # of the mean of two, by what they show themselves
            asked = say.readings_apart(gap=_gap(apart, fields.system))
            notes.append((again.where(name), asked))
        found[name] = Measure(sum(told) / len(told), sd, True, words)
    return found


def _pair(larger: bool, apart: float, system: units.System) -> Message:
    """Say which foot the pair is planned on; `larger` is whether the other foot is."""
    if apart < 0.5:
        return say.feet_alike()
    return say.planned_on(foot="this" if larger else "first", gap=_gap(apart, system))


def _gap(mm: float, system: units.System) -> Words:
    """Write a small difference: in mm, or in eighths of an inch."""
    if system == "cm":
        return f"{units.nearest(mm)} mm"
    eighth = units.MM_PER_INCH / 8
    return units.inches(mm) if mm >= eighth / 2 else say.less_than(length=units.inches(eighth))


def read_person(fields: Fields) -> Person:
    """Return what a request says of the wearer."""
    fields.only(("sex", "child", "height", "weight", "age", "shoe_size"))
    weight = fields.read("weight", lambda text: reading.read_weight(text, _bare_weight(fields)))
    if weight is not None and not _WEIGHT[0] <= weight <= _WEIGHT[1]:
        wrong = say.not_a_persons_weight(weight=f"{weight:.0f} kg")
        fields.refuse("weight", wrong, say.write_it_like(example=say.person_example()))
        weight = None
    shoe = _read_shoe(fields.part("shoe_size"))
    return Person(
        sex=_SEXES.get(fields.choice("sex", _SEXES) or ""),
        stature=fields.length("height", STATURE),
        weight=weight,
        age=fields.plain("age", AGE),
        shoe=shoe,
        child=fields.flag("child") or (shoe is not None and shoe[0].endswith(("child", "youth"))),
    )


def _bare_weight(fields: Fields) -> str:
    return "lb" if fields.system == "in" else "kg"


def _read_shoe(fields: Fields) -> tuple[str, float] | None:
    fields.only(("system", "size"))
    system = fields.choice("system", shoe_size.SYSTEMS)
    if fields.blank("size"):
        return None
    if system is None:
        if fields.blank("system"):
            ways = say.choose(choices=shoe_size.SYSTEMS)
            fields.refuse("system", say.shoe_size_without_system(), ways)
        return None
    low, high = shoe_size.RANGE[system]
    size = fields.plain("size", Span(say.of_shoe_size(system=system), low, high))
    return None if size is None else (system, size)


def complete(
    foot: Foot, length_of_sock: float | None, ease: float, *, anybody: bool = False
) -> dict[str, Measure]:
    """Return every one of `MEASURES` that was measured or can be estimated.

    Where the length was not measured it comes from the shoe size, then from a given sock length (a
    sock of that length is meant for the foot it fits with the usual ease, `ease` as a share).
    Raises `NothingKnown` when there is nothing that a foot could be guessed from, but for
    `anybody`, who has everybody's foot.
    """
    measures = dict(foot.taken)
    person = foot.person
    if "length" not in measures and person.shoe:
        system, size = person.shoe
        mm, sd = shoe_size.foot_length(system, size)
        words = say.by_shoe_size(system=system, size=f"{size:g}")
        measures["length"] = Measure(mm, sd, False, words)
    if "length" not in measures and length_of_sock is not None:
        mm = length_of_sock / (1 - ease)
        measures["length"] = Measure(mm, LENGTH_FROM_SOCK, False, say.by_sock_length())
    known = _all_known(measures, person)
    estimates = population.estimate(known, person.sex, person.age, person.child, anybody=anybody)
    for name, estimate in estimates.items():
        if name not in measures:
            measures[name] = Measure(estimate.value, estimate.sd, False, estimate.people)
    return {name: measures[name] for name in MEASURES if name in measures}


class IfHeavy(NamedTuple):
    """The measures as they would be guessed of one of the heaviest tenth, from `weight` kg on."""

    weight: float
    measures: dict[str, Measure]


def if_heavy(foot: Foot, measures: Mapping[str, Measure]) -> IfHeavy | None:
    """Return the guesses for the heaviest tenth of people alike in `measures` that are known.

    None where nothing of the foot was told, nothing is guessed, or the weight would say no more.
    """
    person = foot.person
    known = _all_known({name: one for name, one in measures.items() if one.measured}, person)
    found = population.heavy(known, person.sex, person.age, person.child) if foot.taken else None
    if found is None:
        return None
    told = {**known, "weight": (found.middle, float(TOLD_WEIGHT))}
    estimates = population.estimate(told, person.sex, person.age, person.child)
    guessed = {
        name: replace(measures[name], value=one.value, sd=one.sd)
        for name, one in estimates.items()
        if not measures[name].measured
    }
    return IfHeavy(found.begins, {**measures, **guessed}) if guessed else None


def _all_known(measures: Mapping[str, Measure], person: Person) -> dict[str, tuple[float, float]]:
    known = _known(measures)
    if person.stature is not None:
        known["stature"] = (person.stature, float(TOLD_STATURE))
    if person.weight is not None:
        known["weight"] = (person.weight, float(TOLD_WEIGHT))
    return known


def _known(measures: Mapping[str, Measure]) -> dict[str, tuple[float, float]]:
    """Return (value, sd) of what the surveys took too: they tell nothing of the rest."""
    found = {name: measures[name] for name in ESTIMATED if name in measures}
    return {name: (one.value, one.sd) for name, one in found.items()}


def questions(foot: Foot) -> list[tuple[str, Message]]:
    """Return (field, message) for what is odd about the measures; none is changed.

    That is each measure that is rare beside the others, and what reading the feet left to say.
    """
    known = _known(foot.taken)
    person, asked = foot.person, list(foot.notes)
    for name, one_in, side in population.unlikely(known, person.sex, person.age, person.child):
        rarity: Words = f"{one_in:,}"
        rarity = say.or_fewer(number=rarity) if one_in == population.RAREST else rarity
        # Beside nothing else that was measured, it is rare among people.
        words = (
            say.rare_alone(who=person.sex or "either", side=side, oneIn=rarity)
            if len(known) == 1
            else say.rare_beside(side=side, oneIn=rarity)
        )
        asked.append((_where(foot, name), words))
    ball, toes = foot.measured.get("ball_girth"), foot.toe_breadth
    if ball is not None and toes is not None and toes * TOES_ROUND_OVER_BREADTH > ball:
        asked.append((_where(foot, "toe_breadth"), say.toes_too_broad()))
    return asked


def room_to_grow(foot: Foot, length: float, system: units.System) -> Message | None:
    """Return what to ask of a child's room to grow, the foot's length in mm; None of the grown."""
    age, young = foot.person.age, population.YOUNGEST
    if age is None:
        return say.room_of_what_age() if foot.person.child else None
    if age >= population.ADULT_AGE:
        return None
    by = population.growth(length, foot.person.sex, age, GROWN_INTO)
    if units.nearest(by) < 1:
        return None
    gap = _gap(by, system)
    if age < young:
        return say.room_usual_under(years=f"{young:.0f}", gap=gap)
    return say.room_usual(gap=gap)


def _where(foot: Foot, name: str) -> str:
    return f"{'other_foot' if name in foot.of_other else 'foot'}.{name}"
