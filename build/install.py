"""Brings in what the project stands on, pinned and hashed, and keeps half-made folders out of use.

Each step makes one folder out of a few input files. Its stamp lies inside the folder, is written
last and holds the fingerprint of those inputs: no stamp, or another fingerprint, and the folder is
removed and made anew. So a broken download or a pulled plug cannot leave something in use.
Standard library only: this runs before anything is installed.
"""

from __future__ import annotations

import contextlib
import fcntl
import hashlib
import os
import re
import shutil
import subprocess
import sys
import time
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
BUILD = ROOT / "build"
TOOLS = ROOT / ".tools"
VENV = ROOT / ".venv"
PYTHON = VENV / "bin" / "python"
OLDEST_PYTHON = (3, 11)
STAMP = ".made-from"  # the last file of a folder that was made whole


class Stop(Exception):
    """Something the person must know before it can go on: one sentence and a way out."""


@dataclass(frozen=True)
class Step:
    """One folder, what it is made from, and how."""

    title: str
    folder: Path
    inputs: tuple[Path, ...]
    commands: tuple[tuple[str | Path, ...], ...]
    larger: Step | None = None  # a step whose folder holds all of this one and more

    def fingerprint(self) -> str:
        """Changes when an input, the Python or the place changes (environments cannot be moved)."""
        digest = hashlib.sha256(f"{self.title}|{self.folder}|{sys.version_info[:2]}".encode())
        for file in self.inputs:
            digest.update(hashlib.sha256(file.read_bytes()).digest())
        return digest.hexdigest()

    def stamp(self) -> Path:
        """Written last, inside the folder, so that it goes when the folder goes."""
        return self.folder / STAMP

    def done(self) -> bool:
        """Whether the folder is whole and made from the inputs as they are now."""
        with contextlib.suppress(OSError):
            if self.stamp().read_text() == self.fingerprint():
                return True
        return self.larger is not None and self.larger.done()

    def make(self) -> None:
        """Makes the folder anew. Raises Stop, having removed it, if that cannot be done."""
        try:
            shutil.rmtree(self.folder, ignore_errors=True)
            for command in self.commands:
                quietly(self.title, command, cwd=self.inputs[0].parent)
            if self.folder == VENV:
                register_project()
            self.stamp().write_text(self.fingerprint())
        except BaseException:
            shutil.rmtree(self.folder, ignore_errors=True)
            raise


def python_step(packages: str, larger: Step | None = None, folder: Path = VENV) -> Step:
    """An environment with the packages pinned in one requirements file."""
    pinned = BUILD / f"requirements-{packages}.txt"
    pip = (
        folder / "bin" / "python",
        "-m",
        "pip",
        "install",
        "--quiet",
        "--require-hashes",
        "--no-deps",
    )
    return Step(
        title=f"Python packages ({packages})",
        folder=folder,
        inputs=(pinned,),
        commands=(
            # Not the environment's own Python, which is about to be removed.
            (getattr(sys, "_base_executable", sys.executable), "-m", "venv", folder),
            # Compiled when first used: compiling all of it takes longer than the download.
            (*pip, "--only-binary=:all:", "--no-compile", "--retries=2", "-r", pinned),
        ),
        larger=larger,
    )


def npm_step(packages: str, home: Path, *options: str, larger: Step | None = None) -> Step:
    """The npm packages locked in a folder, by the npm that lies in the environment."""
    return Step(
        title=f"npm packages ({packages})",
        folder=home / "node_modules",
        inputs=(home / "package-lock.json", home / "package.json", home / ".npmrc"),
        commands=((VENV / "bin" / "npm", "ci", *options),),
        larger=larger,
    )


_MUTATE = python_step("mutate")
CHECK = (python_step("check", larger=_MUTATE), npm_step("check", BUILD))
MUTATE = (_MUTATE, *CHECK[1:])
SITE = (
    python_step("site", larger=CHECK[0]),
    npm_step("site", BUILD, "--omit=dev", larger=CHECK[1]),
)
BROWSER = (npm_step("browser", BUILD / "browser"),)
AUDIT = (npm_step("audit", BUILD / "audit"),)
ADVISORIES = (python_step("advisories", folder=TOOLS / "advisories"),)

REASONS = (
    (
        r"do not match the hashes|EINTEGRITY|integrity checksum failed",
        "A download is not the file this project was checked with, so it was thrown away. "
        "Run this again; if it says so again, the network changes files on the way: try another.",
    ),
    (
        r"No space left|ENOSPC|Disk quota",
        "The disk is full. Free about 1.5 GB and run this again.",
    ),
    (
        r"ensurepip is not available|No module named '?(ensurepip|venv)",
        "This Python lacks its venv part. Install it (Debian, Ubuntu: python3-venv) "
        "and run this again.",
    ),
    (
        r"CERTIFICATE_VERIFY_FAILED|SELF_SIGNED_CERT|UNABLE_TO_[A-Z_]*(CERT|ISSUER)|CERT_HAS_EXPIRED",
        "The network answers in the package registry's place, with a certificate that this machine "
        "does not trust. Try another network, or name its certificate file in SSL_CERT_FILE, "
        "PIP_CERT and NODE_EXTRA_CA_CERTS.",
    ),
    (
        r"NewConnectionError|NameResolutionError|ConnectTimeout|ReadTimeout|ProxyError"
        r"|Failed to establish|Temporary failure|Max retries|timed out"
        r"|EAI_AGAIN|ENOTFOUND|ECONN|ETIMEDOUT|ENETUNREACH",
        "The packages could not be fetched: no package registry answers. "
        "Connect to a network (only the first run needs one) and run this again.",
    ),
)


