"""Sides of a plan that run along walls."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox

from desktop.measure.ties_form import TieRow
from shared.job import Tie
from tests.window import Keys, Person


@pytest.fixture
def benchtop(person: Person) -> Person:
    """A wall A of 3600, and a plan B whose benchtop of 3600 x 600 is picked."""
    person.begin_wall("3600", "2400")
    person.press(Qt.Key.Key_N, Keys.ControlModifier | Keys.ShiftModifier)
    form = person.app.frame.face_form
    form.view.setFocus()
    person.press(Qt.Key.Key_Down)
    form.width_field.setFocus()
    person.type("3600")
    person.press(Qt.Key.Key_Tab)
    person.read("600")
    person.press(Qt.Key.Key_A, Keys.ControlModifier)
    return person


def test_a_side_is_tied_to_a_wall_over_its_length(benchtop: Person) -> None:
    _choose(_back(benchtop).wall, "A")

    wall, plan = benchtop.shown.job.faces
    assert plan.ties == (Tie(plan.parts[0].id, 0, wall.id, 0.0, 3600.0),)
    assert _back(benchtop).wall.currentText() == "A"


def test_a_tied_side_begins_where_it_is_said_to(benchtop: Person) -> None:
    _choose(_back(benchtop).wall, "A")
    start = _back(benchtop).start
    start.setFocus()
    start.selectAll()
    benchtop.read("300")

    (tie,) = benchtop.shown.job.faces[1].ties
    assert (tie.start_mm, tie.end_mm) == (300.0, 3900.0)


def test_a_side_is_untied_again(benchtop: Person) -> None:
    _choose(_back(benchtop).wall, "A")
    _choose(_back(benchtop).wall, "nowhere")

    assert benchtop.shown.job.faces[1].ties == ()


def test_nothing_is_asked_about_ties_on_a_wall(benchtop: Person) -> None:
    benchtop.app.store.show_face(benchtop.shown.job.faces[0].id)
    benchtop.press(Qt.Key.Key_A, Keys.ControlModifier)

    assert not benchtop.app.measure.details.ties.isVisible()


def test_nothing_is_asked_about_ties_of_a_hole(benchtop: Person) -> None:
    benchtop.draw_boxes("cut", ("1200", "80", "780", "440"))

    assert not benchtop.app.measure.details.ties.isVisible()


def _back(person: Person) -> TieRow:
    return person.app.measure.details.ties.rows[0]


def _choose(box: QComboBox, words: str) -> None:
    box.setFocus()
    box.setCurrentText(words)
    box.activated.emit(box.currentIndex())
