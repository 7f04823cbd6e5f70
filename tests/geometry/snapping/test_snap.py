import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.outlines.shapes import box, circle
from geometry.outlines.sides import WELD_MM
from geometry.snapping.even import peers
from geometry.snapping.snap import Snap, snap, snap_targets, snapped_move, snapped_pull
from shared.job import Face, Part, Vertex, View, Way
from shared.trade.kinds import Kind

WALL = Part("w", Kind.WALL, box(0, 0, 3000, 2400))
SINK_BASE = Part("s", Kind.CABINET, box(500, 100, 900, 720), name="sink base")
BASIN = Part("r", Kind.FIXTURE, circle(2000, 1200, 150), name="basin")
SLOPE = Part("p", Kind.FIXTURE, (Vertex(2500, 500), Vertex(2900, 700), Vertex(2500, 900)), name="hood")
FACE = Face("f", "A", parts=(WALL, SINK_BASE, BASIN, SLOPE))
TARGETS = snap_targets(FACE)
REACH = 10.0


@pytest.mark.parametrize(
    ("point", "to", "words"),
    [
        ((503, 96), (500, 100), "corner of sink base"),
        ((952, 104), (950, 100), "middle of a side of sink base"),
        ((2004, 1195), (2000, 1200), "centre of basin"),
        ((700, 823), (700, 820), "side of sink base"),
        ((1, -1), (0, 0), "corner of wall"),
    ],
)
def test_points_snap_to_corners_middles_centres_and_sides(
    point: tuple[float, float], to: tuple[float, float], words: str
) -> None:
    assert snap(*point, TARGETS, REACH) == Snap(*to, words)


def test_a_corner_is_preferred_to_a_nearer_side() -> None:
    assert snap(508, 100.5, TARGETS, REACH).words == "corner of sink base"


def test_a_point_on_an_arc_lies_on_the_circle() -> None:
    got = snap(2000 + 109, 1200 + 109, TARGETS, REACH)
    assert got.words == "side of basin"
    assert (got.x - 2000) ** 2 + (got.y - 1200) ** 2 == pytest.approx(150**2)


def test_a_point_on_a_slope_is_its_foot() -> None:
    assert snap(2598, 554, TARGETS, REACH) == Snap(2600, 550, "side of hood")


LEANING = Part("w", Kind.WALL, (Vertex(0, 0), Vertex(3000, 0), Vertex(3000, 2400), Vertex(12, 2400)))


def test_a_point_on_a_side_aslant_goes_to_where_a_line_crosses_it() -> None:
    targets = snap_targets(Face("f", "A", parts=(LEANING,)), lines=((Way.UP, 900, "on the set-out line at 900"),))
    got = snap(7, 904, targets, REACH)
    assert (got.x, got.y) == pytest.approx((4.5, 900))
    assert got.words == "side of wall, on the set-out line at 900"
    assert got.guides[0][1] == (got.x, got.y)


def test_a_line_that_crosses_a_side_aslant_beyond_reach_does_not_pull_along_it() -> None:
    targets = snap_targets(Face("f", "A", parts=(LEANING,)), lines=((Way.ACROSS, 5, "on the set-out line at 5"),))
    got = snap(6, 1100, targets, REACH)
    assert got.words == "side of wall"
    assert got.y == pytest.approx(1100, abs=0.1)


def test_nothing_in_reach_leaves_a_point_where_it_is() -> None:
    assert snap(1700, 2000, TARGETS, REACH) == Snap(1700, 2000)


def test_a_point_goes_in_line_with_a_corner_and_shows_the_line() -> None:
    got = snap(1404, 2000, TARGETS, REACH)
    assert got == Snap(1400, 2000, "in line with corner of sink base", (((1400, 820), (1400, 2000)),))


def test_a_point_goes_in_line_across_and_up_at_once() -> None:
    got = snap(1404, 1204, TARGETS, REACH)
    assert (got.x, got.y) == (1400, 1200)
    assert got.words == "in line with corner of sink base and in line with corner of basin"
    assert [end for _, end in got.guides] == [(1400, 1200), (1400, 1200)]


