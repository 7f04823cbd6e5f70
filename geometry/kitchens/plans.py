"""Lays benchtops out as plans: one part for each wall, butted or mitred at the corners.

On the plan x goes along the first wall and y out from it. At an inside corner the next wall goes out from the one
before; at an outside corner it goes the other way.
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from geometry.kitchens.along_walls import TOUCH_MM, Benchtop, Leg, shown_places
from geometry.outlines.sides import Point
from geometry.parts.extent import extent
from shared.errors import JobError
from shared.job import Corner, Face, Outline, Vertex

APART_MM = 2.0
"""A benchtop drawn on a wall that begins or ends nearer than this to a corner of the plan does so at that corner."""


class Along(NamedTuple):
    """A side that lies along a wall, from `start_mm` to `end_mm` on that wall's face."""

    face: Face
    start_mm: float
    end_mm: float


class Seam(NamedTuple):
    """A side where one leg meets another. It is no edge of the benchtop."""


class Free(NamedTuple):
    """A side that borders on nothing."""


Bounds = Along | Seam | Free


class LaidLeg(NamedTuple):
    """A leg on the plan: its outline, anticlockwise, and what each side of the outline borders on."""

    face: Face
    outline: Outline
    sides: tuple[Bounds, ...]


class _Corner(NamedTuple):
    """A corner of a leg, `along` its wall and `out` from it, and what the side that leaves it borders on."""

    along: float
    out: float
    bounds: Bounds


class _Piece(NamedTuple):
    """A piece of a leg's end. It begins at `out` from the leg's wall, going anticlockwise."""

    out: float
    bounds: Bounds


class _End(NamedTuple):
    """One end of a leg: where its back and its front end along the wall, and the pieces of the end, anticlockwise.

    If another leg butts against this one here, its front is a seam from `front_seam` to this end; at an outside corner
    its back is one from `back_seam` to this end.
    """

    back: float
    front: float
    pieces: tuple[_Piece, ...]
    front_seam: float | None = None
    back_seam: float | None = None


class _Ground(NamedTuple):
    """Where a wall lies on the plan: the place from which its elevation counts, and its direction, of length 1."""

    x: float
    y: float
    way: Point

    def at(self, along: float, out: float) -> Vertex:
        """The point of the plan that is this far along the wall and this far out from it."""
        dx, dy = self.way
        return Vertex(self.x + along * dx - out * dy, self.y + along * dy + out * dx)


def lay_out(benchtop: Benchtop, depth_mm: float, *, mitred: bool) -> tuple[LaidLeg, ...]:
    """The legs of a benchtop on its plan, `depth_mm` deep.

    Butted, one leg goes through each corner and the other ends against it. Mitred, the two meet along a line from the
    wall's corner to the corner of their fronts. A back side is parted where the benchtop that the elevation draws, or
    its wall, begins or ends. JobError where a leg is too short for its corners.
    """
    legs = []
    for place, (leg, ground) in enumerate(zip(benchtop.legs, _grounds(benchtop), strict=True)):
        left = _left_end(benchtop, place, depth_mm, mitred=mitred)
        right = _right_end(benchtop, place, depth_mm, mitred=mitred)
        _refuse_short(leg, left, right)
        corners = tuple(_corners(leg, left, right, depth_mm))
        outline = tuple(ground.at(corner.along, corner.out) for corner in corners)
        legs.append(LaidLeg(leg.face, outline, tuple(corner.bounds for corner in corners)))
    return tuple(legs)


def _grounds(benchtop: Benchtop) -> Iterator[_Ground]:
    """Where each wall of a benchtop lies. The first lies along x, with x as its own elevation counts it."""
    ground = _Ground(0.0, 0.0, (1.0, 0.0))
    for place, leg in enumerate(benchtop.legs):
        if place:
            before, join = benchtop.legs[place - 1].face, benchtop.joins[place - 1]
            turn = 1.0 if join.corner is Corner.INSIDE else -1.0
            corner = ground.at(extent(before)[2], 0.0)
            dx, dy = -turn * ground.way[1] + 0.0, turn * ground.way[0] + 0.0
            left = extent(leg.face)[0]
            ground = _Ground(corner.x - left * dx, corner.y - left * dy, (dx, dy))
        yield ground


