"""Areas and arcs from published sources and closed forms (checks page, "Areas" and "Drawings")."""

import math
from itertools import pairwise

import pytest
import sympy

from geometry.outlines.measured import area_mm2, perimeter_mm
from geometry.outlines.shapes import box, circle, rounded_box
from geometry.outlines.sides import Side
from shared.job import Outline, Vertex

TRAVERSES = {
    # A surveying course's text (seen): 140 493.11; it prints 140 494.
    "five corners": (
        ((406.31, 1259.97), (235.12, 1489.47), (65.81, 1126.40), (317.89, 942.04), (675.32, 1282.54)),
        140_493.11,
        0.005,
    ),
    # The same text (seen): 250 552.09; it prints 250 550 +- 20.
    "four corners": (((600, 1000), (254.542, 1209.288), (97.543, 566.876), (470.303, 397.969)), 250_552.09, 0.005),
    # Seen.
    "quadrilateral": (((2, 1), (2, 3), (1, 2), (0, 0)), 2.5, 1e-12),
}


@pytest.mark.parametrize(("corners", "area", "within"), TRAVERSES.values(), ids=TRAVERSES.keys())
def test_published_traverses(corners: tuple[tuple[float, float], ...], area: float, within: float) -> None:
    assert area_mm2(tuple(Vertex(x, y) for x, y in corners)) == pytest.approx(area, abs=within)


def test_a_box_with_a_hole_from_a_geometry_library() -> None:
    # A geometry library's test (seen): (0 0, 200 200) with hole (20 20, 80 180), area 30 400.
    assert area_mm2(box(0, 0, 200, 200)) - area_mm2(box(20, 20, 60, 160)) == 30_400


def test_a_published_circular_segment() -> None:
    # Chord 21, rise 6 (seen: a bulge test): radius 12.1875, angle 118.97953 degrees, arc 25.308373, segment 89.254148.
    side = Side(0, 0, 0, 21, 0, 2 * 6 / 21)
    assert side.radius_mm == pytest.approx(12.1875, abs=1e-12)
    assert math.degrees(4 * math.atan(side.bulge)) == pytest.approx(118.97953, abs=5e-6)
    assert side.length_mm == pytest.approx(25.308373, abs=5e-7)
    assert side.segment_mm2 == pytest.approx(89.254148, abs=5e-7)


def test_published_bulges() -> None:
    # From chord 10: radius 5 is bulge 1, radius 6.25 bulge 0.5 (a DXF library's test, seen); arc and segment computed.
    assert Side(0, 0, 0, 10, 0, 1.0).radius_mm == pytest.approx(5)
    half = Side(0, 0, 0, 10, 0, 0.5)
    assert half.radius_mm == pytest.approx(6.25)
    assert half.length_mm == pytest.approx(11.591190, abs=5e-7)
    assert half.segment_mm2 == pytest.approx(17.472469, abs=5e-7)


def test_a_positive_bulge_turns_anticlockwise_and_one_is_half_a_circle() -> None:
    # DXF reference, LWPOLYLINE group 42 (seen): tan(angle / 4), positive anticlockwise.
    side = Side(0, 0, 0, 10, 0, 1.0)
    assert (side.centre, side.middle) == ((5, 0), (5, -5))


@pytest.mark.parametrize(("width", "height", "radius"), [(100, 60, 10), (600, 400, 75), (300, 80, 40)])
def test_rounded_boxes(width: float, height: float, radius: float) -> None:
    # Exact: w h - (4 - pi) r2; girth 2 w + 2 h - (8 - 2 pi) r.
    outline = rounded_box(-7, 11, width, height, radius)
    assert area_mm2(outline) == pytest.approx(width * height - (4 - math.pi) * radius**2, rel=1e-14)
    assert perimeter_mm(outline) == pytest.approx(2 * (width + height) - (8 - 2 * math.pi) * radius, rel=1e-14)


def exact_area(outline: Outline) -> sympy.Expr:
    """The same area in exact numbers, by another way: Green's theorem over each arc's own angle."""
    total = sympy.Integer(0)
    for a, b in pairwise((*outline, outline[0])):
        x0, y0, x1, y1, bulge = map(sympy.Rational, map(str, (a.x, a.y, b.x, b.y, a.bulge)))
        total += (x0 * y1 - x1 * y0) / 2
        if bulge:
            square = ((x1 - x0) ** 2 + (y1 - y0) ** 2) * (1 + bulge**2) ** 2 / (16 * bulge**2)
            angle = 4 * sympy.atan(bulge)
            # sin(4 atan b) as a fraction of b: 4 b (1 - b2) / (1 + b2)2
            total += square * (angle - 4 * bulge * (1 - bulge**2) / (1 + bulge**2) ** 2) / 2
    return sympy.Abs(total)


ARCS = {
    "circle": circle(300, 200, 150),
    "notched": (Vertex(0, 0), Vertex(100, 0), Vertex(100, 80), Vertex(60, 80, -1.0), Vertex(30, 80), Vertex(0, 80)),
    "shallow": (Vertex(0, 0, 0.001), Vertex(3000, 0), Vertex(3000, 600, -0.0005), Vertex(0, 600)),
    "deep": (Vertex(0, 0, 2.5), Vertex(40, 10), Vertex(20, 60, 0.3)),
}


@pytest.mark.parametrize("outline", ARCS.values(), ids=ARCS.keys())
def test_arcs_agree_with_exact_numbers(outline: Outline) -> None:
    # sympy (a computer algebra library), to fifteen digits.
    assert area_mm2(outline) == pytest.approx(float(exact_area(outline).evalf(30)), rel=1e-13)
