"""What a file held when it was read or written, so that a change made since by others is seen."""

import hashlib
from datetime import datetime
from pathlib import Path

from shared.errors import FileError
from shared.written.moments import moment_words

_UNREADABLE = ""
"""The stamp of a file that cannot be read: no content has it."""


class ChangedError(FileError):
    """The file has changed since it was read or last written."""


def stamp(content: bytes) -> str:
    """The stamp of this content. Contents with equal stamps are equal."""
    return hashlib.sha256(content).hexdigest()


def stamp_of(path: Path) -> str | None:
    """The stamp of the content of a file; None if there is no such file."""
    if not path.is_file():
        return None
    try:
        with path.open("rb") as file:
            return hashlib.file_digest(file, "sha256").hexdigest()
    except FileNotFoundError:
        return None
    except OSError:
        return _UNREADABLE


def refuse_changed(path: Path, known: str | None) -> None:
    """Pass a file that has the stamp that is `known`, or is gone. ChangedError for any other, with when it changed.

    Where nothing is known of a file, it passes.
    """
    if known is None or stamp_of(path) in (None, known):
        return
    what = f"this file was changed{_when_changed(path)}, after it was opened or saved here"
    raise ChangedError(what, where=str(path), do="save the job under another name")


def _when_changed(path: Path) -> str:
    """When the file changed, as " at 14:32"; "" if it is gone meanwhile."""
    try:
        changed = datetime.fromtimestamp(path.stat().st_mtime).astimezone()
    except OSError:
        return ""
    return f" at {moment_words(changed, datetime.now().astimezone())}"
