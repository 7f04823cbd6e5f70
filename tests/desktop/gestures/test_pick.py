import math
from collections.abc import Callable

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from msgspec.structs import replace

from desktop.gestures.aiming import ASLANT_DEGREES, DEAD_SHARE
from desktop.gestures.gesture import HELD_NONE, Done, Held, Scene
from desktop.gestures.pick import Pick
from desktop.gestures.preview import Preview
from desktop.measure.acts import deleted, duplicated, nudged, pasted, picked_parts
from geometry.outlines.measured import outline_box
from geometry.outlines.shapes import box, circle
from geometry.outlines.sides import Box, Point
from shared.edits.drawn import find_part, with_changed_parts, with_parts
from shared.errors import JobError, ReadingError
from shared.job import Part
from shared.trade.kinds import Kind
from tests.desktop.gestures.scenes import JOB, SCENE, box_of, ended


def clicked(scene: Scene, at: Point, held: Held = HELD_NONE) -> Done:
    pick = Pick(scene)
    pick.press(at, held)
    return ended(pick.release(at, held))


def test_a_click_picks_what_is_in_front() -> None:
    assert clicked(SCENE, (300, 500)).picked == ("door",)


def test_clicking_again_picks_the_next_behind_and_comes_round() -> None:
    scene = SCENE
    picked = []
    for _ in range(4):
        scene = scene._replace(picked=clicked(scene, (300, 500)).picked)
        picked.append(scene.picked)
    assert picked == [("door",), ("base",), ("wall",), ("door",)]


def test_picking_is_no_step_of_the_history() -> None:
    done = clicked(SCENE, (300, 500))
    assert done.job is JOB
    assert done.label == ""


def test_shift_adds_to_what_is_picked_and_takes_away_again() -> None:
    both = clicked(SCENE._replace(picked=("door",)), (900, 500), Held(shift=True)).picked
    assert both == ("door", "next")
    assert clicked(SCENE._replace(picked=both), (900, 500), Held(shift=True)).picked == ("door",)


def test_a_click_on_nothing_picks_nothing() -> None:
    assert clicked(SCENE._replace(picked=("door",)), (5000, 500)).picked == ()


def test_a_drag_moves_the_part_under_the_hand_and_snaps() -> None:
    pick = Pick(SCENE)
    pick.press((1000, 500))
    pick.point((1100, 500))
    pick.point((1908, 501))
    assert pick.moving == ("next",)
    done = ended(pick.release((1908, 501)))
    assert box_of(done, "next") == (1508, 150, 2408, 870)
    assert done.label == "Move cabinet"


def test_a_dragged_part_comes_to_stand_evenly_and_the_gaps_are_shown() -> None:
    sockets = tuple(Part(f"o{x}", Kind.OUTLET, box(x, 1700, 115, 72)) for x in (1801, 2101, 2411))
    pick = Pick(SCENE._replace(job=with_parts(JOB, "f1", sockets)))
    pick.press((2450, 1730))
    pick.point((2434, 1775))
    assert pick.preview.words == "evenly spaced: 185 mm"
    assert len(pick.preview.guides) == 2
    assert box_of(pick.release((2434, 1775)), "o2411")[0] == 2401


def test_a_pulled_front_comes_to_be_as_wide_as_another_which_is_named_by_its_tag() -> None:
    again = Part("again", Kind.DOOR, box(1703, 153, 500, 600))
    pick = Pick(SCENE._replace(job=with_parts(JOB, "f1", (again,)), picked=("again",)))
    pick.press((2203, 753))
    pick.point((2290, 800))
    assert pick.preview.words == "as wide as door A1"
    assert box_of(pick.release((2290, 800)), "again") == (1703, 153, 2297, 800)


WINDOW = Part("window", Kind.WINDOW, box(1820, 1000, 600, 500))
SHELF = Part("shelf", Kind.SHELF, box(2900, 1519, 500, 30), name="shelf")
OVER = SCENE._replace(job=with_parts(JOB, "f1", (WINDOW, SHELF)), picked=("window",))
"""A window that stands 19 mm lower than the shelf beside it, within the reach of the hand."""


def after(down: Point, by: Point, held: Held = HELD_NONE) -> Box:
    """The box round the window once the hand went down here and took it so far."""
    pick = Pick(OVER)
    pick.press(down)
    at = (down[0] + by[0], down[1] + by[1])
    pick.point(at, held)
    return box_of(pick.release(at, held), "window")


@pytest.mark.parametrize("up", [-5, 0, 5])
def test_a_window_dragged_20_to_the_left_does_not_rise(up: float) -> None:
    assert after((2100, 1250), (-20, up)) == (1800, 1000, 2400, 1500)


@pytest.mark.parametrize("down", [(1820, 1500), (1826, 1495)])
def test_a_corner_pulled_20_to_the_left_does_not_rise(down: Point) -> None:
    assert after(down, (-20, 4)) == (1800, 1000, 2420, 1500)


