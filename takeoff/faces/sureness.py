"""How sure: how far the totals and the coated areas could be off because of the tape.

Every distinct distance of a corner from the left end of its face, and every distinct height, counts as one running
reading from the hooked end of the tape. It may be as wrong as the tape's class allows (`shared.trade.tape`); 0 is
exact. A length that two faces share belongs to the face that it is counted on. Errors of readings are independent,
within a face and from face to face. So a figure may be off by the root of the sum of the squares of what each reading
moves it by (`geometry.set_out.propagation`). A profile factor, a thickness and the size of a tile are taken as exact.
Where sides cross aslant, or on an arc, the crossing counts as read by itself. The length of grout lines follows the
tiled area, by the metres on a square metre.
"""

from collections.abc import Iterable, Sequence
from functools import partial
from math import hypot
from typing import NamedTuple

from geometry.seen.openings import uncovered
from geometry.set_out.propagation import (
    Piece,
    Slopes,
    Sum,
    as_one,
    joined,
    outline_area,
    outline_lengths,
    slopes_of,
    spreads,
)
from shared.job import Outline, Tiles
from shared.trade.kinds import Treatment
from shared.trade.tape import TapeClass, tape_tolerance_mm
from takeoff.figures.measured import EdgeRow, JointRow, MaskingRow, Sureness
from takeoff.surfaces.coated import CoatedPart, coated_sides, thickness_mm

RULE = "each distance from the left end, and each height, is one reading of the tape"
SUMMED = "off by the root of the sum of squares of what each of them may move it by"

TAPE_SOURCE = "UK SI 2016/1153 schedule 1I"

COATED, MASKING, BEAD, OLD_BEAD, GROUT = range(5)
"""The numbers of the totals."""

EXACT_MM = 1e-6
"""A distance nearer to 0 than this is 0."""


class FaceSlopes(NamedTuple):
    """How much the figures of one face change with its readings: the coated areas of its parts, and the totals."""

    ids: tuple[str, ...]
    parts: Slopes
    totals: Slopes


def slopes_of_face(
    surfaces: Sequence[CoatedPart], masking: Iterable[MaskingRow], joints: Iterable[JointRow]
) -> FaceSlopes:
    """The slopes of the figures that a face has by itself."""
    parts = slopes_of([coated_sum(each) for each in surfaces])
    totals = joined([as_one(parts, COATED), slopes_of(_length_sums(masking, joints, grout_sum(surfaces)))])
    return FaceSlopes(tuple(each.standing.part.id for each in surfaces), parts, totals)


def slopes_between(face: str, masking: Iterable[MaskingRow], joints: Iterable[JointRow]) -> Slopes:
    """The slopes of the totals of all that two faces share and that is counted on this face."""
    here = ([row for row in masking if row.face == face], [row for row in joints if row.face == face])
    return slopes_of(_length_sums(*here, Sum()))


def sureness(faces: Iterable[tuple[FaceSlopes, Slopes]], tape: TapeClass) -> Sureness:
    """How sure the figures of a job are, from its faces, each with what it shares; all 0 for no faces."""
    tolerance = partial(_tolerance_mm, tape)
    of_faces = list(faces)
    parts = tuple(
        each for own, _ in of_faces for each in zip(own.ids, spreads(own.parts, len(own.ids), tolerance), strict=True)
    )
    by_face = [spreads(joined([own.totals, shared]), GROUT + 1, tolerance) for own, shared in of_faces]
    coated, masking, bead, old_bead, grout = (hypot(*(each[n] for each in by_face)) for n in range(GROUT + 1))
    return Sureness(coated, masking, bead, old_bead, grout, parts)


def coated_sum(surface: CoatedPart) -> Sum:
    """The areas and lengths that make up the coated area of a part, as `takeoff.surfaces.coated` adds them up."""
    part, treatment = surface.standing.part, surface.treated.treatment
    thick = thickness_mm(part)
    if treatment is Treatment.LEFT:
        return Sum()
    if treatment is Treatment.TAKEN_OFF:
        return Sum(_taken_off_areas(surface), outline_lengths(thick, part.outline, coated_sides(part)))
    edges = tuple((thick, (edge.x0, edge.y0, edge.x1, edge.y1, edge.bulge)) for edge in surface.edges)
    return Sum(_in_place_areas(surface), edges)


def grout_sum(surfaces: Iterable[CoatedPart]) -> Sum:
    """The areas that make up the metres of grout, as an average over all places where a tile may start."""
    worked_on = (each.standing for each in surfaces if each.treated.treatment is not Treatment.TAKEN_OFF)
    tiled = ((each.region, each.part.tiles) for each in worked_on)
    return Sum(tuple((_grout_per_mm2(tiles), ring) for region, tiles in tiled if tiles for ring in region.rings))


def _in_place_areas(surface: CoatedPart) -> tuple[tuple[float, Outline], ...]:
    if surface.is_frame:
        return ()
    factor = surface.standing.part.profile_factor
    return tuple((factor, ring) for ring in surface.left_in.region.rings)


def _taken_off_areas(surface: CoatedPart) -> tuple[tuple[float, Outline], ...]:
    if surface.is_frame:
        return ()
    part = surface.standing.part
    times = part.profile_factor + part.back_coated
    if not surface.opened_by:
        return (outline_area(times, part.outline),)
    left = uncovered(part, [each.part for each in surface.opened_by])
    return tuple((times, ring) for ring in left.rings)


def _grout_per_mm2(tiles: Tiles) -> float:
    """The length of grout lines on a square millimetre of tiles, mm: exact for whole tiles, crossings counted twice."""
    return 1 / (tiles.width_mm + tiles.grout_mm) + 1 / (tiles.height_mm + tiles.grout_mm)


def _length_sums(masking: Iterable[MaskingRow], joints: Iterable[JointRow], grout: Sum) -> tuple[Sum, ...]:
    """The totals that are lengths, in the order of their numbers; the first place, for the coated area, is empty."""
    sealed = [row for row in joints if row.sealed]
    return (
        Sum(),
        _along(masking),
        _along(sealed),
        _along(row for row in sealed if row.old_bead),
        grout,
    )


def _along(rows: Iterable[MaskingRow | JointRow]) -> Sum:
    return Sum(lengths=tuple((1.0, _piece(edge)) for row in rows for edge in row.path))


def _piece(edge: EdgeRow) -> Piece:
    return (*edge.start, *edge.end, edge.bulge)


def _tolerance_mm(tape: TapeClass, distance_mm: float) -> float:
    return 0.0 if distance_mm <= EXACT_MM else tape_tolerance_mm(distance_mm, tape, hooked=True)
