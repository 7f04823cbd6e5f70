"""What the tests share that do things in any order: chance, what of a window is used and how, and what must hold after.

The same seed does the same.
"""

import copy
from collections.abc import Callable, Sequence
from typing import TypeVar

from PySide6.QtCore import QRandomGenerator, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QLineEdit, QWidget

from desktop.gestures.gesture import Done, Gesture
from geometry.checking import check_outlines
from shared.checks.job import check_job
from shared.errors import RecoatError
from shared.job import Job
from tests.window import Person

Thing = TypeVar("Thing")
Some = TypeVar("Some", bound=QWidget)


class Chance:
    """What decides between things."""

    def __init__(self, seed: int) -> None:
        self._numbers = QRandomGenerator(seed)

    def one(self, things: Sequence[Thing]) -> Thing:
        """One of them."""
        return things[self.below(len(things))]

    def below(self, end: int) -> int:
        """A whole number from 0 on."""
        return self._numbers.bounded(end)

    def happens(self, share: float) -> bool:
        """Whether something happens that does so in this share of all times."""
        return self._numbers.generateDouble() < share


def usable(place: QWidget, kind: type[Some]) -> list[Some]:
    """What of a kind can be used in a place now."""
    return [widget for widget in place.findChildren(kind) if widget.isVisible() and widget.isEnabled()]


def use(widget: QWidget, chance: Chance, typed: Sequence[str], pressed: Sequence[Qt.Key], *, ends: float = 1.0) -> None:
    """Type into a field, click a button, press a key in anything else.

    `ends` is the share of lines that are ended; after the others the hand goes elsewhere in the midst of typing.
    """
    widget.setFocus()
    if isinstance(widget, QLineEdit):
        widget.selectAll()
        QTest.keyClicks(widget, chance.one(typed))
        if ends == 1.0 or chance.happens(ends):
            QTest.keyClick(widget, chance.one((Qt.Key.Key_Return, Qt.Key.Key_Tab)))
    elif isinstance(widget, QAbstractButton):
        QTest.mouseClick(widget, Qt.MouseButton.LeftButton)
    else:
        QTest.keyClick(widget, chance.one(pressed))


def check_sound(job: Job) -> None:
    """A job that holds together and can be measured; RecoatError for any other."""
    check_job(job)
    check_outlines(job)


def take_all_back(person: Person) -> Job:
    """The job once every step is undone."""
    while person.shown.history.can_undo:
        person.app.store.undo()
    return person.shown.job


def act(gesture: Gesture, name: str, *values: object, on_copy: bool = False) -> tuple[Gesture, Done | None]:
    """The gesture to go on with after one act of the hand, and what that ended with; refused acts leave it as it is.

    `on_copy` tries the act on a copy first, as the window does with typed lines.
    """
    trial = copy.copy(gesture) if on_copy else gesture
    does: Callable[..., object] = getattr(trial, name)
    try:
        came = does(*values)
    except RecoatError:
        return gesture, None
    if isinstance(came, Gesture):
        return came, None
    return trial, came if isinstance(came, Done) else None
