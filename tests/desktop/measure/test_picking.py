"""Picking and lining up several parts, by menu and keys."""

import pytest
from PySide6.QtCore import Qt

from desktop.fields.form_rows import CheckRow, MeasureRow
from geometry.outlines.measured import outline_box
from geometry.outlines.sides import Box
from tests.window import Keys, Person


@pytest.fixture
def doors(person: Person) -> Person:
    """A wall with a cabinet and three doors of which the last two are alike; nothing is picked."""
    person.begin_wall("3600", "2400")
    person.press(Qt.Key.Key_B, Keys.AltModifier)
    person.read("cabinet 0, 0, 450, 720", "door 1000, 100, 450, 720", "1500, 150, 600, 720", "2500, 100, 600, 720")
    person.press(Qt.Key.Key_P, Keys.AltModifier)
    person.press(Qt.Key.Key_Escape)
    return person


def _picked(person: Person) -> list[Box]:
    return [outline_box(part.outline) for part in person.shown.picked_parts]


def _choose(person: Person, words: str) -> None:
    person.app.menus.action(words).trigger()


def test_all_of_a_kind_are_picked(doors: Person) -> None:
    doors.click_at(1100, 400)
    doors.press(Qt.Key.Key_K, Keys.ControlModifier)
    assert [box[0] for box in _picked(doors)] == [1000, 1500, 2500]


def test_all_of_a_size_are_picked_whatever_their_kind(doors: Person) -> None:
    doors.click_at(1100, 400)
    doors.press(Qt.Key.Key_K, Keys.ControlModifier | Keys.ShiftModifier)
    assert [box[0] for box in _picked(doors)] == [0, 1000]


def test_the_keys_go_from_part_to_part(doors: Person) -> None:
    lefts = []
    for _ in range(4):
        doors.press(Qt.Key.Key_Right, Keys.ControlModifier)
        lefts.append(_picked(doors)[0][0])
    doors.press(Qt.Key.Key_Left, Keys.ControlModifier)
    assert lefts == [0, 0, 1000, 1500]
    assert _picked(doors)[0][0] == 1000


def test_parts_are_lined_up_and_evened_out_in_one_step_each(doors: Person) -> None:
    before = doors.shown.job
    doors.click_at(1100, 400)
    doors.press(Qt.Key.Key_K, Keys.ControlModifier)
    _choose(doors, "&Tops")
    assert [box[3] for box in _picked(doors)] == [870, 870, 870]

    _choose(doors, "Even out the gaps a&cross")
    assert [box[0] for box in _picked(doors)] == [1000, 1675, 2500]
    doors.press(Qt.Key.Key_Z, Keys.ControlModifier)
    doors.press(Qt.Key.Key_Z, Keys.ControlModifier)
    assert doors.shown.job is before


def test_a_locked_part_stays_and_says_so(doors: Person) -> None:
    doors.click_at(1100, 400)
    _choose(doors, "Loc&k")
    locked = doors.shown.job
    doors.press(Qt.Key.Key_Right)
    assert "it is locked" in doors.app.measure.line.answer.text()
    row = doors.app.measure.details.row("From left")
    assert isinstance(row, MeasureRow)
    row.set(700.0)
    assert "it is locked" in doors.app.measure.details.trouble.text()
    assert doors.shown.job is locked

    boxes = [row for row in doors.app.measure.details.rows if isinstance(row, CheckRow) and row.field == "locked"]
    boxes[0].edit.setFocus()
    doors.press(Qt.Key.Key_Space)
    doors.app.measure.canvas.setFocus()
    doors.press(Qt.Key.Key_Right)
    assert _picked(doors)[0][0] == 1001


def test_a_joint_is_sealed_that_no_rule_asks_for(doors: Person) -> None:
    doors.press(Qt.Key.Key_B, Keys.AltModifier)
    doors.read("filler 0, 0, 450, 100", "fixture 0, 720, 450, 200")
    doors.press(Qt.Key.Key_P, Keys.AltModifier)
    face = doors.shown.shown_face
    assert face is not None
    _wall, cabinet, *_, filler, fixture = (part.id for part in face.parts)
    doors.app.store.pick((cabinet, fixture))
    assert not doors.shown.takeoff.joints

    _choose(doors, "&Seal where the two meet")
    (row,) = doors.shown.takeoff.joints
    assert (set(row.parts), row.sealed, row.length_mm.amount) == ({cabinet, fixture}, True, 450)
    _choose(doors, "&Seal where the two meet")
    assert "sealed already" in doors.app.measure.line.answer.text()

    doors.app.store.pick((filler, fixture))
    _choose(doors, "&Seal where the two meet")
    assert "do not touch" in doors.app.measure.line.answer.text()


def test_a_part_that_was_only_tried_out_is_not_picked_once_that_is_over(doors: Person) -> None:
    doors.press(Qt.Key.Key_B, Keys.AltModifier)
    doors.type("3000, 100, 450, 720")
    _choose(doors, "Pick the pre&vious part")
    _choose(doors, "Pick the pre&vious part")
    assert len(_picked(doors)) == len(doors.shown.picked) == 1
