"""The set-up keeps its promises when downloads are wrong, half made or impossible; no network."""

import base64
import errno
import hashlib
import json
import os
import shutil
import socket
import subprocess
import sys
import tarfile
import time
import urllib.request
import zipfile
from pathlib import Path

import pytest

from build import install

ROOT = Path(__file__).resolve().parents[2]
WRONG_FILE = "not the file this project was checked with"


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    """A repository with nothing installed, whose site needs one small package of our own."""
    copy = tmp_path / "copy"
    (copy / "build").mkdir(parents=True)
    for script in ("start.py", "install.py"):
        shutil.copy(ROOT / "build" / script, copy / "build")
    wheel = tmp_path / "oddment-1.0-py3-none-any.whl"
    with zipfile.ZipFile(wheel, "w") as archive:
        archive.writestr("oddment.py", "COLOUR = 'madder'\n")
        about = "oddment-1.0.dist-info"
        archive.writestr(
            f"{about}/METADATA", "Metadata-Version: 2.1\nName: oddment\nVersion: 1.0\n"
        )
        archive.writestr(
            f"{about}/WHEEL", "Wheel-Version: 1.0\nRoot-Is-Purelib: true\nTag: py3-none-any\n"
        )
        archive.writestr(f"{about}/RECORD", "")
    digest = hashlib.sha256(wheel.read_bytes()).hexdigest()
    pin(copy, digest)
    return copy


def pin(copy: Path, digest: str) -> None:
    """Has the copy's site need the package with that hash."""
    pinned = copy / "build" / "requirements-site.txt"
    pinned.write_text(f"oddment==1.0 --hash=sha256:{digest}\n")
    shutil.copy(pinned, pinned.with_name("requirements-check.txt"))


def python(copy: Path, code: str) -> subprocess.CompletedProcess[str]:
    """Runs code that stands in the copy, where packages come from its own folder alone."""
    variables = {**os.environ, "PIP_NO_INDEX": "1", "PIP_FIND_LINKS": str(copy.parent)}
    return subprocess.run(
        [sys.executable, "-c", f"import sys; sys.path.insert(0, {str(copy)!r}); {code}"],
        env=variables,
        cwd=copy,
        capture_output=True,
        text=True,
    )


MAKE = "from build import install\nwith install.plainly(): install.make(install.SITE[:1])"


@pytest.mark.slow
def test_right_hash_is_installed_once(copy: Path) -> None:
    first = python(copy, MAKE)
    assert first.returncode == 0, first.stderr
    assert "Python packages (site) … " in first.stdout
    colour = [str(copy / ".venv/bin/python"), "-c", "import oddment; print(oddment.COLOUR)"]
    assert subprocess.check_output(colour, text=True) == "madder\n"
    assert python(copy, MAKE).stdout == ""  # nothing to do


def test_wrong_hash_stops_with_a_sentence_and_leaves_nothing(copy: Path) -> None:
    pin(copy, "0" * 64)
    done = python(copy, MAKE)
    assert done.returncode == 1
    assert WRONG_FILE in done.stderr
    assert "Traceback" not in done.stderr
    assert not (copy / ".venv").exists()


@pytest.mark.slow
def test_a_download_that_cannot_be_had_leaves_nothing(copy: Path) -> None:
    next(copy.parent.glob("*.whl")).unlink()
    done = python(copy, MAKE)
    assert done.returncode == 1
    assert "Traceback" not in done.stderr
    assert "oddment" in done.stderr
    assert not (copy / ".venv").exists()


def step(
    folder: Path, given: Path, command: str, larger: install.Step | None = None
) -> install.Step:
    """A step that makes a folder by a shell command, run beside its input."""
    return install.Step("A step", folder, (given,), (("sh", "-c", command),), larger)


def test_folder_without_stamp_is_made_anew(tmp_path: Path) -> None:
    given, folder = tmp_path / "given", tmp_path / "made"
    given.write_text("1")
    folder.mkdir()
    (folder / "half-made").touch()
    making = step(folder, given, "mkdir made && cp given made")
    assert not making.done()
    making.make()
    assert making.done()
    assert sorted(p.name for p in folder.iterdir()) == [".made-from", "given"]
    given.write_text("2")
    assert not making.done()


def test_failed_step_removes_its_folder(tmp_path: Path) -> None:
    given = tmp_path / "given"
    given.touch()
    failing = step(tmp_path / "made", given, "mkdir made && echo no such wool && false")
    with pytest.raises(install.Stop, match="no such wool"):
        failing.make()
    assert not failing.folder.exists()


