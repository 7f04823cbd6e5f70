"""Sides of plans that run along walls."""

from geometry.outline import side_lengths_mm
from shared.job import Part, Tie


def tie_along(part: Part, side: int, wall: str, start_mm: float) -> Tie:
    """The tie of a part's side, over its whole length, to the face `wall`, from `start_mm` off that face's left end."""
    return Tie(part.id, side, wall, start_mm, start_mm + side_lengths_mm(part.outline)[side])
