"""Plans a second in this Python, through the engine's door: `python build/bench_plans.py`.

The requests differ from call to call, as they do while somebody types; each asks for a whole plan.
With a folder of survey rows, `python build/bench_plans.py FOLDER`, every person in it is fitted,
and the time is shown over ever more of them: it should grow as they do, and no faster. (The files
are those of the tests of published figures, which are not part of the repository.)
"""

import csv
import itertools
import sys
import time
from pathlib import Path
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


# Columns of the surveys, in mm but for the last, by the request's name for them.
SURVEYS = {
    "ansur2_foot_leg.csv": {
        "length": "footlength",
        "ball_girth": "balloffootcircumference",
        "heel_girth": "heelanklecircumference",
        "ankle_girth": "anklecircumference",
        "calf_girth": "calfcircumference",
        "age": "age",
    },
    "anthrokids1977_foot_leg.csv": {
        "length": "footlength",
        "ankle_girth": "anklecircumference",
        "calf_girth": "calfcircumference",
        "age": "age_years",
    },
}


def people(folder: Path) -> list[dict[str, Any]]:
    """A plan's request for each row of the surveys that has a foot length."""
    found: list[dict[str, Any]] = []
    for name, columns in SURVEYS.items():
        with (folder / name).open(newline="", encoding="utf-8") as rows:
            for row in csv.DictReader(rows):
                known = {field: row[column] for field, column in columns.items() if row[column]}
                age = int(float(known.pop("age", 0))) or None
                sex = "woman" if row["sex"] == "F" else "man"
                if "length" in known:
                    found.append(
                        {
                            "units": "cm",
                            "foot": {field: f"{mm} mm" for field, mm in known.items()},
                            "person": {"sex": sex, "age": age},
                            "cylinder": {"slots": SLOTS[len(found) % len(SLOTS)]},
                            "fabric": FABRICS[0],
                        }
                    )
    return found


def growth(asked: list[dict[str, Any]]) -> None:
    """Print seconds for ever more requests and how many could be planned."""
    print("   people  planned   seconds  µs each")
    sizes = [len(asked) >> shift for shift in range(6, -1, -1)]
    for size in sizes:
        start = time.perf_counter()
        answers = [api.answer({"do": "plan", "request": request}) for request in asked[:size]]
        taken = time.perf_counter() - start
        planned = sum("counts" in answer for answer in answers)
        print(f"{size:9,}{planned:9,}{taken:10.2f}{1e6 * taken / size:9,.0f}")


if __name__ == "__main__":
    rate = plans_per_second()
    print(f"{rate:,.0f} plans a second ({1e6 / rate:,.0f} µs each)")
    if sys.argv[1:]:
        growth(people(Path(sys.argv[1])))