def test_along_a_level_side_a_point_also_goes_in_line() -> None:
    got = snap(1398, 3, TARGETS, REACH)
    assert (got.x, got.y) == (1400, 0)
    assert got.words == "side of wall, in line with corner of sink base"


def test_the_face_offers_its_ends_floor_and_top_beyond_the_wall() -> None:
    assert snap(-200, 4, TARGETS, REACH).words == "on the floor"
    assert snap(-200, 2404, TARGETS, REACH).words == "at the top of the face"
    assert snap(3004, -200, TARGETS, REACH).words == "at the right end of the face"
    assert snap(-4, -200, TARGETS, REACH).words == "at the left end of the face"


def test_an_empty_face_has_its_floor_and_an_empty_plan_its_wall_line() -> None:
    assert snap(50, 3, snap_targets(Face("f", "A")), REACH) == Snap(50, 0, "on the floor", (((0, 0), (50, 0)),))
    assert snap(50, 3, snap_targets(Face("f", "P", View.PLAN)), REACH).words == "on the wall line"


def test_what_moves_is_no_target() -> None:
    standing = snap_targets(FACE, moving={"s"})
    assert snap(503, 96, standing, REACH) == Snap(503, 96)


def test_corners_of_what_is_being_drawn_are_targets() -> None:
    drawing = snap_targets(FACE, own=((1700, 1900),))
    assert snap(1703, 1903, drawing, REACH) == Snap(1700, 1900, "corner of this outline")
    assert snap(1703, 2100, drawing, REACH).x == 1700


def test_a_dragged_part_goes_against_its_neighbour_and_says_so() -> None:
    dragged = box(1406, 94, 600, 720)
    got = snapped_move([(vertex.x, vertex.y) for vertex in dragged], snap_targets(FACE, {"s2"}), REACH)
    assert (got.x, got.y) == (-6, 6)
    assert got.words == "corner of sink base"


def test_a_dragged_part_takes_the_nearest_of_its_corners_on_each_axis() -> None:
    got = snapped_move([(1650, 1850), (2354, 1850)], TARGETS, REACH)
    assert got == Snap(0, 0)
    got = snapped_move([(1650, 1850), (2507, 1850), (1396, 1850)], TARGETS, REACH)
    assert (got.x, got.y) == (4, 0)
    assert got.guides == (((1400, 820), (1400, 1850)),)


def test_a_dragged_part_without_points_stays() -> None:
    assert snapped_move([], TARGETS, REACH) == Snap(0, 0)


LINES = ((Way.ACROSS, 1700.0, "on the set-out line at 1700"), (Way.UP, 1950.0, "on the set-out line at 1950 up"))
SET_OUT = snap_targets(FACE, lines=LINES)


def test_a_point_goes_onto_set_out_lines_and_says_which() -> None:
    assert snap(1703, 2200, SET_OUT, REACH) == Snap(1700, 2200, LINES[0][2], (((1700, 0), (1700, 2200)),))
    got = snap(1703, 1944, SET_OUT, REACH)
    assert (got.x, got.y) == (1700, 1950)
    assert got.words == "on the set-out line at 1700 and on the set-out line at 1950 up"


def test_a_set_out_line_is_named_before_a_corner_in_the_same_line() -> None:
    same = snap_targets(FACE, lines=((Way.ACROSS, 1400.0, "on the set-out line at 1400"),))
    assert snap(1404, 2000, same, REACH).words == "on the set-out line at 1400"


def test_a_corner_comes_before_a_nearer_set_out_line() -> None:
    near = snap_targets(FACE, lines=((Way.ACROSS, 506.0, "on the set-out line at 506"),))
    assert snap(505, 103, near, REACH).words == "corner of sink base"


def test_a_dragged_part_goes_onto_a_set_out_line() -> None:
    got = snapped_move([(1650, 1850), (1706, 1850)], SET_OUT, REACH)
    assert (got.x, got.y, got.words) == (-6, 0, "on the set-out line at 1700")


