"""Asks what to do about a file that somebody else has open, or has changed."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtWidgets import QPushButton, QWidget

from desktop.look.plain import Question
from shared.files.claim import HeldError
from shared.files.stamp import ChangedError

Then = Callable[[], None]


def ask_about_held(window: QWidget, path: Path, error: HeldError, open_copy: Then) -> None:
    """Offer a copy of a job that somebody else has open."""
    words = f"{_sentence(error.what)} A copy has no file yet: saving it asks for one."
    box = _question(window, f"{path.name} is already open.", words)
    box.setDefaultButton(_button(box, "&Open a copy", Question.ButtonRole.AcceptRole, open_copy))
    box.addButton(Question.StandardButton.Cancel)
    box.open()


def ask_about_changed(
    window: QWidget, path: Path, error: ChangedError, *, save_as: Then, replace: Then, stay: Then
) -> None:
    """Ask whether to save over what somebody else has saved."""
    words = f"{_sentence(error.what)} Replacing it loses what was saved there."
    box = _question(window, f"{path.name} has changed.", words)
    box.setDefaultButton(_button(box, "Save &as...", Question.ButtonRole.AcceptRole, save_as))
    _button(box, "&Replace it", Question.ButtonRole.DestructiveRole, replace)
    box.addButton(Question.StandardButton.Cancel)
    box.rejected.connect(stay)
    box.open()


def _question(window: QWidget, question: str, words: str) -> Question:
    box = Question(window, question, words)
    box.finished.connect(box.deleteLater)
    return box


def _button(box: Question, words: str, role: Question.ButtonRole, then: Then) -> QPushButton:
    button = box.addButton(words, role)
    button.clicked.connect(then)
    return button


def _sentence(words: str) -> str:
    return f"{words[:1].upper()}{words[1:]}."
