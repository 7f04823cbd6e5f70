"""Tags through the window: they stay with their fronts, and change only when the person asks."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QInputDialog, QLineEdit

from desktop.window.strip_parts import FaceButton
from shared.files.job import job_from_json, job_to_json
from tests.window import Keys, Person


@pytest.fixture
def row(person: Person) -> Person:
    """A wall with four doors in a row, A1 to A4."""
    person.begin_wall("3600", "2400")
    person.press(Qt.Key.Key_U, Keys.AltModifier)
    person.read("450 door, 450 door, 450 door, 450 door")
    person.press(Qt.Key.Key_P, Keys.AltModifier)
    return person


def tags(person: Person) -> list[str]:
    """The tags of the takeoff, from the leftmost front to the rightmost."""
    face = person.shown.job.faces[0]
    left = {part.id: min(vertex.x for vertex in part.outline) for part in face.parts}
    rows = [each for each in person.shown.takeoff.parts if each.tag]
    return [each.tag for each in sorted(rows, key=lambda each: left[each.id])]


def delete(person: Person, tag: str) -> None:
    person.app.store.pick(tuple(each.id for each in person.shown.takeoff.parts if each.tag == tag))
    person.app.parts.delete()


def answer(person: Person, text: str) -> None:
    dialog = person.app.window.findChild(QInputDialog)
    assert isinstance(dialog, QInputDialog)
    edit = dialog.findChild(QLineEdit)
    assert isinstance(edit, QLineEdit)
    edit.setText(text)
    dialog.accept()


def test_deleting_a_front_renames_no_other_until_the_person_asks(row: Person) -> None:
    assert tags(row) == ["A1", "A2", "A3", "A4"]
    delete(row, "A2")
    assert tags(row) == ["A1", "A3", "A4"]

    row.app.faces.renumber()
    assert tags(row) == ["A1", "A2", "A3"]
    row.press(Qt.Key.Key_Z, Keys.ControlModifier)
    assert tags(row) == ["A1", "A3", "A4"]


def test_tags_are_saved_with_the_job(row: Person) -> None:
    delete(row, "A2")
    job = job_from_json(job_to_json(row.shown.job), "saved")
    assert sorted(part.tag_number for part in job.faces[0].parts if part.tag_number) == [1, 3, 4]


def test_a_face_is_renamed_and_its_tags_stay(row: Person) -> None:
    row.app.faces.rename()
    answer(row, "Window wall")
    assert tags(row) == ["A1", "A2", "A3", "A4"]
    (button,) = row.app.strip.findChildren(FaceButton)
    assert button.accessibleName().startswith("Face A · Window wall, ")


def test_the_letter_of_the_tags_changes_when_asked(row: Person) -> None:
    row.app.faces.change_letter()
    answer(row, "K")
    assert tags(row) == ["K1", "K2", "K3", "K4"]
    assert row.shown.job.faces[0].name == "A"

    row.app.faces.change_letter()
    answer(row, "Window wall")
    assert tags(row) == ["K1", "K2", "K3", "K4"]


def test_a_face_with_a_long_name_gets_the_next_free_letter(row: Person) -> None:
    row.press(Qt.Key.Key_N, Keys.ControlModifier | Keys.ShiftModifier)
    row.app.frame.face_form.name.setText("Window wall")
    row.type("2400")
    row.press(Qt.Key.Key_Tab)
    row.read("2400")
    assert (row.shown.job.faces[1].name, row.shown.job.faces[1].letter) == ("Window wall", "B")
