"""What is changed on purpose: the figures and the signs in the engine's modules that compute.

Left out are modules that only word, draw or pack what was computed (most of `answers`, `drawing`,
`api`), those that read fields (`fields`, `errors`), and `sources` and `population_table`, which
hold cited figures and no formula. Within a module only what stands in a function is changed: a
figure outside of one is cited or a limit of a field, and the tests name those one by one.
"""

from __future__ import annotations

import ast
import random
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path
from types import CodeType
from typing import NamedTuple

from cosmic_ray import plugins
from cosmic_ray.ast import ast_nodes, get_ast
from cosmic_ray.mutating import mutate_code

MODULES = (
    "answers.anonymous",
    "answers.fabric_sheet",
    "answers.leg_sheet",
    "answers.pocket_sheet",
    "answers.yarn_sheet",
    "answers.yarn_used",
    "fabric.certainty",
    "fabric.fabric",
    "fabric.gauge",
    "fabric.swatch",
    "fabric.swatch_line",
    "fabric.tension",
    "fabric.yarn",
    "fabric.yarn_at_hand",
    "judge.fit",
    "judge.fit_score",
    "judge.shelf",
    "judge.stripes",
    "judge.supply",
    "machine.cylinder",
    "machine.half_mark",
    "people.foot",
    "people.population",
    "people.shoe_size",
    "read.reading",
    "read.units",
    "sections.cuff",
    "sections.leg",
    "sections.pockets",
    "sections.shaped_leg",
    "sections.short_row",
    "sock.first_sock",
    "sock.plan",
    "sock.sock",
    "sock.too_short",
)

# Another sign for each sign, and for each comparison one that differs at its edge and one that is
# turned round. Not among them are those that any test stumbles over (a subtraction made a shift)
# and those that change no figure (decorators, kinds of exceptions, names).
_SIGNS = (*("Add_Sub", "Sub_Add", "Mul_Div", "Div_Mul", "FloorDiv_Div", "Mod_FloorDiv", "Pow_Mul"),)
_COMPARISONS = (
    *("Eq_NotEq", "NotEq_Eq", "Lt_LtE", "Lt_GtE", "LtE_Lt", "LtE_Gt"),
    *("Gt_GtE", "Gt_LtE", "GtE_Gt", "GtE_Lt", "Is_IsNot", "IsNot_Is"),
)
OPERATORS = (
    "NumberReplacer",  # one more, one less
    *(f"ReplaceBinaryOperator_{pair}" for pair in _SIGNS),
    *(f"ReplaceComparisonOperator_{pair}" for pair in _COMPARISONS),
    *("ReplaceUnaryOperator_USub_UAdd", "ReplaceUnaryOperator_Delete_Not"),
    *("ReplaceAndWithOr", "ReplaceOrWithAnd", "AddNot"),
    *("ReplaceTrueWithFalse", "ReplaceFalseWithTrue"),
    *("ReplaceBreakWithContinue", "ReplaceContinueWithBreak", "ZeroIterationForLoop"),
)
# These change nothing but what becomes of two sides that are exactly alike.
_EDGES = {f"ReplaceComparisonOperator_{pair}" for pair in ("Lt_LtE", "LtE_Lt", "Gt_GtE", "GtE_Gt")}
NOTED = "__noted__"  # what an edge's two sides go through where they are looked at


class Place(NamedTuple):
    """Where an operator may work: the n-th of its occurrences, and where that is in the text."""

    operator: str
    occurrence: int
    line: int
    column: int


class Mutant(NamedTuple):
    """A module (`judge.fit`) with one thing changed: its line before and after, all its code.

    `noting` is the code of an edge whose two sides go through `NOTED`, None of any other.
    """

    module: str
    line: int
    before: str
    after: str
    code: CodeType
    noting: CodeType | None


def places(source: str) -> list[Place]:
    """Return all places inside functions."""
    inside = set[int]()
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.FunctionDef):
            inside.update(range(node.body[0].lineno, (node.end_lineno or 0) + 1))
    nodes = list(ast_nodes(get_ast(source)))
    found = list[Place]()
    for name in OPERATORS:
        operator = plugins.get_operator(f"core/{name}")()
        starts = [start for node in nodes for start, _ in operator.mutation_positions(node)]
        found += [
            Place(name, at, line, column)
            for at, (line, column) in enumerate(starts)
            if line in inside
        ]
    return [place for place in found if not _only_checks(place, source.splitlines())]


def _only_checks(place: Place, lines: list[str]) -> bool:
    """Tell whether it is zip's promise that two lists are alike long: no figure hangs on it."""
    return place.operator == "ReplaceTrueWithFalse" and "strict=True" in lines[place.line - 1]


def sampled(found: list[Place], most: int | None, seed: str) -> list[Place]:
    """Return `most` of the places by chance, all for None; more are those of fewer and others."""
    if most is None:
        return found
    shuffled = list(found)
    random.Random(seed).shuffle(shuffled)  # noqa: S311 (no secret)
    return shuffled[:most]


def mutants(module: str, file: Path, chosen: list[Place]) -> Iterator[Mutant]:
    """Yield the module of `file` changed at each place in turn."""
    source = file.read_text(encoding="utf-8")
    lines = source.splitlines()
    for name, occurrence, line, column in chosen:
        operator = plugins.get_operator(f"core/{name}")()
        changed = mutate_code(source, operator, occurrence)
        after = changed.splitlines()[line - 1].strip()
        try:
            code = compile(changed, str(file), "exec", dont_inherit=True)
        except SyntaxError:
            continue  # the stars of {**some} are no power
        noting = _noting(changed, file, (line, column)) if name in _EDGES else None
        yield Mutant(module, line, lines[line - 1].strip(), after, code, noting)


def _noting(source: str, file: Path, where: tuple[int, int]) -> CodeType:
    """Return the code in which both sides of the comparison whose sign is there go by `NOTED`."""
    tree = ast.parse(source)
    for node in ast.walk(tree):
        if not isinstance(node, ast.Compare):
            continue
        sides = [node.left, *node.comparators]
        for at, (one, other) in enumerate(pairwise(sides)):
            begins = (one.end_lineno or 0, one.end_col_offset or 0)
            if begins <= where < (other.lineno, other.col_offset):
                sides[at : at + 2] = _gone_by(one), _gone_by(other)
                node.left, *node.comparators = sides
                return compile(ast.fix_missing_locations(tree), str(file), "exec")
    raise ValueError(f"no comparison in line {where[0]} of {file}")


def _gone_by(side: ast.expr) -> ast.expr:
    call = ast.Call(ast.Name(NOTED, ast.Load()), [side], [])
    return ast.copy_location(call, side)


def statements(source: str) -> dict[int, range]:
    """Return for each line the lines of the innermost statement it is in, its body left out."""
    found = dict[int, range]()
    for node in ast.walk(ast.parse(source)):  # the outer before the inner
        if isinstance(node, ast.stmt):
            body = getattr(node, "body", None)
            end = body[0].lineno if body else (node.end_lineno or node.lineno) + 1
            lines = range(node.lineno, max(end, node.lineno + 1))
            found.update(dict.fromkeys(lines, lines))
    return found
