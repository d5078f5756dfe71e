"""What the repository itself promises: where things lie, and that nothing is taken on trust."""

import json
import re
import subprocess
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest

ROOT = Path(__file__).resolve().parents[2]
TOP_LEVEL = {
    "README.md",
    "DEVELOPERS.md",
    "pyproject.toml",
    "engine",
    "webapp",
    "build",
    "tests",
}
# Written in two parts, so that this file does not name them either.
REGISTRIES = [
    ".".join(parts)
    for parts in (
        ("pypi", "org"),
        ("pythonhosted", "org"),
        ("npmjs", "org"),
        ("npmjs", "com"),
        ("yarnpkg", "com"),
        ("debian", "org"),
    )
]
VAGUE_NAMES = {"utils", "helpers", "manager", "common", "misc"}
LOCKS = [ROOT / "build" / place / "package-lock.json" for place in ("", "browser", "audit")]


def files() -> list[Path]:
    """Every file that is or may become part of the repository."""
    listed = subprocess.check_output(
        ["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"], cwd=ROOT, text=True
    )
    return [path for name in listed.split("\0") if name and (path := ROOT / name).is_file()]


def test_top_level_holds_only_what_it_should() -> None:
    top = {path.relative_to(ROOT).parts[0] for path in files()}
    assert {name for name in top if not name.startswith(".")} == TOP_LEVEL


def test_no_file_names_a_registry() -> None:
    naming = {
        (path.relative_to(ROOT).as_posix(), host)
        for path in files()
        for host in REGISTRIES
        if host.encode() in path.read_bytes()
    }
    assert not naming


def test_no_file_has_a_name_that_says_nothing() -> None:
    assert not [path for path in files() if path.stem.lower() in VAGUE_NAMES]


def pins(name: str) -> dict[str, set[str]]:
    """Of a requirements file: each package with version and marker, and its hashes."""
    text = (ROOT / "build" / name).read_text().replace("\\\n", " ")
    found: dict[str, set[str]] = {}
    for line in text.splitlines():
        if line.strip() and not line.lstrip().startswith("#"):
            package, *hashes = line.split("--hash=")
            found[package.strip()] = {digest.strip() for digest in hashes}
    return found


SUPERSETS = [f"requirements-{packages}.txt" for packages in ("site", "check", "mutate")]
LOCKED = [*SUPERSETS, "requirements-advisories.txt"]  # the last has an environment of its own


@pytest.mark.parametrize("name", LOCKED)
def test_each_python_package_is_pinned_by_hash(name: str) -> None:
    assert len(pins(name)) > 5
    for package, hashes in pins(name).items():
        assert re.match(r"[a-z0-9-]+==[0-9][0-9a-z.]*( ; .+)?$", package), package
        assert hashes, package
        assert all(re.fullmatch(r"sha256:[0-9a-f]{64}", digest) for digest in hashes), package


def test_checks_and_mutants_run_on_the_very_packages_of_the_site() -> None:
    for smaller, larger in pairwise(SUPERSETS):
        assert pins(smaller).items() <= pins(larger).items()


@pytest.mark.parametrize("lock", LOCKS, ids=lambda lock: lock.parent.name)
def test_each_npm_package_is_locked_by_hash(lock: Path) -> None:
    packages: dict[str, dict[str, Any]] = json.loads(lock.read_text())["packages"]
    wanted = packages.pop("")
    assert packages
    for name, package in packages.items():
        assert package["integrity"].startswith("sha512-"), name
        assert "resolved" not in package, name
    for version in {**wanted["dependencies"], **wanted.get("devDependencies", {})}.values():
        assert re.fullmatch(r"\d+\.\d+\.\d+", version)
