"""EPUB's checker is run where it is, and named where it is not."""

from pathlib import Path

import pytest

from build import check, epub_checker


def test_it_is_named_where_java_or_its_own_file_is_not(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    jar = tmp_path / "checker.jar"
    monkeypatch.setattr(epub_checker, "JAR", jar)
    monkeypatch.setattr("shutil.which", lambda name: f"/bin/{name}")
    assert epub_checker.find() is None
    assert epub_checker.NAME in check.absent()
    jar.touch()
    found = epub_checker.find()
    assert found
    assert (found[0], found[-1]) == ("/bin/java", jar)
    assert epub_checker.NAME not in check.absent()
    monkeypatch.setattr("shutil.which", lambda name: None)
    assert epub_checker.absent() == [epub_checker.NAME]
