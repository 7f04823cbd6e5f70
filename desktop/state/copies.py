"""Copies of unsaved work on the disk: one for each window, with a note beside it and a lock that its window holds.

The lock is a file that the system knows to be dead once its program has ended, however that ended.
"""

import os
import platform
import secrets
from contextlib import suppress
from pathlib import Path
from time import time
from typing import Annotated, NamedTuple

import msgspec
from PySide6.QtCore import QLockFile

from shared.errors import FileError, RecoatError
from shared.files.disk import file_error, read_bounded, write_atomically
from shared.files.job import JobFile, read_job_file, write_job_file

BEGINNING = "not-saved"
ASIDE = "damaged"
LARGEST_NOTE = 2**20
HOUR_S = 60 * 60
LATEST_S = 1e11
"""No calendar has a day for a later time; a note that names one is damaged."""

DAY_MS = 24 * 60 * 60 * 1000
"""After so long the lock of another computer, of which nobody here can say whether it still runs, counts no more."""


class Note(msgspec.Struct, frozen=True):
    """What is said of a copy: the names in the job, how much is in it, and when it was made (seconds since 1970).

    `path` is the job's own file, "" if it has none; `stamp` is of what that file held when it was read or saved last.
    `host` and `process` say which program made the copy.
    """

    name: str
    rooms: tuple[str, ...]
    faces: int
    parts: int
    kept_at: Annotated[float, msgspec.Meta(ge=0, le=LATEST_S)]
    path: str = ""
    stamp: str | None = None
    host: str = ""
    process: int = 0


def note_of(file: JobFile, kept_at: float, path: Path | None = None, stamp: str | None = None) -> Note:
    """The note on a copy of this job, made by this program."""
    job = file.job
    rooms = tuple(room.name for room in job.rooms)
    parts = sum(len(face.parts) for face in job.faces)
    own = str(path) if path else ""
    return Note(job.name, rooms, len(job.faces), parts, kept_at, own, stamp, platform.node(), os.getpid())


class KeptCopy:
    """A copy on the disk. Who holds its lock may write it, take it away or take it up; nobody else touches it."""

    def __init__(self, path: Path) -> None:
        self.path = path
        self._note = path.with_suffix(".json")
        self._lock = QLockFile(str(path.with_suffix(".lock")))
        self._lock.setStaleLockTime(DAY_MS)

    def hold(self, wait_ms: int = 0) -> bool:
        """Take the lock. False if another window has it. A folder that takes no lock has no other window's either."""
        held = self._lock.isLocked() or self._lock.tryLock(wait_ms)
        return held or self._lock.error() is not QLockFile.LockError.LockFailedError

    def let_go(self) -> None:
        """Give the lock back."""
        self._lock.unlock()

    def write(self, file: JobFile, path: Path | None, stamp: str | None = None) -> None:
        """Make this job the content of the copy; `path` is the job's own file, of which `stamp` is known.

        FileError where that fails.
        """
        try:
            self.path.parent.mkdir(parents=True, exist_ok=True)
        except OSError as trouble:
            raise file_error(self.path.parent, trouble) from trouble
        if not self.hold():
            raise FileError("another program holds this copy", where=str(self.path), do="save the job")
        write_job_file(self.path, file)
        write_atomically(self._note, msgspec.json.encode(note_of(file, time(), path, stamp)))

    def remove(self) -> None:
        """Take the copy away. One that cannot be taken away is offered at the next start, and does no harm."""
        with suppress(OSError):
            self._note.unlink(missing_ok=True)
        with suppress(OSError):
            self.path.unlink(missing_ok=True)
        self.let_go()

    def put_aside(self) -> Path:
        """Give the copy a name under which it is not offered any more; its new path. FileError where that fails."""
        aside = self.path.with_name(f"{ASIDE}-{secrets.token_hex(4)}-{self.path.name}")
        try:
            self.path.rename(aside)
        except OSError as trouble:
            raise file_error(self.path, trouble) from trouble
        self.remove()
        return aside

    def described(self) -> Note:
        """What the copy holds. RecoatError if it cannot be read."""
        file = read_job_file(self.path)
        try:
            return msgspec.json.decode(read_bounded(self._note, LARGEST_NOTE), type=Note)
        except (FileError, msgspec.DecodeError, UnicodeDecodeError):
            return note_of(file, self.path.stat().st_mtime)


class Offer(NamedTuple):
    """A copy that no window holds, and what it holds."""

    copy: KeptCopy
    note: Note


class Found(NamedTuple):
    """The copies that no window holds, latest first, and what to say of those that are damaged."""

    offers: tuple[Offer, ...] = ()
    damaged: tuple[str, ...] = ()


def new_copy(folder: Path) -> KeptCopy:
    """A copy under a name that no other has, not yet on the disk."""
    return KeptCopy(folder / f"{BEGINNING}-{os.getpid()}-{secrets.token_hex(4)}.recoat")


def find_copies(folder: Path) -> Found:
    """The copies in this folder that no window holds. Those that cannot be read are put aside."""
    offers, damaged = [], []
    for path in folder.glob(f"{BEGINNING}*.recoat"):
        copy = KeptCopy(path)
        if not copy.hold():
            continue
        try:
            offers.append(Offer(copy, copy.described()))
        except RecoatError as trouble:
            damaged.append(put_aside_words(copy, trouble))
        except OSError:  # another window took it away at this moment
            continue
        finally:
            copy.let_go()
    _sweep(folder)
    return Found(tuple(sorted(offers, key=_made_at, reverse=True)), tuple(damaged))


def put_aside_words(copy: KeptCopy, trouble: RecoatError) -> str:
    """Put a copy aside that cannot be read, and say so."""
    what = f"A copy of unsaved work cannot be read: {trouble.what}."
    try:
        aside = copy.put_aside()
    except FileError as refused:
        return f"{what} It stays where it is: {refused}"
    return f"{what} Nothing was deleted; the copy is now in {aside}."


def _sweep(folder: Path) -> None:
    """Take away what programs left that were killed while they wrote a copy; an older copy is whole beside it."""
    for part in folder.glob(".*.part"):
        with suppress(OSError):
            if part.stat().st_mtime < time() - HOUR_S:
                part.unlink()


def _made_at(offer: Offer) -> float:
    return offer.note.kept_at
