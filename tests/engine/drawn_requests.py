"""Requests drawn at random: ones that can be knitted, and what anybody might send."""

from __future__ import annotations

from typing import Any

from hypothesis import strategies as st

from tests.asking import answer

Json = dict[str, Any]

SLOTS = st.integers(12, 60).map(lambda half: 2 * half)


def plan(request: object) -> Json:
    """The answer to a request, plan or errors."""
    return answer({"do": "plan", "request": request})


@st.composite
def pockets(draw: st.DrawFn, slots: int) -> Json:
    """Heel or toe: none given, needles given, or both given and legal."""
    given = draw(st.sampled_from(("nothing", "needles", "left", "both")))
    needles = draw(st.integers(8, slots * 2 // 3)) if given in ("needles", "both") else slots // 2
    pocket: Json = {"needles": needles} if given in ("needles", "both") else {}
    fewest = 1
    if draw(st.integers(0, 3)) == 0:
        pocket["kind"], fewest = "two at first", 2
    if given in ("left", "both"):
        pocket["left"] = needles - 2 * draw(st.integers(fewest, (needles - 2) // 2))
    return pocket


@st.composite
def toes(draw: st.DrawFn, slots: int) -> Json:
    """A toe and what follows it."""
    bare = draw(st.sampled_from(("", "", "", "gathered", "left open")))
    if bare:
        return {"toe": {"kind": bare}}
    rounds = st.integers(0, 4)
    return {
        "toe": {**draw(pockets(slots)), "plain": draw(st.sampled_from((0, 0, 5)))},
        "end": draw(st.just({}) | st.builds(lambda n: {"rounds": n}, rounds)),
    }


@st.composite
def cuffs(draw: st.DrawFn, slots: int) -> Json:
    """A cuff of any kind, or nothing said of it."""
    kind = draw(
        st.sampled_from(("", "hem", "rib", "mock rib", "picot hem", "mock rib hem", "set-up rib"))
    )
    if not kind:
        return {}
    fewest = 2 if kind == "set-up rib" else 1
    cuff: Json = {"kind": kind, "rounds": 2 * draw(st.integers(fewest, 30))}
    if kind == "set-up rib":
        cuff["every"] = draw(st.sampled_from([n for n in range(2, 7) if slots % n == 0]))
        fewer = [n for n in (4, 6) if n > cuff["every"] and n % cuff["every"] == slots % n == 0]
        if fewer and cuff["rounds"] > 4 and draw(st.booleans()):
            cuff["change_every"] = draw(st.sampled_from(fewer))
            cuff["change_after"] = draw(st.integers(4, cuff["rounds"] - 1))
    if kind.startswith("mock rib"):
        cuff["every"] = draw(st.sampled_from([n for n in range(2, 9) if slots % n == 0]))
    return cuff


@st.composite
def tops(draw: st.DrawFn, slots: int) -> Json:
    """A cuff and its leg, which may be in its rib."""
    cuff = draw(cuffs(slots))
    leg: Json = draw(st.just({}) | st.builds(lambda n: {"rounds": n}, st.integers(0, 120)))
    if cuff.get("kind") in ("rib", "set-up rib") and draw(st.booleans()):
        leg["kind"] = "ribbed"
        if draw(st.booleans()):
            leg["plain"] = draw(st.integers(0, min(20, leg.get("rounds", 20))))
    return {"cuff": cuff, "leg": leg}


@st.composite
def knittable(draw: st.DrawFn) -> Json:
    """A request for a sock; its foot is long enough for nearly every heel and toe."""
    slots = draw(SLOTS)
    stitches = draw(st.floats(26, 60))
    request: Json = {
        "units": draw(st.sampled_from(("in", "cm"))),
        "foot": {"length": f"{draw(st.integers(1200, 3400)) / 10} mm"},
        "cylinder": {"slots": slots},
        "fabric": {
            "stitches": f"{stitches:.2f} / 10 cm",
            "rounds": f"{stitches * draw(st.floats(1.1, 1.6)):.2f} / 10 cm",
        },
        "sock": {
            **draw(tops(slots)),
            "heel": draw(pockets(slots)),
            **draw(toes(slots)),
        },
    }
    if request["sock"]["leg"].get("kind") != "ribbed" and draw(st.integers(0, 3)) == 0:
        runs = st.sampled_from(("A", "B", "4 A, 2 B", "3 b and 1 a", "10 A, 4 C, A"))
        request["sock"]["colors"] = {"cuff": "A", "leg": draw(runs), "foot": draw(runs)}
    if request["sock"]["toe"].get("kind") != "gathered" and draw(st.integers(0, 3)) == 0:
        request["sock"]["string"] = draw(st.sampled_from(("pair", "first", "between", "last")))
    for name, low, high in (
        ("ball_girth", 120, 330),
        ("heel_girth", 160, 450),
        ("ankle_girth", 120, 380),
        ("calf_girth", 160, 550),
    ):
        if draw(st.booleans()):
            request["foot"][name] = f"{draw(st.integers(low, high))} mm"
    return request
