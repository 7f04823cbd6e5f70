"""Names for the sides of an outline, by the way that each of them faces."""

from geometry.outlines.measured import signed_area_mm2
from geometry.outlines.sides import sides
from shared.job import Outline, View

_NAMES = {
    View.ELEVATION: ("right", "top", "left", "bottom"),
    View.PLAN: ("right", "front", "left", "back"),
}


def side_names(outline: Outline, view: View) -> tuple[str, ...]:
    """Which way the side that leaves each vertex faces: "left", "right", "top", "bottom"; on a plan "front", "back".

    The back of a plan is at the wall. A slanting side has the name of the way that it faces most; at 45 degrees it is
    "left" or "right". An arc faces the way its chord does. A repeated vertex has "".
    """
    outward = 1.0 if signed_area_mm2(outline) > 0 else -1.0
    names = {
        side.vertex: _facing(outward * (side.y1 - side.y0), outward * (side.x0 - side.x1), view)
        for side in sides(outline)
    }
    return tuple(names.get(index, "") for index in range(len(outline)))


def _facing(x: float, y: float, view: View) -> str:
    right, high, left, low = _NAMES[view]
    if abs(x) >= abs(y):
        return right if x > 0 else left
    return high if y > 0 else low
