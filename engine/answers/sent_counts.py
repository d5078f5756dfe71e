"""The five counts as they travel in a link, in eight bytes that a page reads without the engine.

From the highest bit: a bit to spare, half the slots of the cylinder, the rounds of cuff and leg,
the heel's needles and how many it leaves, the rounds of the foot, the toe's needles and how many it
leaves, and whether they are of sock two, each in as many bits as `_BITS` says. A part that is
not knitted is 0. `webapp/sent/read.js` is the other reader; the layout belongs to version 2 of a
link and never changes.
"""

from __future__ import annotations

from typing import Any

from engine.sections.pocket import Pocket
from engine.sock.sock import Sock

BYTES = 8
_BITS = {
    "half": 6,
    "cuff": 8,
    "leg": 10,
    "heel": 7,
    "heel_left": 7,
    "foot": 10,
    "toe": 7,
    "toe_left": 7,
    "two": 1,
}


def pack(sock: Sock) -> bytes | None:
    """Return the counts of a sock, None where one is too large for its bits."""
    found: dict[str, int] = {
        "half": sock.cylinder.half,
        **{one.part: one.count for one in sock.pieces if one.part in ("cuff", "leg", "foot")},
        "two": int(sock.knitted_rounds is not None),
    }
    for part, end in (("heel", sock.heel), ("toe", sock.toe)):
        if isinstance(end, Pocket):
            found |= {part: end.needles, f"{part}_left": end.left}
    total = 0
    for name, bits in _BITS.items():
        count = found.get(name, 0)
        if count >> bits:
            return None
        total = total << bits | count
    return total.to_bytes(BYTES, "big")


def read(packed: bytes) -> dict[str, Any]:
    """Return the `slots`, the `figures` by part as text, and whether they are of sock `two`."""
    total = int.from_bytes(packed, "big")
    found: dict[str, int] = {}
    for name, bits in reversed(_BITS.items()):
        total, found[name] = total >> bits, total & ((1 << bits) - 1)
    figures = {part: str(found[part]) for part in ("cuff", "leg", "foot") if found[part]}
    for part in ("heel", "toe"):
        if needles := found[part]:
            figures[part] = f"{needles}→{found[f'{part}_left']}→{needles}"
    return {"slots": 2 * found["half"], "figures": figures, "two": bool(found["two"])}
