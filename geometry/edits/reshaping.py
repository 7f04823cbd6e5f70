"""Changes an outline by its corners and sides: moves, turns, bends; puts a corner in, takes it out, rounds it, cuts it.

Arcs stay arcs: when their ends move they turn through the same angle as before. Each change tells from which sides of
the old outline each new side comes, so that a side's coat and tie can stay with it (`geometry.edits.renumbering`).
Nothing is checked here: `geometry.outlines.measured.check_outline` says whether the result can be measured.
"""

import math
from collections.abc import Iterable, Mapping
from typing import NamedTuple

from geometry.outlines.measured import outline_box, signed_area_mm2
from geometry.outlines.sides import WELD_MM, Point, Side
from shared.errors import OutlineError
from shared.job import Outline, Vertex

SQUARE = 1e-6
"""Two sides are square to each other if the cosine of the angle between them is below this, in line if its sine is."""

Origin = tuple[int, ...]
"""The sides of the old outline that a new side comes from: one; two that became one; none for a new side."""


class Reshaped(NamedTuple):
    """A new outline, and for each of its sides the old sides that it comes from."""

    outline: Outline
    origins: tuple[Origin, ...]


def side_at(outline: Outline, number: int) -> Side:
    """The side that leaves vertex `number`, counted round: -1 is the last."""
    place = number % len(outline)
    start, end = outline[place], outline[(place + 1) % len(outline)]
    return Side(place, start.x, start.y, end.x, end.y, start.bulge)


def corner_moved(outline: Outline, corner: int, to: Point) -> Reshaped:
    """The outline with one corner at another place."""
    return _shifted(outline, {corner: (to[0] - outline[corner].x, to[1] - outline[corner].y)})


def side_moved(outline: Outline, number: int, by_mm: float) -> Reshaped:
    """A straight side moved parallel to itself, outwards by `by_mm`; a negative length moves it inwards.

    Its ends slide along the sides next to it. A rounded corner next to it goes along as it is, and the side after that
    corner follows.
    """
    nx, ny = _outwards(outline, number)
    shifts: dict[int, Point] = {}
    for step, end in ((-1, number), (1, number + 1)):
        is_arc = bool(side_at(outline, number + step).bulge)
        ux, uy = _direction(side_at(outline, number + (2 * step if is_arc else step)))
        share = nx * ux + ny * uy
        ways = (ux / share, uy / share) if abs(share) > SQUARE else (nx, ny)
        for corner in (end, end + step) if is_arc else (end,):
            shifts[corner % len(outline)] = (ways[0] * by_mm, ways[1] * by_mm)
    return _shifted(outline, shifts)


def side_moved_to(outline: Outline, number: int, at: Point) -> Reshaped:
    """A straight side moved parallel to itself onto a point, as `side_moved` does."""
    nx, ny = _outwards(outline, number)
    side = side_at(outline, number)
    return side_moved(outline, number, (at[0] - side.x0) * nx + (at[1] - side.y0) * ny)


def far_end(outline: Outline, number: int) -> int:
    """The corner that moves when a side's length is changed: its right end; the upper end of an upright side."""
    side = side_at(outline, number)
    dx, dy = side.x1 - side.x0, side.y1 - side.y0
    goes_far = dx > 0 if abs(dx) > WELD_MM else dy > 0
    return (number + goes_far) % len(outline)


def side_lengthened(outline: Outline, number: int, length_mm: float) -> Reshaped:
    """A side made this long, along its arc if it has one, by moving its far end.

    If the next side there is square to it, that whole side goes along, and so does a rounded corner between them: a box
    stays a box. Otherwise only the corner moves.
    """
    side, corner = side_at(outline, number), far_end(outline, number)
    step = -1 if corner == side.vertex else 1
    share = step * (length_mm / side.length_mm - 1)
    shift = ((side.x1 - side.x0) * share, (side.y1 - side.y0) * share)
    return _shifted(outline, dict.fromkeys(_going_along(outline, number, corner, step), shift))


def side_turned(outline: Outline, number: int, length_mm: float, way: Point) -> Reshaped:
    """A side made this long from end to end, in this direction (of length 1) from the end that is not its far end."""
    corner, side = far_end(outline, number), side_at(outline, number)
    x, y = side.start if corner != side.vertex else side.end
    return corner_moved(outline, corner, (x + length_mm * way[0], y + length_mm * way[1]))


