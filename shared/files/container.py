"""The container of a job file: a zip of `job.json` and the photos, the same bytes for the same content.

Nothing in it is compressed: photos are compressed already, and no version of a compression library can change a byte.
A container that somebody packed again, compressed, is read all the same. It is checked before it is unpacked, and it is
never unpacked to the disk. `shared.files.job` says what is in it.
"""

import io
import stat
import struct
import zipfile
import zlib
from collections.abc import Mapping, Sequence

from shared.errors import FileError

JOB_NAME = "job.json"
PHOTO_FOLDER = "photos/"

MOST_ENTRIES = 1_000
LARGEST_DIRECTORY = 2**20
LARGEST_ENTRY = 64 * 2**20
LARGEST_TOTAL = 256 * 2**20
GREATEST_RATIO = 200
"""How many times as large a file may be unpacked as packed: a job of 20 000 equal parts is 120 times (measured).

Deflate reaches 1032 to 1 at most.
"""

LONGEST_NAME = 100
"""Characters of a photo's name."""

_START = b"PK\x03\x04"
_END = struct.Struct("<4s4H2LH")
_END_MARK = b"PK\x05\x06"
_LARGE_MARK = b"PK\x06\x07"
_LARGE_MARK_SIZE = 20
_LOCAL_HEADER_SIZE = 30
_ENCRYPTED = 1
_EARLIEST = (1980, 1, 1, 0, 0, 0)
_UNIX = 3


def is_container(content: bytes) -> bool:
    """Whether a file's content begins as a container does."""
    return content.startswith(_START)


def packed(entries: Mapping[str, bytes]) -> bytes:
    """The container of these entries, in this order."""
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w", zipfile.ZIP_STORED) as container:
        for name, content in entries.items():
            entry = zipfile.ZipInfo(name, _EARLIEST)
            entry.create_system = _UNIX
            entry.external_attr = (stat.S_IFREG | 0o644) << 16
            container.writestr(entry, content)
    return buffer.getvalue()


def unpacked(content: bytes, where: str) -> dict[str, bytes]:
    """The entries of a container, by name. FileError where it is damaged, too large, or made to do harm."""
    _check_end(content, where)
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as container:
            entries = [entry for entry in container.infolist() if entry.filename != PHOTO_FOLDER]
            _check_entries(entries, container.start_dir, where)
            return {entry.filename: _content(container, entry, where) for entry in entries}
    except (zipfile.BadZipFile, zlib.error, EOFError, NotImplementedError, ValueError, struct.error) as trouble:
        raise _damaged(where) from trouble


def is_photo_name(name: str) -> bool:
    """Whether this can be a photo's name: a plain file name, not hidden, without characters that systems reserve."""
    plain = name.isprintable() and not any(sign in name for sign in '/\\:*?"<>|')
    return plain and 0 < len(name) <= LONGEST_NAME and not name.startswith((".", " ")) and not name.endswith((".", " "))


def _damaged(where: str) -> FileError:
    return FileError("the job file is cut short or damaged", where=where, do="use another copy of it")


def _refused(what: str, where: str) -> FileError:
    return FileError(f"this is not a job file of Recoat: {what}", where=where, do="use a file that Recoat has saved")


def _check_end(content: bytes, where: str) -> None:
    """Refuse a list of entries that is too long, before it is read.

    The list's size stands in the last 22 bytes, unless the zip has a comment or the extension for large files. Recoat
    writes neither, and both are refused.
    """
    if len(content) < _END.size:
        raise _damaged(where)
    mark, *_, count, size, _offset, _comment = _END.unpack(content[-_END.size :])
    before = content[-_END.size - _LARGE_MARK_SIZE : -_END.size]
    if mark != _END_MARK or before.startswith(_LARGE_MARK):
        raise _damaged(where)
    if count > MOST_ENTRIES or size > LARGEST_DIRECTORY:
        raise _refused(f"it holds more than {MOST_ENTRIES} files", where)


def _check_entries(entries: Sequence[zipfile.ZipInfo], end: int, where: str) -> None:
    if len(entries) > MOST_ENTRIES:
        raise _refused(f"it holds more than {MOST_ENTRIES} files", where)
    names = [entry.filename for entry in entries]
    if len(set(names)) < len(names):
        raise _refused("it holds two files with the same name", where)
    if sum(entry.file_size for entry in entries) > LARGEST_TOTAL:
        raise _refused(f"it would be larger than {LARGEST_TOTAL // 2**20} MB when unpacked", where)
    for entry in entries:
        _check_entry(entry, where)
    ordered = sorted(entries, key=lambda entry: entry.header_offset)
    following = [*(entry.header_offset for entry in ordered[1:]), end]
    for entry, after in zip(ordered, following, strict=False):
        if entry.header_offset + _LOCAL_HEADER_SIZE + len(entry.filename) + entry.compress_size > after:
            raise _refused("files in it overlap", where)


def _check_entry(entry: zipfile.ZipInfo, where: str) -> None:
    mode = entry.external_attr >> 16
    reasons = {
        "it holds a file that does not belong in a job": not _belongs(entry),
        "a file in it is encrypted": bool(entry.flag_bits & _ENCRYPTED),
        "a file in it is a link": stat.S_ISLNK(mode),
        "a file in it is packed in a way that Recoat does not know": entry.compress_type
        not in (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED),
        f"a file in it is larger than {LARGEST_ENTRY // 2**20} MB": entry.file_size > LARGEST_ENTRY,
        "a file in it would grow far too large when unpacked": entry.file_size
        > GREATEST_RATIO * max(entry.compress_size, 1),
    }
    for reason, holds in reasons.items():
        if holds:
            raise _refused(reason, where)


def _belongs(entry: zipfile.ZipInfo) -> bool:
    name = entry.filename
    if name != entry.orig_filename:  # the library cuts names at a zero byte and turns backslashes into slashes
        return False
    return name == JOB_NAME or (name.startswith(PHOTO_FOLDER) and is_photo_name(name.removeprefix(PHOTO_FOLDER)))


def _content(container: zipfile.ZipFile, entry: zipfile.ZipInfo, where: str) -> bytes:
    """An entry's content. One byte more than its claimed size is unpacked at most, to see whether the claim is true."""
    with container.open(entry) as file:
        content = file.read(entry.file_size + 1)
    if len(content) != entry.file_size:
        raise _damaged(where)
    return content
