"""The built folder: whole or not at all, the same bytes every time, nothing in it but the site."""

import base64
import hashlib
import json
import os
import re
import shutil
import subprocess
import sys
import sysconfig
import zipfile
from pathlib import Path

import pytest

from build import engine_archive, headers, install, site

ROOT = Path(__file__).resolve().parents[2]


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Path]:
    """(sources, site): a copy of engine and webapp, and what was built of it."""
    folder = tmp_path_factory.mktemp("site")
    for name in ("engine", "webapp"):
        shutil.copytree(ROOT / name, folder / "root" / name)
    assert site.build(folder / "dist", root=folder / "root")
    return folder / "root", folder / "dist"


def contents(dist: Path) -> dict[str, bytes]:
    return {
        path.relative_to(dist).as_posix(): path.read_bytes()
        for path in dist.rglob("*")
        if path.is_file()
    }


def test_two_builds_are_alike(built: tuple[Path, Path], tmp_path: Path) -> None:
    """From another folder, by another process with another hash seed."""
    elsewhere = tmp_path / "elsewhere"
    shutil.copytree(built[0], elsewhere)
    code = "import sys; from pathlib import Path; from build import site; " + (
        "site.build(Path(sys.argv[1]), root=Path(sys.argv[2]))"
    )
    subprocess.run(
        [sys.executable, "-c", code, tmp_path / "dist", elsewhere],
        cwd=ROOT,
        env={"PYTHONHASHSEED": "7", "PATH": "/usr/bin:/bin"},
        check=True,
    )
    assert contents(tmp_path / "dist") == contents(built[1])


def other_python() -> Path | None:
    """Another Python than this one, new enough to build: by name, or among pyenv's."""
    kept = Path(os.environ.get("PYENV_ROOT", Path.home() / ".pyenv"), "versions")
    for minor in range(20, install.OLDEST_PYTHON[1] - 1, -1):
        if minor == sys.version_info.minor:
            continue
        name = f"python3.{minor}"
        found = [Path(path) for path in [shutil.which(name)] if path]
        for path in [*found, *kept.glob(f"3.{minor}.*/bin/{name}")]:
            trial = subprocess.run([path, "--version"], capture_output=True, text=True)
            if trial.stdout.startswith(f"Python 3.{minor}."):
                return path
    return None


@pytest.mark.slow
def test_another_python_builds_the_same_bytes(built: tuple[Path, Path], tmp_path: Path) -> None:
    """With the same packages, for those are pinned; nothing of the Python itself is in the site."""
    python = other_python()
    if not python:
        pytest.skip("NOT TRIED: no second Python from 3.11 on is on this machine")
    code = "import sys; from pathlib import Path; from build import site; " + (
        "site.build(Path(sys.argv[1]), root=Path(sys.argv[2]))"
    )
    packages = sysconfig.get_path("purelib")
    node = Path(site.find_node()).parent
    done = subprocess.run(
        [python, "-B", "-c", code, tmp_path / "dist", built[0]],
        cwd=ROOT,
        env={"PYTHONPATH": packages, "PATH": f"{node}:/usr/bin:/bin"},
        capture_output=True,
        text=True,
    )
    assert done.returncode == 0, done.stderr
    assert contents(tmp_path / "dist") == contents(built[1])


@pytest.mark.slow
def test_compiling_twice_gives_the_same_modules(built: tuple[Path, Path], tmp_path: Path) -> None:
    """With nothing kept from before, so that Pyodide really compiles anew."""
    sources = engine_archive.engine_sources(built[0])
    node = site.find_node()
    archive = engine_archive.compiled(sources, node, ROOT / "build", tmp_path)
    assert next(built[1].glob("engine-*.zip")).read_bytes() == archive


def test_unchanged_inputs_build_nothing_and_any_change_builds(
    built: tuple[Path, Path], tmp_path: Path
) -> None:
    root = tmp_path / "root"
    shutil.copytree(built[0], root)
    dist = tmp_path / "dist"
    shutil.copytree(built[1], dist)
    before = contents(dist)
    assert not site.build(dist, root=root)
    page = root / "webapp" / "templates" / "index.html"
    page.write_text(page.read_text() + "<!-- more -->\n")
    assert site.build(dist, root=root)
    after = contents(dist)
    # The page and what tells of its version; nothing else is fetched again by anyone.
    changed = {name for name in before.keys() | after.keys() if before.get(name) != after.get(name)}
    assert changed == {"index.html", "en-GB.html", "sw.js", ".inputs"}


