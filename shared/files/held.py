"""Reads and writes the file of a job that is open: claimed, and never over a change that somebody else made."""

from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple, TypeVar

from shared.files.claim import Claim, claim, refuse_held
from shared.files.disk import write_atomically
from shared.files.job import JobFile, content_for
from shared.files.stamp import refuse_changed, stamp, stamp_of

Read = TypeVar("Read")


class Held(NamedTuple):
    """What is held of the file of an open job: the claim on it, if there is one, and the stamp of what is in it.

    Where nothing is known of the file, there is no stamp.
    """

    claim: Claim | None = None
    stamp: str | None = None


def read_held(path: Path, held: Held, read: Callable[[Path], Read]) -> tuple[Read, Held]:
    """What `read` gives of the job at this path, and what is held of it from now on.

    `held` is what is held of the file by now. HeldError if somebody else has the job open.
    """
    refuse_held(path, held.claim)
    known = stamp_of(path)  # before reading: a change between the two is asked about once too often, never too rarely
    given = read(path)
    return given, Held(claim(path, held.claim), known)


def write_held(path: Path, job_file: JobFile, held: Held) -> Held:
    """Write the job file, and give what is held of it from now on. `held` is what is held of the file by now.

    HeldError if somebody else has the job open, ChangedError if somebody has changed the file, FileError where it
    cannot be written; the file is then as it was.
    """
    claimed = claim(path, held.claim)
    try:
        refuse_changed(path, held.stamp)
        content = content_for(path, job_file)
        write_atomically(path, content)
    except BaseException:
        if claimed is not None and claimed is not held.claim:
            claimed.give_up()
        raise
    return Held(claimed, stamp(content))
