"""A list from which one of several values is chosen."""

from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QComboBox


class Chooser(QComboBox):
    """A list to choose from. It ignores the wheel, so that scrolling a form changes nothing in it."""

    def wheelEvent(self, event: QWheelEvent) -> None:
        event.ignore()
