"""The whole window for tests, and a person who uses it by mouse and keys."""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QFileDialog, QLabel, QLineEdit, QMessageBox, QWidget
from pytestqt.qtbot import QtBot

from desktop.app import App
from desktop.look.palette import light
from desktop.start import application, put_together
from desktop.state.shown import Page, Shown
from shared.files.job import JobFile
from shared.job import Job

SOON_MS = 20_000

WITHIN_A_WORD_MS, BETWEEN_WORDS_MS = 60_000, 2
"""Letters that follow each other this fast are one word to a list, and so is what `Person.type` types."""

Keys = Qt.KeyboardModifier


WITH_SHIFT = frozenset('~!@#$%^&*()_+{}|:"<>?')
"""Signs that take Shift on a keyboard of the United States."""


class Person:
    """Uses the window by mouse and keys, as a person does. Points are millimetres of the face that is shown.

    `strokes` counts every key and every click as one, and every key held with it as one more: Alt+B is two, and so is a
    capital letter or an inch mark. Moving the mouse counts nothing; the start and the end of a drag count one each.
    """

    def __init__(self, app: App, qtbot: QtBot) -> None:
        self.app = app
        self._qtbot = qtbot
        self.strokes = 0

    @property
    def shown(self) -> Shown:
        """What the window shows."""
        return self.app.store.open

    @property
    def totals(self) -> tuple[str, ...]:
        """What the bar of totals says of areas, lengths, fronts and money."""
        return tuple(label.text() for label in self._totals)

    @property
    def tips_of_totals(self) -> tuple[str, ...]:
        """What the bar of totals says of each when the mouse rests on it."""
        return tuple(label.toolTip() for label in self._totals)

    def type(self, text: str) -> None:
        """Type into whatever has the keys. To a list the text is one word."""
        QTest.qWait(BETWEEN_WORDS_MS)
        QApplication.setKeyboardInputInterval(0)  # the first letter begins a new word
        for letter in text:
            self.strokes += 2 if letter in WITH_SHIFT or letter.isupper() else 1
            QTest.keyClicks(self._focus, letter)
            QApplication.setKeyboardInputInterval(WITHIN_A_WORD_MS)

    def press(self, key: Qt.Key, keys: Keys = Keys.NoModifier) -> None:
        """Press one key, with other keys held."""
        self._count(keys)
        QTest.keyClick(self._focus, key, keys)

    def turn_to(self, page: Page) -> None:
        """Open a page by its shortcut."""
        self.press(Qt.Key(Qt.Key.Key_1 + self.app.pages.all.index(page)), Keys.ControlModifier)

    def read(self, *readings: str) -> None:
        """Type readings, with Return after each."""
        for reading in readings:
            self.type(reading)
            self.press(Qt.Key.Key_Return)

    def leave_job(self) -> None:
        """Drop the open job and what is typed, so that the start page is shown as in a new window."""
        self.app.measure.line.clear()
        self.app.store.close_job()

    def show_anew(self, job: Job) -> None:
        """Open a job that was drawn before: nothing to undo, its first face shown, nothing picked or typed."""
        self.leave_job()
        self.app.files.show_new(JobFile(job))

    def begin_wall(self, width: str, height: str) -> None:
        """Begin a job of one wall through the first door of the start page, by typing its width and height."""
        self.click(self.app.start.new)
        self.type(width)
        self.press(Qt.Key.Key_Tab)
        self.read(height)

    def click(self, widget: QWidget) -> None:
        """Click the middle of a widget."""
        self._count()
        QTest.mouseClick(widget, Qt.MouseButton.LeftButton)

    def click_at(self, x: float, y: float, keys: Keys = Keys.NoModifier) -> None:
        """Click a point of the face."""
        self._count(keys)
        QTest.mouseMove(self.app.measure.canvas, self._pixel(x, y))
        QTest.mouseClick(self.app.measure.canvas, Qt.MouseButton.LeftButton, keys, self._pixel(x, y))

    def begin_drag(self, start: tuple[float, float], *ways: tuple[float, float]) -> None:
        """Press at a point and move the mouse to others, without letting go."""
        canvas = self.app.measure.canvas
        self._count()
        QTest.mousePress(canvas, Qt.MouseButton.LeftButton, Keys.NoModifier, self._pixel(*start))
        for way in ways:
            QTest.mouseMove(canvas, self._pixel(*way))

    def drop(self, x: float, y: float) -> None:
        """Let go of the mouse at a point."""
        self._count()
        QTest.mouseRelease(self.app.measure.canvas, Qt.MouseButton.LeftButton, Keys.NoModifier, self._pixel(x, y))

    def draw_boxes(self, kind: str, *boxes: tuple[str, str, str, str]) -> None:
        """Draw parts of a kind, each from its readings: from left, from floor, width, height."""
        self.press(Qt.Key.Key_K, Keys.AltModifier)
        self.type(kind)
        self.press(Qt.Key.Key_Return)
        self.press(Qt.Key.Key_B, Keys.AltModifier)
        for box in boxes:
            self.read(*box)

    def fill_file_dialog(self, path: Path, *, closes: bool = False) -> None:
        """Put a path into the file dialog that opens, and press Return. With `closes` the window closes after it."""
        self._qtbot.waitUntil(lambda: self._dialog() is not None, timeout=SOON_MS)
        dialog = self._dialog()
        assert dialog is not None
        edit = dialog.findChild(QLineEdit, "fileNameEdit")
        assert isinstance(edit, QLineEdit)
        edit.setText(str(path))  # as pasted: the list of completions needs a real screen
        QTest.keyClick(edit, Qt.Key.Key_Return)
        if not closes:
            self._come_back()

    def answer(self, button: QMessageBox.StandardButton, *, closes: bool = False) -> None:
        """Answer the question that opens. With `closes` the window closes after it."""
        self._qtbot.waitUntil(lambda: self._question() is not None, timeout=SOON_MS)
        question = self._question()
        assert question is not None
        self.click(question.button(button))
        if not closes:
            self._come_back()

    def wait_until(self, holds: Callable[[], bool | None]) -> None:
        """Wait until this holds, through work in the background. The test fails if it never does."""
        self._qtbot.waitUntil(holds, timeout=SOON_MS)

    @property
    def _totals(self) -> list[QLabel]:
        """The labels of the bar without the last, which says the unit or what is being done."""
        return self.app.totals.findChildren(QLabel)[:-1]

    def _count(self, held: Keys = Keys.NoModifier) -> None:
        """Count one more key or click, and the keys held with it."""
        self.strokes += 1 + held.value.bit_count()

    def _come_back(self) -> None:
        """Give the keys back to the window after a dialog. Without a window manager nobody else does."""
        self.app.window.activateWindow()
        self._qtbot.waitUntil(self.app.window.isActiveWindow, timeout=SOON_MS)

    @property
    def _focus(self) -> QWidget:
        return QApplication.focusWidget() or self.app.window

    def _dialog(self) -> QFileDialog | None:
        dialogs = self.app.window.findChildren(QFileDialog)
        return next((dialog for dialog in dialogs if dialog.isVisible()), None)

    def _question(self) -> QMessageBox | None:
        boxes = self.app.window.findChildren(QMessageBox)
        return next((box for box in boxes if box.isVisible()), None)

    def _pixel(self, x: float, y: float) -> QPoint:
        return self.app.measure.canvas.glass.to_device.map(QPointF(x, y)).toPoint()


@pytest.fixture
def app(qtbot: QtBot, tmp_path_factory: pytest.TempPathFactory) -> Iterator[App]:
    """The window on the screen, with no job open. A job that is open at the end is dropped."""
    usual_ms = QApplication.keyboardInputInterval()
    made = put_together(application(), light(), copies_in=tmp_path_factory.mktemp("copies"))
    with qtbot.waitActive(made.window):
        made.window.show()
        made.window.activateWindow()
    yield made
    QApplication.setKeyboardInputInterval(usual_ms)
    made.window.close_now()
    made.window.deleteLater()
    made.deleteLater()


@pytest.fixture
def person(app: App, qtbot: QtBot) -> Person:
    """A person in front of the window."""
    return Person(app, qtbot)
