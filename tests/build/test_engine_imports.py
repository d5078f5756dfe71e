"""The engine stands on Python, pint and segno; no clock, chance, file, network or browser."""

import ast
import sys
from pathlib import Path

import pytest

ENGINE = Path(__file__).resolve().parents[2] / "engine"
OUTER_WORLD = {
    *(
        "asyncio",
        "concurrent",
        "ctypes",
        "datetime",
        "ftplib",
        "getpass",
        "glob",
        "http",
        "importlib",
    ),
    *(
        "io",
        "locale",
        "logging",
        "multiprocessing",
        "os",
        "pathlib",
        "pickle",
        "platform",
        "random",
    ),
    *("secrets", "select", "shutil", "signal", "smtplib", "socket", "sqlite3", "ssl", "subprocess"),
    *("sys", "tempfile", "threading", "time", "urllib", "uuid", "webbrowser"),
}
TERMINAL = {"__main__.py", "aloud.py"}  # reads what it is given, prints, and knows the languages


def imported(source: str) -> set[str]:
    """The top-level names of the packages that a module imports, wherever in it."""
    names: set[str] = set()
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Import):
            names |= {alias.name.partition(".")[0] for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            names.add("engine" if node.level else (node.module or "").partition(".")[0])
    return names


def opens_files(source: str) -> bool:
    """Whether a module calls `open`, `eval`, `exec`, `input`, `print` or `__import__`."""
    outward = {"open", "eval", "exec", "input", "print", "__import__"}
    return any(
        isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in outward
        for node in ast.walk(ast.parse(source))
    )


MODULES = sorted(ENGINE.glob("**/*.py"))


@pytest.mark.parametrize("module", MODULES, ids=lambda path: path.stem)
def test_needs_only_python_pint_and_segno(module: Path) -> None:
    assert imported(module.read_text()) <= sys.stdlib_module_names | {"engine", "pint", "segno"}


@pytest.mark.parametrize(
    "module", [m for m in MODULES if m.name not in TERMINAL], ids=lambda path: path.stem
)
def test_knows_nothing_of_the_outer_world(module: Path) -> None:
    source = module.read_text()
    assert not imported(source) & OUTER_WORLD
    assert not opens_files(source)


def test_these_checks_see_what_they_look_for() -> None:
    assert imported("def f():\n    import os.path\n    from numpy import array") == {"os", "numpy"}
    assert opens_files("x = open('a')")
    assert not opens_files("x.open('a')")
