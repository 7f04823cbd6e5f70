"""Visible regions against a second engine that shares no code with ours: Clipper2 (not GEOS, which shapely is).

A polygon is all that it knows, so arcs are given as chords: once to both engines, which must then agree to the grid,
and once to it alone, while ours has the arcs; then they agree within what the chords leave out.
"""

import math
from collections.abc import Iterator, Sequence

import clipper2
import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.outlines.measured import flattened
from geometry.parts.rank import rank_key
from geometry.seen.arrange import arrange
from shared.job import Outline, Part, Vertex
from tests.geometry.faces import has_surface, random_face

DECIMALS = 8
"""Clipper2 counts in whole numbers of this many decimals of a millimetre; eight are its most."""

OFF_MM = 10**-DECIMALS
"""How far a border may stand from where the other engine has it: each of its points by half a step, across and up."""

CHORD = math.radians(0.25)
"""The angle over a chord, at most."""

Path = list[tuple[float, float]]
Paths = list[Path]


def with_chords(part: Part) -> Part:
    """The part with its arcs as a few chords."""
    points = tuple(Vertex(x, y) for x, y in flattened(part.outline, 1.0))
    return Part(part.id, part.kind, points, hides=part.hides)


def sides(outline: Outline) -> Iterator[tuple[Vertex, Vertex]]:
    return zip(outline, (*outline[1:], outline[0]), strict=True)


def finely(outline: Outline) -> Path:
    """Points round an outline, those of its arcs on the arc (bulge = tangent of a quarter of the angle)."""
    points: Path = []
    for start, end in sides(outline):
        angle = 4 * math.atan(start.bulge)
        chord = complex(end.x - start.x, end.y - start.y)
        steps = math.ceil(abs(angle) / CHORD) or 1
        for step in range(steps):
            # From the start along the chord of the part of the arc that is done: its length by the sines of the half
            # angles, its direction half an angle back from that of the whole chord (exact).
            done = step / steps * angle
            way = chord * math.sin(done / 2) / math.sin(angle / 2) if angle else chord * step
            way *= complex(math.cos((done - angle) / 2), math.sin((done - angle) / 2))
            points.append((start.x + way.real, start.y + way.imag))
    return points


def left_out_mm2(outline: Outline) -> float:
    """The area between the arcs of an outline and their fine chords: of each, r2/2 (angle - sin angle) (exact)."""
    total = 0.0
    for start, end in sides(outline):
        angle = 4 * math.atan(abs(start.bulge))
        if angle:
            radius = math.hypot(end.x - start.x, end.y - start.y) / 2 / math.sin(angle / 2)
            steps = math.ceil(angle / CHORD)
            total += steps * radius**2 / 2 * (angle / steps - math.sin(angle / steps))
    return total


def anticlockwise(points: Path) -> Path:
    area = sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in zip(points, points[1:] + points[:1], strict=True))
    return points if area > 0 else points[::-1]


def length(paths: Paths) -> float:
    return sum(math.dist(one, other) for path in paths for one, other in zip(path, path[1:] + path[:1], strict=True))


def front_to_back(parts: Sequence[Part]) -> list[int]:
    return sorted(range(len(parts)), key=lambda index: rank_key(parts[index], index), reverse=True)


def seen(parts: Sequence[Part]) -> dict[int, Paths]:
    """What the other engine leaves of each part: its outline less all in front of it; nothing of a hole."""
    above: Paths = []
    left: dict[int, Paths] = {}
    for index in front_to_back(parts):
        own = anticlockwise(finely(parts[index].outline))
        left[index] = []
        if has_surface(parts[index]):
            rings = clipper2.difference([own], above, clipper2.FillRule.NON_ZERO, DECIMALS) if above else [own]
            left[index] = [[(float(x), float(y)) for x, y in ring] for ring in rings]
        above.append(own)
    return left


@given(st.integers(0, 10**9))
def test_visible_areas_are_those_of_clipper2(seed: int) -> None:
    parts = [with_chords(part) for part in random_face(seed)]
    found = arrange(parts)
    for index, left in seen(parts).items():
        expected = sum(clipper2.area(ring) for ring in left)
        assert found.regions[index].area_mm2 == pytest.approx(expected, rel=0, abs=OFF_MM * length(left))


@given(st.integers(0, 10**9))
def test_visible_areas_within_arcs_are_those_of_clipper2(seed: int) -> None:
    parts = random_face(seed)
    found, left_out = arrange(parts), 0.0
    expected = seen(parts)
    for index in front_to_back(parts):
        # What is seen of a part is off by no more than its own outline is and all in front of it are.
        left_out += left_out_mm2(parts[index].outline)
        area = sum(clipper2.area(ring) for ring in expected[index])
        off = left_out + OFF_MM * length(expected[index])
        assert found.regions[index].area_mm2 == pytest.approx(area, rel=0, abs=off)


def test_the_chords_of_a_circle_leave_out_so_much() -> None:
    # By hand: 1440 chords in a circle of radius 100 make a polygon of 720 r2 sin(0.25 degrees) = 31415.8269 mm2, and
    # the circle is 31415.9265.
    whole = (Vertex(-100, 0, 1.0), Vertex(100, 0, 1.0))
    assert abs(clipper2.area(finely(whole))) == pytest.approx(31415.8269, abs=1e-4)
    assert left_out_mm2(whole) == pytest.approx(0.0997, abs=1e-4)
