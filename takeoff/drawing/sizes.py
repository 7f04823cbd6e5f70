"""The sizes written round a face: the overall sizes, and chains of the sizes of what stands on it."""

from collections.abc import Iterable
from itertools import pairwise

from geometry.outlines.measured import outline_box
from geometry.outlines.sides import Box
from geometry.parts.extent import extent
from shared.drawing import Size
from shared.job import Face, Part, View
from shared.trade.kinds import usual
from takeoff.surfaces.tags import BENCH_MM

STEP_SHARE = 1 / 18
"""How far rows of sizes are apart, as a share of the face's longer side: about 10 mm on a sheet (own choice)."""

LEAST_SIZE_MM = 10.0
"""A chain skips a position nearer than this to the one before it: a reveal is not a size to build by (own choice)."""

LEAST_OPENING_MM = 150.0
"""A smaller opening on a plan gets no sizes of its own: a tap goes where its sink is (own choice)."""


def step_mm(box: Box) -> float:
    """The distance between two rows of sizes round a box."""
    return max(box[2] - box[0], box[3] - box[1]) * STEP_SHARE


def sizes_box(box: Box) -> Box:
    """The box with two rows of sizes round it: the chains, and the overall sizes beyond them."""
    beyond = 2 * step_mm(box)
    return box[0] - beyond, box[1] - beyond, box[2] + beyond, box[3] + beyond


def face_sizes(face: Face) -> tuple[Size, ...]:
    """The sizes of a face: the overall ones, and chains of widths and heights; empty for an empty face.

    An elevation has the widths of its base cabinets below it, those of its upper cabinets above it, and its heights at
    the left; a row without cabinets has the widths of its fronts. A plan has the places of its openings along the wall
    in front of it, and at the left how far out from the wall the largest opening is.
    """
    box = extent(face)
    left, bottom, right, top = box
    if right <= left or top <= bottom:
        return ()
    return _plan_sizes(face, box) if face.view is View.PLAN else _elevation_sizes(face, box)


def part_sizes(part: Part, step: float) -> tuple[Size, ...]:
    """The overall width and height of one part, close to its box: below it (on a plan, at its back) and at its left."""
    left, bottom, right, top = outline_box(part.outline)
    return (
        Size((right, bottom), (left, bottom), step / 2, part.id),
        Size((left, bottom), (left, top), step / 2, part.id),
    )


def _elevation_sizes(face: Face, box: Box) -> tuple[Size, ...]:
    left, bottom, right, top = box
    base, upper = _rows(face)
    below = _chain([left, right], (x for part in base for x in _across(part)))
    above = _chain([left, right], (x for part in upper for x in _across(part)))
    levels = _chain([bottom, top], (y for part in face.parts if usual()[part.kind].in_levels for y in _upright(part)))
    step = step_mm(box)
    return (
        *_level(below, bottom, -step),
        *_level([left, right], bottom, -step * (2 if len(below) > 2 else 1)),
        *(_level(above, top, step) if len(above) > 2 else ()),
        *_standing(levels, left, step),
        *(_standing([bottom, top], left, step * 2) if len(levels) > 2 else ()),
    )


def _plan_sizes(face: Face, box: Box) -> tuple[Size, ...]:
    left, bottom, right, top = box
    boxes = [outline_box(part.outline) for part in face.parts if usual()[part.kind].set_in]
    large = [each for each in boxes if max(each[2] - each[0], each[3] - each[1]) >= LEAST_OPENING_MM]
    largest = sorted(large, key=lambda each: (each[2] - each[0]) * (each[3] - each[1]))[-1:]
    across = _chain([left, right], (x for each in large for x in (each[0], each[2])))
    out = _chain([bottom, top], (y for each in largest for y in (each[1], each[3])))
    step = step_mm(box)
    return (
        *_level(across, top, step),
        *(_level([left, right], top, step * 2) if len(across) > 2 else ()),
        *_standing(out, left, step),
        *(_standing([bottom, top], left, step * 2) if len(out) > 2 else ()),
    )


def _rows(face: Face) -> tuple[list[Part], list[Part]]:
    """The base row and the upper row of a face: the cabinets of each, or the fronts of a row without cabinets."""
    rows: tuple[list[Part], list[Part]] = ([], [])
    for hangs, row in enumerate(rows):
        here = [(part, usual()[part.kind]) for part in face.parts if (_upright(part)[0] >= BENCH_MM) == hangs]
        for found in ([each for each in here if each[1].in_row], [each for each in here if each[1].front]):
            if any(not kind.made_to_fit for _, kind in found):
                row.extend(part for part, _ in found)
                break
    return rows


def _across(part: Part) -> tuple[float, float]:
    left, _, right, _ = outline_box(part.outline)
    return (left, right)


def _upright(part: Part) -> tuple[float, float]:
    _, bottom, _, top = outline_box(part.outline)
    return (bottom, top)


def _chain(ends: list[float], positions: Iterable[float]) -> list[float]:
    """The ends and the positions between them, in order, without those too near to the one before or to the last."""
    first, last = ends
    kept = [first]
    for position in sorted(set(positions)):
        if position - kept[-1] >= LEAST_SIZE_MM and last - position >= LEAST_SIZE_MM:
            kept.append(position)
    return [*kept, last]


def _level(positions: list[float], y: float, away: float) -> tuple[Size, ...]:
    """Sizes between neighbouring positions along a level line; they are above it, or below it for a negative `away`."""
    pairs = pairwise(positions)
    if away < 0:
        return tuple(Size((end, y), (start, y), -away) for start, end in pairs)
    return tuple(Size((start, y), (end, y), away) for start, end in pairs)


def _standing(positions: list[float], x: float, away: float) -> tuple[Size, ...]:
    """Sizes between neighbouring positions along an upright line, to its left."""
    return tuple(Size((x, start), (x, end), away) for start, end in pairwise(positions))
