"""Tries the tests on each mutant, in a copy of the repository; build/mutate.py starts it.

Everything is imported and collected once. Then each mutant has a process of its own, forked from
that: the functions there get the mutant's code, and those tests run that reach the changed line,
until one of them fails. Nothing was computed before the fork, so no cache holds an old answer.
"""

from __future__ import annotations

import builtins
import contextlib
import gc
import json
import os
import pickle
import resource
import sys
import time
from collections import defaultdict
from collections.abc import Callable, Iterator
from pathlib import Path
from types import CodeType, FunctionType
from typing import Any

import coverage
import pytest
from _pytest.runner import runtestprotocol
from hypothesis import HealthCheck, Phase, settings

from build.mutation import arithmetic
from build.mutation.arithmetic import Mutant

ENGINE = Path.cwd() / "engine"
# Whoever lives through so many seconds of tests, the likeliest first, is a survivor.
PATIENCE_S = 15.0
_ENDLESS_S, _MEMORY = 30, 4 << 30
_IS_FUNCTION = 0x2  # CO_NEWLOCALS: a function's body, not a class's
# Made at import, by functions of the module that no test comes by later.
_AT_IMPORT = {"people.population": ("_GROUPS",), "people.shoe_size": ("_SCALES", "RANGE")}

Tests = dict[str, tuple[float, pytest.Item]]  # by name: its seconds


def in_child(work: Callable[[], int]) -> int:
    """Forks a silent process that does the work and ends with what it returns."""
    child = os.fork()
    if child:
        return child
    status = 99
    with contextlib.suppress(BaseException):
        quiet = os.open(os.devnull, os.O_RDWR)
        for stream in (0, 1, 2):
            os.dup2(quiet, stream)
        status = work()
    os._exit(status)


def forget() -> None:
    """Empties every cache of the engine."""
    for module in [m for name, m in sys.modules.items() if name.startswith("engine.")]:
        for value in vars(module).values():
            if hasattr(value, "cache_clear"):
                value.cache_clear()


def passes(item: pytest.Item, following: pytest.Item | None) -> bool:
    """Runs one test."""
    return not any(one.failed for one in runtestprotocol(item, log=False, nextitem=following))


def named(file: Path) -> str:
    """Return how a module of the engine is called here: `judge.fit`."""
    return ".".join(file.relative_to(ENGINE).with_suffix("").parts)


def reach(items: list[pytest.Item], told: Path) -> int:
    """Writes down, with no mutant, what each test takes and the lines it comes by."""
    seen = coverage.Coverage(data_file=None, include=[f"{ENGINE}/*"])
    seen.start()
    took = dict[str, float]()
    for item, following in zip(items, [*items[1:], None], strict=True):
        forget()
        seen.switch_context(item.nodeid)
        begun = time.process_time()
        if not passes(item, following):
            told.write_bytes(pickle.dumps(item.nodeid))
            return 1
        took[item.nodeid] = time.process_time() - begun
    seen.stop()
    data = seen.get_data()
    lines = {named(Path(file)): data.contexts_by_lineno(file) for file in data.measured_files()}
    told.write_bytes(pickle.dumps((took, lines)))
    return 0


def functions(code: CodeType) -> Iterator[CodeType]:
    """Yield the functions of a module or class, not those inside of others."""
    for inner in code.co_consts:
        if isinstance(inner, CodeType):
            if inner.co_flags & _IS_FUNCTION:
                yield inner
            else:
                yield from functions(inner)


def living() -> dict[tuple[str, str, int], FunctionType]:
    """Return all functions of the engine, by file, name and line."""
    return {
        (one.__code__.co_filename, one.__code__.co_qualname, one.__code__.co_firstlineno): one
        for one in gc.get_objects()
        if isinstance(one, FunctionType) and one.__code__.co_filename.startswith(str(ENGINE))
    }


def put_in(mutant: Mutant, found: dict[tuple[str, str, int], FunctionType]) -> bool:
    """Gives the engine's functions the mutant's code. False where that is what they have."""
    changed = False
    for code in functions(mutant.code):
        one = found.get((code.co_filename, code.co_qualname, code.co_firstlineno))
        if one is not None and one.__code__ != code:
            one.__code__ = code
            changed = True
    if changed and mutant.module in _AT_IMPORT:
        module = sys.modules[f"engine.{mutant.module}"]
        anew: dict[str, Any] = {"__name__": module.__name__, "__file__": module.__file__}
        exec(mutant.code, anew)  # noqa: S102 (the engine's own text, but for one sign)
        for figures in _AT_IMPORT[mutant.module]:
            setattr(module, figures, anew[figures])
    return changed


