"""Spreadsheets as values: worksheets of rows, whose cells are text, numbers and live formulas; and their writing."""

import io
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from xlsxwriter import Workbook


class Live(NamedTuple):
    """A formula, and the value that it has now. A viewer that works out no formulas shows the value."""

    formula: str
    value: float | str


Cell = str | float | Live
Row = tuple[Cell, ...]


class Worksheet(NamedTuple):
    """One worksheet: its name, headings, widths of columns in characters, and rows.

    `money` holds the numbers of the columns that are shown to the cent.
    """

    name: str
    headings: tuple[str, ...]
    widths: tuple[int, ...]
    rows: tuple[Row, ...]
    money: frozenset[int] = frozenset()

    def cells(self, column: str) -> str:
        """The cells of a column below its heading, as a formula names them. There is at least one."""
        return f"{self.name}!${column}$2:${column}${max(len(self.rows), 1) + 1}"


def book_bytes(worksheets: Iterable[Worksheet]) -> bytes:
    """The spreadsheet as the content of a file. All text is written as text, whatever it begins with."""
    import xlsxwriter  # late: it is slow to import, and most runs write no spreadsheet

    content = io.BytesIO()
    with xlsxwriter.Workbook(content, {"in_memory": True}) as book:
        for worksheet in worksheets:
            _write(book, worksheet)
    return content.getvalue()


def cells_of(name: str, column: str, rows: Sequence[object]) -> str:
    """The cells of a column of the named worksheet, below its heading, for these rows. There is at least one."""
    return Worksheet(name, (), (), tuple(("",) for _ in rows)).cells(column)


def told_apart(names: Mapping[str, str]) -> dict[str, str]:
    """Names, by id, that a spreadsheet can tell apart.

    An empty name becomes the id. Names that differ in no more than capitals get their ids added.
    """
    named = {key: name or key for key, name in names.items()}
    alike = Counter(name.casefold() for name in named.values())
    return {key: f"{name} ({key})" if alike[name.casefold()] > 1 else name for key, name in named.items()}


def _write(book: "Workbook", worksheet: Worksheet) -> None:
    written = book.add_worksheet(worksheet.name)
    bold, figure, money = (
        book.add_format(each) for each in ({"bold": True}, {"num_format": "0.000"}, {"num_format": "0.00"})
    )
    for column, (heading, width) in enumerate(zip(worksheet.headings, worksheet.widths, strict=True)):
        written.set_column(column, column, width)
        written.write_string(0, column, heading, bold)
    written.freeze_panes(1, 0)
    for number, row in enumerate(worksheet.rows, 1):
        for column, cell in enumerate(row):
            style = money if column in worksheet.money else figure
            if isinstance(cell, Live):
                written.write_formula(number, column, cell.formula, style, cell.value)
            elif isinstance(cell, str):
                written.write_string(number, column, cell)
            else:
                written.write_number(number, column, cell, style)
