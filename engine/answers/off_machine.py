"""What sock one's foot should measure off the machine, before the wash.

It is the washed length that is foretold, changed back as this yarn's tubes changed (`wash`). Four
times in five the tape says something within the range: how one sock differs from the next, how one
wash does, and the tape are in it.
"""

from __future__ import annotations

from math import exp, hypot
from typing import Any

from engine.fabric import wash
from engine.fabric.gauge import UNKNOWN
from engine.read import units
from engine.say import messages as say
from engine.sock.sock import Sock
from engine.sources import TAPE_ON_SOCK, TO_80_PERCENT


def write(sock: Sock) -> dict[str, Any] | None:
    """Return the length to expect and its range, None where it is not known; None of a sock two."""
    if sock.pair is not None:
        return None
    change = wash.learn(tube for tube, *_ in sock.fabric.seen)
    if change is None:
        return {"length": None, "low": None, "high": None, "words": say.off_machine_unknown()}
    mm = sock.foot_length * exp(-change.log)
    along = sock.fabric.along or UNKNOWN
    reach = TO_80_PERCENT * along.sd(hypot(change.sd, TAPE_ON_SOCK / mm) ** 2)
    low, high = mm * exp(-reach), mm * exp(reach)
    length, least, most = (units.length(one, sock.system) for one in (mm, low, high))
    words = say.off_machine(length=length["text"], span=units.length_range(low, high, sock.system))
    return {"length": length, "low": least, "high": most, "words": words}
