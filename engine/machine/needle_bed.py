"""The needle bed: runs operations, counts what they knit, and refuses what no machine can do.

`run` takes a standing and operations to the next standing and to what was knitted on the way:
rounds, rows, stitches and yarn are counted here and nowhere else.

A round passes each needle once, from home to home. One that stops d needles past home (before it:
d < 0) knits their stitches too, and the next round begins there: over a whole sock that comes to
nothing, but it moves stitches from one section to the next.

What is legal is common practice, no published source; some of it in numbers:

- A row starts where the carrier stands, past at most `PASSED` held needles: those that were lifted
  after the row before.
- A carrier stops for a pocket at most N/3 from home: beyond that it is at the wrong side.
- A set-up edge is one round on both beds, then `LOCKS` or more on the cylinder alone: from then on
  its loops cannot run.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from typing import NamedTuple, assert_never

from engine.machine import by_hand
from engine.machine.operations import (
    Along,
    BindOff,
    CastOn,
    CrankOff,
    Cut,
    Gather,
    Graft,
    Hang,
    Hold,
    KnitOn,
    Lift,
    Move,
    Operation,
    PullCord,
    PutIn,
    Ravel,
    Return,
    Ribber,
    Rounds,
    Row,
    Spring,
    Stand,
    Table,
    TakeOut,
    Tension,
    Transfer,
    Weight,
    Yarn,
)
from engine.machine.standing import CannotBeDone, Standing, named, refuse, stretch

PASSED = 2
LOCKS = 2


class Made(NamedTuple):
    """What stitches have in common: their yarn, the thread along, how much tighter they are."""

    yarn: str
    along: str | None
    tighter: float


class Work(NamedTuple):
    """What operations came to: how the bed stands, and what was knitted on the way."""

    ends: Standing
    rounds: int
    rows: int
    made: tuple[tuple[Made, int], ...]

    @property
    def stitches(self) -> int:
        """Return all stitches, of sock and scrap."""
        return sum(count for _, count in self.made)


class _Tally:
    """What is counted while operations run."""

    def __init__(self) -> None:
        self.rounds = self.rows = 0
        self.made = Counter[Made]()


def run(start: Standing, operations: Iterable[Operation]) -> Work:
    """Run operations from a standing, or raise `CannotBeDone` at the first that is impossible."""
    standing, tally = start, _Tally()
    for at, operation in enumerate(operations):
        try:
            standing = _after(standing, operation, tally)
        except CannotBeDone as no:
            no.refusal = no.refusal._replace(at=at)
            raise
    return Work(standing, tally.rounds, tally.rows, tuple(tally.made.items()))


def _after(s: Standing, operation: Operation, tally: _Tally) -> Standing:
    match operation:
        case Row():
            return _row(s, operation, tally)
        case Hold():
            return _hold(s, named(s, operation.needles))
        case Return():
            return _return(s, named(s, operation.needles))
        case Rounds():
            return _rounds(s, operation, tally)
        case Stand(at):
            if s.at != at:
                raise CannotBeDone("carrier-is-elsewhere", name=str(s.at))
            return s
        case CastOn():
            return _cast_on(s)
        case Tension(tighter):
            return s._replace(tighter=tighter)
        case Weight(on):
            return s._replace(weight=on)
        case Spring(on):
            return s._replace(spring=on)
        case Ribber(state):
            if state == "off":
                refuse("ribber-off-with-stitches-on-it", s.ribs)
            return s._replace(ribber=state)
        case CrankOff():
            return _crank_off(s)
        case Gather():
            return _gather(s)
        case Yarn() | Cut() | Along():
            return by_hand.thread(s, operation)
        case TakeOut() | PutIn() | Move() | Transfer() | Lift() | Hang():
            return by_hand.place(s, operation)
        case PullCord() | BindOff() | Graft() | KnitOn() | Ravel() | Table():
            return by_hand.finish(s, operation)
        case _:
            assert_never(operation)


def _fed(s: Standing) -> str:
    """Return the yarn in the carrier."""
    if s.yarn is None:
        raise CannotBeDone("no-yarn-in-the-carrier")
    return s.yarn


def _cast_on(s: Standing) -> Standing:
    if not by_hand.is_scrap(_fed(s)):
        raise CannotBeDone("cast-on-is-not-of-scrap", name=_fed(s))
    refuse("cast-on-over-loops", s.loops | s.ribs)
    refuse("needles-in-hold", s.held)
    return s._replace(loops=s.work, catching=0, on=s.yarn, scrap=True)


def _rounds(s: Standing, o: Rounds, tally: _Tally) -> Standing:
    yarn = _fed(s)
    stop = s.home if o.stop is None else o.stop
    if o.count < 1:
        raise CannotBeDone("count-is-below-one", name=str(o.count))
    if not 0 <= stop < s.slots:
        raise CannotBeDone("needle-is-not-on-this-cylinder", name=str(stop))
    refuse("round-over-held-needles", s.held)
    refuse("round-over-an-empty-needle", s.work & ~s.loops & ~s.catching)
    if not s.knitting:
        raise CannotBeDone("nothing-on-the-needles")
    if s.spring:
        raise CannotBeDone("round-with-the-heel-spring-on")
    if s.weight != "tube":
        raise CannotBeDone("round-without-the-weight-on-the-tube")
    before, after = _past_home(s, s.at), _past_home(s, stop)
    if 3 * abs(before) > s.slots:
        raise CannotBeDone("carrier-is-not-where-a-round-begins", name=str(s.at))
    if 3 * abs(after) > s.slots:
        raise CannotBeDone("carrier-would-stop-at-the-wrong-side", name=str(stop))
    made = o.count * _stitches_round(s) + _shift(s, after) - _shift(s, before)
    tally.rounds += o.count
    tally.made[Made(yarn, s.along, s.tighter)] += made
    return by_hand.after_rounds(s, o.count)._replace(at=stop)


def _stitches_round(s: Standing) -> int:
    ribs = s.ribs.bit_count() if s.ribber == "knits" else 0
    return s.work.bit_count() + ribs


def _past_home(s: Standing, gap: int) -> int:
    """Return how many slots a gap is past home as the carrier goes, below 0 where before it."""
    past = (gap - s.home if s.side == "left" else s.home - gap) % s.slots
    return past if 2 * past <= s.slots else past - s.slots


def _shift(s: Standing, past: int) -> int:
    """Return the stitches between home and `past` slots from it, with the sign of `past`."""
    first = s.home if (past > 0) == (s.side == "left") else s.home - abs(past)
    between = stretch(s.slots, first, abs(past))
    ribs = s.ribs if s.ribber == "knits" else 0
    count = (s.work & between).bit_count() + (ribs & between).bit_count()
    return count if past > 0 else -count


def _row(s: Standing, o: Row, tally: _Tally) -> Standing:
    yarn = _fed(s)
    named(s, (o.first,))
    named(s, (o.last,))
    if not s.held:
        raise CannotBeDone("row-outside-a-pocket")
    if s.ribber == "knits" and s.ribs:
        raise CannotBeDone("row-while-the-ribber-knits")
    if s.weight != "pocket":
        raise CannotBeDone("row-without-the-weight-on-the-pocket")
    if o.goes == "right":
        off, length, begins, ends = o.first - s.at, o.last - o.first, o.first, o.last + 1
    else:
        off, length, begins, ends = s.at - o.first - 1, o.first - o.last, o.last, o.last
    off, length = off % s.slots, length % s.slots + 1
    if off > PASSED:
        raise CannotBeDone("row-starts-where-the-carrier-is-not", 1 << o.first, str(s.at))
    over = stretch(s.slots, begins, length)
    refuse("row-over-a-held-needle", over & s.held)
    refuse("row-over-a-needle-out-of-work", over & ~s.work)
    refuse("row-misses-a-needle-in-work", s.work & ~over)
    refuse("row-over-an-empty-needle", over & ~s.loops & ~s.catching)
    tally.rows += 1
    tally.made[Made(yarn, s.along, s.tighter)] += length
    return s._replace(
        at=ends % s.slots,
        knitted=o.last,
        on=yarn,
        loops=s.loops | over,
        catching=s.catching & ~over,
    )


def _hold(s: Standing, needles: int) -> Standing:
    refuse("hold-of-a-needle-not-in-work", needles & ~s.work)
    rest = s.work & ~needles
    if not rest:
        raise CannotBeDone("hold-of-every-needle", needles)
    if s.ribber == "knits" and s.ribs:
        raise CannotBeDone("hold-while-the-ribber-knits")
    if s.held and (s.knitted is None or not needles >> s.knitted & 1):
        raise CannotBeDone("hold-of-a-needle-that-did-not-knit-last", needles)
    first, length = _run(s, rest)
    if not s.held and s.at not in (first, (first + length) % s.slots):
        raise CannotBeDone("hold-away-from-the-carrier", needles, str(s.at))
    return s._replace(work=rest, held=s.held | needles, knitted=None)


def _run(s: Standing, needles: int) -> tuple[int, int]:
    """Return the first slot and the length of needles that stand side by side."""
    length = needles.bit_count()
    whole = (1 << s.slots) - 1
    before = (needles << 1 | needles >> s.slots - 1) & whole  # those whose left neighbour is in it
    starts = needles & ~before
    if starts.bit_count() > 1:
        raise CannotBeDone("hold-leaves-needles-apart", needles)
    return max(starts.bit_length() - 1, 0), length


def _return(s: Standing, needles: int) -> Standing:
    refuse("return-of-a-needle-not-held", needles & ~s.held)
    if needles != s.held:
        first, length = _run(s, s.work)
        at_right = (s.at - first - length) % s.slots <= PASSED
        end = (first + length) % s.slots
        count = needles.bit_count()
        near = stretch(s.slots, end if at_right else (first - count) % s.slots, count)
        far = stretch(s.slots, (first - count) % s.slots if at_right else end, count)
        if needles == near:
            raise CannotBeDone("return-beside-the-carrier", needles)
        refuse("return-of-a-needle-not-innermost", needles & ~far)
    return s._replace(work=s.work | needles, held=s.held & ~needles)


def _off(s: Standing) -> None:
    """See that nothing keeps the fabric on the machine."""
    if not s.loops | s.ribs:
        raise CannotBeDone("nothing-on-the-needles")
    refuse("stitches-on-the-ribber", s.ribs)
    refuse("needles-in-hold", s.held)
    if s.yarn is not None:
        raise CannotBeDone("yarn-is-not-cut", name=s.yarn)


def _crank_off(s: Standing) -> Standing:
    _off(s)
    if not by_hand.is_scrap(s.on or ""):
        raise CannotBeDone("live-stitches-would-run", s.loops, s.on or "")
    return s._replace(loops=0, catching=0, on=None, weight=None)


def _gather(s: Standing) -> Standing:
    _off(s)
    if by_hand.is_scrap(s.on or ""):
        raise CannotBeDone("scrap-drawn-up", s.loops)
    return s._replace(loops=0, catching=0, on=None, weight=None)
