import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.edits.laying import laid_along, side_of, way_onto
from geometry.outlines.measured import outline_box
from geometry.outlines.shapes import box, circle, rounded_box
from geometry.outlines.sides import Side
from shared.errors import OutlineError
from shared.job import Part, Vertex
from shared.trade.kinds import Kind

UPRIGHT = Side(0, 700, 900, 700, 0, 0.0)


def part(outline: tuple[Vertex, ...]) -> Part:
    return Part("p", Kind.SPLASHBACK, outline, name="tiles")


@pytest.mark.parametrize(("side", "to"), [(1, (0, 100, 700, 820)), (3, (700, 100, 600, 820))])
def test_a_side_of_a_box_goes_onto_the_line_and_the_others_stay(side: int, to: tuple[float, ...]) -> None:
    if side == 1:
        assert outline_box(laid_along(part(box(0, 100, 600, 720)), side, UPRIGHT).outline) == to
    else:
        with pytest.raises(OutlineError, match="tiles: nothing would be left of it"):
            laid_along(part(box(0, 100, 600, 720)), side, UPRIGHT)


def test_a_side_beside_a_slope_follows_the_slope() -> None:
    """Tiles under a ceiling that falls 45 degrees, as on the example's wall G."""
    tiles = part((Vertex(0, 900), Vertex(1197, 900), Vertex(1197, 2103), Vertex(900, 2400), Vertex(0, 2400)))
    laid = laid_along(tiles, 1, Side(0, 1200, 1080, 1200, 1800, 0.0))
    assert [(v.x, v.y) for v in laid.outline] == [(0, 900), (1200, 900), (1200, 2100), (900, 2400), (0, 2400)]


def test_a_side_goes_onto_a_leaning_line() -> None:
    laid = laid_along(part(box(0, 0, 600, 1000)), 1, Side(0, 600, 0, 610, 1000, 0.0))
    assert [(v.x, v.y) for v in laid.outline] == [(0, 0), (600, 0), (610, 1000), (0, 1000)]


@pytest.mark.parametrize(
    ("outline", "words"),
    [
        (circle(0, 0, 300), "an arc beside that side cannot follow"),
        (rounded_box(0, 0, 600, 600, 50), "an arc beside that side cannot follow"),
        (
            (Vertex(0, 0), Vertex(500, 0), Vertex(500, 300), Vertex(500, 600), Vertex(0, 600)),
            "the side beside it runs along the line",
        ),
    ],
)
def test_what_cannot_follow_is_refused_in_words(outline: tuple[Vertex, ...], words: str) -> None:
    with pytest.raises(OutlineError, match=words):
        laid_along(part(outline), 1, UPRIGHT)


def test_the_way_onto_a_line_is_the_shortest() -> None:
    assert way_onto(Side(0, 690, 5, 690, 80, 0.0), UPRIGHT) == (10, 0)
    assert way_onto(Side(0, 0, 0, 9, 0, 0.0), Side(0, 50, 4, 90, 4, 0.0)) == (0, 4)
    assert way_onto(Side(0, 0, 0, 1, 1, 0.0), Side(0, 0, 10, 10, 20, 0.0)) == pytest.approx((-5, 5))


@given(st.integers(0, 3), st.floats(-200, 900))
def test_a_laid_side_lies_on_the_line_and_the_opposite_one_stays(side: int, at: float) -> None:
    level = side % 2 == 0
    line = Side(0, 0, at, 100, at, 0.0) if level else Side(0, at, 0, at, 100, 0.0)
    before = part(box(0, 0, 600, 700))
    try:
        after = laid_along(before, side, line)
    except OutlineError:
        return
    laid = side_of(after, side)
    assert (laid.y0, laid.y1) == (at, at) if level else (laid.x0, laid.x1) == (at, at)
    kept, stood = side_of(after, (side + 2) % 4), side_of(before, (side + 2) % 4)
    assert (kept.x0, kept.x1, kept.y0, kept.y1) == pytest.approx((stood.x0, stood.x1, stood.y0, stood.y1))
