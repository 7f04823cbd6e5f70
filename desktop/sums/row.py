"""A row of the count or of the basket, as a value."""

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from takeoff.figures.measured import EdgeRow, JointRow
from takeoff.why.row import WhyRow

Cells = tuple[str, ...]


class SumRow(NamedTuple):
    """One row of the count or of the basket: its `key`, the same as long as it means the same, and what is beneath it.

    `parts` are those it was measured from, and `edges` where it is a length of them; `head` rows name a group, `note`
    rows are part of a sum, `joint` is the joint that a row is about.
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
    """Words that go over the width of so many columns."""
    return (words, *("",) * (columns - 1))


def unfolded(key: str, rows: Iterable[WhyRow], columns: int) -> Iterator[SumRow]:
    """The rows of a sum beneath the row with this key, each down to its steps, its rule and where that comes from."""
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
    """The rules of a row and their source, each as a row beneath it."""
    for place, words in enumerate(row.grounds):
        yield SumRow(f"{key} ground {place}", spanned(words, columns), note=True)
