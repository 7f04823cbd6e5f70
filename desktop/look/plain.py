"""Text of a job, a file's name and an error as what they are: letters, in which Qt reads nothing.

Qt takes a text that looks like a page of the web for one: it then reads the file that a picture in it names, and a
pipe of that name halts the window. It takes an & for the key of a button, and "[*]" in a title for the mark of
what is not saved. `tests/desktop/look/test_plain.py` holds the whole desktop to what stands here.
"""

import re
from html import escape

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QInputDialog, QLabel, QMessageBox, QWidget

_MARK = "[*]"

_NOT_IN_FILE_NAMES = re.compile(r'[/\\:*?"<>|]|^[. ]+')
"""What leads into another folder, hides a file, or is refused by one system or another."""


class Label(QLabel):
    """A label of plain text. It stands for Qt's own everywhere."""

    def __init__(self, words: str | QWidget | None = None, parent: QWidget | None = None) -> None:
        super().__init__(parent if words is None or isinstance(words, str) else words)
        self.setTextFormat(Qt.TextFormat.PlainText)
        if isinstance(words, str):
            self.setText(words)


class Question(QMessageBox):
    """A question in plain text, and so is what it adds to it."""

    def __init__(self, window: QWidget, words: str, added: str = "") -> None:
        super().__init__(window)
        self.setIcon(QMessageBox.Icon.Question)
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setText(words)
        self.setInformativeText(added)

    def setInformativeText(self, words: str) -> None:
        super().setInformativeText(words)
        _make_plain(self)


class Asking(QInputDialog):
    """A small dialog that asks for a line or for one of several, in plain text."""

    def __init__(self, window: QWidget, words: str) -> None:
        super().__init__(window)
        self.setWindowTitle(title_words(words))
        self.setLabelText("")
        _make_plain(self)
        self.setLabelText(words)


def _make_plain(dialog: QDialog) -> None:
    """Let the labels that Qt put into a dialog of its own show plain text; it lays them out only later."""
    for label in dialog.findChildren(QLabel):
        label.setTextFormat(Qt.TextFormat.PlainText)


def tip_words(words: str) -> str:
    """Words for the small window that shows when the pointer rests on something.

    Qt looks for a "<" or an "&lt;" to tell what is a page of the web; what has neither is shown as it is.
    """
    return f'<p style="white-space: pre-wrap">{escape(words)}</p>' if "<" in words or "&lt;" in words else words


def button_words(words: str) -> str:
    """Words for a button, a box or a command, in which an & is a letter and names no key."""
    return words.replace("&", "&&")


def title_words(words: str) -> str:
    """Words for the title of a window, in which "[*]" is not the mark of what is not saved."""
    return words.replace(_MARK, _MARK + _MARK)


def file_words(words: str) -> str:
    """Words for the name that a file is offered: "Unit 3/12" is no folder with a file 12 in it."""
    return _NOT_IN_FILE_NAMES.sub("-", words)
