"""The canvas: the widget that shows one face, from near or far, and says where the hand is.

It edits nothing. `desktop.measure.hand` hears it and gives what it hears to a gesture.
"""

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
    QNativeGestureEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QWidget

from desktop.canvas.backing import Backing, Sight
from desktop.canvas.preview import paint_preview
from desktop.canvas.summary import summary
from desktop.gestures.gesture import REACH_DOTS, Held
from desktop.gestures.preview import NOTHING, Preview
from desktop.look.palette import Look
from desktop.painting.drawing import PaintOptions, paint_picked
from desktop.painting.photo import PhotoLayer
from desktop.painting.viewing import Glass
from geometry.outlines.sides import Box
from shared.drawing import Drawing
from shared.job import View
from takeoff.drawing.sizes import sizes_box

MARGIN_PX = 56
"""The margin round a face seen whole: room for a hand that draws beyond the face."""

SIZES_MARGIN_PX = 12
"""The margin round a face that is shown with its sizes: room for half the height of their numbers."""

ZOOM_STEP = 1.25
ZOOM_PER_DEGREE_EIGHTH = 1.0015
"""The zoom for each eighth of a degree that a wheel turns, as Qt counts: one usual notch, 120, zooms by a fifth."""

PAN_PER_DEGREE_EIGHTH = 0.4
NUDGE_MM = 1.0
FAR_NUDGE_MM = 10.0

_WAYS = {
    Qt.Key.Key_Left: (-1.0, 0.0),
    Qt.Key.Key_Right: (1.0, 0.0),
    Qt.Key.Key_Up: (0.0, 1.0),
    Qt.Key.Key_Down: (0.0, -1.0),
}
_NO_TEXT = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier | Qt.KeyboardModifier.MetaModifier