def side_bent(outline: Outline, number: int, rise_mm: float) -> Reshaped:
    """A side made an arc that rises this far outwards from its chord; a negative rise goes inwards, 0 is straight.

    The bulge is the rise divided by half the chord (DXF reference, LWPOLYLINE group 42).
    """
    side = side_at(outline, number)
    return _bent(outline, side, 2 * rise_mm / side.chord_mm * _turn(outline))


def side_through(outline: Outline, number: int, at: Point) -> Reshaped:
    """A side made an arc whose middle is as far from its chord as this point is."""
    nx, ny = _outwards(outline, number)
    side = side_at(outline, number)
    return side_bent(outline, number, (at[0] - side.x0) * nx + (at[1] - side.y0) * ny)


def side_of_radius(outline: Outline, number: int, radius_mm: float) -> Reshaped:
    """A side made an arc of this radius, outwards, at most half a circle; a negative radius bends it inwards.

    A chord is twice the radius times the sine of half the angle, and the bulge is the tangent of a quarter of that
    angle. OutlineError where the radius is less than half the distance between the side's ends.
    """
    side = side_at(outline, number)
    share = side.chord_mm / 2 / abs(radius_mm) if radius_mm else math.inf
    if share > 1 + WELD_MM:
        raise OutlineError(
            f"an arc between the ends of side {side.vertex + 1} cannot have so small a radius",
            do="type at least half the distance between them",
        )
    return _bent(outline, side, math.copysign(math.tan(math.asin(min(share, 1.0)) / 2), radius_mm) * _turn(outline))


def corner_put_in(outline: Outline, number: int, at: Point) -> Reshaped:
    """A side parted in two by a new corner at its point nearest to `at`. An arc becomes two arcs of the same circle."""
    side = side_at(outline, number)
    x, y = side.nearest(*at)
    first = second = 0.0
    if side.bulge:
        (cx, cy), whole = side.centre, 4 * math.atan(side.bulge)
        ax, ay, bx, by = side.x0 - cx, side.y0 - cy, x - cx, y - cy
        angle = math.atan2(ax * by - ay * bx, ax * bx + ay * by) % math.copysign(math.tau, whole)
        first, second = math.tan(angle / 4), math.tan((whole - angle) / 4)
    around = _numbered(outline)
    around[side.vertex : side.vertex + 1] = [
        (Vertex(side.x0, side.y0, first), (side.vertex,)),
        (Vertex(x, y, second), (side.vertex,)),
    ]
    return _reshaped(around)


def corner_taken_out(outline: Outline, corner: int) -> Reshaped:
    """The outline without a corner. The two sides that met there become one straight side.

    Two arcs of the same circle become one arc.
    """
    before, after = side_at(outline, corner - 1), side_at(outline, corner)
    bulge = 0.0
    if before.bulge * after.bulge > 0 and math.dist(before.centre, after.centre) <= SQUARE * before.radius_mm:
        bulge = math.tan(math.atan(before.bulge) + math.atan(after.bulge))
    around = _numbered(outline)
    around[before.vertex] = (Vertex(before.x0, before.y0, bulge), (before.vertex, after.vertex))
    del around[after.vertex]
    return _reshaped(around)


def corner_rounded(outline: Outline, corner: int, radius_mm: float) -> Reshaped:
    """A corner between two straight sides rounded to a radius. OutlineError where the arc does not fit between them.

    The arc touches each side at the radius times the tangent of half the turn there, measured from the corner. Its
    bulge is the tangent of a quarter of that turn.
    """
    turn = _turn_at(outline, corner)
    return _without_tip(outline, corner, radius_mm * math.tan(abs(turn) / 2), math.tan(turn / 4))


def corner_cut(outline: Outline, corner: int, length_mm: float) -> Reshaped:
    """A corner between two straight sides cut off, this much of each side. OutlineError where a side is too short."""
    _turn_at(outline, corner)
    return _without_tip(outline, corner, length_mm, 0.0)


def _numbered(outline: Outline) -> list[tuple[Vertex, Origin]]:
    return [(vertex, (number,)) for number, vertex in enumerate(outline)]


def _reshaped(around: Iterable[tuple[Vertex, Origin]]) -> Reshaped:
    outline, origins = zip(*around, strict=True)
    return Reshaped(outline, origins)


def four_sides(outline: Outline) -> tuple[Origin, ...]:
    """The sides of an outline that together are its lower, right, upper and left side, as of a box with parted sides.

    The four corners are the vertices nearest to the corners of the upright box round the outline.
    """
    left, bottom, right, top = outline_box(outline)
    corners = [
        min(range(len(outline)), key=lambda number: math.dist((outline[number].x, outline[number].y), at))
        for at in ((left, bottom), (right, bottom), (right, top), (left, top))
    ]
    pairs = [(corner, corners[(place + 1) % len(corners)]) for place, corner in enumerate(corners)]
    if signed_area_mm2(outline) < 0:
        pairs = [(after, corner) for corner, after in pairs]
    return tuple(_between(start, end, len(outline)) for start, end in pairs)


