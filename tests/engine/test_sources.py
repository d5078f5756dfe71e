"""Sources: every figure from outside carries where it is from, and stands in one place."""

from __future__ import annotations

import ast
import importlib
import re
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from statistics import NormalDist

import pytest

import engine
from engine import sources
from engine.sources import Cited

FOLDER = Path(str(engine.__file__)).parent
GENERATED = {"people.population_table"}  # figures about people, cited as a whole at its head
MODULES = sorted(
    ".".join(path.relative_to(FOLDER).with_suffix("").parts)
    for path in FOLDER.rglob("*.py")
    if path.stem not in {"__init__", "__main__"}
)


def cited() -> Iterator[tuple[str, str, Cited]]:
    """Every cited figure: the module that makes it, its name, itself."""
    for module in MODULES:
        for name in assigned(module):
            value = getattr(importlib.import_module(f"engine.{module}"), name, None)
            for one in value if isinstance(value, tuple) else (value,):
                if isinstance(one, Cited):
                    yield module, name, one


def tree(module: str) -> ast.Module:
    return ast.parse((FOLDER / f"{module.replace('.', '/')}.py").read_text(encoding="utf-8"))


def assigned(module: str) -> set[str]:
    """The names that a module gives a value to (those it imports are another module's)."""
    found: set[str] = set()
    for statement in tree(module).body:
        if isinstance(statement, ast.Assign):
            found |= {
                n.id for t in statement.targets for n in ast.walk(t) if isinstance(n, ast.Name)
            }
        elif isinstance(statement, ast.AnnAssign) and isinstance(statement.target, ast.Name):
            found.add(statement.target.id)
    return found


def literals(module: str) -> Counter[float]:
    """How often each number is written in a module."""
    return Counter(
        float(node.value)
        for node in ast.walk(tree(module))
        if isinstance(node, ast.Constant) and isinstance(node.value, int | float)
    )


def telling(value: float) -> bool:
    """Of three figures or more, not in steps of 0.05: met twice, it is no accident."""
    figures = f"{abs(value):.9g}".replace(".", "").strip("0")
    return len(figures) >= 3 and abs(value * 20 - round(value * 20)) > 1e-9


def test_there_are_figures_to_look_at() -> None:
    assert len(list(cited())) > 40
    assert {module for module, _, _ in cited()} >= {"sources", "fabric.yarn", "people.shoe_size"}


@pytest.mark.parametrize(("module", "name", "figure"), sorted(cited()), ids=str)
def test_each_says_where_it_is_from(module: str, name: str, figure: Cited) -> None:
    """A year, a standard's number or a page's address; else it says that there is none."""
    source = figure.source
    assert len(source) >= len("JIS S 5037:1998")
    published = re.search(r"\b(19|20)\d\d\b|\b(ISO|ASTM|JIS|NIST|Munden)\b|\b\w+\.com\b", source)
    none = re.search(r"no published source|from memory", source)
    assert published or none, source


def test_a_figure_without_a_source_cannot_be_made() -> None:
    for nothing in ("", "   "):
        with pytest.raises(ValueError, match="source"):
            Cited(1.0, nothing)


def test_a_cited_figure_computes_like_any_other() -> None:
    figure = Cited(2.5, "a test")
    assert figure * 2 == 5.0
    assert type(figure * 2) is float
    assert figure.source == "a test"


def test_sources_holds_nothing_but_cited_figures() -> None:
    """Every public name in capitals there, but the words for the trade, is cited."""
    for name in assigned("sources"):
        value = getattr(sources, name)
        if name.isupper() and not isinstance(value, str):
            for one in value if isinstance(value, tuple) else (value,):
                assert isinstance(one, Cited), name


def test_no_name_is_given_twice() -> None:
    names = Counter({(module, name) for module, name, _ in cited()})
    where = Counter(name for _, name in names)
    assert [name for name, times in where.items() if times > 1] == []


def test_each_figure_is_written_once() -> None:
    """A figure of three digits that is cited is not written as a bare number elsewhere."""
    owners: dict[float, set[str]] = {}
    for module, _, figure in cited():
        if telling(figure):
            owners.setdefault(float(figure), set()).add(module)
    assert len(owners) > 10
    for module in MODULES:
        if module in GENERATED:
            continue
        for value in literals(module):
            if value in owners:
                assert module in owners[value], f"{value} is written in {module} too"


def test_the_normal_quantile_is_that_of_80_percent() -> None:
    """Four decimals, as printed."""
    assert pytest.approx(NormalDist().inv_cdf(0.9), abs=5e-5) == sources.TO_80_PERCENT


@pytest.mark.parametrize("bounds", ["BALL_STRETCH", "HEEL_STRETCH", "LEG_STRETCH", "FIRMNESS"])
def test_bounds_of_fit_rise(bounds: str) -> None:
    values = getattr(sources, bounds)
    assert len(values) == 4
    assert list(values) == sorted(set(values))
