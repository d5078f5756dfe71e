"""Weights kept before grams were usual beside inches, as the page's own module reads them."""

from __future__ import annotations

import json
import subprocess
from pathlib import Path
from typing import Any

from build import install

ROOT = Path(__file__).resolve().parents[2]
MODULE = (ROOT / "webapp" / "page" / "spelled.js").as_uri()


def run(expression: str) -> Any:
    """What an expression over the module (`page`) comes to, in node."""
    script = f"import * as page from {MODULE!r}; console.log(JSON.stringify({expression}));"
    done = subprocess.run(
        [str(install.VENV / "bin" / "node"), "--input-type=module", "--eval", script],
        capture_output=True,
        check=True,
        text=True,
    )
    return json.loads(done.stdout)


def test_a_pair_kept_beside_inches_keeps_its_ounces() -> None:
    request = {
        "units": "in",
        "foot": {"length": "9 3/8"},
        "fabric": {
            "swatch": {"grams": "0.5", "length": "6"},
            "swatches": [{"grams": "14 g"}, None],
        },
        "stock": {"left": "1 ¾", "ball": 2, "apart": ["heel", "toe"], "sock_one": ""},
        "person": {"child": True},
    }
    found = run(f"page.requestAsKept({json.dumps(request)})")
    assert found == {
        **request,
        "fabric": {
            "swatch": {"grams": "0.5 oz", "length": "6"},
            "swatches": [{"grams": "14 g"}, None],
        },
        "stock": {"left": "1 ¾ oz", "ball": "2 oz", "apart": ["heel", "toe"], "sock_one": ""},
    }
    assert run(f"page.requestAsKept({json.dumps(found)})") == found, "once is enough"
    metric = {**request, "units": "cm"}
    assert run(f"page.requestAsKept({json.dumps(metric)})") == metric


def test_what_is_typed_beside_inches_is_kept_with_its_grams() -> None:
    names = ["stock.left", "fabric.swatches.3.grams", "shelf.yarns.0.left", "foot.length"]
    typed = run(f"{json.dumps(names)}.map((name) => page.inGrams(name, '27', 'in'))")
    assert typed == ["27 g", "27 g", "27 g", "27"]
    assert run("page.inGrams('stock.left', '1 oz', 'in')") == "1 oz"
    assert run("page.inGrams('stock.left', '27', 'cm')") == "27"
    assert run("page.asKept('shelf.yarns.0.left', '3.2', 'in')") == "3.2 oz"
