import pytest

from geometry.edits.stretching import Pull, pulled
from geometry.outlines.measured import area_mm2, outline_box
from geometry.outlines.shapes import box, circle, rounded_box
from shared.errors import OutlineError
from shared.job import Outline, Part, Vertex
from shared.trade.kinds import Kind

RIGHT = Pull(0, 500, 20)
UP = Pull(1, 500, 20)
LEFT = Pull(0, 500, 20, -1)


def part(outline: Outline, kind: Kind = Kind.CABINET) -> Part:
    return Part("p1", kind, outline, "part")


@pytest.mark.parametrize(
    ("pull", "before", "after"),
    [
        (RIGHT, box(0, 0, 400, 10), box(0, 0, 400, 10)),
        (RIGHT, box(499.6, 0, 400, 10), box(519.6, 0, 400, 10)),
        (RIGHT, box(100, 0, 400, 10), box(100, 0, 420, 10)),
        (RIGHT, box(100, 0, 900, 10), box(100, 0, 920, 10)),
        (UP, box(0, 0, 10, 900), box(0, 0, 10, 920)),
        (UP, box(0, 600, 10, 900), box(0, 620, 10, 900)),
        (LEFT, box(400, 0, 200, 10), box(380, 0, 220, 10)),
        (LEFT, box(100, 0, 100, 10), box(80, 0, 100, 10)),
    ],
)
def test_what_is_beyond_moves_and_what_spans_stretches(pull: Pull, before: Outline, after: Outline) -> None:
    assert pulled(part(before), pull).outline == after


def test_what_stays_is_the_same_part() -> None:
    before = part(box(0, 0, 400, 10))
    assert pulled(before, RIGHT) is before


def test_rounded_corners_keep_their_radius() -> None:
    after = pulled(part(rounded_box(100, 0, 600, 300, 50)), RIGHT)
    assert area_mm2(after.outline) == pytest.approx(area_mm2(rounded_box(100, 0, 620, 300, 50)))
    assert outline_box(after.outline) == pytest.approx((100, 0, 720, 300))


def test_a_rounded_corner_at_the_line_is_pulled_whole() -> None:
    after = pulled(part(rounded_box(100, 0, 400, 300, 50)), RIGHT)
    assert area_mm2(after.outline) == pytest.approx(area_mm2(rounded_box(100, 0, 420, 300, 50)))


@pytest.mark.parametrize(("centre", "moves"), [(450, False), (550, True)])
def test_a_circle_goes_with_its_middle(centre: float, moves: bool) -> None:
    before = part(circle(centre, 0, 100))
    after = pulled(before, RIGHT)
    assert area_mm2(after.outline) == area_mm2(before.outline)
    assert outline_box(after.outline)[0] == centre - 100 + 20 * moves


@pytest.mark.parametrize(("left", "moves"), [(300, False), (450, True)])
def test_what_is_made_in_one_piece_goes_with_its_middle(left: float, moves: bool) -> None:
    after = pulled(part(box(left, 0, 300, 10), Kind.WINDOW), RIGHT)
    assert after.outline == box(left + 20 * moves, 0, 300, 10)


def test_what_is_made_in_one_piece_stretches_where_it_ends_at_the_line() -> None:
    assert pulled(part(box(200, 0, 300, 10), Kind.FIXTURE), RIGHT).outline == box(200, 0, 320, 10)


@pytest.mark.parametrize("by", [-100.0, -120.0])
def test_a_part_is_not_turned_inside_out(by: float) -> None:
    with pytest.raises(OutlineError, match="part: nothing would be left of it"):
        pulled(part(box(400, 0, 100, 10)), Pull(0, 500, by))


def test_a_step_is_not_turned_inside_out() -> None:
    step = tuple(Vertex(x, y) for x, y in ((0, 0), (900, 0), (900, 100), (450, 100), (450, 300), (0, 300)))
    assert outline_box(pulled(part(step), Pull(0, 500, -300)).outline)[2] == 600
    with pytest.raises(OutlineError, match="nothing would be left"):
        pulled(part(step), Pull(0, 500, -460))
