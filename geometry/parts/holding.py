"""Whether a box lies within an outline."""

from geometry.outlines.measured import contains
from geometry.outlines.sides import Box, Side, sides
from shared.job import Outline


def holds_box(outline: Outline, box: Box) -> bool:
    """Whether the whole of a box (left, bottom, right, top) certainly lies within an outline; it may touch its sides.

    It does if no side enters the box and the middle of the box lies inside. A box that meets the box round an arc
    counts as not held. So True is always right, and False may be too careful.
    """
    if any(_may_enter(side, box) for side in sides(outline)):
        return False
    return contains(outline, (box[0] + box[2]) / 2, (box[1] + box[3]) / 2)


def _may_enter(side: Side, box: Box) -> bool:
    left, bottom, right, top = side.box
    if left >= box[2] or right <= box[0] or bottom >= box[3] or top <= box[1]:
        return False
    if side.bulge:
        return True
    dx, dy = side.x1 - side.x0, side.y1 - side.y0
    turns = [dx * (y - side.y0) - dy * (x - side.x0) for x in (box[0], box[2]) for y in (box[1], box[3])]
    return min(turns) < 0 < max(turns)