def test_a_hand_that_clearly_leaves_the_axis_is_followed_and_pulled() -> None:
    assert after((2100, 1250), (-40, 15)) == (1780, 1019, 2380, 1519)
    assert after((2100, 1250), (-400, 15)) == (1420, 1019, 2020, 1519)
    assert after((2100, 1250), (-40, 3), Held(free=True)) == (1780, 1003, 2380, 1503)


PULLS = st.integers(-300, 300)


@given(across=PULLS, up=PULLS, corner=st.booleans())
def test_no_drag_takes_the_window_farther_than_twice_as_far_as_the_hand_went_on_either_axis(
    across: int, up: int, corner: bool
) -> None:
    assume(math.hypot(across, up) > OVER.reach_mm)
    left, _, _, top = after((1820, 1500) if corner else (2100, 1250), (across, up))
    for moved, went in ((left - 1820, across), (top - 1500, up)):
        assert abs(moved - went) <= min(OVER.reach_mm, abs(went)) + 1


@given(across=st.integers(-300, 300), aside=st.floats(-1, 1), corner=st.booleans())
def test_a_drag_that_hardly_leaves_its_axis_stays_on_it(across: int, aside: float, corner: bool) -> None:
    assume(abs(across) > OVER.reach_mm)
    up = aside * min(abs(across) * math.tan(math.radians(ASLANT_DEGREES)), DEAD_SHARE * OVER.reach_mm)
    assert after((1820, 1500) if corner else (2100, 1250), (across, up))[3] == 1500


def test_dragging_one_of_several_picked_parts_moves_them_all() -> None:
    pick = Pick(SCENE._replace(picked=("base", "door")))
    pick.press((300, 500))
    done = ended(pick.release((300, 1600), Held(free=True)))
    assert box_of(done, "base") == (0, 1250, 600, 1970)
    assert box_of(done, "door") == (3, 1253, 597, 1967)
    assert done.label == "Move 2 parts"


def test_what_a_drag_would_do_is_tried_out_and_cancelling_leaves_nothing_of_it() -> None:
    pick = Pick(SCENE)
    pick.press((1000, 500))
    pick.point((1000, 800))
    tried = pick.tried
    assert tried is not None
    assert outline_box(find_part(tried, "next")[1].outline) != (600, 150, 1500, 870)
    pick.cancel()
    assert pick.preview.outlines == ()
    assert pick.release((1000, 800)) is None


def test_a_distance_typed_while_dragging_decides_how_far() -> None:
    pick = Pick(SCENE)
    pick.press((1000, 500))
    pick.point((1033, 502))
    assert pick.wants == "how far"
    assert box_of(pick.read(250), "next") == (850, 150, 1750, 870)


def test_a_drag_over_a_wall_that_is_not_picked_boxes_what_is_on_it() -> None:
    pick = Pick(SCENE)
    pick.press((550, 1300))
    pick.point((700, 1000))
    assert pick.preview == Preview(rubber=(550, 1000, 700, 1300))
    assert sorted(ended(pick.release((1600, 140))).picked) == ["next", "outlet"]


def test_a_wall_is_dragged_once_it_is_picked() -> None:
    pick = Pick(SCENE._replace(picked=("wall",)))
    pick.press((2500, 1500))
    assert box_of(pick.release((2600, 1500), Held(free=True)), "wall") == (100, 0, 3700, 2400)


def test_a_corner_of_the_only_picked_part_is_pulled_and_the_opposite_one_stays() -> None:
    pick = Pick(SCENE._replace(picked=("next",)))
    pick.press((1503, 868))
    pick.point((1800, 900), Held(free=True))
    assert [size.length_mm for size in pick.preview.sizes] == [1197, 752]
    done = ended(pick.release((1900, 1000), Held(free=True)))
    assert box_of(done, "next") == (600, 150, 1897, 1002)
    assert done.label == "Resize cabinet"


def test_a_small_part_looked_at_from_far_is_still_moved_and_not_pulled() -> None:
    far = Pick(SCENE._replace(picked=("outlet",), reach_mm=60.0))
    far.press((857, 1136))
    done = far.release((1057, 1336), Held(free=True))
    assert ended(done).label == "Move outlet"


def test_a_circle_pulled_oblong_stays_as_it_was_and_says_so() -> None:
    job = with_parts(JOB, "f1", (Part("basin", Kind.FIXTURE, circle(2500, 1500, 200)),))
    pick = Pick(SCENE._replace(job=job, picked=("basin",)))
    pick.press((2700, 1700))
    pick.point((3000, 1710), Held(free=True))
    assert pick.preview.words == "the part cannot take this size"
    assert pick.release((3000, 1710), Held(free=True)) is None


@pytest.fixture
def locked() -> Scene:
    """The scene with its second cabinet locked."""
    part = replace(find_part(JOB, "next")[1], locked=True)
    return SCENE._replace(job=with_changed_parts(JOB, (part,)))


def test_a_locked_part_is_picked_by_a_click(locked: Scene) -> None:
    assert clicked(locked, (1000, 500)).picked == ("next",)


