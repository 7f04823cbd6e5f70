"""What the strip is made of: a small face, and the corner between two."""

from PySide6.QtCore import QPoint, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QContextMenuEvent, QKeyEvent, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QPushButton, QWidget

from desktop.look.palette import Look
from desktop.look.plain import tip_words
from desktop.painting.drawing import PaintOptions, paint
from desktop.painting.viewing import fitted
from shared.drawing import Drawing
from shared.job import Corner, Face, View

CAPTION = 20
EDGE = 4
LEAST_WIDTH = 44
MARK_WIDTH = 12
ARROWS = (Qt.Key.Key_Left, Qt.Key.Key_Right, Qt.Key.Key_Up, Qt.Key.Key_Down)


class FaceButton(QPushButton):
    """A button that shows one face, small, with its name under it."""

    chosen = Signal(str)
    arrow_pressed = Signal(int)
    asked_for_menu = Signal(str, QPoint)

    def __init__(self, face: Face, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._face = face
        self._look = look
        self._drawing: Drawing | None = None
        self._scale = 0.0
        self._options = PaintOptions.small()
        self.setCheckable(True)
        self.setAutoDefault(True)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        view = "wall" if face.view is View.ELEVATION else "plan"
        corner = "" if face.corner is Corner.NONE else f", {face.corner.value} corner at its right end"
        self.setAccessibleName(f"Face {_caption(face)}, {view}{corner}")
        self.setToolTip(tip_words(f"{_caption(face)}, {view}{corner}"))
        self.clicked.connect(self._choose)

    def show_drawing(self, drawing: Drawing, scale: float, options: PaintOptions) -> None:
        """Show this drawing, one millimetre `scale` pixels long."""
        if drawing is self._drawing and scale == self._scale and options == self._options:
            return
        self._drawing, self._scale, self._options = drawing, scale, options
        left, bottom, right, top = drawing.box
        picture = max(round((right - left) * scale), 2), max(round((top - bottom) * scale), 2)
        caption = self.fontMetrics().horizontalAdvance(_caption(self._face))
        self.setFixedSize(QSize(max(picture[0], caption, LEAST_WIDTH) + 2 * EDGE, picture[1] + CAPTION + 2 * EDGE))
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            self._paint(painter)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in ARROWS:
            self.arrow_pressed.emit(event.key())
        else:
            super().keyPressEvent(event)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        self.asked_for_menu.emit(self._face.id, event.globalPos())

    def _choose(self) -> None:
        self.setChecked(True)
        self.chosen.emit(self._face.id)

    def _paint(self, painter: QPainter) -> None:
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        picture = QRectF(EDGE, EDGE, self.width() - 2 * EDGE, self.height() - CAPTION - 2 * EDGE)
        if self._drawing is not None:
            transform = fitted(self._drawing.box, self._drawing.view, picture, self._scale)
            paint(self._drawing, painter, transform, self._look, self._options)
        if self.isChecked() or self.hasFocus():
            painter.setBrush(Qt.BrushStyle.NoBrush)
            width = 3.0 if self.isChecked() else 1.5
            painter.setPen(QPen(QColor(self._look.accent), width))
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(1.5, 1.5, -1.5, -CAPTION + 2), 2, 2)
        font = painter.font()
        font.setBold(self.isChecked())
        painter.setFont(font)
        painter.setPen(QColor(self._look.ink))
        caption = QRectF(0, self.height() - CAPTION, self.width(), CAPTION)
        painter.drawText(caption, Qt.AlignmentFlag.AlignCenter, _caption(self._face))


class CornerMark(QWidget):
    """Shows how a wall meets the next: an inside corner goes back between the two, an outside corner comes forward."""

    def __init__(self, face: Face, meets: Face, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._corner = face.corner
        self._look = look
        self.setFixedSize(MARK_WIDTH, 64)
        words = "does not meet" if face.corner is Corner.NONE else f"meets at an {face.corner.value} corner"
        self.setToolTip(tip_words(f"{face.name} {words} {meets.name}"))

    def paintEvent(self, event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            self._paint(painter)

    def _paint(self, painter: QPainter) -> None:
        if self._corner is Corner.NONE:
            return
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(QColor(self._look.outline), 1))
        painter.setBrush(QColor(self._look.bar))
        high, low, middle = 6.0, self.height() - CAPTION - 2.0, self.width() / 2
        back = 6.0 if self._corner is Corner.INSIDE else -5.0
        left, right = 1.0, self.width() - 1.0
        painter.drawPolygon(
            QPolygonF(
                [
                    QPointF(left, high),
                    QPointF(middle, high + back),
                    QPointF(right, high),
                    QPointF(right, low),
                    QPointF(middle, low - back),
                    QPointF(left, low),
                ]
            )
        )
        painter.drawLine(QPointF(middle, high + back), QPointF(middle, low - back))


def _caption(face: Face) -> str:
    """The name of a face, after the letter of its tags if that is another: "B · Window wall"."""
    return face.name if face.tag_letter == face.name else f"{face.tag_letter} · {face.name}"
