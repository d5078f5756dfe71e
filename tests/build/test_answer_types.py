"""The page's types of answers are made from the engine's, and are up to date."""

from __future__ import annotations

from pathlib import Path
from typing import Any, Literal

import pytest

from build import answer_types
from engine.answers.contract.shown import Quantity


def test_the_file_in_the_repository_is_what_the_contract_says() -> None:
    assert answer_types.PLACE.read_text(encoding="utf-8") == answer_types.text()
    assert answer_types.main(["--check"]) == 0


@pytest.mark.parametrize(
    ("wanted", "text"),
    [
        (str, "string"),
        (int, "number"),
        (bool, "boolean"),
        (float | None, "number | null"),
        (list[str], "string[]"),
        (list[int | None], "(number | null)[]"),
        (dict[str, Quantity], "Record<string, Quantity>"),
        (Literal["a", "b"], '"a" | "b"'),
        (dict[str, Any], "Record<string, any>"),
    ],
)
def test_a_type_as_the_page_spells_it(wanted: Any, text: str) -> None:
    assert answer_types.spelled(wanted) == text


def test_what_the_page_has_no_type_for_is_no_type() -> None:
    with pytest.raises(TypeError):
        answer_types.spelled(bytes)


def test_an_old_file_is_noticed_and_written_anew(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    old = tmp_path / "answers.d.ts"
    monkeypatch.setattr(answer_types, "PLACE", old)
    monkeypatch.setattr(answer_types, "ROOT", tmp_path)
    assert answer_types.main(["--check"]) == 1
    assert "build/answer_types.py" in capsys.readouterr().out
    assert answer_types.main([]) == 0
    assert answer_types.main(["--check"]) == 0
    assert "offers?: string[];" in old.read_text(encoding="utf-8")
