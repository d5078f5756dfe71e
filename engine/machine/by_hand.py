"""What is done by hand at the needle bed, and after it: threads, single needles, open edges.

Where yarn changes between scrap and sock, a round of loops would run once the scrap is pulled out:
an open edge. It is secured by hanging it, binding it off, grafting it, or, where the sock begins on
the ribber, by a set-up. Scrap stays in until no edge is open. Common practice, no published source.
"""

from __future__ import annotations

from typing import assert_never

from engine.machine import operations as op
from engine.machine.standing import CannotBeDone, Edge, Standing, named, refuse

FOLDS = 2  # rounds from an edge on, before it can be hung
_LOCKED = 3  # rounds of a set-up: one on both beds, two or more on the cylinder alone


def is_scrap(yarn: str) -> bool:
    """Tell whether a yarn is pulled out again."""
    return yarn in op.SCRAP


def thread(s: Standing, operation: op.Yarn | op.Cut | op.Along) -> Standing:
    """Return the standing after a change of what is in the carrier."""
    match operation:
        case op.Yarn():
            return _yarn(s, operation)
        case op.Cut():
            if s.yarn is None:
                raise CannotBeDone("no-yarn-in-the-carrier")
            refuse("yarn-changes-within-a-pocket", s.held)
            return s._replace(yarn=None)
        case op.Along(along):
            if along is None and s.along is None:
                raise CannotBeDone("no-thread-runs-along")
            if along is not None and s.along is not None:
                raise CannotBeDone("thread-runs-along-already", name=s.along)
            return s._replace(along=along)
        case _:
            assert_never(operation)


def _yarn(s: Standing, o: op.Yarn) -> Standing:
    if o.name == s.yarn:
        raise CannotBeDone("yarn-is-in-the-carrier-already", name=o.name)
    refuse("yarn-changes-within-a-pocket", s.held)
    if op.CORD in (o.name, s.on) and not (is_scrap(o.name) and is_scrap(s.on or "")):
        raise CannotBeDone("cord-beside-live-stitches", name=o.name)
    opens = s.on is not None and is_scrap(s.on) != is_scrap(o.name)
    if not opens:
        if o.edge is not None:
            raise CannotBeDone("edge-is-named-where-nothing-opens", name=o.edge)
        return s._replace(yarn=o.name)
    if o.edge is None:
        raise CannotBeDone("edge-has-no-name")
    if o.edge in s.names:
        raise CannotBeDone("edge-was-named-before", name=o.edge)
    edge = Edge(o.edge, s.loops.bit_count() + s.ribs.bit_count())
    begins = 0 if not is_scrap(o.name) and s.ribber == "knits" and s.ribs else None
    return s._replace(yarn=o.name, edges=(*s.edges, edge), names=(*s.names, o.edge), set_up=begins)


def after_rounds(s: Standing, count: int) -> Standing:
    """Return the standing after rounds, but for where the carrier is."""
    edges = tuple(edge._replace(rounds=min(edge.rounds + count, FOLDS)) for edge in s.edges)
    set_up, both = s.set_up, s.ribber == "knits" and s.ribs
    if set_up is not None:
        as_begun = count == 1 if set_up == 0 else True
        set_up = set_up + count if as_begun and bool(both) == (set_up == 0) else None
        if set_up is not None and set_up >= _LOCKED:
            edges, set_up = edges[:-1], None
    if s.yarn == op.CORD:  # what lies below comes apart from what follows
        s = s._replace(below=(*s.below, edges), names=())
        edges = ()
    return s._replace(
        edges=edges,
        set_up=set_up,
        loops=s.loops | s.work,
        catching=0,
        on=s.yarn,
        knitted=None,
        scrap=s.scrap or is_scrap(s.yarn or ""),
    )


def place(
    s: Standing, operation: op.TakeOut | op.PutIn | op.Move | op.Transfer | op.Lift | op.Hang
) -> Standing:
    """Return the standing after needles or stitches were moved by hand."""
    match operation:
        case op.TakeOut(needles):
            out = named(s, needles)
            refuse("needle-is-not-in-work", out & ~s.work)
            refuse("needle-out-with-its-stitch", out & s.loops)
            return s._replace(work=s.work & ~out, catching=s.catching & ~out)
        case op.PutIn(needles):
            back = named(s, needles)
            refuse("needle-is-not-out", back & (s.work | s.held))
            refuse("no-stitch-beside-the-needle", back & ~_beside(s, s.loops))
            return s._replace(work=s.work | back, loops=s.loops | back)
        case op.Move():
            return _move(s, operation)
        case op.Transfer(needles, to):
            moved = named(s, needles)
            return _to_ribber(s, moved) if to == "ribber" else _to_cylinder(s, moved)
        case op.Lift(needles):
            refuse("no-stitch-on-the-needle", named(s, needles) & ~s.loops)
            return s
        case op.Hang():
            return _hang(s, operation)
        case _:
            assert_never(operation)


def _beside(s: Standing, needles: int) -> int:
    """Return the neighbours of needles."""
    last, whole = s.slots - 1, (1 << s.slots) - 1
    return (needles << 1 | needles >> 1 | needles >> last | needles << last) & whole


