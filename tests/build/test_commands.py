"""Every command that a text of ours names runs as it is written, where nothing but python3 is.

The texts: documents, the words of our programs (docstrings, messages, `--help`), and reasons for a
skipped test. Each command is tried with `--help`, by the machine's own python3 (never this
environment's), with no variable of ours set, from the top of the repository, as its reader would.
"""

import ast
import re
import shutil
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
DOCUMENTS = ("README.md", "DEVELOPERS.md", "build/SPEED.md", "tests/PROMISES.md")
PROGRAMS = ("build", "engine", "tests")
# The programs that a reader may be told to start; with a path, or with something to do.
COMMAND = re.compile(
    r"(?<![\w/.-])((?:\.venv/bin/)?(?:python[\d.]*|pytest|pip|uv|npm|npx|node))"
    r"((?: +(?:-[\w-]+|[\w./-]*(?:/\b|\.(?:py|mjs|js)\b)[\w/-]*/?"
    r"|install|ci|compile|engine|pytest))+)"
)


def words(path: Path) -> list[str]:
    """What a text says: of a program its strings, the pieces of those with gaps among them."""
    text = path.read_text(encoding="utf-8")
    if path.suffix != ".py":
        return [text]
    found = ast.walk(ast.parse(text))
    return [one.value for one in found if isinstance(one, ast.Constant) and type(one.value) is str]


def commands() -> dict[str, str]:
    """Each command, and one of the texts that name it."""
    here = Path(__file__)
    listed = subprocess.check_output(["git", "ls-files", "-z", *PROGRAMS], cwd=ROOT, text=True)
    paths = [ROOT / name for name in (*DOCUMENTS, *listed.split("\0")) if name]
    return {
        " ".join(found.group().split()): path.relative_to(ROOT).as_posix()
        for path in paths
        if path.suffix in (".py", ".md") and path != here and path.is_file()
        for text in words(path)
        for found in COMMAND.finditer(text)
    }


COMMANDS = commands()
SYSTEM = shutil.which("python3", path="/usr/bin:/usr/local/bin:/opt/homebrew/bin")


def test_the_collector_finds_them() -> None:
    assert {
        "python3 build/start.py",
        "python3 build/check.py",
        "python3 build/headers.py --under /socks/",
        "python3 build/chromium.py",
    } <= COMMANDS.keys()
    assert not COMMAND.search("a python script, node by node; npm packages")


@pytest.mark.parametrize("command", COMMANDS)
def test_it_runs_as_written(command: str, tmp_path: Path) -> None:
    if not SYSTEM:
        pytest.skip("NOT TRIED: this machine has no python3 of its own")
    program, *rest = command.split()
    named = f"{command}, in {COMMANDS[command]}"
    assert program == "python3" or program.startswith(".venv/bin/"), (
        f"not on every machine: {named}"
    )
    # Up to the file or module that is run: what follows is for it.
    end = 2 if rest[0] == "-m" else next(i for i, word in enumerate(rest) if word[0] != "-") + 1
    done = subprocess.run(
        [SYSTEM if program == "python3" else ROOT / program, *rest[:end], "--help"],
        cwd=ROOT,
        env={"PATH": "/usr/bin:/bin", "HOME": str(tmp_path)},
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        timeout=60,
    )
    assert done.returncode == 0, f"{named}\n{done.stderr}"
    assert "usage" in done.stdout.casefold(), named


SCRIPTS = sorted(
    path.relative_to(ROOT).as_posix()
    for path in (ROOT / "build").glob("*.py")
    if '__name__ == "__main__"' in path.read_text(encoding="utf-8")
)


@pytest.mark.parametrize("script", SCRIPTS)
def test_help_does_nothing_and_needs_nothing(script: str, tmp_path: Path) -> None:
    """In a copy without an environment: no package is there, and none is fetched."""
    if not SYSTEM:
        pytest.skip("NOT TRIED: this machine has no python3 of its own")
    for folder in ("build", "engine"):
        shutil.copytree(
            ROOT / folder, tmp_path / folder, ignore=shutil.ignore_patterns("node_modules")
        )
    before = sorted(tmp_path.rglob("*"))
    done = subprocess.run(
        [SYSTEM, "-B", script, "--help"],
        cwd=tmp_path,
        env={"PATH": "/usr/bin:/bin", "HOME": str(tmp_path)},
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        timeout=60,
    )
    assert done.returncode == 0, done.stderr
    assert f"python3 {script}" in done.stdout
    assert sorted(tmp_path.rglob("*")) == before
