"""Finds where the benchtops of a room are, from its elevations: over base cabinets, from wall to wall.

`geometry.kitchens.plans` lays them out as plans.
"""

from collections.abc import Iterable, Sequence
from itertools import pairwise
from typing import NamedTuple

from geometry.outlines.measured import outline_box
from geometry.outlines.sides import Box
from geometry.parts.extent import extent, walls
from shared.errors import JobError
from shared.job import Corner, Face, Heights, Room, View
from shared.trade.kinds import Kind, usual

TOUCH_MM = 5.0
"""Things nearer to each other than this are meant to touch (common practice, no source)."""


class Leg(NamedTuple):
    """The leg of a benchtop along one wall: from `start_mm` to `end_mm` along the elevation, overhang included."""

    face: Face
    start_mm: float
    end_mm: float


class Join(NamedTuple):
    """How one leg goes on in the next: round which corner, and whether the first of the two goes through the corner."""

    corner: Corner
    first_through: bool


class Benchtop(NamedTuple):
    """One benchtop: its legs in order, the joins between them, and the walls its two ends meet; None for a free end."""

    legs: tuple[Leg, ...]
    joins: tuple[Join, ...]
    left: Face | None
    right: Face | None


class _Span(NamedTuple):
    """A stretch of one wall with a benchtop, and its overhang at either end, should that end be free."""

    face: Face
    start_mm: float
    end_mm: float
    over_left_mm: float
    over_right_mm: float


class _Round(NamedTuple):
    """The elevations of a room as one meets them."""

    faces: tuple[Face, ...]

    def after(self, face: Face) -> Face | None:
        """The face that the right end of this face meets at a corner; None when it meets none."""
        if len(self.faces) < 2 or face.corner is Corner.NONE:
            return None
        return self.faces[(self.faces.index(face) + 1) % len(self.faces)]

    def before(self, face: Face) -> Face | None:
        """The face whose right end meets the left end of this face; None when there is none."""
        earlier = self.faces[self.faces.index(face) - 1]
        return earlier if self.after(earlier) is face else None


def benchtops(room: Room) -> tuple[Benchtop, ...]:
    """The benchtops of a room, each from its left end round the corners to its right end; empty when it has none.

    An elevation shows a benchtop where the front edge of one is drawn. If it draws none, there is a benchtop wherever
    base cabinets reach up to the usual height. Two stretches on either side of a corner are one benchtop if they meet
    there, or if at an inside corner each comes as near as a benchtop is deep and nothing higher stands between.
    JobError where a benchtop goes all the way round the room.
    """
    elevations = _Round(tuple(face for face in room.faces if face.view is View.ELEVATION))
    spans = [span for face in elevations.faces for span in _spans(face, room.heights)]
    following = {id(span): _next(span, spans, elevations, room.heights) for span in spans}
    joined = {id(other) for other in following.values() if other is not None}
    found = []
    for first in spans:
        if id(first) in joined:
            continue
        chain = [first]
        while (then := following[id(chain[-1])]) is not None:
            chain.append(then)
        found.append(_benchtop(chain, elevations, room.heights))
    if sum(len(benchtop.legs) for benchtop in found) < len(spans):
        raise JobError("its benchtop goes all the way round", where=room.name, do="draw its plan by hand")
    return tuple(found)


def shown_places(elevation: Face) -> tuple[float, ...]:
    """The places along an elevation where its drawn benchtops begin and end, mm."""
    return tuple(edge for box in _drawn(elevation) for edge in (box[0], box[2]))


def _drawn(face: Face) -> list[Box]:
    """The boxes of the benchtop edges that an elevation draws, from left to right."""
    return sorted(outline_box(part.outline) for part in face.parts if part.kind is Kind.BENCHTOP)


def _spans(face: Face, heights: Heights) -> list[_Span]:
    """The stretches with a benchtop on one wall, from left to right."""
    drawn = _drawn(face)
    line = heights.kickboard_mm + heights.cabinet_mm
    boxes = [(outline_box(part.outline), part) for part in face.parts]
    bases = [box for box, part in boxes if usual()[part.kind].under_benchtop and _is_under(box, drawn, line)]
    stretches = _merged((box[0], box[2]) for box in drawn or bases)
    return [_span(face, stretch, bases, heights) for stretch in stretches]


def _is_under(box: Box, drawn: Sequence[Box], line: float) -> bool:
    """Whether a box reaches up to a benchtop drawn over it; if the elevation draws none, to the usual height."""
    tops = [edge[1] for edge in drawn if edge[0] < box[2] and edge[2] > box[0]] if drawn else [line]
    return any(abs(box[3] - top) <= TOUCH_MM for top in tops)


def _merged(spans: Iterable[tuple[float, float]]) -> list[tuple[float, float]]:
    merged: list[tuple[float, float]] = []
    for start, end in sorted(spans):
        if merged and start <= merged[-1][1] + TOUCH_MM:
            merged[-1] = (merged[-1][0], max(merged[-1][1], end))
        else:
            merged.append((start, end))
    return merged


