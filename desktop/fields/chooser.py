"""One of several, to choose from."""

from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QComboBox


class Chooser(QComboBox):
    """A turning wheel goes past it: scrolling a form changes nothing in it."""

    def wheelEvent(self, event: QWheelEvent) -> None:
        event.ignore()
