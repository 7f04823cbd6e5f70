"""Visible regions against a second engine that shares no code with ours: Clipper2 (not GEOS, which shapely is)."""

import clipper2
import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.outlines.measured import flattened
from geometry.parts.rank import rank_key
from geometry.seen.arrange import arrange
from shared.job import Part, Vertex
from tests.geometry.faces import has_surface, random_face

DECIMALS = 6
"""Clipper2 counts in whole numbers: on a grid of 1e-6 mm, so areas are good to about that times the sides' length."""

Path = list[tuple[float, float]]


def chorded(part: Part) -> Part:
    """The part with its arcs as chords: a polygon is all the other engine knows."""
    points = tuple(Vertex(x, y) for x, y in flattened(part.outline, 1.0))
    return Part(part.id, part.kind, points, hides=part.hides)


def path(part: Part) -> Path:
    points = [(vertex.x, vertex.y) for vertex in part.outline]
    area = sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in zip(points, points[1:] + points[:1], strict=True))
    return points if area > 0 else points[::-1]


@given(st.integers(0, 10**9))
def test_visible_areas_are_those_of_clipper2(seed: int) -> None:
    parts = [chorded(part) for part in random_face(seed)]
    found = arrange(parts)
    above: list[Path] = []
    for index in sorted(range(len(parts)), key=lambda index: rank_key(parts[index], index), reverse=True):
        own = path(parts[index])
        expected = 0.0
        if has_surface(parts[index]):
            left = clipper2.difference([own], above, clipper2.FillRule.NON_ZERO, DECIMALS) if above else [own]
            expected = sum(clipper2.area(ring) for ring in left)
        assert found.regions[index].area_mm2 == pytest.approx(expected, abs=1e-2)
        above.append(own)
