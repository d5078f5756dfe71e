"""What axe-core finds on a page: the one that build/package.json pins, as it came from npm."""

from __future__ import annotations

from functools import cache
from typing import Any

from playwright.sync_api import Page

from build.install import BUILD

# Contrast at level AAA asks more than AA of every text: 7:1 for 4.5:1, and of large ones 4.5:1 for
# 3:1. To measure both would take as long again as all else that axe does.
OPTIONS = {
    "runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
    "rules": {
        "color-contrast-enhanced": {"enabled": True},
        "color-contrast": {"enabled": False},
        "label-content-name-mismatch": {"enabled": True},  # WCAG 2.2, 2.5.3
    },
    "resultTypes": ["violations"],
}


@cache
def source() -> str:
    """The script itself."""
    return (BUILD / "node_modules" / "axe-core" / "axe.min.js").read_text()


def violations(page: Page) -> list[tuple[str, list[Any]]]:
    """The rule, and where it is broken."""
    if not page.evaluate("typeof axe === 'object'"):
        page.evaluate(source())
    found = page.evaluate("options => axe.run(document, options)", OPTIONS)["violations"]
    return [(rule["id"], [node["target"] for node in rule["nodes"]]) for rule in found]
