"""Finds the parts of a face that are alike, so that they can be picked together."""

from collections.abc import Collection, Iterable

from geometry.outlines.measured import outline_box
from shared.job import Face, Part

SAME_MM = 0.5
"""Sizes that differ by no more than this are the same: half a division of a tape (common practice, no source)."""


def same_kind(face: Face, part_ids: Collection[str]) -> tuple[str, ...]:
    """The ids of all parts of a face with the kind of one of these, in drawing order; empty for no ids."""
    kinds = {part.kind for part in face.parts if part.id in part_ids}
    return tuple(part.id for part in face.parts if part.kind in kinds)


def same_size(face: Face, part_ids: Collection[str]) -> tuple[str, ...]:
    """The ids of all parts of a face as wide and as high as one of these, in drawing order; empty for no ids.

    Parts of any kind count.
    """
    wanted = [_size(part) for part in face.parts if part.id in part_ids]
    return tuple(part.id for part in face.parts if any(_are_same(_size(part), size) for size in wanted))


def _size(part: Part) -> tuple[float, float]:
    left, bottom, right, top = outline_box(part.outline)
    return right - left, top - bottom


def _are_same(one: tuple[float, float], other: tuple[float, float]) -> bool:
    return abs(one[0] - other[0]) <= SAME_MM and abs(one[1] - other[1]) <= SAME_MM


def in_reading_order(parts: Iterable[Part]) -> tuple[str, ...]:
    """The ids of parts from left to right by their left ends; those with one left end from the bottom up."""
    boxes = [(outline_box(part.outline), part.id) for part in parts]
    return tuple(part_id for _, part_id in sorted(boxes, key=lambda each: (each[0][0], each[0][1])))