def test_a_drag_of_a_locked_part_moves_nothing_and_says_why(locked: Scene) -> None:
    pick = Pick(locked)
    pick.press((1000, 500))
    pick.point((1300, 500))
    assert pick.preview.words == "it is locked"
    assert pick.tried is None
    with pytest.raises(JobError, match="cabinet: it is locked"):
        pick.read(250)
    with pytest.raises(JobError, match="cabinet: it is locked"):
        pick.release((1300, 500))
    assert not pick.is_begun


def test_a_locked_part_among_picked_ones_holds_them_all(locked: Scene) -> None:
    pick = Pick(locked._replace(picked=("base", "next")))
    pick.press((300, 800))
    with pytest.raises(JobError, match="it is locked"):
        pick.release((300, 1500))


def test_a_locked_part_is_not_pulled_by_its_corner(locked: Scene) -> None:
    pick = Pick(locked._replace(picked=("next",)))
    pick.press((1498, 868))
    with pytest.raises(JobError, match="it is locked"):
        pick.release((1800, 1100))


def test_a_locked_part_is_neither_nudged_nor_deleted(locked: Scene) -> None:
    for act in (deleted, lambda scene: nudged(scene, 1, 0)):
        with pytest.raises(JobError, match="it is locked"):
            act(locked._replace(picked=("base", "next")))


def test_a_copy_of_a_locked_part_is_free(locked: Scene) -> None:
    done = ended(duplicated(locked._replace(picked=("next",))))
    assert not find_part(done.job, done.picked[0])[1].locked


def test_the_picked_parts_are_nudged() -> None:
    done = nudged(SCENE._replace(picked=("next",)), -10, 1)
    assert box_of(done, "next") == (590, 151, 1490, 871)


def test_the_picked_parts_are_deleted() -> None:
    done = ended(deleted(SCENE._replace(picked=("base", "door"))))
    assert [part.id for part in done.job.faces[0].parts] == ["wall", "next", "outlet"]
    assert done.label == "Delete 2 parts"


def test_a_copy_stands_aside_with_an_id_of_its_own() -> None:
    scene = SCENE._replace(picked=("next",))
    first = ended(duplicated(scene))
    again = ended(pasted(scene._replace(job=first.job), picked_parts(scene)))
    assert box_of(first, first.picked[0]) == (650, 100, 1550, 820)
    assert box_of(again, again.picked[0]) == (700, 50, 1600, 770)
    assert len({"next", *first.picked, *again.picked}) == 3


def test_a_part_cut_and_pasted_stands_where_it_stood() -> None:
    scene = SCENE._replace(picked=("next",))
    parts = picked_parts(scene)
    done = ended(pasted(scene._replace(job=ended(deleted(scene)).job), parts))
    assert box_of(done, done.picked[0]) == (600, 150, 1500, 870)


@pytest.mark.parametrize("act", [deleted, duplicated])
def test_with_nothing_picked_nothing_is_done(act: Callable[[Scene], Done | None]) -> None:
    assert act(SCENE) is None
    assert nudged(SCENE, 1, 0) is None
    assert pasted(SCENE, ()) is None


def test_a_face_that_is_not_there_is_said_in_words() -> None:
    with pytest.raises(JobError, match='no face "gone"'):
        Pick(SCENE._replace(face_id="gone")).press((0, 0))


@pytest.mark.parametrize(
    ("line", "left", "bottom", "said"),
    [
        ("35 right, 20 up", 835, 1120, "outlet 35 right, 20 up"),
        ("35r, 20 d", 835, 1080, "outlet 35 right, 20 down"),
        ("3.5 cm left", 765, 1100, "outlet 35 left"),
        ("-35 right, 10 up, 10 down", 765, 1100, "outlet 35 left"),
        ("0 right", 800, 1100, "outlet stays"),
    ],
)
def test_what_is_picked_moves_by_typed_ways(line: str, left: float, bottom: float, said: str) -> None:
    pick = Pick(SCENE._replace(picked=("outlet",)))
    assert pick.wants == "how far to move"
    assert pick.says(line) == said
    done = ended(pick.type(line))
    assert done.label == "Move outlet"
    assert box_of(done, "outlet")[:2] == (left, bottom)


def test_what_is_dragged_moves_by_typed_ways_from_where_it_was() -> None:
    pick = Pick(SCENE)
    pick.press((850, 1130))
    pick.point((950, 1230))
    assert box_of(pick.type("35 right"), "outlet")[:2] == (835, 1100)


def test_a_typed_move_says_which_way_and_moves_nothing_locked_or_too_far() -> None:
    picked = SCENE._replace(picked=("outlet",))
    with pytest.raises(ReadingError, match="which way"):
        Pick(picked).type("35")
    with pytest.raises(JobError, match="beyond 100 m"):
        Pick(picked).type("99 m right, 99 m right")
    lock = with_changed_parts(JOB, (replace(find_part(JOB, "outlet")[1], locked=True),))
    with pytest.raises(JobError, match="locked"):
        Pick(picked._replace(job=lock)).type("35 right")
