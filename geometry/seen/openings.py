"""What openings leave of a part."""

from collections.abc import Sequence

import msgspec

from geometry.outlines.measured import area_mm2
from geometry.seen.arrange import arrange
from geometry.seen.arrangement import Region
from shared.job import Part
from shared.trade.kinds import Kind


def uncovered_area_mm2(part: Part, openings: Sequence[Part]) -> float:
    """The area of a part's outline less what openings take from it, arcs exact; openings that overlap take it once.

    The part and its openings are arranged by themselves, whatever their kind, level or order: what hangs or stands in
    front of the part on its face takes nothing.
    """
    return uncovered(part, openings).area_mm2 if openings else area_mm2(part.outline)


def uncovered(part: Part, openings: Sequence[Part]) -> Region:
    """What openings leave of a part, measured as `uncovered_area_mm2` says."""
    surface = msgspec.structs.replace(part, kind=Kind.WALL, level=0, hides=True)
    holes = [msgspec.structs.replace(opening, kind=Kind.CUT_OUT, level=0, hides=True) for opening in openings]
    return arrange((surface, *holes)).region(part.id)
