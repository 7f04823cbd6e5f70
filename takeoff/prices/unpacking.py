"""Refuses a spreadsheet that costs too much to read, before it is read. `takeoff.prices.cells` reads it.

A spreadsheet is a zip of XML files, and a small one can hold millions of styles, rows or texts. So its files are
unpacked one by one and their tags are counted, which is a hundred times quicker than reading them.
"""

import io
import re
import zipfile
import zlib
from collections.abc import Iterator

from shared.errors import FileError

LARGEST_UNPACKED = 64 * 2**20
GREATEST_RATIO = 200
"""How much larger a spreadsheet may be unpacked: as in `shared.files.container`, against the same trap."""

MOST_PACKED_FILES = 1_000

MOST_TAGS = 500_000
"""Tags of all its files together, counted by their "<": a cell has about four. They are read in some 3 s (measured)."""

MOST_OTHER_TAGS = 60_000
"""Tags that are no rows, cells or texts, as those of styles: each takes five times as long to read (measured)."""

MOST_SCANS = 2_000_000
"""Tables times the tags of the largest file: each table may be looked through for its size before the first is read."""

_OF_CELLS = re.compile(rb"</?(?:row|c|v|f|is|si|t|r)[\s/>]")
_TABLE = re.compile(rb"<(?:[\w.-]+:)?sheet[\s/>]")
_DECLARES = re.compile(rb"<!(?:DOCTYPE|ENTITY)")
_SIXTEEN_BITS = (b"\xff\xfe", b"\xfe\xff", b"<\0", b"\0<")
"""How XML of 16-bit characters begins. Spreadsheets are written in UTF-8, and only that can be counted."""


def check_unpacking(content: bytes, where: str) -> None:
    """Pass a spreadsheet that can be read in a few seconds. FileError for any other, and for a damaged one."""
    tags, others, most, tables = 0, 0, 0, 0
    for text in _unpacked(content, where):
        if text.startswith(_SIXTEEN_BITS) or _DECLARES.search(text):
            raise damaged(where)
        found = text.count(b"<")
        tags, most, tables = tags + found, max(most, found), tables + len(_TABLE.findall(text))
        if tags <= MOST_TAGS:
            others += found - len(_OF_CELLS.findall(text))
        if tags > MOST_TAGS or others > MOST_OTHER_TAGS:
            raise _too_much("it has too many cells, texts and styles", where)
    if tables * most > MOST_SCANS:
        raise _too_much(f"it has {tables} tables", where)


def damaged(where: str) -> FileError:
    """The error for a spreadsheet that cannot be read."""
    return FileError("this spreadsheet is cut short or damaged", where=where, do="save it again, or save it as CSV")


def _unpacked(content: bytes, where: str) -> Iterator[bytes]:
    """The content of each packed file, one after the other."""
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as packed:
            _check_sizes(packed.infolist(), len(content), where)
            for entry in packed.infolist():
                yield packed.read(entry)
    except (zipfile.BadZipFile, zlib.error, EOFError, ValueError, OSError, RuntimeError) as trouble:
        raise damaged(where) from trouble


def _check_sizes(entries: list[zipfile.ZipInfo], packed: int, where: str) -> None:
    unpacked = sum(entry.file_size for entry in entries)
    if len(entries) > MOST_PACKED_FILES or unpacked > min(LARGEST_UNPACKED, GREATEST_RATIO * packed):
        raise FileError(
            "this spreadsheet would grow far too large when unpacked",
            where=where,
            do="save it again, or save it as CSV",
        )


def _too_much(what: str, where: str) -> FileError:
    return FileError(what, where=where, do="save the sheet with your products alone, or save it as CSV")
