"""Round the room: going from face to face, adding and changing faces."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QInputDialog, QLineEdit

from desktop.window.strip_parts import CornerMark, FaceButton
from shared.job import Corner
from tests.window import Keys, Person


@pytest.fixture
def two_walls(person: Person) -> Person:
    """Two walls, A and B; B is shown."""
    person.begin_wall("3600", "2400")
    person.press(Qt.Key.Key_N, Keys.ControlModifier | Keys.ShiftModifier)
    person.type("2400")
    person.press(Qt.Key.Key_Tab)
    person.read("2400")
    return person


def test_a_new_face_gets_the_next_letter_and_is_shown(two_walls: Person) -> None:
    assert _names(two_walls) == ["A", "B"]
    assert _name_shown(two_walls) == "B"


def test_arrow_keys_go_from_face_to_face(two_walls: Person) -> None:
    two_walls.app.strip.focus_face()
    two_walls.press(Qt.Key.Key_Left)
    assert _name_shown(two_walls) == "A"

    two_walls.press(Qt.Key.Key_Right)
    assert _name_shown(two_walls) == "B"


def test_a_click_goes_to_a_face(two_walls: Person) -> None:
    two_walls.click(_button(two_walls, "A"))

    assert _name_shown(two_walls) == "A"


def test_faces_are_to_scale(two_walls: Person) -> None:
    wide, narrow = _button(two_walls, "A"), _button(two_walls, "B")

    assert (wide.width() - 8) / (narrow.width() - 8) == pytest.approx(3600 / 2400, rel=0.03)


def test_a_corner_is_set_and_its_name_is_heard(two_walls: Person) -> None:
    two_walls.click(_button(two_walls, "A"))
    two_walls.app.faces.set_corner(Corner.INSIDE)

    assert "inside corner" in _button(two_walls, "A").accessibleName()
    marks = two_walls.app.strip.findChildren(CornerMark)
    assert any("A meets at an inside corner B" in mark.toolTip() for mark in marks)


def test_a_face_moves_round_the_room(two_walls: Person) -> None:
    two_walls.press(Qt.Key.Key_Left, Keys.ControlModifier | Keys.ShiftModifier)

    assert _names(two_walls) == ["B", "A"]


def test_a_face_is_copied_and_deleted(two_walls: Person) -> None:
    two_walls.app.faces.copy()
    assert _names(two_walls) == ["A", "B", "C"]

    two_walls.app.faces.delete()
    assert _names(two_walls) == ["A", "B"]


def test_a_job_is_left_with_no_face_and_goes_on(two_walls: Person) -> None:
    two_walls.app.faces.delete()
    two_walls.app.faces.delete()
    assert two_walls.shown.face == ""

    two_walls.press(Qt.Key.Key_N, Keys.ControlModifier | Keys.ShiftModifier)
    two_walls.type("1200")
    two_walls.press(Qt.Key.Key_Tab)
    two_walls.read("2400")
    assert _names(two_walls) == ["A"]


def test_in_a_job_without_faces_the_keys_go_to_the_button_that_adds_one(two_walls: Person) -> None:
    two_walls.app.faces.delete()
    two_walls.app.faces.delete()
    for _ in range(2):
        two_walls.press(Qt.Key.Key_F6)
    two_walls.press(Qt.Key.Key_Return)

    assert two_walls.app.frame.face_form.isVisible()
    two_walls.type("1200")
    two_walls.press(Qt.Key.Key_Tab)
    two_walls.read("2400")
    assert _names(two_walls) == ["A"]


def test_a_face_is_renamed(two_walls: Person) -> None:
    two_walls.press(Qt.Key.Key_F2)
    dialog = two_walls.app.window.findChild(QInputDialog)
    assert isinstance(dialog, QInputDialog)
    edit = dialog.findChild(QLineEdit)
    assert isinstance(edit, QLineEdit)
    edit.setText("North")
    dialog.accept()

    assert _name_shown(two_walls) == "North"


def test_a_wrong_width_is_answered_in_the_form_and_no_face_is_added(two_walls: Person) -> None:
    two_walls.press(Qt.Key.Key_N, Keys.ControlModifier | Keys.ShiftModifier)
    two_walls.read("12x")

    assert "12x" in two_walls.app.frame.face_form.trouble.text()
    assert _names(two_walls) == ["A", "B"]


def _names(person: Person) -> list[str]:
    return [face.name for face in person.shown.job.faces]


def _name_shown(person: Person) -> str:
    face = person.shown.shown_face
    assert face is not None
    return face.name


def _button(person: Person, name: str) -> FaceButton:
    buttons = person.app.strip.findChildren(FaceButton)
    return next(button for button in buttons if button.accessibleName().startswith(f"Face {name},"))
