"""Whether two sides of outlines meet, exactly for lines and arcs: arcs are never replaced by chords."""

import math
from collections.abc import Iterator

from geometry.outlines.sides import WELD_MM, Point, Side


def meet(a: Side, b: Side, shared: tuple[Point, ...] = ()) -> bool:
    """Whether two sides cross, touch or run along each other anywhere but at `shared`, the ends that they share."""
    contacts = (*_ends_on(a, b), *_ends_on(b, a), *_crossings(a, b, shared))
    return any(not any(_near(contact, end) for end in shared) for contact in contacts)


def _ends_on(a: Side, b: Side) -> list[Point]:
    return [end for end in (a.start, a.end) if b.distance_mm(*end) <= WELD_MM]


def _crossings(a: Side, b: Side, shared: tuple[Point, ...]) -> list[Point]:
    """The points where the lines or circles of two sides cross, if they lie on both sides."""
    if a.bulge and b.bulge:
        points = _circle_circle(a, b, shared)
    elif a.bulge or b.bulge:
        line, arc = (b, a) if a.bulge else (a, b)
        points = _line_circle(line, arc, shared)
    else:
        points = () if shared else _line_line(a, b)
    return [p for p in points if a.distance_mm(*p) <= WELD_MM and b.distance_mm(*p) <= WELD_MM]


def _line_line(a: Side, b: Side) -> tuple[Point, ...]:
    ax, ay, bx, by = a.x1 - a.x0, a.y1 - a.y0, b.x1 - b.x0, b.y1 - b.y0
    turn = ax * by - ay * bx
    if not turn:
        return ()  # parallel: if they touch, an end of one lies on the other
    share = ((b.x0 - a.x0) * by - (b.y0 - a.y0) * bx) / turn
    return ((a.x0 + share * ax, a.y0 + share * ay),)


def _line_circle(line: Side, arc: Side, shared: tuple[Point, ...]) -> tuple[Point, ...]:
    (cx, cy), length = arc.centre, line.chord_mm
    ux, uy = (line.x1 - line.x0) / length, (line.y1 - line.y0) / length
    along = (cx - line.x0) * ux + (cy - line.y0) * uy
    foot = (line.x0 + along * ux, line.y0 + along * uy)
    if shared:
        return tuple(_beyond(end, foot) for end in shared)
    return tuple(_roots(foot, (ux, uy), math.hypot(foot[0] - cx, foot[1] - cy), arc.radius_mm))


def _circle_circle(a: Side, b: Side, shared: tuple[Point, ...]) -> tuple[Point, ...]:
    (ax, ay), (bx, by) = a.centre, b.centre
    apart = math.hypot(bx - ax, by - ay)
    if apart <= WELD_MM:
        return ()  # one circle, or circles that never meet: if the arcs touch, an end of one lies on the other
    ux, uy = (bx - ax) / apart, (by - ay) / apart
    if shared:
        ends = ((end, (end[0] - ax) * ux + (end[1] - ay) * uy) for end in shared)
        return tuple(_beyond(end, (ax + along * ux, ay + along * uy)) for end, along in ends)
    ra, rb = a.radius_mm, b.radius_mm
    if apart > ra + rb + WELD_MM or apart < abs(ra - rb) - WELD_MM:
        return ()
    along = (apart + (ra - rb) * (ra + rb) / apart) / 2
    along = max(-ra, min(ra, along))
    return tuple(_roots((ax + along * ux, ay + along * uy), (-uy, ux), abs(along), ra))


def _roots(foot: Point, way: Point, away: float, radius: float) -> Iterator[Point]:
    """The points where a line crosses a circle; one point where it only touches the circle, none where it misses it.

    `foot` is the point of the line that is nearest to the centre, `away` its distance from the centre.
    """
    if away > radius + WELD_MM:
        return
    if away > radius - WELD_MM:
        yield foot
        return
    half = math.sqrt((radius - away) * (radius + away))
    yield (foot[0] + half * way[0], foot[1] + half * way[1])
    yield (foot[0] - half * way[0], foot[1] - half * way[1])


def _beyond(end: Point, foot: Point) -> Point:
    """The other point where two sides that share an end cross: as far beyond the foot as the end is before it.

    It is exact even for sides that leave the shared end almost along each other, as at the corner of a rounded box.
    """
    return (2 * foot[0] - end[0], 2 * foot[1] - end[1])


def _near(a: Point, b: Point) -> bool:
    return math.hypot(a[0] - b[0], a[1] - b[1]) <= WELD_MM
