"""Finds the parts that lie under a point or in a box."""

from collections.abc import Sequence

from geometry.outlines.measured import contains, outline_box
from geometry.outlines.sides import WELD_MM, Box
from geometry.parts.rank import rank_key
from shared.job import Part


def parts_at(parts: Sequence[Part], x: float, y: float) -> tuple[Part, ...]:
    """The parts whose outline holds a point, from the front to the back; empty when no part is there.

    Arcs are exact, and a point on an outline is in it. Holes (a window, an outlet) can be picked like any part.
    """
    under = [
        (rank_key(part, index), part)
        for index, part in enumerate(parts)
        if _holds(outline_box(part.outline), (x, y, x, y)) and contains(part.outline, x, y)
    ]
    return tuple(part for _, part in sorted(under, key=lambda pair: pair[0], reverse=True))


def parts_within(parts: Sequence[Part], box: Box) -> tuple[Part, ...]:
    """The parts that lie wholly in a box (left, bottom, right, top), in drawing order."""
    return tuple(part for part in parts if _holds(box, outline_box(part.outline)))


def _holds(outer: Box, inner: Box) -> bool:
    return (
        outer[0] <= inner[0] + WELD_MM
        and outer[1] <= inner[1] + WELD_MM
        and outer[2] >= inner[2] - WELD_MM
        and outer[3] >= inner[3] - WELD_MM
    )
