"""A monkey at the window: it clicks, drags, types and chooses from the menus at random, and knows no sense in it."""

from collections.abc import Callable

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QAbstractButton,
    QApplication,
    QComboBox,
    QDialog,
    QFileDialog,
    QLineEdit,
    QMenu,
    QMenuBar,
    QWidget,
)

from desktop.app import App
from desktop.fields.card import Card
from desktop.measure.modes import KEYS, Mode
from desktop.measure.page import MEASURE
from desktop.window.menus import REDO, UNDO
from shared.trade.kinds import Kind
from tests.any_order import Chance, usable
from tests.window import Keys

LEAVES_THE_JOB = frozenset(("&New", "&Open...", "Open the &example", "&Close"))
"""Commands that open another job, or none."""

PRESSED = (
    *(Qt.Key.Key_Return, Qt.Key.Key_Escape, Qt.Key.Key_Backspace, Qt.Key.Key_Delete, Qt.Key.Key_Tab),
    *(Qt.Key.Key_Up, Qt.Key.Key_Down, Qt.Key.Key_Left, Qt.Key.Key_Right, Qt.Key.Key_Space, Qt.Key.Key_Insert),
)
HELD = (Keys.NoModifier, Keys.NoModifier, Keys.ShiftModifier, Keys.ControlModifier)

RUINS = ("&Delete the", "Delete the")
SPARED = 0.9
"""How often a command that ruins everything is not chosen after all, so that something stands to go on with."""

MOST_PARTS = 60
"""More parts than these only make it slow: copies of copies double them each time."""

READINGS = ("600", "0", "-35", "2.4 m", "3x450", "2400/4", '23 5/8"', "7' 10 1/2\"", "600+450", "1e9", "0.4", "12,5")
SENSE = {
    Mode.PICK: ("35 right, 20 up", "10 left", "5 down"),
    Mode.BOX: (
        "outlet 300, 1100, 120, 80",
        "cabinet 0, 150, 450, 720",
        "sink 90 by 40 at 60, 80",
        "shelf 99 by 80 centred",
    ),
    Mode.TRACE: ("200 right, 300 up, 200 left", "to 300, 900", "200 at 45", "200"),
    Mode.ROUND: ("300, 900, 60", "basin 500, 1200, 80", "99"),
    Mode.RUN: ("300 door", "above 300 pair, 200 open", "rest filler", "150 drawers 3, 200 gap, 150 panel", "900"),
    Mode.SPLIT: ("2", "3 up", "2 across", "3 reveal 4", "100, 120"),
    Mode.SET_OUT: ("300, 620, 900", "chain 300, 320", "up 870, 908", "diagonal 2700", "wall 1510", "left 2400"),
    Mode.CORNERS: ("500", "round 20", "cut 20", "rise 15", "400 at 10", "300, 900"),
    Mode.COPY_ALONG: ("2 at 150", "1 up", "1", "3 at 40 left"),
    Mode.SHIFT: ("620", "600", "455"),
}
"""In each mode what makes sense there, more or less."""

NONSENSE = (
    "10000",
    "150 l",
    "again 930",
    "wombat",
    "=1+1",
    "(600)",
    "\u00bd",
    "600\u00a0mm",
    ",,",
    "radius 1",
    "\t600 kg",
)


