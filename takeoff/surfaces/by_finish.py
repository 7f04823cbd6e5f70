"""Gathers the parts of a takeoff by the finish that they get."""

from typing import NamedTuple

from takeoff.figures.measured import PartRow, Takeoff


class FinishTotal(NamedTuple):
    """All parts that get one finish, in order, and the sums of their areas in mm2."""

    finish: str
    rows: tuple[PartRow, ...]
    gross_mm2: float
    net_mm2: float
    coated_mm2: float


def totals_by_finish(takeoff: Takeoff) -> tuple[FinishTotal, ...]:
    """One total for each finish that a part gets, in the order of the parts. Parts without a finish are in none."""
    gathered: dict[str, list[PartRow]] = {}
    for row in takeoff.parts:
        if row.finish:
            gathered.setdefault(row.finish, []).append(row)
    return tuple(_total(finish, tuple(rows)) for finish, rows in gathered.items())


def _total(finish: str, rows: tuple[PartRow, ...]) -> FinishTotal:
    return FinishTotal(
        finish,
        rows,
        sum(row.gross_mm2.amount for row in rows),
        sum(row.net_mm2.amount for row in rows),
        sum(row.coated_mm2.amount for row in rows),
    )
