"""The edges of a face as rows of the takeoff: each once, with the parts or the opening that it divides. Millimetres."""

import math
from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

from geometry.outlines.measured import contains, outline_box
from geometry.outlines.sides import Box, Point, Side
from geometry.parts.rank import rank_key
from geometry.seen.arrangement import Edge
from shared.job import Part
from takeoff.figures.measured import EdgeRow, Figure, Fronts, Reason, Term
from takeoff.surfaces.fronts import is_opening

BESIDE_MM = 1e-3
"""How far beside an edge one looks for the opening that it borders on: far below a tape's reading."""


class RankedPart(NamedTuple):
    """A part and its place from back to front, which no other part of its face has."""

    rank: tuple[bool, int, int, int]
    part: Part


Ranked = Mapping[str, RankedPart]
Opening = tuple[Part, Box]


def in_order(parts: Sequence[Part], edges: Iterable[Edge]) -> list[Edge]:
    """The edges sorted by the parts that they divide, in drawing order, then by place.

    The order does not depend on how the edges were found.
    """
    order: dict[str | None, int] = {part.id: index for index, part in enumerate(parts)}
    order[None] = len(parts)

    def key(edge: Edge) -> tuple[int, int, float, float, float, float]:
        first, second = sorted((order[edge.left], order[edge.right]))
        return (first, second, edge.x0, edge.y0, edge.x1, edge.y1)

    return sorted(edges, key=key)


def edge_rows(face: str, parts: Sequence[Part], edges: Iterable[Edge]) -> tuple[EdgeRow, ...]:
    """A row for every edge. The part that was drawn first comes first in it."""
    order = {part.id: index for index, part in enumerate(parts)}
    openings = _openings(parts)
    return tuple(_row(face, edge, order, openings) for edge in edges)


def seen_edges(edges: Iterable[Edge]) -> dict[str, dict[int, list[Edge]]]:
    """For each part and each side of its own outline, the edges at which its visible region ends at that side."""
    seen: dict[str, dict[int, list[Edge]]] = {}
    for edge in edges:
        for part, side in ((edge.left, edge.left_side), (edge.right, edge.right_side)):
            if part is not None and side is not None:
                seen.setdefault(part, {}).setdefault(side, []).append(edge)
    return seen


def sides_seen(edges: Iterable[Edge]) -> dict[str, frozenset[int]]:
    """For each part, the sides of its own outline at which its visible region ends at one of these edges."""
    return {part: frozenset(own) for part, own in seen_edges(edges).items()}


def length_figure(path: Sequence[EdgeRow], rule: str, source: str) -> Figure:
    """The length of a path, with a term for each of its pieces."""
    terms = tuple(
        Term("arc" if edge.bulge else "straight", edge.length_mm, (), tuple(part for part in divided(edge) if part))
        for edge in path
    )
    return Figure(sum(term.amount for term in terms), Reason(rule, source, Fronts.OFF, terms))


def divided(edge: EdgeRow) -> tuple[str, str | None]:
    """The ids of the two parts that an edge divides. An opening counts as a part; None is the outside."""
    return (edge.parts[0], edge.parts[1] or edge.opening)


def ranked_parts(parts: Sequence[Part]) -> Ranked:
    """Each part with its place from back to front, by its id."""
    return {part.id: RankedPart(rank_key(part, index), part) for index, part in enumerate(parts)}


def part_below(edge: EdgeRow, ranked: Ranked) -> Part | None:
    """The part on the lower side of a straight edge that is not upright; None at the outside and for any other edge.

    Of the two parts, the one in front ends here by its own outline. So it is on the side where that outline goes on.
    """
    first, second = divided(edge)
    if second is None or edge.bulge or abs(edge.start[0] - edge.end[0]) <= BESIDE_MM:
        return None
    back, front = sorted((ranked[first], ranked[second]))
    x, y = (edge.start[0] + edge.end[0]) / 2, (edge.start[1] + edge.end[1]) / 2
    return (back if contains(front.part.outline, x, y + 2 * BESIDE_MM) else front).part


def _openings(parts: Sequence[Part]) -> list[Opening]:
    """The openings of a face from the front to the back, each with the box round it."""
    ranked = [RankedPart(rank_key(part, index), part) for index, part in enumerate(parts) if is_opening(part)]
    return [(part, outline_box(part.outline)) for _, part in sorted(ranked, reverse=True)]


def _row(face: str, edge: Edge, order: dict[str, int], openings: Sequence[Opening]) -> EdgeRow:
    start, end = (edge.x0, edge.y0), (edge.x1, edge.y1)
    owners = sorted((part for part in (edge.left, edge.right) if part is not None), key=order.__getitem__)
    if len(owners) == 2:
        return EdgeRow(face, (owners[0], owners[1]), start, end, edge.bulge, edge.length_mm)
    opening = _opening_at(_beside(edge), openings) if openings else None
    return EdgeRow(face, (owners[0], None), start, end, edge.bulge, edge.length_mm, opening)


def _beside(edge: Edge) -> Point:
    """A point just beside the middle of an edge, where no part is seen."""
    middle = Side(0, edge.x0, edge.y0, edge.x1, edge.y1, edge.bulge).middle
    dx, dy = edge.x1 - edge.x0, edge.y1 - edge.y0
    away = BESIDE_MM / math.hypot(dx, dy) * (1 if edge.left is None else -1)
    return (middle[0] - dy * away, middle[1] + dx * away)


def _opening_at(point: Point, openings: Iterable[Opening]) -> str | None:
    x, y = point
    for part, (left, bottom, right, top) in openings:
        if left <= x <= right and bottom <= y <= top and contains(part.outline, x, y):
            return part.id
    return None
