"""Walking through a request that may hold anything, and collecting every problem in it at once.

A `Fields` is one object of the request with its dotted path. Each reader returns the value, or None
when it was left out (absent, null or blank) or could not be used; in the last case a `Problem` has
been added to the list that all parts of one request share. Nothing here raises for bad input.

Readings are held against sense as well as type: a `Span` says what a measure of a person, a fabric
or a machine can be. A figure outside it is tried in the other units, and the one that would make
sense is offered ("did you mean 24.6 cm?").
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any, TypeVar

from engine.read import reading, units
from engine.read.errors import Problem, Unreadable
from engine.read.quoted import quoted
from engine.read.units import System
from engine.say import messages as say
from engine.say.message import Message

T = TypeVar("T")


@dataclass(frozen=True)
class Span:
    """What `name` (a foot length) can be, `low` to `high` in mm, per mm or a plain number.

    A length below `rarely` is believed only with its unit, where another unit would make sense.
    """

    name: Message
    low: float
    high: float
    rarely: float = 0.0

    def __contains__(self, value: float) -> bool:
        """Tell whether a value makes sense; one on a bound does, in cm and in inches."""
        return self.low - units.NUDGE <= value <= self.high + units.NUDGE


@dataclass
class Fields:
    """One object of a request: `raw` at `path`, with the problems of the whole request."""

    raw: Mapping[str, Any]
    path: str = ""
    system: System = "cm"
    problems: dict[Problem, None] = field(default_factory=dict)

    def refuse(
        self, name: str, message: Message, way_out: Message, offers: tuple[str, ...] = ()
    ) -> None:
        """Add a problem at a field of this object; `offers` are texts that would mend it."""
        # Kept as keys: a field may be looked at more than once, and is told of once.
        self.problems[Problem(self.where(name), message, way_out, offers)] = None

    def where(self, name: str) -> str:
        """Return the dotted path of a field of this object."""
        return f"{self.path}.{name}" if self.path and name else self.path or name

    def part(self, name: str) -> Fields:
        """Return the object at `name`, empty when it was left out."""
        raw = self.raw.get(name)
        if raw is not None and not isinstance(raw, Mapping):
            self.refuse(name, say.not_a_group(), say.send_a_group())
            raw = None
        return Fields(raw or {}, self.where(name), self.system, self.problems)

    def parts(self, name: str, most: int) -> list[Fields]:
        """Return the objects of the list at `name`, blank ones too, so that each keeps its place.

        A list of more than `most` is refused.
        """
        raw = self.raw.get(name)
        if raw is None:
            return []
        if not isinstance(raw, list) or any(not (x is None or isinstance(x, Mapping)) for x in raw):
            self.refuse(name, say.not_a_list(), say.send_a_list())
            return []
        if len(raw) > most:
            self.refuse(name, say.too_many(number=len(raw)), say.keep_the_best(most=most))
            return []
        return [
            Fields(one or {}, self.where(f"{name}.{at}"), self.system, self.problems)
            for at, one in enumerate(raw)
        ]

    def empty(self) -> bool:
        """Tell whether every field of this object was left out."""
        return all(self.blank(name) for name in self.raw)

    def only(self, known: Iterable[str]) -> None:
        """Refuse every field whose name is not among `known`: a misspelt name is never ignored."""
        if not self.raw:
            return
        names = dict.fromkeys(known)
        for name in self.raw:
            if name not in names:
                shown = str(name)[:40]
                known_here = say.known(names=tuple(names))
                self.refuse(shown, say.unknown_name(name=quoted(shown)), known_here)

    def blank(self, name: str) -> bool:
        """Tell whether a field was left out."""
        raw = self.raw.get(name)
        return raw is None or (isinstance(raw, str) and not raw.strip())

    def text(self, name: str) -> str | None:
        """Return what was written, as text; None when it was left out or is no text."""
        raw = self.raw.get(name)
        if raw is None:
            return None
        if isinstance(raw, str):
            return raw if raw.strip() else None
        if isinstance(raw, bool) or not isinstance(raw, int | float):
            self.refuse(name, say.not_text(), say.as_on_paper())
            return None
        if not abs(raw) <= 1e9:  # nor is NaN
            self.refuse(name, say.far_too_large(), say.as_on_paper())
            return None
        return f"{raw:.9f}".rstrip("0").rstrip(".") if isinstance(raw, float) else str(raw)

    def read(self, name: str, reader: Callable[[str], T]) -> T | None:
        """Return `reader(text)`, or None with the reader's own sentence at the field."""
        text = self.text(name)
        if text is None:
            return None
        try:
            return reader(text)
        except Unreadable as no:
            self.refuse(name, no.message, no.way_out, no.offers)
            return None

    def length(self, name: str, span: Span, *, asked: bool = True) -> float | None:
        """Return a length in mm within `span`.

        `asked` is whether a bare number that is rarely so small is asked about.
        """
        if self.raw.get(name) is None:  # as most are
            return None
        found = self.read(name, lambda text: self._length(text, span, asked))
        if found is None or found.mm in span:
            return None if found is None else found.mm
        meant: tuple[str, ...] = ()
        if found.number is not None:
            text = self.text(name) or ""
            number = text.strip() if reading.is_bare(text) else units.number(found.number, 3)
            sizes = {
                f"{number} {unit}": found.number * units.factor(unit, "millimeter")
                for unit in ("cm", "in", "mm")
            }
            meant = tuple(text for text, mm in sizes.items() if mm in span)
            usual = tuple(text for text in meant if sizes[text] >= span.rarely)
            meant = usual or meant  # a rare one is not asked about beside a usual one
        self._outside(name, found.mm, span, self._shown(found.mm), meant)
        return None

    def _length(self, text: str, span: Span, asked: bool) -> reading.Length:
        """Read a length; what may be misread is asked about with what makes sense here."""
        try:
            found = reading.read_length(text, self.system)
        except Unreadable as no:
            meant = tuple(filter(None, (self._sensible(offer, span) for offer in no.offers)))
            if not meant:
                raise
            raise Unreadable(no.message, say.did_you_mean(offers=meant), meant) from None
        if not asked or found.mm not in span or found.mm >= span.rarely:
            return found
        bare = reading.tidy(text)
        other = self._sensible(bare, span)
        if other is None or other == bare:  # it has its unit, or no other makes sense
            return found
        meant = (other, f"{bare} {self.system}")
        small = say.very_small(shown=self._shown(found.mm), what=span.name)
        raise Unreadable(small, say.did_you_mean(offers=meant), meant)

    def _sensible(self, offer: str, span: Span) -> str | None:
        """Return a text as it is or with the unit in which it is a usual length of `span`."""
        for text in (offer, f"{offer} cm", f"{offer} in"):
            try:
                mm = reading.read_length(text, self.system).mm
            except Unreadable:
                continue
            if mm in span and mm >= span.rarely:
                return text
        return None

    def yarn(self, name: str, span: Span) -> float | None:
        """Return a length of yarn in mm within `span`; a bare number is metres or yards."""
        bare = "yd" if self.system == "in" else "m"
        found = self.read(name, lambda text: reading.read_length(text, bare, say.yarn_example()))
        if found is None or found.mm in span:
            return None if found is None else found.mm
        shown = units.yarn_length(found.mm, self.system, 2)
        self._outside(name, found.mm, span, f"{shown['text']} ({shown['other']})", ())
        return None

    def grams(self, name: str, span: Span) -> float | None:
        """Return a weight of yarn in g within `span`; a bare number is in grams everywhere."""
        found = self.read(name, reading.read_grams)
        if found is None or found in span:
            return found
        shown = units.weight(found)
        text = (self.text(name) or "").strip()
        meant = [f"{text} oz"] if text[-1:].isdigit() else []
        meant = [one for one in meant if reading.read_grams(one) in span]
        self._outside(name, found, span, f"{shown['text']} ({shown['other']})", tuple(meant))
        return None

    def rates(self, name: str) -> tuple[reading.Rate, ...]:
        """Return the counts over a length that a field holds: one, or stitches and rounds."""
        return self.read(name, lambda text: reading.read_rates(text, self.system)) or ()

    def rate(self, name: str, span: Span, *, second: bool = False) -> float | None:
        """Return a count per mm within `span`; `second` tells which where the field holds two."""
        found = self.rates(name)
        if not found:
            return None
        per_mm, count = found[-1] if second else found[0]
        if per_mm in span:
            return per_mm
        lengths = {"in": units.MM_PER_INCH, "10 cm": 100.0, "cm": 10.0, "4 in": 4 * 25.4}
        meant = tuple(
            f"{units.number(count, 3)} / {over}"
            for over, mm in lengths.items()
            if count / mm in span
        )
        shown = units.per_length(per_mm, self.system)
        self._outside(name, per_mm, span, f"{shown['text']} ({shown['other']})", meant)
        return None

    def _shown(self, mm: float) -> str:
        quantity = units.length(mm, self.system)
        return f"{quantity['text']} ({quantity['other']})"

    def _outside(
        self, name: str, value: float, span: Span, shown: str, meant: tuple[str, ...]
    ) -> None:
        way_out = say.did_you_mean(offers=meant) if meant else say.measure_again()
        self.refuse(name, _beyond(value, span, shown), way_out, meant)

    def count(self, name: str, span: Span) -> int | None:
        """Return a whole number within `span`."""
        value = self.read(name, reading.read_count)
        if value is None:
            return None
        if value != int(value):
            around = (f"{int(value)}", f"{int(value) + 1}")
            self.refuse(
                name,
                say.not_whole(number=units.number(value, 3)),
                say.write_either(offers=around),
                around,
            )
            return None
        if value not in span:
            self.refuse(
                name,
                _beyond(value, span, f"{int(value)}"),
                say.write_whole(low=f"{span.low:.0f}", high=f"{span.high:.0f}"),
            )
            return None
        return int(value)

    def plain(self, name: str, span: Span) -> float | None:
        """Return a number without a unit within `span`."""
        value = self.read(name, reading.read_number)
        if value is not None and value not in span:
            self.refuse(
                name,
                _beyond(value, span, units.number(value, 3)),
                say.write_number(low=units.number(span.low), high=units.number(span.high)),
            )
            return None
        return value

    def share(self, name: str, span: Span) -> float | None:
        """Return a share of one (`0.04`, `4 %`) within `span`."""
        value = self.read(name, reading.read_share)
        if value is None or value in span:
            return value
        meant = f"{units.number(value, 3)} %" if value / 100 in span else ""
        self.refuse(
            name,
            say.too_much(percent=units.number(value * 100), what=span.name),
            say.did_you_mean(offers=(meant,))
            if meant
            else say.write_percent(high=f"{span.high * 100:.0f}"),
            (meant,) if meant else (),
        )
        return None

    def flag(self, name: str) -> bool:
        """Return a yes or no; left out is no."""
        raw = self.raw.get(name)
        if isinstance(raw, bool):
            return raw
        return self.choice(name, ("yes", "no")) == "yes"

    def choice(self, name: str, choices: Iterable[str]) -> str | None:
        """Return one of `choices`, however it is capitalised."""
        text = self.text(name)
        if text is None:
            return None
        offered = tuple(choices)
        for choice in offered:
            if choice.casefold() == text.strip().replace("_", " ").casefold():
                return choice
        self.refuse(name, say.not_a_choice(text=quoted(text)), say.choose(choices=offered))
        return None


def _beyond(value: float, span: Span, shown: str) -> Message:
    """Return that a value, as `shown`, is outside of its span."""
    if value < span.low:
        return say.too_small(shown=shown, what=span.name)
    return say.too_large(shown=shown, what=span.name)
