"""Many answers of the cut Python against a whole one: `python3 build/same_answers.py`.

A wrong cut in Pyodide's code traps, a wrong cut in its data answers wrongly. So thousands of seeded
calls of every door are answered by CPython with the real pint, here, and by the built site in a
browser, from its archives and from its snapshot; and the site is started many times. It takes some
ten minutes, and is for a change of Pyodide or of what is cut; `build/check.py` makes 200 calls.
"""

from __future__ import annotations

import argparse
import subprocess
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))  # names count from the repository

from build import install

TESTS = ("tests/browser/test_same_answers.py", "tests/browser/test_snapshot.py")


def main() -> int:
    """Runs the two tests with as many calls and starts as are wished; their exit code."""
    parser = argparse.ArgumentParser(prog="python3 build/same_answers.py", description=__doc__)
    parser.add_argument("--calls", type=int, default=5000, help="how many calls (5,000)")
    parser.add_argument("--starts", type=int, default=200, help="how many starts (200)")
    options = parser.parse_args()
    with install.plainly():
        install.make((*install.CHECK, *install.BROWSER))
    return subprocess.run(
        (install.PYTHON, "-m", "pytest", "-q", "--durations=4", *TESTS),
        cwd=install.ROOT,
        env={
            **install.environment(),
            "HEELWISE_CALLS": str(options.calls),
            "HEELWISE_STARTS": str(options.starts),
        },
        check=False,
    ).returncode


if __name__ == "__main__":
    sys.exit(main())
