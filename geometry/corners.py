"""What reaches the ends of a face, where it may meet its neighbour at a corner of the room."""

from collections.abc import Sequence
from enum import StrEnum
from typing import NamedTuple

from geometry.arrangement import Edge
from geometry.sides import WELD_MM


class End(StrEnum):
    """An end of a face, seen square on."""

    LEFT = "left"
    RIGHT = "right"


class Stretch(NamedTuple):
    """The heights, from `low_mm` up to `high_mm`, over which a part's visible region ends at an end of its face."""

    part: str
    low_mm: float
    high_mm: float


def end_profile(edges: Sequence[Edge], x_mm: float, which: End) -> tuple[Stretch, ...]:
    """The parts seen at an end of a face, from the bottom up in unbroken stretches; none where nothing reaches it.

    `edges` are those of its arrangement and `x_mm` the left or right of its extent. A part that runs on past the end
    does not end there and is not in it.
    """
    found = sorted(
        (Stretch(part, min(edge.y0, edge.y1), max(edge.y0, edge.y1)) for edge, part in _upright(edges, x_mm, which)),
        key=lambda stretch: stretch.low_mm,
    )
    profile: list[Stretch] = []
    for stretch in found:
        below = profile[-1] if profile else None
        if below and below.part == stretch.part and stretch.low_mm - below.high_mm <= WELD_MM:
            profile[-1] = Stretch(below.part, below.low_mm, stretch.high_mm)
        else:
            profile.append(stretch)
    return tuple(profile)


def _upright(edges: Sequence[Edge], x_mm: float, which: End) -> list[tuple[Edge, str]]:
    """The straight upright edges at `x_mm`, each with the part on its inner side."""
    found = []
    for edge in edges:
        if edge.bulge or abs(edge.x0 - x_mm) > WELD_MM or abs(edge.x1 - x_mm) > WELD_MM:
            continue
        goes_up = edge.y1 > edge.y0
        inner = edge.left if goes_up == (which is End.RIGHT) else edge.right
        if inner is not None:
            found.append((edge, inner))
    return found