LAMPS = tuple(Part(f"l{x}", Kind.OUTLET, box(x, 2100, 100, 40), name=f"lamp {x}") for x in (1603, 2003))
LIT = Face("f", "A", parts=(*FACE.parts, *LAMPS))
AMONG_LAMPS = snap_targets(LIT, among=peers(LIT, Kind.OUTLET))


def test_a_dragged_part_comes_to_stand_evenly_where_no_corner_is_nearer() -> None:
    got = snapped_move([(2407, 2200)], AMONG_LAMPS, REACH, (2407, 2125, 2507, 2200))
    assert (got.x, got.y, got.words) == (-4, 0, "evenly spaced: 300 mm")
    assert len(got.guides) == 2


def test_a_nearer_corner_in_line_decides_over_equal_spacing() -> None:
    with_line = snap_targets(LIT, lines=((Way.ACROSS, 2408.0, "on a line"),), among=peers(LIT, Kind.OUTLET))
    got = snapped_move([(2407, 2200)], with_line, REACH, (2407, 2125, 2507, 2200))
    assert (got.x, got.words) == (1, "on a line")


def test_a_corner_on_a_corner_decides_over_nearer_equal_spacing() -> None:
    stands = box(2406, 2140, 100, 40)
    beside = Face("f", "A", parts=(*LIT.parts, Part("b", Kind.SHELF, box(2400, 2000, 300, 140), name="b")))
    targets = snap_targets(beside, among=peers(beside, Kind.OUTLET))
    points = [(vertex.x, vertex.y) for vertex in stands]
    got = snapped_move(points, targets, REACH, (2406, 2120, 2506, 2180))
    assert (got.x, got.words) == (-6, "corner of b")


def test_what_agrees_is_said_together() -> None:
    agreeing = snap_targets(LIT, lines=((Way.ACROSS, 2403.0, "on a line"),), among=peers(LIT, Kind.OUTLET))
    got = snapped_move([(2407, 2200)], agreeing, REACH, (2407, 2125, 2507, 2200))
    assert (got.x, got.words) == (-4, "on a line and evenly spaced: 300 mm")


def test_a_drawn_box_comes_to_be_as_large_as_its_like() -> None:
    got = snap(1556, 1894, AMONG_LAMPS, REACH, opposite=(1660, 1850))
    assert (got.x, got.y) == (1560, 1890)
    assert got.words == "as wide as lamp 1603 and as high as lamp 1603"


def test_along_a_side_a_drawn_box_comes_to_be_as_wide_as_its_like() -> None:
    got = snap(1857, 2397, AMONG_LAMPS, REACH, opposite=(1760, 2300))
    assert (got.x, got.y, got.words) == (1860, 2400, "side of wall, as wide as lamp 1603")


def test_without_an_opposite_corner_sizes_are_not_compared() -> None:
    assert snap(1556, 1894, AMONG_LAMPS, REACH) == Snap(1556, 1894)


NEAR_ALL = st.tuples(st.floats(300, 2700), st.floats(0, 2500))
HANDS = st.tuples(st.floats(-400, 400), st.floats(-400, 400))


@given(at=NEAR_ALL, went=HANDS)
def test_nothing_pulls_what_is_dragged_farther_than_the_hand_took_it(
    at: tuple[float, float], went: tuple[float, float]
) -> None:
    x, y = at
    move = snapped_move([(x, y), (x + 115, y + 72)], AMONG_LAMPS, 60.0, (x, y, x + 115, y + 72), went)
    pull = snapped_pull(at, AMONG_LAMPS, 60.0, went, (1660, 1850))
    for across, up in ((move.x, move.y), (pull.x - x, pull.y - y)):
        assert abs(across) <= min(60.0, abs(went[0])) + WELD_MM
        assert abs(up) <= min(60.0, abs(went[1])) + WELD_MM


def test_a_corner_that_is_too_far_aside_is_only_come_in_line_with() -> None:
    assert snapped_pull((503, 92), TARGETS, REACH, (-30, 10)).words == "corner of sink base"
    got = snapped_pull((503, 92), TARGETS, REACH, (-30, 0))
    assert (got.x, got.y, got.words) == (500, 92, "in line with corner of sink base")