@pytest.mark.parametrize(
    ("name", "spoilt"),
    [
        ("webapp/templates/index.html", "{{ nothing_of_this_name }}"),
        ("webapp/templates/index.html", "{% if %}"),
        ("webapp/templates/index.html", '{{ say("nothing-of-this-name") }}'),
        ("webapp/templates/index.html", '{{ say("wearers", more="x") }}'),
        ("webapp/words/en/templates.ftl", "broken"),
        ("webapp/page/main.js", "import './nowhere.js'"),
        ("webapp/data/demo.json", "{"),
        ("webapp/page/opening.js", "let other = 1;"),  # which the hosts' headers do not name
        pytest.param("engine/api.py", "def :", marks=pytest.mark.slow),
    ],
)
def test_mistake_is_told_and_leaves_the_site_as_it_was(
    built: tuple[Path, Path], tmp_path: Path, name: str, spoilt: str
) -> None:
    root = tmp_path / "root"
    shutil.copytree(built[0], root)
    (root / name).write_text(spoilt)
    before = contents(built[1])
    with pytest.raises(site.SiteError, match=re.escape(Path(name).name)):
        site.build(built[1], root=root)
    assert contents(built[1]) == before
    assert not list((built[1].parent / ".tools").iterdir())


def test_every_file_is_stored_by_the_service_worker_or_shown_by_the_manifest(
    built: tuple[Path, Path],
) -> None:
    files = contents(built[1])
    worker = files["sw.js"].decode()
    manifest = json.loads(files["manifest.webmanifest"])
    shown = {one["src"] for one in manifest["screenshots"]}
    assert shown == {name for name in files if name.startswith(site.SHOWN)}
    for name in files.keys() - {"sw.js", ".inputs"}:
        assert (f'url:"{name}"' in worker) != (name in shown)
    page = re.sub(r"<script>.*?</script>", "", files["index.html"].decode())
    for address in re.findall(
        r'(?:src|href|data-(?:main|worker|engine|service-worker))="([^"#]+)"', page
    ):
        address = address.removeprefix("./")
        if address and ":" not in address:
            assert address in files, f"the page names {address}, which is not there"


def test_counts_of_slots_are_offered_whole(built: tuple[Path, Path]) -> None:
    """The sources keep every figure as a number with a point; on a button 48 is 48."""
    page = (built[1] / "index.html").read_text()
    assert re.search(r">\s*48\s*<", page)
    assert not re.search(r">\s*\d+\.\d+\s*<", page)


def test_page_has_no_inline_code_or_style_but_for_its_first_script(
    built: tuple[Path, Path],
) -> None:
    """The policy refuses them: they would be silently dead."""
    page = (built[1] / "index.html").read_text()
    assert not re.search(r"<style|\sstyle=|\son[a-z]+=", page)
    ((attributes, body),) = re.findall(r"<script([^>]*)>(.*?)</script>", page, re.DOTALL)
    assert attributes == ""
    # CSP 3, 6.7.3.3: the base64 of the SHA-256 of what stands between the tags, in UTF-8.
    hashed = base64.b64encode(hashlib.sha256(body.encode()).digest()).decode()
    assert f"sha256-{hashed}" == headers.OPENING


def test_archives_hold_compiled_modules_and_licences_but_no_tests(
    built: tuple[Path, Path],
) -> None:
    archive = zipfile.ZipFile(next(built[1].glob("engine-*.zip")))
    names = archive.namelist()
    assert "engine/api.pyc" in names
    assert not [name for name in names if name.endswith(".py") or "test" in name.split("/")[-2:][0]]
    for library in engine_archive.LIBRARIES:
        assert [name for name in names if name.startswith(f"{library}-") and "LICEN" in name]
    for name in names:
        if name.endswith(".pyc"):
            # PEP 552: bit 0 says "by hash", bit 1 "check the source", which the phone has not.
            assert archive.read(name)[4:8] == b"\x01\0\0\0"