class Canvas(QWidget):
    """Shows a drawing. Its signals give points as (x, y) in millimetres of the face, with the keys that are `Held`.

    Two fingers or a wheel move the face. With Ctrl, or by pinching, they zoom. The middle button drags the face, and so
    does the left one while Space is held.
    """

    pressed = Signal(object, object)
    pointed = Signal(object, object)
    released = Signal(object, object)
    typed = Signal(str)
    entered = Signal()
    took_back = Signal()
    cancelled = Signal()
    deleted = Signal()
    inserted = Signal()
    nudged = Signal(float, float)
    zoomed = Signal()

    def __init__(self, look: Look, parent: QWidget | None = None, *, margin_px: int = MARGIN_PX) -> None:
        super().__init__(parent)
        self._look = look
        self._margin_px = margin_px
        self._drawing: Drawing | None = None
        self._options = PaintOptions()
        self._photo: PhotoLayer | None = None
        self._preview = NOTHING
        self._glass = Glass()
        self._backing = Backing()
        self._whole = True
        self._fitted: Box | None = None
        self._still = False
        self._hand: QPointF | None = None
        self._cursor_before = self.cursor()
        self._space = False
        self._pressed = False
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setMinimumSize(200, 150)
        self.setAccessibleName("Face")

    @property
    def reach_mm(self) -> float:
        """How near, in millimetres, the hand must come to what it means."""
        return REACH_DOTS / self._glass.scale

    @property
    def glass(self) -> Glass:
        """How the face is looked at."""
        return self._glass

    def show_drawing(self, drawing: Drawing | None) -> None:
        """Show this drawing, or none. A face other than the one before is shown whole."""
        before = self._drawing
        self._drawing = drawing
        if drawing is not None:
            if before is None or before.face != drawing.face:
                self.zoom_whole()
            else:
                self._fit_again()
        self._describe()
        self.update()

    def show_photo(self, photo: PhotoLayer | None) -> None:
        """Show this photo under the face, or no photo."""
        if photo is not self._photo:
            self._photo = photo
            self.update()

    def set_options(self, options: PaintOptions) -> None:
        """Show as much of the face as these options say."""
        if options != self._options:
            resized = options.sizes != self._options.sizes
            self._options = options
            self._describe()
            self.update()
            if resized and self._whole:
                self.zoom_whole()

    def show_preview(self, preview: Preview, *, still: bool = False) -> None:
        """Show what a gesture would do. `still` keeps the face where it is, even if the gesture reaches beyond it."""
        self._still = still
        if preview != self._preview:
            self._preview = preview
            self.update()
        self._fit_again()

    def zoom_in(self) -> None:
        """Zoom in about the middle of the canvas."""
        self._zoom(ZOOM_STEP, QRectF(self.rect()).center())

    def zoom_out(self) -> None:
        """Zoom out about the middle of the canvas."""
        self._zoom(1 / ZOOM_STEP, QRectF(self.rect()).center())

    def zoom_whole(self) -> None:
        """Show the whole face, now and after each change of the canvas's size."""
        if self._drawing is not None:
            self._fitted = box = self._drawing.box
            margin = SIZES_MARGIN_PX if self._options.sizes else self._margin_px
            target = QRectF(self.rect()).adjusted(margin, margin, -margin, -margin)
            around = sizes_box(box) if self._options.sizes else box
            self._look_through(Glass.on(around, self._drawing.view, target))
        self._whole = True

    def sizeHint(self) -> QSize:
        return QSize(640, 440)

    def paintEvent(self, event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            self._paint(painter)

    def resizeEvent(self, event: QResizeEvent) -> None:
        if self._whole:
            self.zoom_whole()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        if event.button() == Qt.MouseButton.MiddleButton or (self._space and self._is_left(event)):
            self._take(event.position())
        elif self._is_left(event):
            self._pressed = True
            self.pressed.emit(self._point(event), held(event))

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if self._hand is not None:
            self._pan(event.position() - self._hand)
            self._hand = event.position()
        else:
            self.pointed.emit(self._point(event), held(event))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if self._hand is not None:
            self._let_go()
        elif self._pressed and self._is_left(event):
            self._pressed = False
            self.released.emit(self._point(event), held(event))

    def wheelEvent(self, event: QWheelEvent) -> None:
        event.accept()
        turned, slid = event.angleDelta(), event.pixelDelta()
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self._zoom(ZOOM_PER_DEGREE_EIGHTH ** turned.y(), event.position())
        elif not slid.isNull():
            self._pan(QPointF(slid))
        elif not turned.isNull():
            self._pan(QPointF(turned) * PAN_PER_DEGREE_EIGHTH)

    def event(self, event: QEvent) -> bool:
        if isinstance(event, QNativeGestureEvent) and event.gestureType() == Qt.NativeGestureType.ZoomNativeGesture:
            self._zoom(1 + event.value(), event.position())
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if not (self._obey(event) or self._nudge(event) or self._pass_text_on(event)):
            super().keyPressEvent(event)

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Space and not event.isAutoRepeat():
            self._space = False
        super().keyReleaseEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        self._space = False
        self.update()

    def _paint(self, painter: QPainter) -> None:
        if self._drawing is None:
            painter.fillRect(self.rect(), QColor(self._look.paper))
            return
        options = self._options._replace(picked=frozenset())
        view = self._glass.to_device
        sight = Sight(self.size(), self.devicePixelRatioF(), view, self._look, options, self.font(), self._photo)
        painter.drawPixmap(0, 0, self._backing.picture(self._drawing, sight))
        handles = not self._preview.marks
        paint_picked(self._drawing, painter, view, self._look, self._options.picked, handles=handles)
        paint_preview(self._preview, self._drawing.unit, painter, view, self._look)
        if self.hasFocus():
            painter.setPen(QPen(QColor(self._look.accent), 2))
            painter.drawRect(self.rect().adjusted(1, 1, -1, -1))

    def _obey(self, event: QKeyEvent) -> bool:
        """Obey a key that means the same wherever the hand is; False for another key."""
        key, ctrl = event.key(), event.modifiers() & Qt.KeyboardModifier.ControlModifier
        if ctrl:
            zooms = {
                Qt.Key.Key_Plus: self.zoom_in,
                Qt.Key.Key_Equal: self.zoom_in,
                Qt.Key.Key_Minus: self.zoom_out,
                Qt.Key.Key_0: self.zoom_whole,
            }
            zoom = zooms.get(Qt.Key(key))
            if zoom is not None:
                zoom()
            return zoom is not None
        said = {
            Qt.Key.Key_Return: self.entered,
            Qt.Key.Key_Enter: self.entered,
            Qt.Key.Key_Backspace: self.took_back,
            Qt.Key.Key_Escape: self.cancelled,
            Qt.Key.Key_Delete: self.deleted,
            Qt.Key.Key_Insert: self.inserted,
        }.get(Qt.Key(key))
        if said is not None:
            said.emit()
        elif key == Qt.Key.Key_Space:
            self._space = True
        return said is not None or key == Qt.Key.Key_Space

    def _nudge(self, event: QKeyEvent) -> bool:
        way = _WAYS.get(Qt.Key(event.key()))
        if way is None or event.modifiers() & _NO_TEXT:
            return False
        far = event.modifiers() & Qt.KeyboardModifier.ShiftModifier
        by_mm = FAR_NUDGE_MM if far else NUDGE_MM
        up = -1.0 if self._glass.view is View.PLAN else 1.0
        self.nudged.emit(way[0] * by_mm, way[1] * by_mm * up)
        return True

    def _pass_text_on(self, event: QKeyEvent) -> bool:
        text = event.text()
        if not text.isprintable() or not text or event.modifiers() & _NO_TEXT:
            return False
        self.typed.emit(text)
        return True

    def _point(self, event: QMouseEvent) -> tuple[float, float]:
        return self._glass.in_mm(event.position())

    def _is_left(self, event: QMouseEvent) -> bool:
        return event.button() == Qt.MouseButton.LeftButton

    def _take(self, place: QPointF) -> None:
        self._hand = place
        self._cursor_before = self.cursor()
        self.setCursor(Qt.CursorShape.ClosedHandCursor)

    def _let_go(self) -> None:
        self._hand = None
        self.setCursor(self._cursor_before)

    def _fit_again(self) -> None:
        """Keep a face whole in view when it grows, but not under a hand that is drawing."""
        if self._drawing is not None and self._whole and not self._still and self._drawing.box != self._fitted:
            self.zoom_whole()

    def _pan(self, by: QPointF) -> None:
        self._whole = False
        self._look_through(self._glass.panned(by))

    def _zoom(self, factor: float, about: QPointF) -> None:
        if factor != 1.0:
            self._whole = False
            self._look_through(self._glass.zoomed(factor, about))

    def _look_through(self, glass: Glass) -> None:
        self._glass = glass
        self.update()
        self.zoomed.emit()

    def _describe(self) -> None:
        """Say in the name and description what stands on the face: a painted face is silent to screen readers."""
        if self._drawing is not None:
            name, words = summary(self._drawing, self._options.picked)
            if name != self.accessibleName():
                self.setAccessibleName(name)
            if words != self.accessibleDescription():
                self.setAccessibleDescription(words)


def held(event: QMouseEvent) -> Held:
    """The keys that are held while the hand points."""
    modifiers = event.modifiers()
    return Held(
        shift=bool(modifiers & Qt.KeyboardModifier.ShiftModifier),
        free=bool(modifiers & Qt.KeyboardModifier.ControlModifier),
    )
