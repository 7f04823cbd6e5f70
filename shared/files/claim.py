"""A claim on a job: a small hidden file beside it that says who has it open.

The file is made in one step that fails if there is one already. Whoever made it writes it anew every minute and takes
it away in the end. What a crash leaves behind is known by its process, which is gone, or by its age. In a folder that
cannot be written to nobody claims anything.
"""

import os
import secrets
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import BinaryIO

import msgspec

from shared.errors import FileError
from shared.files.disk import read_bounded
from shared.files.holder import Holder, this_process

if sys.platform != "win32":
    import fcntl

REFRESH_S = 60
"""How often whoever holds a claim writes it anew."""

LEFT_BEHIND_S = 300
"""A claim that nobody has written for so long is left behind, unless its process is seen to run."""

_LARGEST = 4096


class HeldError(FileError):
    """Somebody else has the job open."""


@dataclass(frozen=True, slots=True)
class Claim:
    """A claim that this process made: its file, and what stands in it."""

    file: Path
    content: bytes

    @property
    def holds(self) -> bool:
        """Whether the claim still stands: after a long sleep another may have taken it for left behind."""
        return _content(self.file) == self.content

    def refresh(self) -> None:
        """Write the claim anew, so that others see that it is not left behind."""
        with suppress(OSError), _alone_with(self.file) as file:
            if self.holds:
                file.write(self.content)

    def give_up(self) -> None:
        """Take the claim away."""
        with suppress(OSError), _alone_with(self.file):
            if self.holds:
                self.file.unlink()


def claim(path: Path, mine: Claim | None = None) -> Claim | None:
    """Claim the job at this path; the claim that is `mine` already if it is on this job and still holds.

    None where the folder cannot be written to. HeldError if somebody else has the job open.
    """
    refuse_held(path, mine)
    file = file_of_claim(path)
    if mine is not None and mine.file == file and mine.holds:
        return mine
    if path.exists() and not path.is_file():
        return None
    made = Claim(file, msgspec.json.encode(this_process(_now())))
    try:
        if os.path.lexists(file):
            _take_over(path, made)
        else:
            _make(made)
    except OSError:
        refuse_held(path)  # perhaps another process was faster
        return None
    return made


def file_of_claim(path: Path) -> Path:
    """The file of the claim. A link and the job that it leads to have the same one."""
    with suppress(OSError, RuntimeError):  # of a link that leads back to itself reading and writing tell
        path = path.resolve()
    return path.with_name(f".{path.name}.open")


def refuse_held(path: Path, mine: Claim | None = None) -> None:
    """Pass a job that nobody else has open. HeldError if somebody has, who is named."""
    file = file_of_claim(path)
    content = _content(file)
    if content is None or (mine is not None and content == mine.content):
        return
    holder = _holder(content)
    if not _is_left_behind(file, holder):
        who = holder.words(_now()) if holder else "it is open in another window"
        raise HeldError(who, where=str(path), do="close it there, or use another name")


def _content(file: Path) -> bytes | None:
    """What stands in the file; b"" if that cannot be read, None if there is no file."""
    try:
        return read_bounded(file, _LARGEST)
    except FileError:
        return b"" if os.path.lexists(file) else None


def _holder(content: bytes) -> Holder | None:
    """The holder that the file names; None if it names none: it is just being made, or damaged."""
    try:
        return msgspec.json.decode(content, type=Holder)
    except (msgspec.DecodeError, UnicodeDecodeError):
        return None


def _is_left_behind(file: Path, holder: Holder | None) -> bool:
    is_there = holder.is_there if holder else None
    return _age_s(file) > LEFT_BEHIND_S if is_there is None else not is_there


def _age_s(file: Path) -> float:
    """How long ago the file was written, in seconds; endless if it is gone meanwhile."""
    try:
        return _time_in(file.parent) - file.lstat().st_mtime
    except OSError:
        return float("inf")


def _time_in(folder: Path) -> float:
    """The time by the clock that dates files in this folder: on a shared folder it is another machine's."""
    try:
        with tempfile.TemporaryFile(dir=folder) as probe:
            probe.write(b".")
            probe.flush()
            return os.fstat(probe.fileno()).st_mtime
    except OSError:
        return time.time()


def _make(made: Claim) -> None:
    with made.file.open("xb") as file:
        file.write(made.content)


def _take_over(path: Path, made: Claim) -> None:
    """Put this claim in the place of one that was left behind. HeldError if another process did so first."""
    with _alone_with(made.file):
        refuse_held(path)
        aside = made.file.with_name(f"{made.file.name}.{secrets.token_hex(4)}")
        try:
            aside.write_bytes(made.content)
            aside.replace(made.file)
        except OSError:
            aside.unlink(missing_ok=True)
            raise


@contextmanager
def _alone_with(file: Path) -> Iterator[BinaryIO]:
    """The file of a claim while no other process takes it over or away; OSError if one has just done so.

    Where the system cannot lock files, as some shared folders cannot, the file is opened all the same.
    """
    if not file.is_file():
        raise FileNotFoundError  # or a pipe, which would be waited for
    with file.open("r+b" if os.access(file, os.W_OK) else "rb") as opened:
        if sys.platform != "win32":
            with suppress(OSError):
                fcntl.flock(opened, fcntl.LOCK_EX)
            if not os.fstat(opened.fileno()).st_nlink:
                raise FileNotFoundError
        yield opened


def _now() -> datetime:
    return datetime.now().astimezone()