def reason(title: str, output: str) -> str:
    """A sentence for why a command failed, from what it printed."""
    unwrapped = " ".join(output.split())
    for pattern, sentence in REASONS:
        if re.search(pattern, unwrapped, re.IGNORECASE):
            return sentence
    lines = [line for line in output.splitlines() if line.strip()]
    return "\n".join([f"{title} failed. The end of what it said:", *lines[-6:]])


def environment() -> dict[str, str]:
    """The variables of this process (certificates, proxies), with the project's commands first."""
    variables = {k: v for k, v in os.environ.items() if k not in {"PYTHONHOME", "PYTHONPATH"}}
    variables["PATH"] = f"{VENV / 'bin'}{os.pathsep}{variables.get('PATH', os.defpath)}"
    variables["PIP_DISABLE_PIP_VERSION_CHECK"] = "1"
    variables["NODE_USE_SYSTEM_CA"] = "1"  # npm then trusts whom the machine trusts, as pip does
    if not os.access(Path.home(), os.W_OK):
        variables["npm_config_cache"] = str(TOOLS / "npm")
    return variables


def quietly(title: str, command: Sequence[str | Path], cwd: Path = ROOT) -> None:
    """Runs a command without showing its output. Raises Stop with a sentence if it fails."""
    done = subprocess.run(
        command,
        cwd=cwd,
        env=environment(),
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        encoding="utf-8",
        errors="replace",
    )
    if done.returncode:
        TOOLS.mkdir(exist_ok=True)
        log = TOOLS / "failed.log"
        log.write_text(done.stdout, encoding="utf-8")
        raise Stop(f"{reason(title, done.stdout)}\n(All it said: {log})")


def register_project() -> None:
    """Lets the environment import `engine` and `build` from the repository as they stand."""
    (packages,) = (VENV / "lib").glob("python*/site-packages")
    (packages / "heelwise.pth").write_text(f"{ROOT}\n")


@contextlib.contextmanager
def timed(title: str) -> Iterator[None]:
    """Says what is being done, and how long it took."""
    print(f"{title} … ", end="", flush=True)
    start = time.monotonic()
    try:
        yield
    except BaseException:
        print("failed", flush=True)
        raise
    print(f"{time.monotonic() - start:.1f} s", flush=True)


def make(steps: Sequence[Step]) -> None:
    """Does those steps that are not done. One run at a time; another waits."""
    TOOLS.mkdir(exist_ok=True)
    with (TOOLS / "lock").open("w") as lock:
        try:
            fcntl.flock(lock, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            print("Another run is installing here; waiting for it.", flush=True)
            fcntl.flock(lock, fcntl.LOCK_EX)
        for step in steps:
            if not step.done():
                with timed(step.title):
                    step.make()


def enter(steps: Sequence[Step], about: str) -> None:
    """Goes on in the project's environment, with what `steps` bring; first makes what is missing.

    A program that needs packages calls this before it imports them, so that it starts with any
    Python. Asked for help where nothing is installed yet, it says `about` and ends.
    """
    if (Path(sys.prefix) / STAMP).is_file():
        return
    script = Path(sys.argv[0]).resolve()
    if {"-h", "--help"} & set(sys.argv[1:]) and not all(step.done() for step in steps):
        print(f"usage: python3 {script.relative_to(ROOT).as_posix()} ...\n\n{about.strip()}")
        sys.exit(0)
    with plainly():
        make(steps)
        command = [str(PYTHON), str(script), *sys.argv[1:]]
        os.execve(command[0], command, environment())  # noqa: S606 (no shell is the point)


@contextlib.contextmanager
def plainly() -> Iterator[None]:
    """Ends the program with a sentence and exit code 1 where something is in the way."""
    try:
        if sys.version_info < OLDEST_PYTHON:
            here = ".".join(map(str, sys.version_info[:2]))
            raise Stop(
                f"This is Python {here}; Heelwise needs 3.11 or newer. "
                "Install one and run this again with it."
            )
        yield
    except Stop as stop:
        sys.exit(f"\n{stop}")
    except KeyboardInterrupt:
        sys.exit("\nStopped. Run the same command again to go on.")
    except OSError as error:
        sys.exit(f"\n{reason('The set-up', str(error))}")
