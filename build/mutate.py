"""Spoils the engine's arithmetic on purpose and counts whether a test notices: build/mutate.py.

Each mutant is the engine with one figure or sign changed (`mutation/arithmetic.py` says which, and
why those). By default as many of each module as `--most` says are drawn by chance, the same ones
for the same seed; `--whole` tries all. A mutant that no test notices is a survivor. Those that
nothing could notice, or that stay for another reason, stand in `mutation/survivors.tsv` with it.

The mutants are made by cosmic-ray's operators. It would start Python and all tests anew for each,
which takes days; mutmut, which does not, passes over whatever is decorated, so all properties. So
the trying is done here (`mutation/trial.py`), in a copy of the repository.
"""

from __future__ import annotations

import argparse
import hashlib
import json
import math
import shutil
import subprocess
import sys
import tempfile
import time
from collections import Counter
from pathlib import Path
from typing import Any, NamedTuple

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))  # names count from the repository

from build import install

LEAST = 0.90  # of the mutants must be killed
MOST = 12  # of each module, by chance
SEED = "another"  # the first was "heelwise": tests were written after its survivors
TESTS = ("tests/engine", "tests/published")
KNOWN = install.BUILD / "mutation" / "survivors.tsv"
_LEFT_BEHIND = (".*", "node_modules", "dist", "__pycache__")
_TO_95_PERCENT = 1.96  # standard deviations that leave 2.5 % beyond on either side

Result = dict[str, Any]


class Survivor(NamedTuple):
    """A mutant by its lines, which stay the same when others move."""

    module: str
    before: str
    after: str


def reached() -> Path:
    """Where it is kept which test comes by which line: finding it out takes minutes.

    Another file for other texts of engine or tests.
    """
    digest = hashlib.sha256()
    for file in (*install.MUTATE[0].inputs, *_texts("engine"), *_texts("tests")):
        digest.update(file.read_bytes())
    folder = install.TOOLS / "mutate"
    kept = folder / f"{digest.hexdigest()}.pickle"
    if not kept.exists():
        shutil.rmtree(folder, ignore_errors=True)
        folder.mkdir(parents=True)
    return kept


def _texts(folder: str) -> list[Path]:
    return sorted((install.ROOT / folder).glob("**/*.py"))


def known(file: Path = KNOWN) -> dict[Survivor, str]:
    """The survivors that were looked at, and why each stays."""
    rows = file.read_text(encoding="utf-8").splitlines()[1:]
    found = {}
    for row in rows:
        module, before, after, why = row.split("\t")
        found[Survivor(module, before, after)] = why
    return found


def path_of(module: str) -> str:
    """Return the file of a module: engine/judge/fit.py of `judge.fit`."""
    return f"engine/{module.replace('.', '/')}.py"


def interval(killed: int, tried: int) -> tuple[float, float]:
    """The share killed of all mutants, 95 % interval by Wilson (1927, JASA 22, 209)."""
    share, z2 = killed / tried, _TO_95_PERCENT**2
    middle = (share + z2 / (2 * tried)) / (1 + z2 / tried)
    reach = (
        _TO_95_PERCENT
        / (1 + z2 / tried)
        * math.sqrt(share * (1 - share) / tried + z2 / (4 * tried**2))
    )
    return middle - reach, middle + reach


def summed_up(results: list[Result], why: dict[Survivor, str]) -> tuple[list[str], bool]:
    """The lines to print, and whether enough were killed and each survivor has its reason."""
    on_a_bound = [one for one in results if one["outcome"] == "on a bound"]
    results = [one for one in results if one["outcome"] != "on a bound"]
    lines = [f"{'module':22} {'places':>6} {'tried':>6} {'killed':>6} {'lived':>6}"]
    for module in dict.fromkeys(one["module"] for one in results):
        of = [one for one in results if one["module"] == module]
        lived = sum(one["outcome"] == "survived" for one in of)
        lines.append(f"{module:22} {of[0]['of']:6} {len(of):6} {len(of) - lived:6} {lived:6}")
    lived = [one for one in results if one["outcome"] == "survived"]
    new = [one for one in lived if Survivor(one["module"], one["before"], one["after"]) not in why]
    for one in new:
        lines.append(
            f"\nNEW  {path_of(one['module'])}:{one['line']} ({one['tests']} tests)\n"
            f"  - {one['before']}\n  + {one['after']}"
        )
    killed = len(results) - len(lived)
    stopped = Counter(one["outcome"] for one in results)["stopped"]
    low, high = interval(killed, len(results))
    lines.append(
        f"\n{killed} of {len(results)} killed ({killed / len(results):.1%}; of all "
        f"{low:.1%} to {high:.1%} with 95 % confidence), {stopped} of them as they did not end; "
        f"{len(lived)} lived, {len(new)} of them without a reason in {KNOWN.name}. Left out: "
        f"{len(on_a_bound)} that differ only where two floats are exactly alike."
    )
    return lines, killed / len(results) >= LEAST and not new


def main() -> int:
    """Tries the mutants and prints what became of them."""
    parser = argparse.ArgumentParser(prog="python3 build/mutate.py", description="Mutation tests.")
    parser.add_argument("modules", nargs="*", help="of the engine, such as judge.fit; without: all")
    parser.add_argument("--most", type=int, default=MOST, help=f"mutants of a module ({MOST})")
    parser.add_argument("--whole", action="store_true", help="all mutants")
    parser.add_argument("--seed", default=SEED, help="draws other mutants")
    parser.add_argument("--at-once", type=int, default=2, help="processes (2)")
    options = parser.parse_args()
    with install.plainly():
        install.make(install.MUTATE)
        begun = time.monotonic()
        with tempfile.TemporaryDirectory() as folder:
            copy, told = Path(folder) / "copy", Path(folder) / "told"
            shutil.copytree(install.ROOT, copy, ignore=shutil.ignore_patterns(*_LEFT_BEHIND))
            wish = {
                "modules": options.modules,
                "most": None if options.whole else options.most,
                "seed": options.seed,
                "at_once": options.at_once,
                "tests": TESTS,
                "reach": str(reached()),
                "told": str(told),
            }
            command = ("nice", "-n", "19", install.PYTHON, "-m", "build.mutation.trial")
            if subprocess.run([*command, json.dumps(wish)], cwd=copy).returncode:
                raise install.Stop("The tests could not be run on the mutants: see above.")
            rows = [json.loads(row) for row in told.read_text(encoding="utf-8").splitlines()]
        results = [row for row in rows if row["outcome"] != "same"]
        lines, enough = summed_up(results, known())
        print(*lines, sep="\n")
        print(f"seed {options.seed}, {time.monotonic() - begun:.0f} s")
    return not enough


if __name__ == "__main__":
    sys.exit(main())