def test_a_larger_folder_serves_the_smaller_need(tmp_path: Path) -> None:
    small, large = tmp_path / "small", tmp_path / "large"
    small.write_text("small")
    large.write_text("large")
    larger = step(tmp_path / "made", large, "mkdir made")
    smaller = step(tmp_path / "made", small, "mkdir made && touch made/small", larger)
    larger.make()
    assert smaller.done()
    large.write_text("changed")
    assert not smaller.done()


@pytest.mark.parametrize("right", [True, False])
def test_npm_refuses_a_package_with_another_hash(tmp_path: Path, right: bool) -> None:
    inside = tmp_path / "package"
    inside.mkdir()
    (inside / "package.json").write_text('{"name": "oddment", "version": "1.0.0"}')
    with tarfile.open(tmp_path / "oddment.tgz", "w:gz") as archive:
        archive.add(inside, "package")
    digest = hashlib.sha512((tmp_path / "oddment.tgz").read_bytes()).digest()
    needs = {"dependencies": {"oddment": "file:oddment.tgz"}}
    locked = {
        "version": "1.0.0",
        "resolved": "file:oddment.tgz",
        "integrity": f"sha512-{base64.b64encode(digest if right else digest[::-1]).decode()}",
    }
    (tmp_path / "package.json").write_text(json.dumps({"name": "x", **needs}))
    (tmp_path / ".npmrc").write_text("offline=true\naudit=false\n")
    (tmp_path / "package-lock.json").write_text(
        json.dumps(
            {
                "name": "x",
                "lockfileVersion": 3,
                "requires": True,
                "packages": {"": {"name": "x", **needs}, "node_modules/oddment": locked},
            }
        )
    )
    making = install.npm_step("trial", tmp_path)
    if right:
        making.make()
        assert (tmp_path / "node_modules" / "oddment" / "package.json").is_file()
    else:
        with pytest.raises(install.Stop, match=WRONG_FILE):
            making.make()
    assert making.folder.exists() == making.done() == right


def test_python_without_its_venv_part_is_told_so() -> None:
    # As Debian 12's Python says it, line breaks included.
    said = (
        "The virtual environment was not created successfully because ensurepip is not\navailable."
    )
    assert "python3-venv" in install.reason("Python packages", said)


def test_too_old_python_is_told_so(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "version_info", (3, 9, 2))
    with (
        pytest.raises(SystemExit, match=r"This is Python 3\.9; Heelwise needs 3\.11"),
        install.plainly(),
    ):
        pass


def test_full_disk_is_told_so() -> None:
    # /dev/full answers every write as a full disk does.
    if not Path("/dev/full").exists():
        pytest.skip("this system has no /dev/full")
    with pytest.raises(SystemExit, match="disk is full"), install.plainly():
        Path("/dev/full").write_text("wool")
    assert install.reason("npm", f"npm error {errno.errorcode[errno.ENOSPC]}").startswith(
        "The disk"
    )


def test_taken_port_is_told_before_anything_is_installed(copy: Path) -> None:
    with socket.create_server(("127.0.0.1", 0)) as taken:
        port = taken.getsockname()[1]
        done = subprocess.run(
            [sys.executable, "build/start.py", "--port", str(port)],
            cwd=copy,
            capture_output=True,
            text=True,
        )
    assert done.returncode == 1
    assert f"Port {port} is taken" in done.stderr
    assert "Traceback" not in done.stderr
    assert not (copy / ".venv").exists()


@pytest.mark.parametrize("script", ["start.py", "check.py"])
def test_help_needs_nothing_installed(script: str) -> None:
    done = subprocess.run(
        [sys.executable, "-I", ROOT / "build" / script, "--help"], capture_output=True, text=True
    )
    assert done.returncode == 0
    assert f"python3 build/{script}" in done.stdout


@pytest.mark.parametrize("port", ["80", "eight", "70000"])
def test_impossible_port_is_told(port: str) -> None:
    done = subprocess.run(
        [sys.executable, ROOT / "build/start.py", "--port", port], capture_output=True, text=True
    )
    assert done.returncode == 2
    assert "a port is a whole number from 1024 to 65535" in done.stderr


@pytest.mark.usefixtures("dist")
def test_second_start_serves_within_five_seconds() -> None:
    with socket.socket() as trial:
        trial.bind(("127.0.0.1", 0))
        port = trial.getsockname()[1]
    begun = time.monotonic()
    server = subprocess.Popen(
        [sys.executable, "build/start.py", "--port", str(port)],
        cwd=ROOT,
        stdout=subprocess.PIPE,
        text=True,
    )
    with server:
        assert server.stdout
        for line in server.stdout:
            if f"http://localhost:{port}" in line:
                break
        with urllib.request.urlopen(f"http://localhost:{port}/") as answer:
            page = answer.read()
        took = time.monotonic() - begun
        server.terminate()
    assert b"Heelwise" in page
    assert took < 5
