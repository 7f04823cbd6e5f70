"""Kitchen walls of any length, as faces for the benchmarks."""

import math

import shapely

from geometry.outlines.shapes import box, circle, rounded_box
from geometry.outlines.sides import sides
from shared.job import Outline, Part
from shared.trade.kinds import Kind

CHORDS_A_CIRCLE = 32


def kitchen_wall(count: int) -> tuple[Part, ...]:
    """The parts of a wall: stacks of ten parts that touch and hide each other, 600 mm wide, side by side."""
    stacks = -(-(count - 1) // 10)
    outlines = [(Kind.WALL, box(0, 0, 600 * stacks, 2400))]
    for stack in range(stacks):
        outlines += _stack(600.0 * stack, round_=stack % 2 == 1)
    return tuple(Part(f"part {number}", kind, outline) for number, (kind, outline) in enumerate(outlines[:count]))


def _stack(x: float, *, round_: bool) -> list[tuple[Kind, Outline]]:
    return [
        (Kind.KICKBOARD, box(x, 0, 600, 150)),
        (Kind.CABINET, box(x, 150, 600, 720)),
        (Kind.DOOR, box(x + 2, 152, 297, 716)),
        (Kind.DOOR, box(x + 301, 152, 297, 716)),
        (Kind.BENCHTOP, box(x, 870, 600, 38)),
        (Kind.SPLASHBACK, box(x, 908, 600, 552)),
        (Kind.OUTLET, box(x + 240, 1100, 120, 75)),
        (Kind.CABINET, box(x, 1460, 600, 720)),
        (Kind.DOOR, box(x + 2, 1455, 596, 723)),
        (Kind.FIXTURE, circle(x + 300, 1300, 60) if round_ else rounded_box(x + 100, 940, 400, 120, 30)),
    ]


def linework(parts: tuple[Part, ...]) -> shapely.MultiLineString:
    """The outlines of the parts as lines of the geometry library, with 32 chords to a circle."""
    lines = []
    for part in parts:
        points = [point for side in sides(part.outline) for point in side.points(_sagitta(side.radius_mm))]
        lines.append((*points, points[0]))
    return shapely.MultiLineString(lines)


def _sagitta(radius: float) -> float:
    return radius * (1 - math.cos(math.pi / CHORDS_A_CIRCLE)) if math.isfinite(radius) else 1.0
