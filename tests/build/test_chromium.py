"""A browser out of the npm package: unpacked as it should be, and able to show a page."""

import io
import os
import platform
import sys
import tarfile
from pathlib import Path

import brotli
import pytest
from playwright.sync_api import Playwright

from build import chromium, install


def packed_folder(name: str, content: bytes) -> bytes:
    """A compressed folder with one file."""
    packed = io.BytesIO()
    with tarfile.open(fileobj=packed, mode="w") as archive:
        member = tarfile.TarInfo(name)
        member.size = len(content)
        archive.addfile(member, io.BytesIO(content))
    compressed: bytes = brotli.compress(packed.getvalue())
    return compressed


def test_unpacks_program_and_folders(tmp_path: Path) -> None:
    packed, into = tmp_path / "packed", tmp_path / "into"
    packed.mkdir()
    into.mkdir()
    (into / "left over").touch()
    (packed / "chromium.br").write_bytes(brotli.compress(b"#!/bin/sh\nexit 0\n"))
    (packed / "fonts.tar.br").write_bytes(packed_folder("fonts/plain.ttf", b"letters"))
    chromium.unpack(packed, into)
    assert chromium.Chromium(into / "chromium").runs()
    assert (into / "fonts/fonts/plain.ttf").read_bytes() == b"letters"
    assert f"<dir>{into}/fonts</dir>" in (into / "fonts.conf").read_text()
    assert not (into / "left over").exists()


@pytest.mark.skipif(not hasattr(tarfile, "data_filter"), reason="this Python cannot filter")
def test_a_packed_file_cannot_leave_its_folder(tmp_path: Path) -> None:
    (tmp_path / "bad.tar.br").write_bytes(packed_folder("../../escaped", b""))
    with pytest.raises(tarfile.OutsideDestinationError):
        chromium.unpack(tmp_path, tmp_path / "into" / "deep")
    assert not (tmp_path / "into" / "escaped").exists()


def test_a_signpost_in_its_place_is_passed_over(tmp_path: Path) -> None:
    signpost = tmp_path / "chromium"
    signpost.write_text("#!/bin/sh\necho get it in the shop\nexit 1\n")
    signpost.chmod(0o755)
    assert not chromium.Chromium(signpost).runs()
    assert not chromium.Chromium(tmp_path / "missing").runs()


@pytest.mark.slow
@pytest.mark.skipif(
    sys.platform != "linux" or platform.machine() != "x86_64", reason="packed for Linux x86-64 only"
)
def test_packed_browser_shows_a_page(playwright: Playwright) -> None:
    install.make(install.BROWSER)
    found = chromium.unpacked() or chromium.by_npm()
    browser = playwright.chromium.launch(
        executable_path=found.executable,
        args=found.arguments,
        env={**os.environ, **found.variables},
    )
    page = browser.new_page(has_touch=True)
    page.set_content("<button onclick='this.textContent = \"46 rounds\"'>Foot</button>")
    page.tap("button")
    assert page.inner_text("button") == "46 rounds"
    # A font is there: letters of different width, not boxes.
    page.set_content("<span>iii</span> <b>MMM</b>")
    narrow, wide = page.locator("span").bounding_box(), page.locator("b").bounding_box()
    assert narrow
    assert wide
    assert 0 < narrow["width"] < wide["width"]
    browser.close()