def _span(face: Face, stretch: tuple[float, float], bases: Sequence[Box], heights: Heights) -> _Span:
    """A stretch with its overhangs. An edge that is drawn beyond the cabinets, or over none, includes its overhang."""
    start, end = stretch
    over = heights.overhang_mm
    under = [box for box in bases if box[0] < end and box[2] > start]
    is_over_left = bool(under) and min(box[0] for box in under) - start <= TOUCH_MM
    is_over_right = bool(under) and end - max(box[2] for box in under) <= TOUCH_MM
    return _Span(
        face,
        start,
        end,
        over if is_over_left and not _is_filled(face, start - over, start, heights) else 0.0,
        over if is_over_right and not _is_filled(face, end, end + over, heights) else 0.0,
    )


def _is_filled(face: Face, low: float, high: float, heights: Heights) -> bool:
    """Whether something higher than a benchtop stands between two places along a wall: a pantry, a fridge, a stove."""
    line = heights.kickboard_mm + heights.cabinet_mm
    boxes = [outline_box(part.outline) for part in face.parts if usual()[part.kind].under_benchtop]
    return any(
        left < high - TOUCH_MM and right > low + TOUCH_MM and bottom < line and top > line + TOUCH_MM
        for left, bottom, right, top in boxes
    )


def _next(span: _Span, spans: Sequence[_Span], elevations: _Round, heights: Heights) -> _Span | None:
    """The stretch on which the benchtop goes on, round the corner at the right end of this one; None when it ends."""
    face = elevations.after(span.face)
    if face is None or any(other.face is span.face and other.start_mm > span.start_mm for other in spans):
        return None
    then = next((other for other in spans if other.face is face), None)
    if then is None or then is span:
        return None
    reach = heights.benchtop_depth_mm + TOUCH_MM if span.face.corner is Corner.INSIDE else TOUCH_MM
    right, left = extent(span.face)[2], extent(face)[0]
    is_near = right - span.end_mm <= reach and then.start_mm - left <= reach
    is_filled = _is_filled(span.face, span.end_mm, right, heights) or _is_filled(face, left, then.start_mm, heights)
    return then if is_near and not is_filled else None


def _benchtop(chain: Sequence[_Span], elevations: _Round, heights: Heights) -> Benchtop:
    first, last = chain[0], chain[-1]
    start, left_wall = _left_end(first, elevations.before(first.face), heights)
    end, right_wall = _right_end(last, elevations.after(last.face), heights)
    legs = tuple(
        Leg(
            span.face,
            extent(span.face)[0] + start if span is first else extent(span.face)[0],
            extent(span.face)[2] - end if span is last else extent(span.face)[2],
        )
        for span in chain
    )
    joins = tuple(_join(here, there) for here, there in pairwise(chain))
    return Benchtop(legs, joins, left_wall, right_wall)


def _left_end(span: _Span, before: Face | None, heights: Heights) -> tuple[float, Face | None]:
    """How far from the left end of its wall a benchtop begins, and the wall it meets there; None for a free end."""
    gap, depth = span.start_mm - extent(span.face)[0], heights.benchtop_depth_mm
    if before is None:
        return _free_end(span.face, Corner.NONE, gap, span.over_left_mm), None
    corner = extent(before)[2]
    is_filled = gap <= depth + TOUCH_MM and _is_filled(before, corner - depth, corner, heights)
    away = _free_end(span.face, before.corner, gap, 0.0 if is_filled else span.over_left_mm)
    return away, before if not away and before.corner is Corner.INSIDE else None


def _right_end(span: _Span, after: Face | None, heights: Heights) -> tuple[float, Face | None]:
    """How far from the right end of its wall a benchtop ends, and the wall it meets there; None for a free end."""
    gap, depth = extent(span.face)[2] - span.end_mm, heights.benchtop_depth_mm
    if after is None:
        return _free_end(span.face, Corner.NONE, gap, span.over_right_mm), None
    corner = extent(after)[0]
    is_filled = gap <= depth + TOUCH_MM and _is_filled(after, corner, corner + depth, heights)
    away = _free_end(span.face, span.face.corner, gap, 0.0 if is_filled else span.over_right_mm)
    return away, after if not away and span.face.corner is Corner.INSIDE else None


def _free_end(face: Face, corner: Corner, gap: float, over: float) -> float:
    """How far from the end of its wall a benchtop ends that does not go round the corner.

    `gap` is the distance without overhang. A benchtop that comes as near to the wall's end as its overhang reaches the
    end itself and has no overhang. On a face without a wall, and at an outside corner, it ends in free air.
    """
    return 0.0 if walls(face) and corner is not Corner.OUTSIDE and gap <= max(over, TOUCH_MM) else gap - over


def _join(here: _Span, there: _Span) -> Join:
    """The join of two legs. The first goes through the corner, unless only the second is shown to reach it."""
    first_reaches = extent(here.face)[2] - here.end_mm <= TOUCH_MM
    second_reaches = there.start_mm - extent(there.face)[0] <= TOUCH_MM
    return Join(here.face.corner, first_reaches or not second_reaches)
