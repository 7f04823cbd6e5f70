"""Shared by the tests that do things in any order: chance, the use of a window's widgets, and what must hold after.

The same seed makes the same choices.
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
    """Makes choices, the same ones for the same seed."""

    def __init__(self, seed: int) -> None:
        self._numbers = QRandomGenerator(seed)

    def one(self, things: Sequence[Thing]) -> Thing:
        """One of the things, each as likely as the others."""
        return things[self.below(len(things))]

    def below(self, end: int) -> int:
        """A whole number from 0 up to, but not including, `end`."""
        return self._numbers.bounded(end)

    def happens(self, share: float) -> bool:
        """Whether something happens whose share of all times is `share`, from 0 to 1."""
        return self._numbers.generateDouble() < share


def usable(place: QWidget, kind: type[Some]) -> list[Some]:
    """The widgets of this kind in a place that are visible and enabled."""
    return [widget for widget in place.findChildren(kind) if widget.isVisible() and widget.isEnabled()]


def use(widget: QWidget, chance: Chance, typed: Sequence[str], pressed: Sequence[Qt.Key], *, ends: float = 1.0) -> None:
    """Type into a field, click a button, or press a key in any other widget.

    `ends` is the share of typed lines that are ended by Return or Tab. The others are left in the midst of typing.
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
    """RecoatError for a job that does not hold together or cannot be measured."""
    check_job(job)
    check_outlines(job)


def take_all_back(person: Person) -> Job:
    """The job after every edit is undone."""
    while person.shown.history.can_undo:
        person.app.store.undo()
    return person.shown.job


def act(gesture: Gesture, name: str, *values: object, on_copy: bool = False) -> tuple[Gesture, Done | None]:
    """The gesture to go on with after one act of the hand, and what the gesture ended with; None if it goes on.

    After a refused act the gesture goes on as it was. `on_copy` tries the act on a copy first, as the window does with
    typed lines.
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
