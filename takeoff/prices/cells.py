"""Takes the lines and cells of a price list out of the bytes of a CSV file or a spreadsheet.

`takeoff.prices.columns` finds the columns in them.
"""

import csv
import io
import warnings
from collections.abc import Iterable, Iterator
from typing import NamedTuple

from shared.errors import FileError
from shared.limits import LONGEST_TEXT
from takeoff.prices.unpacking import check_unpacking, damaged

LARGEST_LIST = 16 * 2**20
"""The most bytes of a price list; the largest known has under a tenth of that (common practice, no source)."""

MOST_LINES = 20_000
MOST_COLUMNS = 100

LONGEST_CELL = LONGEST_TEXT + 1
"""Characters of a cell that are read: one more than a name may have, so that a longer name is still told."""

SEPARATORS = {",": "commas", ";": "semicolons", "\t": "tabs"}

Cell = str | float


class ListLine(NamedTuple):
    """One line of a list: its number, counted from 1, and its cells. A number in a spreadsheet is a float."""

    number: int
    cells: tuple[Cell, ...]


def is_spreadsheet(content: bytes) -> bool:
    """Whether the content of a file begins as a spreadsheet does."""
    return content.startswith(b"PK\x03\x04")


def decoded(content: bytes, where: str) -> tuple[str, str]:
    """The text of a CSV file, and the name of its encoding. FileError where it is in none of the usual encodings."""
    encoding = _marked(content) or ("utf-8" if _is_in(content, "utf-8") else "cp1252")
    try:
        text = content.decode(encoding)
    except UnicodeDecodeError as trouble:
        raise _no_text(where) from trouble
    if "\0" in text:
        raise _no_text(where)
    return text, _ENCODINGS[encoding]


def csv_lines(text: str, separator: str, where: str) -> tuple[ListLine, ...]:
    """The lines of a CSV file that are not empty. If a quoted cell goes over several lines, the first gives the number.

    FileError where a quote is not closed, or there are too many lines.
    """
    return tuple(_bounded(_parted(text, separator, where), where))


def spreadsheet_lines(content: bytes, where: str) -> tuple[ListLine, ...]:
    """The lines of a spreadsheet's first table that are not empty. A formula counts as the value saved with it.

    FileError where the file is damaged, made to do harm, or has too many lines.
    """
    check_unpacking(content, where)
    from openpyxl import load_workbook  # late: it is slow to import, and most price lists are CSV

    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # it warns of styles and checks in the file, which no price needs
            book = load_workbook(io.BytesIO(content), read_only=True, data_only=True, keep_links=False)
            worksheet = book.worksheets[0]
            worksheet.reset_dimensions()
            rows = enumerate(worksheet.iter_rows(max_row=MOST_LINES + 1, max_col=MOST_COLUMNS, values_only=True), 1)
            return tuple(_bounded((ListLine(number, tuple(map(_cell, row))) for number, row in rows), where))
    except FileError:
        raise
    except Exception as trouble:
        raise damaged(where) from trouble


_ENCODINGS = {
    "utf-8": "UTF-8",
    "utf-8-sig": "UTF-8",
    "utf-16": "UTF-16",
    "utf-16-le": "UTF-16",
    "utf-16-be": "UTF-16",
    "cp1252": "Windows-1252",
}


def _parted(text: str, separator: str, where: str) -> Iterator[ListLine]:
    """The lines one after the other, so that whoever counts them can stop before they fill the memory."""
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator, strict=True)
    begins = 1
    try:
        for cells in reader:
            yield ListLine(begins, tuple(cell.strip()[:LONGEST_CELL] for cell in cells[:MOST_COLUMNS]))
            begins = reader.line_num + 1
    except csv.Error as trouble:
        what = f"line {begins} cannot be split into cells ({trouble})"
        raise FileError(what, where=where, do="check the quotation marks in it") from trouble


def _marked(content: bytes) -> str:
    """The encoding that the first bytes tell, by a mark or by the zeros of plain letters in UTF-16; "" for none."""
    if content.startswith(b"\xef\xbb\xbf"):
        return "utf-8-sig"
    if content.startswith((b"\xff\xfe", b"\xfe\xff")):
        return "utf-16"
    if content[1:2] == b"\0":
        return "utf-16-le"
    return "utf-16-be" if content[:1] == b"\0" else ""


def _is_in(content: bytes, encoding: str) -> bool:
    try:
        content.decode(encoding)
    except UnicodeDecodeError:
        return False
    return True


def _bounded(lines: Iterable[ListLine], where: str) -> Iterator[ListLine]:
    for line in lines:
        if line.number > MOST_LINES:
            raise FileError(f"it has more than {MOST_LINES} lines", where=where, do="keep those of your products")
        if any(cell != "" for cell in line.cells):
            yield line


def _cell(value: object) -> Cell:
    if isinstance(value, int | float) and not isinstance(value, bool):
        return float(value)
    return "" if value is None else str(value).strip()[:LONGEST_CELL]


def _no_text(where: str) -> FileError:
    return FileError("this is not a table of text", where=where, do="save the list as CSV in UTF-8, or as XLSX")
