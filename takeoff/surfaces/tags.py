"""Tags: a front and its opening share a tag of face letter and position, "B3"."""

from collections.abc import Iterable

from geometry.outlines.measured import outline_box
from geometry.outlines.sides import Box
from shared.job import Face, Part
from takeoff.surfaces.fronts import is_front

BENCH_MM = 920.0
"""A front that begins below this height is a base front; one that begins higher is an upper front (the highest base
unit of EN 1116, as other works quote it)."""

STACK_MM = 20.0
"""Fronts whose left ends differ by no more than this stand over each other (common practice, no source)."""


def tags(face: Face) -> dict[str, str]:
    """The tag of each door and drawer front of a face, by the front's id; empty for a face without fronts.

    Base fronts come first, from left to right, and within a stack from the bottom up. Upper fronts follow in the same
    order.
    """
    fronts = [(outline_box(part.outline), part) for part in face.parts if is_front(part)]
    base = [each for each in fronts if each[0][1] < BENCH_MM]
    upper = [each for each in fronts if each[0][1] >= BENCH_MM]
    ordered = [*_in_stacks(base), *_in_stacks(upper)]
    return {part.id: f"{face.name}{number}" for number, part in enumerate(ordered, 1)}


def _in_stacks(fronts: Iterable[tuple[Box, Part]]) -> list[Part]:
    stacks: list[list[tuple[Box, Part]]] = []
    for box, part in sorted(fronts, key=lambda each: each[0][0]):
        if stacks and box[0] - stacks[-1][0][0][0] <= STACK_MM:
            stacks[-1].append((box, part))
        else:
            stacks.append([(box, part)])
    return [part for stack in stacks for _, part in sorted(stack, key=lambda each: each[0][1])]
