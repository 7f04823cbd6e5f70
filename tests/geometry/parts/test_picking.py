from geometry.outlines.shapes import box, circle
from geometry.parts.picking import parts_at, parts_within
from shared.job import Part
from shared.trade.kinds import Kind

BENCHTOP = Part("b", Kind.BENCHTOP, box(0, 0, 2400, 600))
BASIN = Part("basin", Kind.FIXTURE, circle(600, 300, 200))
HOLE = Part("hole", Kind.CUT_OUT, circle(600, 300, 180))
FACE = (HOLE, BASIN, BENCHTOP)


def ids(parts: tuple[Part, ...]) -> list[str]:
    return [part.id for part in parts]


def test_the_front_most_part_comes_first_whatever_the_drawing_order() -> None:
    assert ids(parts_at(FACE, 600, 300)) == ["hole", "basin", "b"]


def test_a_point_in_the_corner_of_a_circles_box_is_not_in_the_circle() -> None:
    assert ids(parts_at(FACE, 745, 445)) == ["b"]


def test_a_point_on_an_outline_is_in_it_and_nothing_is_beyond() -> None:
    assert ids(parts_at(FACE, 0, 0)) == ["b"]
    assert parts_at(FACE, -0.01, 0) == ()


def test_a_raised_part_is_picked_before_what_it_covers() -> None:
    raised = Part("cover", Kind.SHELF, box(500, 200, 200, 200), level=1)
    assert ids(parts_at((*FACE, raised), 600, 300))[0] == "cover"


def test_a_box_picks_what_lies_wholly_in_it_in_drawing_order() -> None:
    assert ids(parts_within(FACE, (400, 100, 800, 500))) == ["hole", "basin"]
    assert ids(parts_within(FACE, (401, 100, 800, 500))) == ["hole"]
    assert parts_within((), (0, 0, 1, 1)) == ()