class Trial:
    """A plugin of pytest that tries mutants instead of the tests themselves."""

    def __init__(self, options: dict[str, Any]) -> None:
        self.options = options

    @pytest.hookimpl
    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        """Takes pytest's place once all tests are collected."""
        strange = set(self.options["modules"]) - set(arithmetic.MODULES)
        if strange:
            raise pytest.UsageError(f"not among the modules that are tried: {sorted(strange)}")
        told = Path(self.options["reach"])
        if not told.exists():
            begun = time.monotonic()
            os.waitpid(in_child(lambda: reach(session.items, told)), 0)
            print(f"Tests without a mutant: {time.monotonic() - begun:.0f} s", flush=True)
        found = pickle.loads(told.read_bytes())  # noqa: S301 (written just now)
        if isinstance(found, str):
            told.unlink()
            raise pytest.UsageError(f"{found} fails without any mutant")
        took, lines = found
        tests = {item.nodeid: (took[item.nodeid], item) for item in session.items}
        with Path(self.options["told"]).open("w", encoding="utf-8") as out:
            for result in self.results(tests, lines):
                print(json.dumps(result), file=out, flush=True)
        return True

    def results(
        self, tests: Tests, lines: dict[str, dict[int, list[str]]]
    ) -> Iterator[dict[str, Any]]:
        """Yield what became of each mutant, as many at a time as asked."""
        found, running = living(), dict[int, dict[str, Any]]()
        gc.freeze()
        for name in self.options["modules"] or arithmetic.MODULES:
            file = ENGINE / f"{name.replace('.', '/')}.py"
            source = file.read_text(encoding="utf-8")
            places = arithmetic.places(source)
            most, seed = self.options["most"], self.options["seed"]
            chosen = arithmetic.sampled(places, most, f"{seed} {name}")
            around = arithmetic.statements(source)
            for mutant in arithmetic.mutants(name, file, chosen):
                near = around.get(mutant.line, ()) if name not in _AT_IMPORT else lines[name]
                reaching = {test for line in near for test in lines[name].get(line, ()) if test}
                items, seconds = in_order(name, [tests[test] for test in sorted(reaching)])
                result = {**mutant._asdict(), "tests": len(items), "of": len(places)}
                del result["code"], result["noting"]
                while len(running) >= self.options["at_once"]:
                    yield ended(running)
                child = in_child(lambda: attempt(mutant, found, items, seconds))  # noqa: B023
                running[child] = {**result, "begun": time.monotonic()}
        while running:
            yield ended(running)


def in_order(
    module: str, reaching: list[tuple[float, pytest.Item]]
) -> tuple[list[pytest.Item], float]:
    """Return tests with their seconds: the module's own first, then one of each function."""
    ranked, of_function = [], defaultdict[str, int](int)
    for seconds, item in sorted(reaching, key=lambda one: one[0]):
        function = item.nodeid.partition("[")[0]
        # Those of `pocket_sheet` stand in test_pockets.py as well.
        of = Path(item.path).stem.removeprefix("test_").removesuffix("s")
        other = not module.rpartition(".")[2].startswith(of)
        ranked.append((other, other and of_function[function], seconds, item.nodeid, item))
        of_function[function] += 1
    kept, whole = list[pytest.Item](), 0.0
    for *_, seconds, _, item in sorted(ranked, key=lambda one: one[:4]):
        if whole + seconds <= PATIENCE_S or not kept:
            kept.append(item)
            whole += seconds
    return kept, whole


LIVES, DIES, SAME, ON_A_BOUND = 0, 1, 2, 3


def attempt(
    mutant: Mutant,
    found: dict[tuple[str, str, int], FunctionType],
    items: list[pytest.Item],
    seconds: float,
) -> int:
    """Runs the tests on a mutant until one fails."""
    most = int(10 * seconds) + _ENDLESS_S
    resource.setrlimit(resource.RLIMIT_CPU, (most, most + 5))
    resource.setrlimit(resource.RLIMIT_AS, (_MEMORY, _MEMORY))
    try:
        if not put_in(mutant, found):
            return SAME
    except Exception:
        return DIES  # it could not even be imported
    forget()
    following = [*items[1:], None] if items else []
    if not all(map(passes, items, following)):
        return DIES
    return ON_A_BOUND if mutant.noting and _floats(mutant, found, items) else LIVES


def _floats(
    mutant: Mutant, found: dict[tuple[str, str, int], FunctionType], items: list[pytest.Item]
) -> bool:
    """Tell whether all that an edge compares are floats, of which no two are exactly alike."""
    kinds = set[type]()

    def noted(side: object) -> object:
        kinds.add(type(side))
        return side

    setattr(builtins, arithmetic.NOTED, noted)
    put_in(mutant._replace(code=mutant.noting or mutant.code), found)
    forget()
    for item, following in zip(items, [*items[1:], None], strict=True):
        passes(item, following)
    return bool(kinds) and all(issubclass(kind, float) for kind in kinds)  # cited ones too


def ended(running: dict[int, dict[str, Any]]) -> dict[str, Any]:
    """Waits for one mutant and returns what became of it."""
    child, status = os.wait()
    result = running.pop(child)
    seconds = round(time.monotonic() - result.pop("begun"), 2)
    code = os.waitstatus_to_exitcode(status)
    named = {LIVES: "survived", DIES: "killed", SAME: "same", ON_A_BOUND: "on a bound"}
    outcome = named.get(code, "stopped")
    return {**result, "outcome": outcome, "seconds": seconds}


def main() -> None:
    """Reads what to do as JSON from the command line."""
    options = json.loads(sys.argv[1])
    settings.register_profile(
        "mutants",
        parent=settings.get_profile("default"),
        derandomize=True,
        deadline=None,
        database=None,
        phases=(Phase.explicit, Phase.generate),  # a failure is enough: it need not be small
        report_multiple_bugs=False,
        suppress_health_check=list(HealthCheck),
    )
    os.environ["HYPOTHESIS_PROFILE"] = "mutants"
    quick = ("-m", "not slow", "--quiet", "--assert=plain", "--tb=no", "-p", "no:cacheprovider")
    sys.exit(pytest.main([*quick, *options["tests"]], plugins=[Trial(options)]))


if __name__ == "__main__":
    main()
