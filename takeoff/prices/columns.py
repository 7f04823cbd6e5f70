"""A price list as a table: the lines below its headings, its columns, and how its numbers are written.

`takeoff.prices.listed` reads the prices in it.
"""

import re
from collections.abc import Sequence
from typing import NamedTuple

from shared.errors import FileError
from shared.job import Job
from shared.typed.numbers import possible_signs
from shared.typed.packs import number_in
from takeoff.prices.cells import SEPARATORS, Cell, ListLine, csv_lines, decoded, is_spreadsheet, spreadsheet_lines
from takeoff.prices.headings import Column, Columns, columns_of

NEEDED = (Column.PRODUCT, Column.PRICE)
"""The columns that a list must have. An id may stand for the product's name, and a size may end that name."""

HEADING_LINES = 30
"""How many lines down the headings may be, below a letterhead (common practice, no source)."""

LONGEST_PRICE = 60
"""Characters. Nobody writes as many by intent."""

_PRICE = re.compile(
    r"(?P<before>[^\d.,+-]*)"
    r"(?P<number>[+-]?[\d.,][\d.,' \N{NO-BREAK SPACE}\N{RIGHT SINGLE QUOTATION MARK}]*?)(?:[.,]-)?\s*"
    r"(?P<after>[^\d.,+-]*\.?)"
)


class PriceTable(NamedTuple):
    """The lines of a price list below its headings, and how to read them.

    `decimal` is the decimal sign, "" when the list does not tell. `read_as` says in words how the list was read.
    """

    name: str
    job: Job
    lines: tuple[ListLine, ...]
    columns: Columns
    decimal: str
    read_as: str

    def cell(self, line: ListLine, column: Column) -> Cell:
        """The cell of a line in a column; "" when the list has no such column or the line ends before it."""
        found = self.columns.get(column)
        return line.cells[found.place] if found and found.place < len(line.cells) else ""

    def text(self, line: ListLine, column: Column) -> str:
        """The cell of a line in a column, as text."""
        cell = self.cell(line, column)
        return cell if isinstance(cell, str) else f"{cell:.10g}"


class PriceParts(NamedTuple):
    """The number of a price as it is written, and what stands before and after it."""

    number: str
    currency: str


def price_parts(text: str) -> PriceParts:
    """The two parts of a price such as "€ 24.90"; both are "" for a text that is no price."""
    match = _PRICE.fullmatch(text.strip()) if len(text) <= LONGEST_PRICE else None
    if match is None:
        return PriceParts("", "")
    return PriceParts(match["number"].strip(), f"{match['before'].strip()} {match['after'].strip()}".strip())


def price_table(content: bytes, name: str, job: Job) -> PriceTable:
    """The table in these bytes. FileError where they hold no table, or where a needed column is missing."""
    if is_spreadsheet(content):
        lines, read_as = spreadsheet_lines(content, name), "a spreadsheet"
    else:
        lines, read_as = _parted(content, name)
    below, columns = _below_headings(lines)
    _check_columns(columns, name)
    table = PriceTable(name, job, below, columns, "", read_as)
    sign = _decimal_of(table)
    words = {",": ", decimal comma", ".": ", decimal point"}.get(sign, "")
    return table._replace(decimal=sign, read_as=read_as + words)


def _parted(content: bytes, name: str) -> tuple[tuple[ListLine, ...], str]:
    """The lines of a CSV file, parted by the separator with which most headings are understood; and how it was read."""
    text, encoding = decoded(content, name)
    parted: dict[str, tuple[ListLine, ...]] = {}
    troubles = []
    for separator in SEPARATORS:
        try:
            parted[separator] = csv_lines(text, separator, name)
        except FileError as trouble:
            troubles.append(trouble)
    if not parted:
        raise troubles[0]
    best = max(parted, key=lambda separator: len(_below_headings(parted[separator])[1]))
    return parted[best], f"{encoding}, separated by {SEPARATORS[best]}"


def _below_headings(lines: Sequence[ListLine]) -> tuple[tuple[ListLine, ...], Columns]:
    """The lines below the line that names most columns, and those columns."""
    found = [columns_of([str(cell) for cell in line.cells]) for line in lines[:HEADING_LINES]]
    best = max(range(len(found)), key=lambda place: len(found[place]), default=-1)
    return (tuple(lines[best + 1 :]), found[best]) if found else ((), {})


def _check_columns(columns: Columns, name: str) -> None:
    known = columns if Column.ID not in columns else {**columns, Column.PRODUCT: columns[Column.ID]}
    missing = [column for column in NEEDED if column not in known]
    if missing:
        what = f"no column is headed {' or '.join(missing)}"
        raise FileError(what, where=name, do="head the columns product, size, unit, price and currency")


def _decimal_of(table: PriceTable) -> str:
    """The decimal sign that the numbers of the list agree on; "" when no number tells, or they do not agree."""
    told: set[str] = set()
    for line in table.lines:
        price, size = table.cell(line, Column.PRICE), table.cell(line, Column.SIZE)
        numbers = (price_parts(price).number if isinstance(price, str) else "", number_in(str(size)))
        for signs in map(possible_signs, numbers if isinstance(size, str) else numbers[:1]):
            told |= signs if len(signs) == 1 else set()
    return told.pop() if len(told) == 1 else ""
