"""Buttons that keep their width when they are the one that is open."""

from PySide6.QtGui import QFont, QFontMetrics
from PySide6.QtWidgets import QPushButton

PADDING = 32
"""The space beside a button's words, in pixels."""


def hold_width(button: QPushButton) -> None:
    """Make a button as wide as its words in bold, so that its width stays the same when its page is open."""
    bold = QFont(button.font())
    bold.setBold(True)
    button.setMinimumWidth(QFontMetrics(bold).horizontalAdvance(button.text()) + PADDING)