class Monkey:
    """Does one thing after another to a window in which a job is open; `did` says what, in order."""

    def __init__(self, app: App, seed: int) -> None:
        self.app = app
        self.did: list[str] = []
        self._chance = Chance(seed)
        self._acts: tuple[Callable[[], str], ...] = (
            *[self._click] * 8,
            *[self._drag] * 5,
            *[self._wander] * 2,
            *[self._type] * 4,
            *[self._work] * 8,
            *[self._press] * 5,
            *[self._change_mode] * 4,
            *[self._choose] * 5,
            *[self._push] * 2,
            *[self._poke] * 3,
            *[self._fill_field] * 2,
            self._change_kind,
            *[self._rest] * 3,
        )

    def do(self) -> None:
        """One thing."""
        too_many = sum(len(face.parts) for face in self.app.store.open.job.faces) > MOST_PARTS
        act = self._take_back if too_many else self._chance.one(self._acts)
        self.did.append(f"{act.__name__.strip('_')}, begun")
        self.did[-1] = act()
        # Whatever asks for a file is put away at once: a monkey must not write into anyone's folders.
        for window in QApplication.topLevelWidgets():
            if isinstance(window, QFileDialog):
                window.close()

    def calm_down(self) -> None:
        """Put away what is open over the window, and drop what was begun."""
        while popup := QApplication.activePopupWidget():
            popup.close()
        for widget in QApplication.topLevelWidgets():
            if isinstance(widget, QDialog) and widget.isVisible():
                widget.close()
        for card in self.app.window.findChildren(Card):
            card.hide()
        if self.app.store.open.page is not MEASURE:
            self.app.store.turn_to(MEASURE)
        self.app.window.activateWindow()
        self.app.measure.canvas.setFocus()
        for _ in range(3):
            QTest.keyClick(self.app.measure.canvas, Qt.Key.Key_Escape)

    def _click(self) -> str:
        place, held = self._place(), self._chance.one(HELD)
        QTest.mouseMove(self.app.measure.canvas, place)
        QTest.mouseClick(self.app.measure.canvas, Qt.MouseButton.LeftButton, held, place)
        return f"click {place.toTuple()} {held.name}"

    def _drag(self) -> str:
        places, held = [self._place() for _ in range(3)], self._chance.one(HELD)
        QTest.mousePress(self.app.measure.canvas, Qt.MouseButton.LeftButton, held, places[0])
        for place in places:
            QTest.mouseMove(self.app.measure.canvas, place)
        QTest.mouseRelease(self.app.measure.canvas, Qt.MouseButton.LeftButton, held, places[-1])
        return f"drag {[place.toTuple() for place in places]} {held.name}"

    def _wander(self) -> str:
        place = self._place()
        QTest.mouseMove(self.app.measure.canvas, place)
        return f"move to {place.toTuple()}"

    def _type(self) -> str:
        """Any line, wherever the keys are; mostly Return after it."""
        text, ends = self._line(), self._chance.happens(0.8)
        self._enter(text, ends=ends)
        return f"type {text!r}{' and Return' if ends else ''}"

    def _work(self) -> str:
        """A line over the face that makes sense in the mode, more or less."""
        self.app.measure.line.edit.setFocus()
        self.app.measure.line.edit.selectAll()
        text = self._chance.one(SENSE[self.app.hand.mode])
        self._enter(text, ends=True)
        return f"work by {text!r}"

    def _enter(self, text: str, *, ends: bool) -> None:
        for letter in text:
            QTest.keyClicks(self._focus, letter)
        if ends:
            QTest.keyClick(self._focus, Qt.Key.Key_Return)

    def _press(self) -> str:
        key, held = self._chance.one(PRESSED), self._chance.one(HELD)
        QTest.keyClick(self._focus, key, held)
        return f"press {key.name} {held.name}"

    def _change_mode(self) -> str:
        keys = self._chance.one((*KEYS.values(), "Alt+A"))
        QTest.keySequence(self._focus, QKeySequence(keys))
        return f"press {keys}"

    def _choose(self) -> str:
        """Any command of the menus that can be used now."""
        open_now = [action for action in self._commands() if action.isEnabled()]
        action = self._chance.one(open_now)
        words = action.text()
        if words.startswith(RUINS) and self._chance.happens(SPARED):
            return f"think better of {words}"
        action.trigger()
        return f"choose {words}"

    def _push(self) -> str:
        """Any button in sight."""
        inside = usable(self.app.window, QAbstractButton)
        buttons = [button for button in inside if not button.visibleRegion().isEmpty()]
        button = self._chance.one(buttons)
        words = button.text() or button.accessibleName()
        QTest.mouseClick(button, Qt.MouseButton.LeftButton)
        return f"push {words}"

    def _poke(self) -> str:
        """Any place of the window but the menu bar."""
        window = self.app.window
        place = QPoint(self._chance.below(window.width()), self._chance.below(window.height()))
        widget = window.childAt(place)
        if widget is None or isinstance(widget, QMenuBar):
            return "poke at nothing"
        words = f"{type(widget).__name__} {widget.accessibleName()}"
        QTest.mouseClick(widget, Qt.MouseButton.LeftButton, Keys.NoModifier, widget.mapFrom(window, place))
        return f"poke at {words}"

    def _fill_field(self) -> str:
        """Type a line into any field in sight."""
        fields = usable(self.app.window, QLineEdit)
        if not fields:
            return "found no field"
        field, text = self._chance.one(fields), self._line()
        words = field.accessibleName()
        field.setFocus()
        field.selectAll()
        QTest.keyClicks(field, text)
        QTest.keyClick(self._focus, self._chance.one((Qt.Key.Key_Return, Qt.Key.Key_Tab, Qt.Key.Key_Escape)))
        return f"fill {words} with {text!r}"

    def _change_kind(self) -> str:
        """Another value in any chooser in sight."""
        choosers = usable(self.app.window, QComboBox)
        if not choosers:
            return "found no chooser"
        chooser = self._chance.one(choosers)
        words = chooser.accessibleName()
        chooser.setFocus()
        QTest.keyClick(chooser, self._chance.one((Qt.Key.Key_Up, Qt.Key.Key_Down)))
        return f"change {words}"

    def _take_back(self) -> str:
        self.calm_down()
        QTest.keyClick(self.app.measure.canvas, Qt.Key.Key_Z, Keys.ControlModifier)
        return "take back"

    def _rest(self) -> str:
        self.calm_down()
        return "rest"

    def _line(self) -> str:
        kind = self._chance.one(tuple(Kind))
        head = self._chance.one(("", "", "", f"{kind.value} "))
        some = ", ".join(self._chance.one(READINGS) for _ in range(1 + self._chance.below(4)))
        sense = self._chance.one(self._chance.one(tuple(SENSE.values())))
        return head + self._chance.one((some, sense, self._chance.one(NONSENSE)))

    def _commands(self) -> list[QAction]:
        menus = self.app.window.findChildren(QMenu)
        actions = [action for menu in menus for action in menu.actions() if not action.isSeparator()]
        # Undo is for the end; it is tried out here too, but not so often that nothing is ever drawn.
        gone = LEAVES_THE_JOB if self._chance.happens(0.3) else LEAVES_THE_JOB | {UNDO, REDO}
        return [action for action in actions if action.menu() is None and not _is_any(action, gone)]

    def _place(self) -> QPoint:
        """A place on the face, often one of a few, so that things come to touch."""
        canvas = self.app.measure.canvas
        if self._chance.happens(0.5):
            return QPoint(
                canvas.width() * (1 + self._chance.below(7)) // 8, canvas.height() * (1 + self._chance.below(7)) // 8
            )
        return QPoint(self._chance.below(canvas.width()), self._chance.below(canvas.height()))

    @property
    def _focus(self) -> QWidget:
        return QApplication.focusWidget() or self.app.window


def _is_any(action: QAction, words: frozenset[str]) -> bool:
    """Whether it is a command of these words; undo and redo say more than their own."""
    text = action.text()
    return text in words or (text.split(" ")[0] in words and text.split(" ")[0] in (UNDO, REDO))
