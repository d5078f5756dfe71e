"""All that is shipped and not ours is named with its licence, in full where its package has it."""

import json
from pathlib import Path

import pytest

from build import licences, site
from build.engine_archive import LIBRARIES

SHIPPED = [*licences.of_engine(), *licences.of_page(site.BUILD)]


@pytest.mark.parametrize("one", SHIPPED, ids=lambda one: one.name)
def test_each_has_a_licence(one: licences.Shipped) -> None:
    """Pyodide's package has no text, and MPL 2.0 asks that one be told where the source is."""
    assert one.licence.strip()
    if one.name == "pyodide":
        assert one.text.startswith("Its source: https://")
    else:
        assert len(one.text) > 500
        assert "copyright" in one.text.lower()


def test_what_is_bundled_and_what_the_engine_imports_are_among_them() -> None:
    """What only builds is not; a package that comes in by another is."""
    names = {one.name for one in SHIPPED}
    wanted = json.loads((site.BUILD / "package.json").read_text())["dependencies"]
    assert {*LIBRARIES, "CPython", "workbox-core"} | set(wanted) - {"esbuild"} <= names
    assert not names & {"esbuild", "ws"}


def test_the_site_carries_the_text_and_the_page_leads_there(dist: Path) -> None:
    text = (dist / "licences.txt").read_text(encoding="utf-8")
    for one in SHIPPED:
        assert f"{one.name} {one.version}".strip() + f": {one.licence}" in text
        assert one.text.strip() in text
    page = (dist / "index.html").read_text(encoding="utf-8")
    assert 'href="licences.txt"' in page
    assert "licences.txt" in (dist / "sw.js").read_text(encoding="utf-8"), "without a network too"


def test_nothing_is_shipped_without_its_licence(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    made = site.Site(site.ROOT, tmp_path)
    monkeypatch.setattr(made, "shipped", [one for one in SHIPPED if one.name != "idb"])
    with pytest.raises(site.SiteError, match=r"idb/.* without its licence"):
        made.scripts_and_style()
