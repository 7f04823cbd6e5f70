"""Moves, mirrors and resizes a part: it gets another outline. Sides keep their numbers, and arcs stay arcs."""

from collections.abc import Callable

import msgspec

from geometry.outlines.measured import check_outline, outline_box
from geometry.outlines.sides import WELD_MM, Box, Side, sides
from shared.errors import OutlineError
from shared.job import Outline, Part, Tiles, Vertex, Way

STRETCHES = 4
"""How often a stretched outline is corrected for arcs that bulge out of the box; a rounded end fits the second time."""


def moved(part: Part, dx: float, dy: float) -> Part:
    """The part moved by (dx, dy) millimetres."""
    return _with_outline(part, tuple(Vertex(v.x + dx, v.y + dy, v.bulge) for v in part.outline))


def mirrored(part: Part, at_mm: float, way: Way = Way.ACROSS) -> Part:
    """The part mirrored across the upright line at x = `at_mm`, or for `UP` over the level line at y = `at_mm`.

    Its outline then runs the other way round, and every side keeps its number. Its tiles are mirrored too.
    """
    if way is Way.UP:
        outline = tuple(Vertex(v.x, 2 * at_mm - v.y, -v.bulge) for v in part.outline)
    else:
        outline = tuple(Vertex(2 * at_mm - v.x, v.y, -v.bulge) for v in part.outline)
    tiles = part.tiles and _mirrored_tiles(part.tiles, outline_box(part.outline), way)
    return msgspec.structs.replace(part, outline=outline, tiles=tiles)


def resized(part: Part, box: Box) -> Part:
    """The part made to fill a box (left, bottom, right, top).

    Straight sides stretch in proportion, and so do arcs when width and height change alike. When they do not, a part
    with arcs is pulled apart at its middle, so that rounded corners and rounded ends stay arcs. OutlineError where the
    box is empty or arcs cannot follow (a circle made oblong).
    """
    where = part.called
    if not (box[2] - box[0] > WELD_MM and box[3] - box[1] > WELD_MM):
        raise OutlineError("the new size is 0", where=where, do="give it a width and a height")
    old = outline_box(part.outline)
    across, up = (box[2] - box[0]) / (old[2] - old[0]), (box[3] - box[1]) / (old[3] - old[1])
    if abs(across - up) * max(box[2] - box[0], box[3] - box[1]) <= WELD_MM or not any(v.bulge for v in part.outline):
        return _with_outline(part, _mapped(part.outline, _scale(old, box, 0), _scale(old, box, 1)))
    return _with_outline(part, _stretched(part.outline, box, where))


def _mirrored_tiles(tiles: Tiles, box: Box, way: Way) -> Tiles:
    """The same tiles in a mirror: the far corner of the first tile is now its near one."""
    shift = (1 - tiles.course_shift) % 1
    if way is Way.UP:
        start = box[3] - box[1] - tiles.start_y_mm - tiles.height_mm
        return msgspec.structs.replace(tiles, start_y_mm=start, course_shift=shift)
    start = box[2] - box[0] - tiles.start_x_mm - tiles.width_mm
    return msgspec.structs.replace(tiles, start_x_mm=start, course_shift=shift)


def _with_outline(part: Part, outline: Outline) -> Part:
    return msgspec.structs.replace(part, outline=outline)


def _mapped(outline: Outline, new_x: Callable[[float], float], new_y: Callable[[float], float]) -> Outline:
    return tuple(Vertex(new_x(v.x), new_y(v.y), v.bulge) for v in outline)


def _scale(old: Box, new: Box, axis: int) -> Callable[[float], float]:
    low, high, new_low, new_high = old[axis], old[axis + 2], new[axis], new[axis + 2]
    return lambda value: new_low + (value - low) * (new_high - new_low) / (high - low)


def _stretched(before: Outline, box: Box, where: str) -> Outline:
    outline = before
    for _ in range(STRETCHES):
        old = outline_box(outline)
        outline = _mapped(outline, _pull(old, box, 0), _pull(old, box, 1))
    fills = all(abs(now - wanted) <= WELD_MM for now, wanted in zip(outline_box(outline), box, strict=True))
    if not (fills and all(map(_arc_keeps_its_way, sides(before), sides(outline)))):
        raise OutlineError(
            "its arcs cannot be stretched in one direction only",
            where=where,
            do="change width and height by the same share, or draw it again",
        )
    check_outline(outline, where)
    return outline


def _pull(old: Box, new: Box, axis: int) -> Callable[[float], float]:
    """Where a coordinate goes when the box is pulled: a corner keeps its distance from the nearer end of the box.

    A corner half way between the ends stays half way.
    """
    middle = (old[axis] + old[axis + 2]) / 2
    low, high = new[axis] - old[axis], new[axis + 2] - old[axis + 2]

    def pulled(value: float) -> float:
        if abs(value - middle) <= WELD_MM:
            return value + (low + high) / 2
        return value + (low if value < middle else high)

    return pulled


def _arc_keeps_its_way(before: Side, after: Side) -> bool:
    """Whether an arc still leaves its ends in the same directions, so that it still joins its neighbours smoothly."""
    ax, ay, bx, by = before.x1 - before.x0, before.y1 - before.y0, after.x1 - after.x0, after.y1 - after.y0
    return not before.bulge or (abs(ax * by - ay * bx) <= WELD_MM * before.chord_mm and ax * bx + ay * by > 0)
