"""What is thrown at the engine: the corpus, and what chance makes of it and of nothing.

The corpus is kept in `corpus/`, to be read and added to: whatever once broke something is put
there. Each batch of inputs is drawn from a seed of its own, so that a million of them need no more
memory than the first, and the same number draws the same inputs again.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from typing import Any

from hypothesis import HealthCheck, given, seed, settings
from hypothesis import strategies as st

Json = Any
BATCH = 2000
CORPUS = Path(__file__).parent / "corpus"
WORST = (
    None,
    True,
    0,
    -1,
    1e308,
    float("nan"),
    float("inf"),
    10**400,
    "",
    "\0",
    "\u202e",
    "9" * 400,
)


def corpus(name: str) -> list[Json]:
    """What is kept of one kind."""
    found: list[Json] = json.loads((CORPUS / f"{name}.json").read_text(encoding="utf-8"))
    return found


def tried(inputs: int, drawn: st.SearchStrategy[Json], check: Callable[[Json], None]) -> int:
    """Check so many inputs, in batches; returns how many it were."""
    count = 0

    def one(value: Json) -> None:
        nonlocal count
        count += 1
        check(value)

    for batch in range(-(-inputs // BATCH)):
        limits = settings(
            max_examples=min(BATCH, inputs),
            deadline=None,
            database=None,
            derandomize=False,
            suppress_health_check=list(HealthCheck),
            print_blob=True,
        )
        seed(batch)(limits(given(drawn)(one)))()
    return count


@st.composite
def cut_up(draw: st.DrawFn, texts: list[str], letters: st.SearchStrategy[str]) -> str:
    """A kept text with pieces left out, doubled, exchanged or put in."""
    text = draw(st.sampled_from(texts))
    for _ in range(draw(st.integers(1, 4))):
        begin, end = sorted(draw(st.tuples(*[st.integers(0, len(text))] * 2)))
        piece = text[begin:end]
        new = draw(st.sampled_from(("", piece * 2, piece[::-1])) | letters)
        text = text[:begin] + new + text[end:]
    return text


def anything(names: list[str]) -> st.SearchStrategy[Json]:
    """Any JSON, and what JSON cannot say; its names often are those that are known."""
    leaves = st.sampled_from(WORST) | st.integers() | st.floats() | st.text(max_size=30)
    keys = st.sampled_from(names) | st.text(max_size=12)
    return st.recursive(
        leaves,
        lambda inner: st.lists(inner, max_size=4) | st.dictionaries(keys, inner, max_size=5),
        max_leaves=12,
    )


def paths(value: Json, path: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    """Every place inside a value."""
    inside: Iterable[tuple[Any, Json]] = ()
    if isinstance(value, dict | list):
        inside = value.items() if isinstance(value, dict) else enumerate(value)
    for name, inner in inside:
        yield (*path, name)
        yield from paths(inner, (*path, name))


@st.composite
def spoilt(draw: st.DrawFn, kept: list[Json], others: st.SearchStrategy[Json]) -> Json:
    """A kept value with one to three places exchanged for something else."""
    value = json.loads(json.dumps(draw(st.sampled_from(kept))))
    for _ in range(draw(st.integers(1, 3))):
        places = list(paths(value))
        if not places:
            return draw(others)
        *way, last = draw(st.sampled_from(places))
        at = value
        for name in way:
            at = at[name]
        at[last] = draw(others)
    return value
