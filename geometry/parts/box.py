"""The four lengths that place the box round a part: from left, from floor, width, height. Millimetres."""

from collections.abc import Callable, Sequence
from typing import NamedTuple

from geometry.outlines.measured import outline_box
from geometry.outlines.sides import WELD_MM, Box
from geometry.parts.moves import resized
from shared.job import Part


class BoxMeasure(NamedTuple):
    """One of the four lengths that place a box: how to take it off the box, and how to give the box another length.

    `is_place` is true of the two that say where the box is, not how large.
    """

    label: str
    read: Callable[[Box], float]
    set: Callable[[Box, float], Box]
    is_place: bool = False


def _at_left(box: Box, length: float) -> Box:
    return length, box[1], length + box[2] - box[0], box[3]


def _at_bottom(box: Box, length: float) -> Box:
    return box[0], length, box[2], length + box[3] - box[1]


def _as_wide(box: Box, length: float) -> Box:
    return box[0], box[1], box[0] + length, box[3]


def _as_high(box: Box, length: float) -> Box:
    return box[0], box[1], box[2], box[1] + length


def _left(box: Box) -> float:
    return box[0]


def _bottom(box: Box) -> float:
    return box[1]


def _width(box: Box) -> float:
    return box[2] - box[0]


def _height(box: Box) -> float:
    return box[3] - box[1]


LEFT = BoxMeasure("From left", _left, _at_left, is_place=True)
BOTTOM = BoxMeasure("From floor", _bottom, _at_bottom, is_place=True)
WIDE = BoxMeasure("Width", _width, _as_wide)
HIGH = BoxMeasure("Height", _height, _as_high)


def measured_mm(part: Part, measure: BoxMeasure) -> float:
    """One of the four lengths of the box round a part."""
    return measure.read(outline_box(part.outline))


def agreed_mm(parts: Sequence[Part], measure: BoxMeasure) -> float | None:
    """The length that the boxes round all these parts have in common; None when they differ, or for no parts."""
    readings = [measured_mm(part, measure) for part in parts]
    return readings[0] if readings and max(readings) - min(readings) <= WELD_MM else None


def with_measure(part: Part, measure: BoxMeasure, length_mm: float) -> Part:
    """The part moved or resized so that its box has this length. OutlineError where its outline cannot follow."""
    return resized(part, measure.set(outline_box(part.outline), length_mm))
