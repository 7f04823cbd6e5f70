"""The page Measure: the modes, the face with the reading line under it, and the details of the picked parts."""

from PySide6.QtWidgets import QFrame, QHBoxLayout, QVBoxLayout, QWidget

from desktop.canvas.board import Canvas
from desktop.measure.details import Details
from desktop.measure.modes import Modes
from desktop.measure.reading_line import ReadingLine


class MeasurePage(QWidget):
    """Lays out the views of the page; `Hand` does what happens in them."""

    def __init__(
        self, modes: Modes, canvas: Canvas, line: ReadingLine, details: Details, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        middle = QFrame(self)
        middle.setObjectName("paper")
        column = QVBoxLayout(middle)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(canvas, 1)
        column.addWidget(line)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        row.addWidget(modes)
        row.addWidget(middle, 1)
        row.addWidget(details)
