"""Details of what is picked."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QCheckBox, QComboBox, QLineEdit, QWidget

from desktop.fields.form_rows import EdgesRow
from geometry.outlines.measured import outline_box
from shared.job import Part, Unit
from shared.trade.kinds import Kind
from tests.window import Keys, Person


@pytest.fixture
def doors(person: Person) -> Person:
    """A wall with two doors of 450 x 720 and 600 x 720; both are picked."""
    person.begin_wall("3600", "2400")
    person.draw_boxes("doo", ("0", "150", "450", "720"), ("450", "150", "600", "720"))
    person.press(Qt.Key.Key_P, Keys.AltModifier)
    person.click_at(200, 300)
    person.click_at(800, 300, Keys.ShiftModifier)
    return person


def test_fields_that_agree_show_their_value_and_others_say_several(doors: Person) -> None:
    assert _line(doors, "Height").text() == "720"
    assert _line(doors, "Width").text() == ""
    assert _line(doors, "Width").placeholderText() == "several"


def test_a_long_reading_in_inches_is_seen_from_its_start(doors: Person) -> None:
    doors.app.faces.set_unit(Unit.INCH)
    _fill(doors, "Width", '141 23/32"')
    field = _line(doors, "Width")
    doors.app.measure.canvas.setFocus()

    assert field.text() == '141 23/32"'
    assert field.cursorPosition() == 0


def test_setting_a_field_sets_all_that_are_picked_in_one_step(doors: Person) -> None:
    steps = len(doors.shown.history.past)
    _fill(doors, "Width", "500")

    assert [round(outline_box(part.outline)[2] - outline_box(part.outline)[0]) for part in _picked(doors)] == [500, 500]
    assert len(doors.shown.history.past) == steps + 1


def test_a_reading_in_another_unit_is_understood(doors: Person) -> None:
    _fill(doors, "Height", "0.8 m")

    assert _line(doors, "Height").text() == "800"


def test_a_wrong_reading_is_answered_in_words_and_changes_nothing(doors: Person) -> None:
    before = doors.shown.job
    _fill(doors, "Height", "12x")

    assert "12x" in doors.app.measure.details.fields.trouble
    assert doors.shown.job is before


def test_a_circle_that_cannot_become_oblong_says_so(doors: Person) -> None:
    doors.press(Qt.Key.Key_R, Keys.AltModifier)
    doors.read("2000", "1200", "200")
    before = doors.shown.job
    _fill(doors, "Width", "900")

    assert "arcs" in doors.app.measure.details.trouble.text()
    assert doors.shown.job is before


def test_kind_is_chosen_from_a_list(doors: Person) -> None:
    box = doors.app.measure.details.row("Kind").focusProxy()
    assert isinstance(box, QComboBox)
    box.setFocus()
    doors.type("drawer")

    assert {part.kind for part in _picked(doors)} == {Kind.DRAWER_FRONT}


def test_an_edge_that_is_not_coated_lessens_the_coat(doors: Person) -> None:
    coat = doors.shown.takeoff.totals.coated_mm2
    edges = doors.app.measure.details.row("Edges")
    assert isinstance(edges, EdgesRow)
    top = next(box for box in edges.findChildren(QCheckBox) if box.text() == "top")
    top.setFocus()
    doors.press(Qt.Key.Key_Space)

    assert doors.shown.takeoff.totals.coated_mm2 == pytest.approx(coat - (450 + 600) * 18)


def test_a_name_is_text_as_it_is_typed(doors: Person) -> None:
    _fill(doors, "Name", "=left & <b>right</b>")

    assert {part.name for part in _picked(doors)} == {"=left & <b>right</b>"}


def test_a_profile_factor_below_one_is_refused_in_words(doors: Person) -> None:
    before = doors.shown.job
    _fill(doors, "Profile", "0.5")

    assert "the profile must be from 1 to 10" in doors.app.measure.details.fields.trouble
    assert doors.shown.job is before


def test_what_was_counted_from_the_picked_parts_is_said(doors: Person) -> None:
    assert doors.app.measure.details.counted.figures["Net"].text() == "0.76 m²"


def test_every_field_is_reached_by_tab(doors: Person) -> None:
    doors.app.measure.details.focus_first()
    reached: set[QWidget] = set()
    for _ in range(40):
        focus = QApplication.focusWidget()
        assert focus is not None
        reached.add(focus)
        doors.press(Qt.Key.Key_Tab)

    rows = [row for row in doors.app.measure.details.rows if row.isVisible()]
    fields = {row.focusProxy() for row in rows if row.focusProxy() is not None}
    assert fields <= reached


def _line(person: Person, label: str) -> QLineEdit:
    line = person.app.measure.details.row(label).focusProxy()
    assert isinstance(line, QLineEdit)
    return line


def _fill(person: Person, label: str, text: str) -> None:
    line = _line(person, label)
    line.setFocus()
    line.selectAll()
    person.type(text)
    person.press(Qt.Key.Key_Return)


def _picked(person: Person) -> tuple[Part, ...]:
    return person.shown.picked_parts
