"""Keeps some people of the two surveys with the tests, and the figures made of all the others.

    python3 build/survey_sample.py ADULTS.csv CHILDREN.csv

The rule: in the order of the survey's own numbers, of the men every 17th, of the women every 8th,
of the children of either sex every 9th, each beginning with the first; of children only rows with
length, calf, stature and weight. So many, that some 200 of each are there. What is made lies in
tests/published/sample; tests/published/test_survey_sample.py judges the estimates by them.
"""

from __future__ import annotations

import argparse
import csv
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))  # names count from the repository

from build import install

if __name__ == "__main__":
    install.enter(install.CHECK, __doc__)

from build import population_table as maker

SAMPLE = install.ROOT / "tests" / "published" / "sample"
ADULTS, CHILDREN, FIGURES = "adults.csv", "children.csv", "figures_of_the_others.py"
EVERY = {(ADULTS, "M"): 17, (ADULTS, "F"): 8, (CHILDREN, "M"): 9, (CHILDREN, "F"): 9}


def parted(source: Path, name: str, folder: Path) -> Path:
    """Write the sample's rows to `folder`/`name`; return a file beside it with all others."""
    columns, number, age = (
        (maker.ADULT_COLUMNS, "subjectid", "age")
        if name == ADULTS
        else (maker.CHILD_COLUMNS, "person", "age_years")
    )
    wanted = [number, age, "sex", *columns.values()]
    with source.open(newline="", encoding="utf-8") as lines:
        rows = list(csv.DictReader(lines))
    whole = [row for row in rows if all(row[column] for column in wanted[:-1])]
    whole.sort(key=lambda row: int(row[number]))
    kept: list[dict[str, str]] = []
    for sex in "FM":
        kept += [row for row in whole if row["sex"] == sex][:: EVERY[name, sex]]
    others = [row for row in rows if row not in kept]
    beside = folder / f"others-{name}"
    for path, part in ((folder / name, kept), (beside, others)):
        with path.open("w", newline="", encoding="utf-8") as target:
            writer = csv.DictWriter(target, wanted, extrasaction="ignore", lineterminator="\n")
            writer.writeheader()
            writer.writerows(part)
    return beside


def make(adults: Path, children: Path, folder: Path = SAMPLE) -> None:
    """Write the sample and the figures of the others into `folder`."""
    folder.mkdir(exist_ok=True)
    others = parted(adults, ADULTS, folder), parted(children, CHILDREN, folder)
    figures = maker.table(maker.adults(others[0]), maker.children(others[1]))
    (folder / FIGURES).write_text(figures, encoding="utf-8")
    for path in others:
        path.unlink()


def main() -> int:
    """Make them anew."""
    parser = argparse.ArgumentParser(prog="python3 build/survey_sample.py", description=__doc__)
    parser.add_argument("adults", type=Path, help="foot and leg columns of ANSUR II")
    parser.add_argument("children", type=Path, help="foot and leg columns of the 1977 survey")
    chosen = parser.parse_args()
    make(chosen.adults, chosen.children)
    return 0


if __name__ == "__main__":
    sys.exit(main())
