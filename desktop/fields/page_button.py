"""Buttons that keep their width when they are the one that is open."""

from PySide6.QtGui import QFont, QFontMetrics
from PySide6.QtWidgets import QPushButton

PADDING = 32
"""Beside the text of a page, which is bold where the page is open: no button changes its width."""


def hold_width(button: QPushButton) -> None:
    """Make a button as wide as its words are in bold: it does not change its width when it is the one that is open."""
    bold = QFont(button.font())
    bold.setBold(True)
    button.setMinimumWidth(QFontMetrics(bold).horizontalAdvance(button.text()) + PADDING)
