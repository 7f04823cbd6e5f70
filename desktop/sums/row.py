"""A row of the count or of the basket, as a value."""

from typing import NamedTuple

from takeoff.figures.measured import EdgeRow, JointRow

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
