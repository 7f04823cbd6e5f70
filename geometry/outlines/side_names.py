"""Which way the sides of an outline face, in the words one has for them."""

from geometry.outlines.measured import signed_area_mm2
from geometry.outlines.sides import sides
from shared.job import Outline, View

_NAMES = {
    View.ELEVATION: ("right", "top", "left", "bottom"),
    View.PLAN: ("right", "front", "left", "back"),
}


def side_names(outline: Outline, view: View) -> tuple[str, ...]:
    """Where the side that leaves each vertex faces: "left", "right", "top", "bottom"; on a plan "front" and "back".

    The back is the wall's side. A slanting side faces where it faces most, a side at 45 degrees sideways; an arc where
    its chord faces. A repeated vertex has "".
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
