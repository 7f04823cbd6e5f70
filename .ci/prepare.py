"""Set up everything that `make run` or `make test` needs, on a machine that has only Python and make.

    python3 .ci/prepare.py run|test

Makes the virtual environment, installs the locked libraries and the program itself, and sees to the system libraries
that Qt loads. What is already there is left alone. As root on Debian a missing system package is installed; elsewhere
the command that installs it is named. Only the standard library is used, since nothing else is there yet.
"""

import contextlib
import ctypes
import fcntl
import hashlib
import importlib.util
import os
import shutil
import subprocess
import sys
import tomllib
from collections.abc import Iterator
from pathlib import Path

PROJECT = Path(__file__).resolve().parent.parent
ENVIRONMENT = PROJECT / ".venv"
PYTHON = ENVIRONMENT / "bin" / "python"
STAMP = ENVIRONMENT / "prepared-from"
LOCK = PROJECT / ".venv.lock"
FONT_FOLDERS = ("/usr/share/fonts", "/usr/local/share/fonts", "~/.local/share/fonts", "~/.fonts")
FONT_ENDINGS = {".otf", ".pfb", ".ttc", ".ttf"}


class NotReadyError(Exception):
    """The machine lacks something; the message is one sentence that says what, and what to do."""


def main(arguments: list[str]) -> int:
    """Prepare for the purpose named in the arguments, `run` or `test`; 0, or 2 after one line about what is missing."""
    if len(arguments) != 1 or arguments[0] not in {"run", "test"}:
        print("prepare: say what for: python3 .ci/prepare.py run|test", file=sys.stderr)
        return 2
    try:
        with only_one():
            prepare_environment(arguments[0])
            prepare_system()
    except NotReadyError as error:
        print(f"prepare: {error}", file=sys.stderr)
        return 2
    return 0


@contextlib.contextmanager
def only_one() -> Iterator[None]:
    """Let one process prepare at a time; another waits. The system frees the lock of a process that was killed."""
    try:
        file = LOCK.open("w", encoding="utf-8")
    except OSError as trouble:
        raise NotReadyError(
            f"{LOCK} cannot be written ({trouble.strerror}); make the folder yours to write"
        ) from trouble
    with file:
        try:
            fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            print("prepare: another make is preparing .venv; waiting for it", flush=True)
            fcntl.flock(file, fcntl.LOCK_EX)
        yield


def prepare_environment(purpose: str) -> None:
    """Make .venv unless a whole one is there, and install what the lock file names unless that is done already.

    The stamp is taken away before anything changes and written at the very end. So an environment without a stamp was
    never finished, and is made anew.
    """
    if not environment_works():
        install_packages(() if importlib.util.find_spec("ensurepip") else (venv_package(),))
        print("prepare: making .venv", flush=True)
        run((sys.executable, "-m", "venv", "--clear", str(ENVIRONMENT)), "the virtual environment could not be made")
    if fingerprint(purpose) in installed_fingerprints():
        return
    STAMP.unlink(missing_ok=True)
    print(f"prepare: installing the locked libraries for `make {purpose}` into .venv", flush=True)
    pip = (str(PYTHON), "-m", "pip", "--quiet", "--quiet", "--disable-pip-version-check", "install")
    failure = "the libraries could not be installed; see the lines above, mend the connection and run this again"
    run((*pip, "--require-hashes", "--requirement", str(lock_file(purpose))), failure)
    run((*pip, "--no-deps", "--no-build-isolation", "--editable", str(PROJECT)), failure)
    # What checks need contains what running needs, at the same versions, so one never undoes the other.
    fulfilled = ("run", "test") if purpose == "test" else ("run",)
    STAMP.write_text("".join(f"{fingerprint(each)}\n" for each in fulfilled), encoding="utf-8")


def environment_works() -> bool:
    """Whether .venv was finished and its Python starts: one that was moved, or whose Python is gone, does not."""
    if not STAMP.exists() or not PYTHON.exists():
        return False
    return subprocess.run((str(PYTHON), "-c", "import pip"), check=False, capture_output=True).returncode == 0


def lock_file(purpose: str) -> Path:
    """The file that names every library for a purpose, with its version and hashes."""
    return PROJECT / "locked" / f"{purpose}.txt"


def fingerprint(purpose: str) -> str:
    """What an environment made for a purpose now would be made from: place, lock and project file, as one hash."""
    made_from = hashlib.sha256(f"{purpose} {PROJECT}".encode())
    made_from.update(lock_file(purpose).read_bytes())
    made_from.update((PROJECT / "pyproject.toml").read_bytes())
    return made_from.hexdigest()


def installed_fingerprints() -> tuple[str, ...]:
    """What the present environment was made from; empty when that never came to its end."""
    return tuple(STAMP.read_text(encoding="utf-8").split()) if STAMP.exists() else ()


def prepare_system() -> None:
    """See to the libraries and fonts that Qt takes from the system; only Linux leaves them to others."""
    if sys.platform != "linux":
        return
    needed = tomllib.loads((PROJECT / ".ci" / "qt_libraries.toml").read_text(encoding="utf-8"))
    libraries = {**needed["always"], **(needed["window"] if has_display() or may_install() else {})}
    packages = {package for library, package in libraries.items() if not can_be_loaded(library)}
    if not has_fonts():
        packages.add(needed["fonts"]["package"])
    install_packages(tuple(sorted(packages)))


def has_display() -> bool:
    """Whether there is a screen to open a window on."""
    return bool(os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY"))


def can_be_loaded(library: str) -> bool:
    """Whether the system's loader finds a library: asked of the loader itself, since folders differ by machine."""
    try:
        ctypes.CDLL(library)
    except OSError:
        return False
    return True


def has_fonts() -> bool:
    """Whether any font file lies where Linux keeps fonts."""
    return any(file.suffix in FONT_ENDINGS for folder in font_folders() for file in folder.rglob("*"))


def font_folders() -> Iterator[Path]:
    """The folders for fonts; those of a person only where it is known whose home it is."""
    for folder in FONT_FOLDERS:
        with contextlib.suppress(RuntimeError):  # no HOME, and nobody of this number in the system's list
            yield Path(folder).expanduser()


def venv_package() -> str:
    """The Debian package that completes this Python so that it can make virtual environments."""
    return f"python3.{sys.version_info.minor}-venv"


def may_install() -> bool:
    """Whether system packages can be installed from here: as root, on Debian and its kin."""
    return os.geteuid() == 0 and shutil.which("apt-get") is not None


def install_packages(packages: tuple[str, ...]) -> None:
    """Install system packages, or say which command does; none at all is fine."""
    if not packages:
        return
    command = f"apt-get install --yes {' '.join(packages)}"
    if not may_install():
        how = f"run: sudo {command}" if shutil.which("apt-get") else "install your system's packages that hold the same"
        raise NotReadyError(f"this machine lacks {', '.join(packages)} (Debian's names); {how}")
    print(f"prepare: {command}", flush=True)
    failure = f"the system packages could not be installed; see the lines above, then run: {command}"
    run(("apt-get", "-qq", "update"), failure)
    run(("apt-get", "-qq", "-o", "Dpkg::Use-Pty=0", "install", "--yes", "--no-install-recommends", *packages), failure)


def run(command: tuple[str, ...], failure: str) -> None:
    """Run a command in sight of the person; its failure stops everything with the sentence given."""
    if subprocess.run(command, check=False, env={**os.environ, "DEBIAN_FRONTEND": "noninteractive"}).returncode != 0:
        raise NotReadyError(failure)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
