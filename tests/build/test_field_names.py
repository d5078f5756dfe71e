"""The page's names of fields are those of the engine, as they were written down from it."""

from __future__ import annotations

from pathlib import Path

import pytest

from build import field_names


def test_the_file_in_the_repository_is_what_the_engine_tells() -> None:
    assert field_names.PLACE.read_text(encoding="utf-8") == field_names.text()
    assert field_names.main(["--check"]) == 0


def test_an_old_file_is_noticed_and_written_anew(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    old = tmp_path / "fields.js"
    old.write_text("export const ECHOED = [];\n", encoding="utf-8")
    monkeypatch.setattr(field_names, "PLACE", old)
    monkeypatch.setattr(field_names, "ROOT", tmp_path)
    assert field_names.main(["--check"]) == 1
    assert "build/field_names.py" in capsys.readouterr().out
    assert field_names.main([]) == 0
    assert field_names.main(["--check"]) == 0
    assert '"fabric.swatches.ROW.kind"' in old.read_text(encoding="utf-8")
