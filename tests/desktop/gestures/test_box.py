import pytest
from msgspec.structs import replace

from desktop.gestures.box import Box
from desktop.gestures.gesture import Held
from shared.edits.drawn import with_changed_face
from shared.errors import OutlineError, ReadingError
from shared.job import START, Reading, Unit, Way
from shared.trade.kinds import Kind
from tests.desktop.gestures.scenes import JOB, SCENE, new_box


def test_four_readings_draw_a_box_and_each_is_asked_for() -> None:
    box = Box(SCENE)
    asked = []
    for length_mm in (1500, 150, 450):
        asked.append(box.wants)
        assert box.read(length_mm) is None
    asked.append(box.wants)
    assert new_box(box.read(720)) == (1500, 150, 1950, 870)
    assert asked == ["a corner, or its distance from the left end", "height above the floor", "width", "height"]


def test_a_box_is_drawn_from_corner_to_corner_and_its_corners_snap() -> None:
    box = Box(SCENE)
    box.press((1494, 158))
    box.point((1800, 500))
    assert new_box(box.release((1960, 871))) == (1500, 150, 1960, 870)


def test_a_box_comes_to_be_as_wide_as_its_like_and_a_key_holds_that_off() -> None:
    box = Box(SCENE)
    box.press((1800, 1700))
    box.point((2693, 2000))
    assert box.preview.words == "as wide as cabinet"
    box.point((2693, 2000), Held(free=True))
    assert box.preview.words == ""
    assert new_box(box.release((2693, 2000))) == (1800, 1700, 2700, 2000)


def test_a_box_is_compared_with_parts_of_its_own_kind_only() -> None:
    box = Box(SCENE._replace(kind=Kind.SHELF))
    box.press((1800, 1700))
    assert new_box(box.release((2693, 2000))) == (1800, 1700, 2693, 2000)


def test_a_click_on_each_corner_draws_the_same_box_as_a_drag() -> None:
    clicked = Box(SCENE)
    clicked.press((2000, 1000))
    assert clicked.release((2000, 1000)) is None
    assert new_box(clicked.press((2500, 1300))) == (2000, 1000, 2500, 1300)


def test_typed_sizes_go_to_the_side_where_the_hand_is() -> None:
    box = Box(SCENE)
    box.press((2000, 1000))
    box.point((1900, 900))
    box.read(300)
    assert new_box(box.read(200)) == (1700, 800, 2000, 1000)


def test_snapping_is_held_off_by_a_key() -> None:
    box = Box(SCENE)
    box.press((1494, 158), Held(free=True))
    assert new_box(box.release((1960, 871), Held(free=True))) == (1494, 158, 1960, 871)


def test_what_would_be_drawn_is_tried_out_without_changing_the_job() -> None:
    box = Box(SCENE)
    box.press((2000, 1000))
    box.point((2500, 1300))
    tried = box.tried
    assert tried is not None
    assert len(tried.faces[0].parts) == len(JOB.faces[0].parts) + 1
    assert [size.length_mm for size in box.preview.sizes] == [500, 300]
    assert box.scene.job is JOB


def test_readings_are_taken_back_one_at_a_time() -> None:
    box = Box(SCENE)
    for length_mm in (1500, 150, 450):
        box.read(length_mm)
    box.back()
    assert box.wants == "width"
    box.back()
    assert box.wants == "a corner, or its distance from the left end"
    assert not box.is_begun


@pytest.mark.parametrize("length_mm", [0.0, -5.0])
def test_a_width_of_nothing_is_refused_and_asked_for_again(length_mm: float) -> None:
    box = Box(SCENE)
    box.press((2000, 1000))
    with pytest.raises(ReadingError, match="the width must be above 0"):
        box.read(length_mm)
    assert box.wants == "width"


def test_a_box_without_height_is_refused_and_stays_begun() -> None:
    box = Box(SCENE)
    box.press((2000, 1000))
    with pytest.raises(OutlineError):
        box.press((2500, 1000))
    assert box.is_begun


def test_cancelling_begins_again() -> None:
    box = Box(SCENE)
    box.press((2000, 1000))
    box.read(300)
    box.cancel()
    assert not box.is_begun
    assert box.preview.outlines == ()


def test_a_pointed_place_is_no_finer_than_a_dot_of_the_screen() -> None:
    far = Box(SCENE._replace(reach_mm=48.0))  # a dot is 6 mm: places go to whole 5 mm
    far.press((2001.3, 1000.2), Held(free=True))
    assert new_box(far.press((2488.8, 1313.1), Held(free=True))) == (2000, 1000, 2490, 1315)


def test_in_an_inch_job_pointed_places_go_to_divisions_of_an_inch() -> None:
    scene = SCENE._replace(job=replace(JOB, unit=Unit.INCH), reach_mm=8.0)
    box = Box(scene)
    box.press((0.2, 1000.0), Held(free=True))
    left, bottom, _, _ = new_box(box.press((700, 1300), Held(free=True)))
    assert left == 0
    assert bottom == pytest.approx(630 * 25.4 / 16)  # exact: 1000 mm lie nearest to 630 sixteenths


def test_a_corner_goes_onto_set_out_lines_and_says_so() -> None:
    readings = (Reading(START, "1", 2222.0), Reading(START, "2", 1333.0, Way.UP))
    face = replace(SCENE.face, readings=readings)
    box = Box(SCENE._replace(job=with_changed_face(JOB, face)))
    box.point((2230, 1340))
    assert box.preview.words == "on the set-out line at 2222 and on the set-out line at 1333"
    assert box.preview.spot == (2222, 1333)
