import pytest

from geometry.outlines.shapes import box, circle
from geometry.parts.holding import holds_box
from shared.job import Outline, Vertex

L_SHAPE = tuple(Vertex(x, y) for x, y in ((0, 0), (100, 0), (100, 40), (40, 40), (40, 100), (0, 100)))
SLOPE = (Vertex(0, 0), Vertex(100, 0), Vertex(0, 100))
SLIT = tuple(
    Vertex(x, y) for x, y in ((0, 0), (100, 0), (100, 49), (10, 49), (10, 51), (100, 51), (100, 100), (0, 100))
)


@pytest.mark.parametrize(
    ("outline", "inner", "held"),
    [
        (box(0, 0, 100, 100), (10, 10, 90, 90), True),
        (box(0, 0, 100, 100), (0, 0, 100, 100), True),
        (box(0, 0, 100, 100), (10, 10, 101, 90), False),
        (box(0, 0, 100, 100), (200, 10, 210, 90), False),
        (L_SHAPE, (10, 10, 90, 40), True),
        (L_SHAPE, (10, 10, 90, 41), False),
        (L_SHAPE, (50, 50, 90, 90), False),
        (SLOPE, (0, 0, 50, 50), True),
        (SLOPE, (0, 0, 51, 50), False),
        (SLIT, (20, 30, 80, 70), False),
        (SLIT, (20, 10, 80, 45), True),
        (circle(0, 0, 100), (-10, -10, 10, 10), False),
    ],
)
def test_a_box_is_held_where_no_side_enters_it(
    outline: Outline, inner: tuple[float, float, float, float], held: bool
) -> None:
    assert holds_box(outline, inner) is held
