"""Plans a second in this Python, through the engine's door: `python build/bench_plans.py`.

The requests differ from call to call, as they do while somebody types; each asks for a whole plan.
"""

import itertools
import time
from typing import Any

from engine import api

LENGTHS = ["24.6 cm", "9 3/8 in", "23,8 cm", "262 mm", "21.5 cm"]
SLOTS = [54, 60, 64, 72, 80]
FABRICS: list[dict[str, Any]] = [
    {"stitches": "7.5 / in", "rounds": "9.6 / in"},
    {"stitches": "30 st / 10 cm", "rounds": "40 rounds / 10 cm", "yarn": "400 m / 100 g"},
]


def requests() -> list[dict[str, Any]]:
    """Some fifty people: with few measures or more, on several machines, in two fabrics."""
    return [
        {
            "units": "cm",
            "foot": {"length": length, "ball_girth": "23.2 cm" if slots > 60 else None},
            "person": {"sex": "woman" if slots < 64 else "man"},
            "cylinder": {"slots": slots},
            "fabric": fabric,
            "sock": {},
        }
        for length, slots, fabric in itertools.product(LENGTHS, SLOTS, FABRICS)
    ]


def plans_per_second(rounds: int = 5) -> float:
    """The best rate of some rounds of a second each: other programs can only slow one down."""
    asked = [{"do": "plan", "request": request} for request in requests()]
    for call in asked:
        answer = api.answer(call)
        if "errors" in answer:
            raise SystemExit(f"{call} was refused: {answer['errors']}")
    best = 0.0
    for _ in range(rounds):
        done = 0
        start = time.perf_counter()
        while (elapsed := time.perf_counter() - start) < 1:
            for call in asked:
                api.answer(call)
            done += len(asked)
        best = max(best, done / elapsed)
    return best


if __name__ == "__main__":
    rate = plans_per_second()
    print(f"{rate:,.0f} plans a second ({1e6 / rate:,.0f} µs each)")
