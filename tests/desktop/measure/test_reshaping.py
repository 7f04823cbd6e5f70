"""Corners, mirrors, matching and typed moves through the window: each one step of undo."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAction

from desktop.measure.modes import Mode
from desktop.state.shown import Overlay
from geometry.outlines.measured import area_mm2, outline_box
from shared.edits.drawn import find_part
from shared.job import Outline
from shared.trade.kinds import Kind
from tests.window import Keys, Person


@pytest.fixture
def wall(person: Person) -> Person:
    """A wall of 3600 x 2400 with one cabinet of 900 x 720, picked."""
    person.begin_wall("3600", "2400")
    person.press(Qt.Key.Key_B, Keys.AltModifier)
    person.read("cabinet 0, 150, 900, 720")
    return person


def _outline(person: Person) -> Outline:
    (picked,) = person.shown.picked
    return find_part(person.shown.job, picked)[1].outline


def _boxes(person: Person) -> list[tuple[float, ...]]:
    face = person.shown.shown_face
    assert face is not None
    return [outline_box(part.outline) for part in face.parts if part.kind is not Kind.WALL]


def _choose(person: Person, words: str) -> None:
    found = [action for action in person.app.window.findChildren(QAction) if action.text().replace("&", "") == words]
    assert found[0].isEnabled()
    found[0].trigger()


def _undo(person: Person) -> None:
    person.press(Qt.Key.Key_Z, Keys.ControlModifier)


def test_a_part_is_reshaped_by_keys_alone(wall: Person) -> None:
    before = wall.shown.job
    wall.press(Qt.Key.Key_C, Keys.AltModifier)
    assert wall.app.hand.mode is Mode.CORNERS
    wall.press(Qt.Key.Key_Return)
    wall.press(Qt.Key.Key_Return)
    assert wall.app.measure.line.wants.text().endswith("bottom side, now 900, its length")
    wall.type("1000")
    assert wall.app.measure.line.answer.text() == "1000 long"
    assert _boxes(wall) == [(0, 150, 1000, 870)]
    wall.press(Qt.Key.Key_Return)
    assert wall.app.measure.line.wants.text().endswith("bottom side, now 1000, its length")

    wall.press(Qt.Key.Key_Return)
    wall.read("cut 100")
    assert area_mm2(_outline(wall)) == 1000 * 720 - 100 * 100 / 2
    _undo(wall)
    _undo(wall)
    assert wall.shown.job is before


def test_a_corner_is_dragged_put_in_and_taken_out(wall: Person) -> None:
    wall.press(Qt.Key.Key_C, Keys.AltModifier)
    wall.begin_drag((900, 870), (1000, 1000), (1100, 1070))
    wall.drop(1100, 1070)
    corner = _outline(wall)[2]
    assert [corner.x, corner.y] == pytest.approx([1100, 1070], abs=10)

    wall.click_at(450, 150)
    wall.press(Qt.Key.Key_Insert)
    assert len(_outline(wall)) == 5
    wall.read("450, 100")
    assert (_outline(wall)[1].x, _outline(wall)[1].y) == (450, 100)
    wall.press(Qt.Key.Key_Delete)
    assert len(_outline(wall)) == 4


def test_delete_takes_the_part_where_no_corner_is_chosen(wall: Person) -> None:
    wall.press(Qt.Key.Key_C, Keys.AltModifier)
    wall.press(Qt.Key.Key_Delete)
    assert _boxes(wall) == []


def test_a_corner_that_would_cross_is_refused_and_nothing_is_lost(wall: Person) -> None:
    before = wall.shown.job
    wall.press(Qt.Key.Key_C, Keys.AltModifier)
    wall.press(Qt.Key.Key_Return)
    wall.read("1000, 500")
    assert "cross" in wall.app.measure.line.answer.text()
    assert wall.app.measure.line.text == "1000, 500"
    assert wall.shown.job is before


def test_what_is_picked_moves_by_typed_ways(wall: Person) -> None:
    before = wall.shown.job
    wall.press(Qt.Key.Key_P, Keys.AltModifier)
    wall.type("35 right, 20 up")
    assert wall.app.measure.line.answer.text() == "cabinet 35 right, 20 up"
    assert _boxes(wall) == [(35, 170, 935, 890)]
    wall.press(Qt.Key.Key_Return)
    _undo(wall)
    assert wall.shown.job is before


def test_a_hole_stands_in_the_middle_of_what_is_picked(wall: Person) -> None:
    wall.read("cut-out 500 by 400 centred")
    assert _boxes(wall)[-1] == (200, 310, 700, 710)


def test_mirrors_and_matching_from_the_menu(wall: Person) -> None:
    before = wall.shown.job
    _choose(wall, "Mirror a copy about a line")
    assert wall.app.measure.line.wants.text().startswith("Mirror a copy in A")
    wall.read("1800")
    assert _boxes(wall) == [(0, 150, 900, 870), (2700, 150, 3600, 870)]
    assert wall.app.hand.mode is Mode.PICK
    _undo(wall)
    assert wall.shown.job is before

    wall.press(Qt.Key.Key_B, Keys.AltModifier)
    wall.read("outlet 2000, 1000, 120, 80")
    _choose(wall, "Match size to another part")
    wall.read("width")
    wall.click_at(450, 500)
    assert _boxes(wall)[-1] == (2000, 1000, 2900, 1080)


def test_a_part_is_mirrored_in_place(wall: Person) -> None:
    wall.press(Qt.Key.Key_C, Keys.AltModifier)
    wall.press(Qt.Key.Key_Return)
    wall.read("cut 100")
    start = _outline(wall)
    _choose(wall, "Mirror left to right")
    assert outline_box(_outline(wall)) == outline_box(start)
    assert {(900 - vertex.x, vertex.y) for vertex in _outline(wall)} == {(vertex.x, vertex.y) for vertex in start}


def test_shift_shows_the_sizes_of_the_face_and_of_one_part_at_most(wall: Person) -> None:
    one = wall.shown.picked
    wall.press(Qt.Key.Key_I, Keys.AltModifier)
    assert Overlay.SIZES in wall.shown.overlays
    assert wall.shown.picked == one

    wall.press(Qt.Key.Key_A, Keys.ControlModifier)
    wall.press(Qt.Key.Key_I, Keys.AltModifier)
    assert wall.shown.picked == ()


def test_the_person_sees_which_readings_a_shift_contradicts_and_takes_them_again_by_a_key(wall: Person) -> None:
    picked = wall.shown.picked
    wall.press(Qt.Key.Key_O, Keys.AltModifier)
    wall.read("900")
    wall.app.store.pick(picked)
    wall.press(Qt.Key.Key_I, Keys.AltModifier)
    wall.type("910")
    answer = wall.app.measure.line.answer
    assert "1 reading says otherwise, kept as read: 900 from the left end" in answer.text()
    wall.press(Qt.Key.Key_A, Keys.AltModifier)
    assert "1 reading says otherwise, taken again by this: 900" in answer.text()
    wall.press(Qt.Key.Key_Return)
    assert [reading.length_mm for reading in wall.shown.job.faces[0].readings] == [910]
