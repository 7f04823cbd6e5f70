"""The area of a part without its openings."""

from collections.abc import Sequence

import msgspec

from geometry.outlines.measured import area_mm2
from geometry.seen.arrange import arrange
from geometry.seen.arrangement import Region
from shared.job import Part
from shared.trade.kinds import Kind


def uncovered_area_mm2(part: Part, openings: Sequence[Part]) -> float:
    """The area of a part's outline without its openings, arcs exact. Where openings overlap they count once.

    The part and its openings are arranged by themselves, whatever their kind, level or order. Whatever else hangs or
    stands in front of the part on its face takes nothing away.
    """
    return uncovered(part, openings).area_mm2 if openings else area_mm2(part.outline)


def uncovered(part: Part, openings: Sequence[Part]) -> Region:
    """The region of a part without its openings, found as `uncovered_area_mm2` says."""
    surface = msgspec.structs.replace(part, kind=Kind.WALL, level=0, hides=True)
    holes = [msgspec.structs.replace(opening, kind=Kind.CUT_OUT, level=0, hides=True) for opening in openings]
    return arrange((surface, *holes)).region(part.id)
