"""A row of Count or of the basket, as a value."""

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from takeoff.figures.measured import EdgeRow, JointRow
from takeoff.why.row import WhyRow

Cells = tuple[str, ...]


class SumRow(NamedTuple):
    """One row of Count or of the basket, with the rows beneath it.

    The `key` stays the same while the row means the same. `parts` are the parts that the row was measured from, and
    `edges` the edges if it is a length. A `head` row names a group, a `note` row belongs to a sum, and `joint` is the
    joint that the row is about.
    """

    key: str
    cells: Cells
    children: tuple["SumRow", ...] = ()
    parts: tuple[str, ...] = ()
    face: str = ""
    edges: tuple[EdgeRow, ...] = ()
    head: bool = False
    note: bool = False
    joint: JointRow | None = None


def spanned(words: str, columns: int) -> Cells:
    """The cells of a row whose words go over the width of all columns."""
    return (words, *("",) * (columns - 1))


def unfolded(key: str, rows: Iterable[WhyRow], columns: int) -> Iterator[SumRow]:
    """The rows of a sum, beneath the row with this key. Beneath each are its own sum, its rules and their source."""
    for place, row in enumerate(rows):
        own = f"{key} {row.parts[0] if row.face else place}"
        yield SumRow(
            key=own,
            cells=spanned(row.line, columns),
            children=(*unfolded(own, row.children, columns), *grounds(own, row, columns)),
            parts=row.parts,
            face=row.face,
            note=not row.rule,
        )


def grounds(key: str, row: WhyRow, columns: int) -> Iterator[SumRow]:
    """A row for each rule behind `row` and for its source, beneath the row with this key."""
    for place, words in enumerate(row.grounds):
        yield SumRow(f"{key} ground {place}", spanned(words, columns), note=True)
