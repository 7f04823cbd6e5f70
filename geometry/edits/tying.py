"""Ties: sides of parts on a plan that run along walls."""

from geometry.outlines.measured import side_lengths_mm, signed_area_mm2
from shared.job import Part, Tie


def tie_along(part: Part, side: int, wall: str, start_mm: float) -> Tie:
    """The tie of a part's whole side to the face `wall`, from `start_mm` off that face's left end."""
    return Tie(part.id, side, wall, start_mm, start_mm + side_lengths_mm(part.outline)[side])


def runs_with_wall(part: Part) -> bool:
    """Whether the tied sides of a part go the way the wall goes, from its left end to its right.

    With y out from the wall, a wall goes from its left end to its right with its front on the left hand. An
    anticlockwise outline has its inside on the left hand, so its sides go the way the wall does.
    """
    return signed_area_mm2(part.outline) > 0


def wall_place_mm(part: Part, tie: Tie, x: float, y: float) -> float:
    """How far from the left end of the wall a point of the plan is, measured square to the tied side of the part."""
    begin, end = part.outline[tie.side], part.outline[(tie.side + 1) % len(part.outline)]
    dx, dy = end.x - begin.x, end.y - begin.y
    square = dx * dx + dy * dy
    share = ((x - begin.x) * dx + (y - begin.y) * dy) / square if square else 0.0
    if not runs_with_wall(part):
        share = 1 - share
    return tie.start_mm + share * (tie.end_mm - tie.start_mm)
