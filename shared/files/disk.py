"""Reads and writes whole files: it never reads more than a bound, and replaces a file as a whole or not at all."""

import errno
import os
import secrets
import stat
import sys
from contextlib import suppress
from pathlib import Path

from shared.errors import FileError

if sys.platform == "darwin":
    import fcntl

_WORDS = {
    errno.ENOENT: ("there is no such file or folder", "check its name"),
    errno.ENOTDIR: ("part of its path is not a folder", "check its name"),
    errno.EISDIR: ("this is a folder", "name a file"),
    errno.EACCES: ("this is not permitted", "check the permissions of the file and its folder"),
    errno.EPERM: ("this is not permitted", "check the permissions of the file and its folder"),
    errno.EROFS: ("this place cannot be written to", "choose another place"),
    errno.ENOSPC: ("the disk is full", "make room or choose another place"),
    errno.EDQUOT: ("your quota on this disk is used up", "make room or choose another place"),
    errno.EFBIG: ("the file would be larger than this place allows", "choose another place"),
    errno.ENAMETOOLONG: ("the name is too long", "choose a shorter one"),
    errno.ENXIO: ("no program is reading from this pipe", "start that program first, or choose another place"),
    errno.ELOOP: ("the link leads back to itself", "name the file itself"),
}

_MAY_WRITE = stat.S_IWUSR | stat.S_IWGRP | stat.S_IWOTH


def file_error(path: Path, trouble: OSError) -> FileError:
    """The FileError for what the system said about a file."""
    unknown = (trouble.strerror or "the system refused to do this").lower(), "try again or choose another place"
    what, advice = _WORDS.get(trouble.errno or 0, unknown)
    return FileError(what, where=str(path), do=advice)


def read_bounded(path: Path, most: int, *, do: str = "choose a job file") -> bytes:
    """The content of a file of at most `most` bytes.

    FileError where the file cannot be read or is larger; `do` is the advice for a larger one.
    """
    try:
        _require_file(path)
        with path.open("rb") as file:
            content = file.read(most + 1)
    except OSError as trouble:
        raise file_error(path, trouble) from trouble
    if len(content) > most:
        raise FileError(f"it is larger than {most // 2**20} MB", where=str(path), do=do)
    return content


def write_atomically(path: Path, content: bytes) -> None:
    """Make this the content of the file. Whatever goes wrong, the file holds all the old content or all the new.

    The content is written to a new file in the same folder and flushed to the disk. The new file then takes the place
    of the old one and keeps its permissions. A link is followed. A terminal or a pipe cannot be replaced and is simply
    written to. FileError where that fails, and for a read-only file; the file is then as it was.
    """
    try:
        target = path.resolve()
        if target.is_symlink():  # a link that leads back to itself, from Python 3.13 on
            raise OSError(errno.ELOOP, "")
        if target.exists() and not target.is_file():
            _write_as_it_is(target, content)
        else:
            _require_writable(target)
            _replace(target, content)
    except OSError as trouble:
        raise file_error(path, trouble) from trouble
    except RuntimeError as trouble:  # a link that leads back to itself, up to Python 3.12
        raise file_error(path, OSError(errno.ELOOP, "")) from trouble


def _write_as_it_is(target: Path, content: bytes) -> None:
    """Write to a terminal, a device or a pipe; a pipe that nobody reads is refused instead of waited for."""
    if not target.is_fifo():
        target.write_bytes(content)
        return
    handle = os.open(target, os.O_WRONLY | os.O_NONBLOCK)
    os.set_blocking(handle, True)
    with os.fdopen(handle, "wb") as pipe:
        pipe.write(content)


def _require_file(path: Path) -> None:
    """Refuse a folder, a pipe or a device: reading one may never end."""
    if not stat.S_ISREG(path.stat().st_mode):
        if path.is_dir():
            raise IsADirectoryError(errno.EISDIR, "")
        raise FileError("this is not a plain file", where=str(path), do="name a job file")


def _require_writable(target: Path) -> None:
    """Refuse a file that is there and read-only: taking its place asks the folder for permission, not the file.

    The mode is looked at too, because the administrator may write to any file.
    """
    if target.exists() and not (target.stat().st_mode & _MAY_WRITE and os.access(target, os.W_OK)):
        raise FileError("this file is read-only", where=str(target), do="choose another name, or allow writing to it")


def _replace(target: Path, content: bytes) -> None:
    temporary = target.with_name(f".{secrets.token_hex(8)}.part")
    try:
        with temporary.open("xb") as file:
            file.write(content)
            file.flush()
            _sync(file.fileno())
        if target.exists():
            temporary.chmod(stat.S_IMODE(target.stat().st_mode))
        temporary.replace(target)
    except BaseException:
        with suppress(OSError):
            temporary.unlink(missing_ok=True)
        raise
    _sync_folder(target.parent)


def _sync(handle: int) -> None:
    """Flush a file to the disk itself. On macOS fsync alone leaves it in the disk's own memory."""
    if sys.platform == "darwin":
        fcntl.fcntl(handle, fcntl.F_FULLFSYNC)
    else:
        os.fsync(handle)


def _sync_folder(folder: Path) -> None:
    """Flush the new name to the disk. Windows cannot flush a folder, and some network folders refuse it."""
    if sys.platform == "win32":
        return
    with suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)