def _move(s: Standing, o: op.Move) -> Standing:
    emptied = named(s, tuple(start for start, _ in o.stitches))
    onto = 0
    for start, end in o.stitches:
        one = named(s, (end,))
        if not one & _beside(s, 1 << start):
            raise CannotBeDone("needles-are-not-neighbours", 1 << start | one)
        onto |= one
    refuse("stitch-moved-within-a-pocket", s.held)
    refuse("no-stitch-on-the-needle", emptied & ~s.loops)
    refuse("stitch-onto-an-empty-needle", onto & (emptied | ~s.loops))
    match o.leave:
        case "empty":
            return s._replace(loops=s.loops & ~emptied, catching=s.catching | emptied)
        case "out":
            return s._replace(loops=s.loops & ~emptied, work=s.work & ~emptied)
        case _:
            assert_never(o.leave)


def _to_ribber(s: Standing, moved: int) -> Standing:
    if s.ribber == "off":
        raise CannotBeDone("no-ribber", moved)
    refuse("stitch-moved-within-a-pocket", s.held)
    refuse("no-stitch-on-the-needle", moved & ~s.loops)
    even = sum(1 << slot for slot in range(0, s.slots, 2))
    facing = [bits & even | (bits >> 1) & even for bits in (moved, s.ribs)]
    twice = moved & even & (moved >> 1)  # both slots that one needle of the ribber faces
    refuse("ribber-needle-is-taken", facing[0] & facing[1] | twice)
    return s._replace(loops=s.loops & ~moved, work=s.work & ~moved, ribs=s.ribs | moved)


def _to_cylinder(s: Standing, moved: int) -> Standing:
    refuse("stitch-moved-within-a-pocket", s.held)
    refuse("no-stitch-on-the-ribber", moved & ~s.ribs)
    refuse("needle-has-a-stitch-already", moved & s.loops)
    return s._replace(
        loops=s.loops | moved,
        work=s.work | moved,
        catching=s.catching & ~moved,
        ribs=s.ribs & ~moved,
    )


def _hang(s: Standing, o: op.Hang) -> Standing:
    edge, needles = _edge(s, o.edge), named(s, o.needles)
    refuse("no-stitch-on-the-needle", needles & ~s.loops)
    if needles.bit_count() != edge.loops:
        raise CannotBeDone("edge-hung-on-another-number-of-needles", needles, edge.name)
    if s.weight is not None:
        raise CannotBeDone("edge-hung-with-the-weight-on", name=edge.name)
    refuse("edge-hung-with-stitches-on-the-ribber", s.ribs, edge.name)
    if edge.rounds < FOLDS:
        raise CannotBeDone("edge-hung-before-it-can-fold", name=edge.name)
    return _secure(s, edge)


def _edge(s: Standing, name: str) -> Edge:
    for edge in s.edges:
        if edge.name == name:
            return edge
    raise CannotBeDone("edge-is-not-open", name=name)


def _secure(s: Standing, *secured: Edge) -> Standing:
    newest = bool(s.edges) and s.edges[-1] in secured
    return s._replace(
        edges=tuple(edge for edge in s.edges if edge not in secured),
        set_up=None if newest else s.set_up,
    )


def finish(
    s: Standing,
    operation: op.PullCord | op.BindOff | op.Graft | op.KnitOn | op.Ravel | op.Table,
) -> Standing:
    """Return the standing after what is done once the fabric is off the machine."""
    refuse("still-on-the-needles", s.loops | s.ribs)
    if isinstance(operation, op.PullCord):
        return _come_apart(s)
    if s.below:
        raise CannotBeDone("socks-hang-together")
    match operation:
        case op.BindOff(name) | op.KnitOn(name):
            return _secure(s, _edge(s, name))
        case op.Graft(names):
            edges = tuple(_edge(s, name) for name in dict.fromkeys(names))
            loops = [edge.loops for edge in edges]
            even = len(loops) == 1 and loops[0] % 2 == 0
            if not even and not (len(loops) == 2 and loops[0] == loops[1]):
                raise CannotBeDone("edges-do-not-pair", name=", ".join(names))
            return _secure(s, *edges)
        case op.Ravel():
            if not s.scrap:
                raise CannotBeDone("no-scrap-to-pull-out")
            if s.edges:
                raise CannotBeDone("scrap-out-of-an-open-edge", name=s.edges[0].name)
            return s._replace(scrap=False)
        case op.Table():
            return s
        case _:
            assert_never(operation)


def _come_apart(s: Standing) -> Standing:
    """Return the standing once the cords are out: what is done now is done to each sock alike."""
    if not s.below:
        raise CannotBeDone("no-cord-to-pull-out")
    mine = _open(s.edges)
    if any(edges and _open(edges) != mine for edges in s.below):
        raise CannotBeDone("socks-are-unlike")
    return s._replace(below=())


def _open(edges: tuple[Edge, ...]) -> list[tuple[str, int]]:
    return [(edge.name, edge.loops) for edge in edges]