def _between(start: int, end: int, count: int) -> Origin:
    """The numbers of the sides from one vertex on to another."""
    return tuple((start + step) % count for step in range((end - start) % count))


def _shifted(outline: Outline, shifts: Mapping[int, Point]) -> Reshaped:
    """The outline with each of these corners moved by its own shift."""
    moves = [shifts.get(number, (0.0, 0.0)) for number in range(len(outline))]
    return _reshaped(
        (Vertex(vertex.x + dx, vertex.y + dy, vertex.bulge), (number,))
        for number, (vertex, (dx, dy)) in enumerate(zip(outline, moves, strict=True))
    )


def _bent(outline: Outline, side: Side, bulge: float) -> Reshaped:
    around = _numbered(outline)
    around[side.vertex] = (Vertex(side.x0, side.y0, bulge), (side.vertex,))
    return _reshaped(around)


def _without_tip(outline: Outline, corner: int, away_mm: float, bulge: float) -> Reshaped:
    """The outline with a corner replaced by a side of this bulge.

    The new side joins the two points that are `away_mm` from the corner on its two sides. A side that is used up goes.
    """
    before, after = side_at(outline, corner - 1), side_at(outline, corner)
    if away_mm > min(before.chord_mm, after.chord_mm) + WELD_MM:
        raise OutlineError(f"the sides at corner {corner + 1} are too short for that", do="type a smaller size")
    (ax, ay), (bx, by) = _direction(before), _direction(after)
    begin = Vertex(before.x1 - ax * away_mm, before.y1 - ay * away_mm, bulge)
    end = Vertex(after.x0 + bx * away_mm, after.y0 + by * away_mm)
    around = _numbered(outline)
    rest = [] if after.chord_mm - away_mm <= WELD_MM else [(end, (after.vertex,))]
    around[corner : corner + 1] = [(begin, ()), *rest]
    if before.chord_mm - away_mm <= WELD_MM:
        del around[before.vertex if before.vertex < corner else -1]
    return _reshaped(around)


def _going_along(outline: Outline, number: int, corner: int, step: int) -> tuple[int, ...]:
    """The corners that move with the end of a side: that end and, if the next side is square to it, that side's too.

    Rounded corners at either end of that next side go along.
    """
    own, first, second = (side_at(outline, number + step * way) for way in range(3))
    reach, across = (2, second) if first.bulge else (1, first)
    if own.bulge or across.bulge or abs(_cosine(own, across)) > SQUARE:
        return (corner,)
    after, beyond = (side_at(outline, number + step * (reach + way)) for way in (1, 2))
    if after.bulge and not beyond.bulge and abs(_cosine(across, beyond)) <= SQUARE:
        reach += 1
    return tuple((corner + step * way) % len(outline) for way in range(reach + 1))


def _turn(outline: Outline) -> float:
    """1 for an anticlockwise outline, else -1."""
    return 1.0 if signed_area_mm2(outline) > 0 else -1.0


def _turn_at(outline: Outline, corner: int) -> float:
    """How far an outline turns at a corner between straight sides, radians, positive anticlockwise.

    OutlineError for a corner at the end of an arc.
    """
    before, after = side_at(outline, corner - 1), side_at(outline, corner)
    if before.bulge or after.bulge:
        raise OutlineError(f"corner {corner + 1} is the end of an arc", do="choose one between straight sides")
    (ax, ay), (bx, by) = _direction(before), _direction(after)
    return math.atan2(ax * by - ay * bx, ax * bx + ay * by)


def _cosine(one: Side, other: Side) -> float:
    (ax, ay), (bx, by) = _direction(one), _direction(other)
    return ax * bx + ay * by


def _direction(side: Side) -> Point:
    """The direction from end to end, of length 1; (0, 0) for a side whose ends are one point."""
    chord = side.chord_mm
    return ((side.x1 - side.x0) / chord, (side.y1 - side.y0) / chord) if chord > WELD_MM else (0.0, 0.0)


def _outwards(outline: Outline, number: int) -> Point:
    """The direction out of the outline, square to a side's chord."""
    ux, uy = _direction(side_at(outline, number))
    turn = _turn(outline)
    return uy * turn, -ux * turn
