"""What pip-audit 2.10 and npm say is read right. Their forms are from their manuals and from runs
on this project; packages and holes are invented.
"""

import json
import sys
from pathlib import Path

import pytest

from build import advisories, install
from build.advisories import Told, asked, of_npm, of_python

SOUND = {"name": "ribber", "version": "1.0", "vulns": []}
HOLED = {"name": "bobbin", "version": "2.1", "vulns": [{"id": "X-1", "fix_versions": ["2.2"]}]}
UNKNOWN = {"name": "hem", "skip_reason": "Dependency not found and could not be audited: hem (3)"}
TOTAL = {"dependencies": {"total": 7}}
BY_ITSELF = {"via": [{"title": "swells", "url": "https://example.invalid/X-2"}], "range": "<4"}
THROUGH_IT = {"via": ["bobbin"], "range": "*"}


def test_holes_are_told_and_what_was_passed_over_is_no_answer() -> None:
    said = json.dumps({"dependencies": [SOUND, HOLED, UNKNOWN], "fixes": []})
    assert of_python(f"Found 1 known vulnerability\n{said}") == Told(3, 1, ("bobbin 2.1: X-1",))
    holes = {"bobbin": BY_ITSELF, "swift": THROUGH_IT}
    assert of_npm(json.dumps({"vulnerabilities": holes, "metadata": TOTAL})) == Told(
        7, 0, ("bobbin <4: https://example.invalid/X-2",)
    )
    assert of_npm(json.dumps({"vulnerabilities": {}, "metadata": TOTAL})) == Told(7)


@pytest.mark.parametrize(
    "said", ["", "404", '{"message": "405 Method Not Allowed"}', '{"error": {}}']
)
def test_what_is_no_answer_says_nothing(said: str, tmp_path: Path) -> None:
    command = (sys.executable, "-c", f"print({said!r})")
    assert asked(command, tmp_path, of_npm) is None
    assert asked(command, tmp_path, of_python) is None
    assert asked((tmp_path / "not there",), tmp_path, of_npm) is None


@pytest.mark.parametrize(
    ("told", "code", "words"),
    [
        (None, 0, "NOT TRIED: a lock"),
        (Told(3, 3), 0, "NOT TRIED: a lock"),
        (Told(3, 1), 0, "NOT TRIED: a lock: of 1 packages"),
        (Told(3), 0, "of 3 of 3 packages 0 holes"),
        (Told(3, 0, ("bobbin 2.1: X-1",)), 1, "KNOWN HOLE: a lock: bobbin 2.1: X-1"),
    ],
)
def test_only_a_known_hole_fails(
    told: Told | None,
    code: int,
    words: str,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.setattr(install, "make", lambda steps: None)
    monkeypatch.setattr(advisories, "locks", lambda: iter([("a lock", told)]))
    assert advisories.main() == code
    assert words in capsys.readouterr().out


def test_every_lock_is_asked_about(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(advisories, "asked", lambda command, place, read: Told())
    files = {path.name for path in install.BUILD.glob("requirements-*.txt")}
    npm = {"package-lock.json", "audit/package-lock.json", "browser/package-lock.json"}
    assert {name for name, _ in advisories.locks()} == files | npm
