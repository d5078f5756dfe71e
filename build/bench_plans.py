"""Plans a second in this Python, through the engine's door: `python3 build/bench_plans.py`.

The requests differ from call to call, as they do while somebody types; each asks for a whole plan.
With a folder of survey rows, `python3 build/bench_plans.py FOLDER`, every person in it is fitted,
and the time is shown over ever more of them: it should grow as they do, and no faster. (The files
are those of the tests of published figures, which are not part of the repository.)

Then a shelf is ranked for one foot: 12 cylinders, 30 yarns, 5 marks each is 1,800 candidates, to be
answered in 100 ms; and the time is shown over ever more candidates.
"""

import argparse
import csv
import itertools
import sys
import time
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))  # names count from the repository

from build import install

if __name__ == "__main__":
    install.enter(install.SITE, __doc__)

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


FOOT = {"length": "24.6 cm", "ball_girth": "9 in", "heel_girth": "31 cm"}
ROOMS = [(1, 1, 1), (3, 3, 3), (6, 10, 4), (12, 15, 5), (12, 30, 5), (24, 30, 5), (24, 60, 10)]


def shelf(cylinders: int, yarns: int, marks: int) -> dict[str, Any]:
    """A call that ranks so many cylinders, yarns and marks for one measured foot."""
    return {
        "do": "shelf",
        "request": {"units": "in", "foot": FOOT, "person": {"sex": "woman"}},
        "shelf": {
            "cylinders": [{"slots": 48 + 2 * at} for at in range(cylinders)],
            "yarns": [
                {
                    "name": f"invented {yarn}",
                    "yarn": f"{360 + 4 * yarn} m / 100 g",
                    "marks": [
                        {
                            "mark": mark,
                            "stitches": f"{6.2 + 0.25 * mark + 0.02 * yarn:.2f} / in",
                            "rounds": f"{8.1 + 0.33 * mark + 0.02 * yarn:.2f} / in",
                        }
                        for mark in range(marks)
                    ],
                }
                for yarn in range(yarns)
            ],
        },
    }


def ranking() -> None:
    """Print milliseconds, best of five, for ever larger shelves."""
    print("  candidates        ms  µs each")
    for room in ROOMS:
        call, best = shelf(*room), float("inf")
        for _ in range(5):
            start = time.perf_counter()
            answer = api.answer(call)
            best = min(best, time.perf_counter() - start)
        tried = answer["tried"]
        print(f"{tried:12,}{1e3 * best:10.1f}{1e6 * best / tried:9,.0f}")


if __name__ == "__main__":
    parser = argparse.ArgumentParser(prog="python3 build/bench_plans.py", description=__doc__)
    parser.add_argument("folder", nargs="?", type=Path, help="survey rows, to fit each person")
    options = parser.parse_args()
    rate = plans_per_second()
    print(f"{rate:,.0f} plans a second ({1e6 / rate:,.0f} µs each)")
    if options.folder:
        growth(people(options.folder))
    ranking()
