"""Fields in which a value is typed: what one types into a field that one has just come to replaces what stood there."""

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QFocusEvent, QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLineEdit, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from desktop.fields.form_rows import LevelRow
from desktop.fields.length import LengthField
from desktop.fields.typed import TextLine
from shared.job import Unit

LEFT = Qt.MouseButton.LeftButton


class Form(QWidget):
    """Two fields one under the other: a length in inches and a name."""

    def __init__(self) -> None:
        super().__init__()
        self.length, self.name = LengthField("Width", self), TextLine(self)
        column = QVBoxLayout(self)
        for field in (self.name, self.length):
            column.addWidget(field)
        self.length.show_length(94.5 * 25.4, Unit.INCH)
        self.name.setText("Wall A")


@pytest.fixture
def form(qtbot: QtBot) -> Form:
    form = Form()
    qtbot.addWidget(form)
    form.resize(320, 120)
    form.show()
    form.activateWindow()
    qtbot.waitUntil(form.isActiveWindow)
    form.name.setFocus()
    return form


def spot(field: QLineEdit, place: int) -> QPoint:
    """Where the hand points between two letters of the field."""
    field.setCursorPosition(place)
    return field.cursorRect().center()


def twice(field: QLineEdit, at: QPoint) -> None:
    """A double click, as a window hears it."""
    QTest.mouseClick(field, LEFT, pos=at)
    here = QPointF(at)
    for kind in (QEvent.Type.MouseButtonDblClick, QEvent.Type.MouseButtonRelease):
        held = LEFT if kind is QEvent.Type.MouseButtonDblClick else Qt.MouseButton.NoButton
        there = QPointF(field.mapToGlobal(at))
        QApplication.sendEvent(field, QMouseEvent(kind, here, there, LEFT, held, Qt.KeyboardModifier.NoModifier))


def test_a_click_into_a_field_selects_all_and_the_next_one_puts_the_cursor(form: Form) -> None:
    at = spot(form.length, 1)
    QTest.mouseClick(form.length, LEFT, pos=at)
    assert form.length.selectedText() == form.length.text() != ""
    QTest.qWait(QApplication.doubleClickInterval() + 50)  # one more click soon after would be a double click
    QTest.mouseClick(form.length, LEFT, pos=at)
    assert (form.length.selectedText(), form.length.cursorPosition()) == ("", 1)


@pytest.mark.parametrize("reason", [Qt.FocusReason.OtherFocusReason, Qt.FocusReason.TabFocusReason])
def test_a_field_that_the_program_or_a_key_puts_one_into_is_typed_over(form: Form, reason: Qt.FocusReason) -> None:
    form.length.setFocus(reason)
    QTest.keyClicks(form.length, "4")
    assert form.length.text() == "4"


def test_a_first_click_drawn_over_some_letters_selects_them(form: Form) -> None:
    start, end = spot(form.name, 0), spot(form.name, 4)
    form.length.setFocus()
    QTest.mousePress(form.name, LEFT, pos=start)
    QTest.mouseMove(form.name, end)
    QTest.mouseRelease(form.name, LEFT, pos=end)
    assert form.name.selectedText() in {"Wall", form.name.text()}


def test_a_double_click_takes_a_length_whole_and_one_word_of_a_name(form: Form) -> None:
    twice(form.length, spot(form.length, 1))
    assert form.length.selectedText() == form.length.text() == '94 1/2"'
    form.name.setFocus()
    twice(form.name, spot(form.name, 1))
    assert form.name.selectedText() == "Wall"


def test_what_is_shown_anew_meanwhile_is_still_typed_over(form: Form) -> None:
    form.length.setFocus()
    for length_mm in (94.5 * 25.4, 254.0):
        form.length.show_length(length_mm, Unit.INCH)
        assert form.length.selectedText() == form.length.text()
    QTest.keyClicks(form.length, "4")
    assert form.length.text() == "4"


def test_who_comes_back_from_a_menu_goes_on_where_they_were(form: Form) -> None:
    form.name.setFocus()
    form.name.setSelection(0, 4)
    for kind in (QEvent.Type.FocusOut, QEvent.Type.FocusIn):
        QApplication.sendEvent(form.name, QFocusEvent(kind, Qt.FocusReason.PopupFocusReason))
    assert form.name.selectedText() == "Wall"


def test_a_level_clicked_into_is_typed_over(form: Form) -> None:
    row = LevelRow("Layer", "level")
    row.setParent(form)
    row.move(200, 0)
    row.show()
    digits = row.edit.lineEdit()
    QTest.mouseClick(digits, LEFT, pos=spot(digits, 1))
    QTest.keyClicks(row.edit, "2")
    assert digits.text() == "2"