def _left_end(benchtop: Benchtop, place: int, depth: float, *, mitred: bool) -> _End:
    leg = benchtop.legs[place]
    if not place:
        return _End(leg.start_mm, leg.start_mm, _against_left(benchtop.left, depth))
    join, here = benchtop.joins[place - 1], extent(leg.face)[0]
    seam = (_Piece(depth, Seam()),)
    if mitred:
        return _End(here, here + (depth if join.corner is Corner.INSIDE else -depth), seam)
    if join.corner is Corner.INSIDE:
        if join.first_through:
            return _End(here + depth, here + depth, seam)
        return _End(here, here, _against_left(benchtop.legs[place - 1].face, depth), front_seam=here + depth)
    if join.first_through:
        return _End(here, here, seam)
    return _End(here - depth, here - depth, (_Piece(depth, Free()),), back_seam=here)


def _right_end(benchtop: Benchtop, place: int, depth: float, *, mitred: bool) -> _End:
    leg = benchtop.legs[place]
    if place == len(benchtop.legs) - 1:
        return _End(leg.end_mm, leg.end_mm, _against_right(benchtop.right, depth))
    join, here = benchtop.joins[place], extent(leg.face)[2]
    seam = (_Piece(0.0, Seam()),)
    if mitred:
        return _End(here, here - (depth if join.corner is Corner.INSIDE else -depth), seam)
    if join.corner is Corner.INSIDE:
        if not join.first_through:
            return _End(here - depth, here - depth, seam)
        return _End(here, here, _against_right(benchtop.legs[place + 1].face, depth), front_seam=here - depth)
    if not join.first_through:
        return _End(here, here, seam)
    return _End(here + depth, here + depth, (_Piece(0.0, Free()),), back_seam=here)


def _against_left(wall: Face | None, depth: float) -> tuple[_Piece, ...]:
    """The pieces of a left end at the wall before, whose right end is the corner; one free piece for no wall."""
    if wall is None:
        return (_Piece(depth, Free()),)
    far = extent(wall)[2]
    pieces = _along(wall, far - depth, far, shown_places(wall))
    return tuple(_Piece(far - start, bounds) for start, _, bounds in pieces)


def _against_right(wall: Face | None, depth: float) -> tuple[_Piece, ...]:
    """The pieces of a right end at the wall after, whose left end is the corner; one free piece for no wall."""
    if wall is None:
        return (_Piece(0.0, Free()),)
    near = extent(wall)[0]
    pieces = _along(wall, near, near + depth, shown_places(wall))
    return tuple(_Piece(start - near, bounds) for start, _, bounds in pieces)


def _along(wall: Face, start: float, end: float, shown: Sequence[float]) -> list[tuple[float, float, Bounds]]:
    """The pieces of a stretch along a wall, parted where the wall and where its drawn benchtops begin or end.

    Each has its start, its end and what it borders on: it is free where it goes beyond the wall.
    """
    left, _, right, _ = extent(wall)
    cuts = [start, end]
    for cut in (left, right, *shown):
        if start < cut < end and all(abs(cut - other) > APART_MM for other in cuts):
            cuts.append(cut)
    pieces: list[tuple[float, float, Bounds]] = []
    for low, high in pairwise(sorted(cuts)):
        is_beside = left < (low + high) / 2 < right
        pieces.append((low, high, Along(wall, low, high) if is_beside else Free()))
    return pieces


def _corners(leg: Leg, left: _End, right: _End, depth: float) -> Iterator[_Corner]:
    """The corners of a leg, anticlockwise: along the back, the right end, the front and the left end."""
    begin = left.back if left.back_seam is None else left.back_seam
    finish = right.back if right.back_seam is None else right.back_seam
    if begin != left.back:
        yield _Corner(left.back, 0.0, Seam())
    for start, _, bounds in _along(leg.face, begin, finish, shown_places(leg.face)):
        yield _Corner(start, 0.0, bounds)
    if finish != right.back:
        yield _Corner(finish, 0.0, Seam())
    for piece in right.pieces:
        yield _Corner(right.back, piece.out, piece.bounds)
    if right.front_seam is not None:
        yield _Corner(right.front, depth, Seam())
    yield _Corner(right.front if right.front_seam is None else right.front_seam, depth, Free())
    if left.front_seam is not None:
        yield _Corner(left.front_seam, depth, Seam())
    for piece in left.pieces:
        yield _Corner(left.front if piece.out == depth else left.back, piece.out, piece.bounds)


def _refuse_short(leg: Leg, left: _End, right: _End) -> None:
    """JobError where a leg is too short for its two ends."""
    front = (left.front if left.front_seam is None else left.front_seam) + TOUCH_MM
    if right.back - left.back < TOUCH_MM or front > (right.front if right.front_seam is None else right.front_seam):
        raise JobError(
            "the benchtop along it is too short for its corners", where=leg.face.name, do="draw its plan by hand"
        )
