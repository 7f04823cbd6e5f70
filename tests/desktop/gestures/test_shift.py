"""Shift what follows: a size is clicked or a part's own is taken, and what is typed moves all beyond."""

import pytest
from msgspec.structs import replace

from desktop.gestures.shift import Shift
from geometry.outlines.measured import outline_box
from shared.edits.drawn import find_part, with_changed_face
from shared.errors import ReadingError
from shared.job import END, START, Reading
from takeoff.drawing.sizes import face_sizes
from tests.desktop.gestures.scenes import SCENE, box_of, ended


def test_the_width_of_the_picked_part_becomes_what_the_tape_says_and_the_rest_moves_along() -> None:
    gesture = Shift(SCENE._replace(picked=("base",)))
    assert gesture.wants == "what the tape says, now 600"
    assert gesture.says("620") == "= 620 mm: 20 more · 2 move · 3 stretch"
    done = ended(gesture.type("620"))
    assert box_of(done, "base") == (0, 150, 620, 870)
    assert box_of(done, "next") == (620, 150, 1520, 870)
    assert box_of(done, "wall") == (0, 0, 3620, 2400)
    assert box_of(done, "outlet") == (820, 1100, 935, 1172)


def test_in_the_other_way_it_is_the_height() -> None:
    turned = Shift(SCENE._replace(picked=("base",))).turned()
    assert turned.wants == "what the tape says, now 720"
    assert box_of(turned.type("700"), "outlet")[1] == 1080


def test_a_size_of_the_face_is_clicked() -> None:
    gesture = Shift(SCENE)
    assert gesture.wants == ""
    size = next(size for size in face_sizes(SCENE.face) if size.length_mm == 900)
    middle = ((size.start[0] + size.end[0]) / 2, size.start[1] - abs(size.away_mm))
    gesture.point(middle)
    assert gesture.preview.sizes == (size,)
    gesture.press(middle)
    assert gesture.wants == "what the tape says, now 900"
    done = ended(gesture.type("890"))
    assert box_of(done, "next") == (600, 150, 1490, 870)
    assert box_of(done, "base") == (0, 150, 600, 870)


def test_nothing_is_typed_before_a_size_is_clicked_and_no_more_is_taken_away_than_there_is() -> None:
    with pytest.raises(ReadingError, match="no size is chosen yet"):
        Shift(SCENE).type("600")
    before = SCENE.job
    with pytest.raises(ReadingError):
        Shift(SCENE._replace(picked=("base",))).type("-5")
    assert outline_box(find_part(before, "base")[1].outline) == (0, 150, 600, 870)


READ = (Reading(START, "1", 600), Reading(START, "2", 1500), Reading("2", END, 2100))
OF_READ = SCENE._replace(
    job=with_changed_face(SCENE.job, replace(SCENE.face, readings=READ)),
    picked=("base",),
)


def test_what_the_tape_said_before_is_told_and_stays() -> None:
    gesture = Shift(OF_READ)
    said = gesture.says("620")
    assert said.endswith("2 readings say otherwise, kept as read: 600 from the left end, 1500 from the left end")
    readings = ended(gesture.type("620")).job.faces[0].readings
    assert readings == (*READ, Reading(START, "1", 620))


def test_the_person_may_take_those_readings_again() -> None:
    gesture = Shift(OF_READ)
    assert gesture.other_way == "take readings again"
    again = gesture.turned()
    assert "2 readings say otherwise, taken again by this: 600" in again.says("620")
    assert [reading.length_mm for reading in ended(again.type("620")).job.faces[0].readings] == [620, 1520, 2100]
    assert again.other_way == "its height"
    assert gesture.says("620") != again.says("620")


def test_a_clicked_size_goes_back_to_keeping_its_readings() -> None:
    scene = OF_READ._replace(picked=())
    gesture = Shift(scene)
    size = next(size for size in face_sizes(scene.face) if size.length_mm == 900)
    gesture.press(((size.start[0] + size.end[0]) / 2, size.start[1] - abs(size.away_mm)))
    again = gesture.turned()
    assert (gesture.other_way, again.other_way) == ("take readings again", "keep readings")
    assert [reading.length_mm for reading in ended(again.type("890")).job.faces[0].readings] == [600, 1490, 2100]
    kept = ended(again.turned().type("890")).job.faces[0].readings
    assert kept == (*READ, Reading("1", "2", 890))
