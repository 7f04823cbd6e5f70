"""Masking: every edge where a part coated in place meets something that is not coated, or gets another finish."""

from collections.abc import Callable, Iterable, Mapping
from functools import partial

from geometry.outlines.sides import Side, sides
from geometry.parts.extent import walls
from geometry.seen.ends import End, EndLine, end_line
from shared.job import Face, Part, View
from takeoff.edges.of_face import divided, length_figure
from takeoff.figures.measured import EdgeRow, MaskingRow

NEAR_MM = 1e-3
"""A point this near to a line is on it: far below a tape's reading."""

RULE = "masked: coated in place on one side, and not, or with another finish, on the other"
SOURCE = "common practice, no source"

Finishes = Mapping[str, str | None]
"""For each part by id, the finish that it gets in place; None for a part that gets none there."""

Pair = tuple[str, str | None]


def masking_rows(
    face: str,
    parts: Mapping[str, Part],
    edges: Iterable[EdgeRow],
    finishes: Finishes,
    is_guarded: Callable[[EdgeRow], bool],
) -> tuple[MaskingRow, ...]:
    """A row for every pair that is taped on this face. `is_guarded` tells whether an outside edge is taped."""
    paths: dict[Pair, list[EdgeRow]] = {}
    for edge in edges:
        if is_masked(edge, finishes, is_guarded):
            paths.setdefault(divided(edge), []).append(edge)
    return tuple(masking_row(face, pair, _words(parts, pair), path) for pair, path in paths.items())


def masking_row(face: str, pair: Pair, name: str, path: Iterable[EdgeRow]) -> MaskingRow:
    """The row of one pair that is taped along a path."""
    path = tuple(path)
    return MaskingRow(face, pair, name, length_figure(path, RULE, SOURCE), path)


def is_masked(edge: EdgeRow, finishes: Finishes, is_guarded: Callable[[EdgeRow], bool]) -> bool:
    """Whether an edge is taped: the two things it divides differ in their finish in place.

    An edge to the outside must be guarded, too.
    """
    first, second = divided(edge)
    other = None if second is None else finishes.get(second)
    return finishes[first] != other and (second is not None or is_guarded(edge))


def guard_of(face: Face, ends_at_corners: tuple[bool, bool]) -> Callable[[EdgeRow], bool]:
    """The function that tells whether an outside edge of this face is taped.

    On an elevation with a wall, all edges on the wall's outline are taped: floor, ceiling and ends. An end that meets
    another face at a corner is left out, as the corner decides about it. Without a wall, edges on the floor are taped.
    On a plan no outside edge is: a side along a wall is taped on the elevation, and a free edge is coated over.
    """
    if face.view is View.PLAN:
        return _unguarded
    outlines = [side for part in walls(face) for side in sides(part.outline)]
    if not outlines:
        return _is_on_floor
    ends = [end_line(face, which) for which, meets in zip(End, ends_at_corners, strict=True) if meets]
    return partial(_is_on_wall, outlines, ends)


def _unguarded(_edge: EdgeRow) -> bool:
    return False


def _is_on_floor(edge: EdgeRow) -> bool:
    return not edge.bulge and abs(edge.start[1]) <= NEAR_MM and abs(edge.end[1]) <= NEAR_MM


def _is_on_wall(outlines: list[Side], ends: list[EndLine], edge: EdgeRow) -> bool:
    if not edge.bulge and any(line.is_on(edge.start, NEAR_MM) and line.is_on(edge.end, NEAR_MM) for line in ends):
        return False
    middle = Side(0, *edge.start, *edge.end, edge.bulge).middle
    return any(
        all(side.distance_mm(*point) <= NEAR_MM for point in (edge.start, middle, edge.end)) for side in outlines
    )


def _words(parts: Mapping[str, Part], pair: Pair) -> str:
    other = "the outside" if pair[1] is None else parts[pair[1]].called
    return f"{parts[pair[0]].called} to {other}"
