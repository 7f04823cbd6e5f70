"""Adds up what a takeoff counts from some parts."""

from collections.abc import Collection
from typing import NamedTuple

from takeoff.figures.measured import Takeoff


class Counted(NamedTuple):
    """Areas in mm2 of some parts, and lengths in mm of the masking and sealed joints that they have a share in."""

    gross_mm2: float
    net_mm2: float
    coated_mm2: float
    masking_mm: float
    bead_mm: float


def counted_from(takeoff: Takeoff, ids: Collection[str]) -> Counted:
    """All that the takeoff counts from these parts; all zeros for no parts. An edge between two of them counts once."""
    wanted = frozenset(ids)
    parts = [row for row in takeoff.parts if row.id in wanted]
    return Counted(
        gross_mm2=sum(row.gross_mm2.amount for row in parts),
        net_mm2=sum(row.net_mm2.amount for row in parts),
        coated_mm2=sum(row.coated_mm2.amount for row in parts),
        masking_mm=sum(row.length_mm.amount for row in takeoff.masking if not wanted.isdisjoint(row.parts)),
        bead_mm=sum(row.length_mm.amount for row in takeoff.joints if row.sealed and not wanted.isdisjoint(row.parts)),
    )
