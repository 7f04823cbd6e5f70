"""Benchtops laid out as plans: one part a wall, butted or mitred at the corners.

On the plan x runs along the first wall and y out from it. At an inside corner the next wall turns left (seen from
above), at an outside corner right.
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from geometry.kitchens.along_walls import TOUCH_MM, BenchtopRun, Leg, shown_places
from geometry.outlines.sides import Point
from geometry.parts.extent import extent
from shared.errors import JobError
from shared.job import Corner, Face, Outline, Vertex

APART_MM = 2.0
"""A place where a wall's benchtop begins or ends that is nearer than this to a corner of the plan is that corner."""


class Along(NamedTuple):
    """A side that runs along a wall, from and to, from the left end of its face."""

    face: Face
    start_mm: float
    end_mm: float


class Seam(NamedTuple):
    """A side where one leg meets another: no edge of the benchtop."""


class Free(NamedTuple):
    """A side in the open."""


Bounds = Along | Seam | Free


class LaidLeg(NamedTuple):
    """A leg on the plan: its outline, anticlockwise, and what each side of it borders on."""

    face: Face
    outline: Outline
    sides: tuple[Bounds, ...]


class _Corner(NamedTuple):
    """A corner of a leg, `along` its wall and `out` from it, and what the side that leaves it borders on."""

    along: float
    out: float
    bounds: Bounds


class _Piece(NamedTuple):
    """A piece of a leg's end, from where `out` from the wall it begins, anticlockwise."""

    out: float
    bounds: Bounds


class _End(NamedTuple):
    """One end of a leg: where its back and its front end, and its pieces, anticlockwise.

    Where another leg butts against this one here, its front (at an outside corner its back) is a seam from `front_seam`
    (`back_seam`) on to this end.
    """

    back: float
    front: float
    pieces: tuple[_Piece, ...]
    front_seam: float | None = None
    back_seam: float | None = None


class _Ground(NamedTuple):
    """Where a wall's left end stands on the plan, and which way it runs."""

    x: float
    y: float
    way: Point

    def at(self, along: float, out: float) -> Vertex:
        """The place on the plan of a place along the wall and out from it."""
        dx, dy = self.way
        return Vertex(self.x + along * dx - out * dy, self.y + along * dy + out * dx)


def lay_out(run: BenchtopRun, depth_mm: float, *, mitred: bool) -> tuple[LaidLeg, ...]:
    """The legs of a benchtop on its plan, `depth_mm` deep.

    Butted, one leg runs through each corner and the other ends against it; mitred, they meet from the wall's corner to
    the corner of their fronts. A back side is parted where the elevation's benchtop, or its wall, ends.
    JobError where a leg is too short for its corners.
    """
    legs = []
    for place, (leg, ground) in enumerate(zip(run.legs, _grounds(run), strict=True)):
        left = _left_end(run, place, depth_mm, mitred=mitred)
        right = _right_end(run, place, depth_mm, mitred=mitred)
        _refuse_short(leg, left, right)
        corners = tuple(_corners(leg, left, right, depth_mm))
        outline = tuple(ground.at(corner.along, corner.out) for corner in corners)
        legs.append(LaidLeg(leg.face, outline, tuple(corner.bounds for corner in corners)))
    return tuple(legs)


def _grounds(run: BenchtopRun) -> Iterator[_Ground]:
    """Where each wall of a run stands: the first along x, as its own elevation counts."""
    ground = _Ground(0.0, 0.0, (1.0, 0.0))
    for place, leg in enumerate(run.legs):
        if place:
            before, turn = run.legs[place - 1].face, 1.0 if run.joins[place - 1].corner is Corner.INSIDE else -1.0
            corner = ground.at(extent(before)[2], 0.0)
            dx, dy = -turn * ground.way[1] + 0.0, turn * ground.way[0] + 0.0
            left = extent(leg.face)[0]
            ground = _Ground(corner.x - left * dx, corner.y - left * dy, (dx, dy))
        yield ground


def _left_end(run: BenchtopRun, place: int, depth: float, *, mitred: bool) -> _End:
    leg = run.legs[place]
    if not place:
        return _End(leg.start_mm, leg.start_mm, _against_left(run.left, depth))
    join, here = run.joins[place - 1], extent(leg.face)[0]
    seam = (_Piece(depth, Seam()),)
    if mitred:
        return _End(here, here + (depth if join.corner is Corner.INSIDE else -depth), seam)
    if join.corner is Corner.INSIDE:
        if join.first_through:
            return _End(here + depth, here + depth, seam)
        return _End(here, here, _against_left(run.legs[place - 1].face, depth), front_seam=here + depth)
    if join.first_through:
        return _End(here, here, seam)
    return _End(here - depth, here - depth, (_Piece(depth, Free()),), back_seam=here)


def _right_end(run: BenchtopRun, place: int, depth: float, *, mitred: bool) -> _End:
    leg = run.legs[place]
    if place == len(run.legs) - 1:
        return _End(leg.end_mm, leg.end_mm, _against_right(run.right, depth))
    join, here = run.joins[place], extent(leg.face)[2]
    seam = (_Piece(0.0, Seam()),)
    if mitred:
        return _End(here, here - (depth if join.corner is Corner.INSIDE else -depth), seam)
    if join.corner is Corner.INSIDE:
        if not join.first_through:
            return _End(here - depth, here - depth, seam)
        return _End(here, here, _against_right(run.legs[place + 1].face, depth), front_seam=here - depth)
    if not join.first_through:
        return _End(here, here, seam)
    return _End(here + depth, here + depth, (_Piece(0.0, Free()),), back_seam=here)


def _against_left(wall: Face | None, depth: float) -> tuple[_Piece, ...]:
    """The pieces of a left end that stands against the wall before, whose right end is the corner; free for none."""
    if wall is None:
        return (_Piece(depth, Free()),)
    far = extent(wall)[2]
    pieces = _along(wall, far - depth, far, shown_places(wall))
    return tuple(_Piece(far - start, bounds) for start, _, bounds in pieces)


def _against_right(wall: Face | None, depth: float) -> tuple[_Piece, ...]:
    """The pieces of a right end that stands against the wall after, whose left end is the corner; free for none."""
    if wall is None:
        return (_Piece(0.0, Free()),)
    near = extent(wall)[0]
    pieces = _along(wall, near, near + depth, shown_places(wall))
    return tuple(_Piece(start - near, bounds) for start, _, bounds in pieces)


def _along(wall: Face, start: float, end: float, shown: Sequence[float]) -> list[tuple[float, float, Bounds]]:
    """A stretch along a wall, parted where the wall ends and where its own benchtop begins or ends."""
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
    """The corners anticlockwise: back, right end, front, left end."""
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
    """JobError where a leg is too short for what happens at its ends."""
    front = (left.front if left.front_seam is None else left.front_seam) + TOUCH_MM
    if right.back - left.back < TOUCH_MM or front > (right.front if right.front_seam is None else right.front_seam):
        raise JobError(
            "the benchtop along it is too short for its corners", where=leg.face.name, do="draw its plan by hand"
        )
