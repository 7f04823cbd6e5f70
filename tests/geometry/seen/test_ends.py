import pytest

from geometry.outlines.shapes import box, circle
from geometry.parts.moves import mirrored
from geometry.seen.arrange import arrange
from geometry.seen.ends import End, EndLine, Stretch, end_line, end_profile
from shared.job import Face, Part, Vertex
from shared.trade.kinds import Kind

WALL = Part("wall", Kind.WALL, box(0, 0, 2400, 2400))
CABINET = Part("cabinet", Kind.CABINET, box(0, 100, 600, 762))
BENCHTOP = Part("benchtop", Kind.BENCHTOP, box(0, 862, 2400, 38))
SPLASHBACK = Part("splashback", Kind.SPLASHBACK, box(0, 900, 2400, 600))
FACE = (WALL, CABINET, BENCHTOP, SPLASHBACK)

LEFT = (
    Stretch("wall", 0, 100),
    Stretch("cabinet", 100, 862),
    Stretch("benchtop", 862, 900),
    Stretch("splashback", 900, 1500),
    Stretch("wall", 1500, 2400),
)


def test_the_left_end_names_what_is_seen_from_the_floor_up() -> None:
    assert end_profile(arrange(FACE).edges, EndLine(0), End.LEFT) == LEFT


def test_the_right_end_of_the_mirrored_face_is_the_same() -> None:
    turned = tuple(mirrored(part, 1200) for part in FACE)
    assert end_profile(arrange(turned).edges, EndLine(2400), End.RIGHT) == LEFT


def test_stretches_of_one_part_are_joined() -> None:
    upper = Part("upper", Kind.SPLASHBACK, box(2000, 900, 400, 300))
    lower = Part("lower", Kind.SPLASHBACK, box(2000, 600, 400, 300))
    edges = arrange((WALL, lower, upper)).edges
    assert [stretch.part for stretch in end_profile(edges, EndLine(2400), End.RIGHT)] == [
        "wall",
        "lower",
        "upper",
        "wall",
    ]
    assert end_profile(arrange((WALL,)).edges, EndLine(2400), End.RIGHT) == (Stretch("wall", 0, 2400),)


def test_a_hole_at_the_end_leaves_a_gap() -> None:
    window = Part("window", Kind.WINDOW, box(1800, 1000, 600, 900))
    edges = arrange((WALL, window)).edges
    assert end_profile(edges, EndLine(2400), End.RIGHT) == (Stretch("wall", 0, 1000), Stretch("wall", 1900, 2400))


def test_nothing_ends_where_no_edge_is_or_where_an_arc_only_touches() -> None:
    edges = arrange((Part("basin", Kind.FIXTURE, circle(100, 100, 100)),)).edges
    assert end_profile(edges, EndLine(200), End.RIGHT) == ()
    assert end_profile((), EndLine(0), End.LEFT) == ()


@pytest.mark.parametrize("short", [0.01, 1.0])
def test_a_part_that_stops_short_does_not_end_there(short: float) -> None:
    part = Part("splashback", Kind.SPLASHBACK, box(0, 900, 2400 - short, 600))
    profile = end_profile(arrange((WALL, part)).edges, EndLine(2400), End.RIGHT)
    assert [stretch.part for stretch in profile] == ["wall"]


OUT_OF_PLUMB = Part("wall", Kind.WALL, (Vertex(0, 0), Vertex(2400, 0), Vertex(2394, 2400), Vertex(12, 2400)))


def test_an_end_out_of_plumb_names_what_is_seen_from_the_floor_up() -> None:
    left, right = (end_line(Face("f", "B", parts=(OUT_OF_PLUMB,)), which) for which in End)
    tiles = tuple(Vertex(*line.at(height)) for line, height in ((left, 900), (right, 900), (right, 1500), (left, 1500)))
    edges = arrange((OUT_OF_PLUMB, Part("tiles", Kind.SPLASHBACK, tiles))).edges
    seen = ["wall", "tiles", "wall"]
    for line, which in ((left, End.LEFT), (right, End.RIGHT)):
        profile = end_profile(edges, line, which)
        assert [stretch.part for stretch in profile] == seen
        assert (profile[1].low_mm, profile[1].high_mm) == pytest.approx((900, 1500))


def test_an_end_is_upright_where_no_wall_says_otherwise_or_its_side_slopes_as_it_was_built() -> None:
    gable = Part("wall", Kind.WALL, (Vertex(0, 0), Vertex(2400, 0), Vertex(1200, 2400)))
    for parts in ((WALL,), (CABINET,), (gable,), ()):
        assert end_line(Face("f", "B", parts=parts), End.LEFT) == EndLine(0)
