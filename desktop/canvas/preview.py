"""Paints over the face what a gesture would do. The value that it paints is in `desktop.gestures.preview`."""

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPen, QTransform

from desktop.gestures.preview import Preview
from desktop.look.palette import Look
from desktop.painting.paths import line_shape, rings_shape
from desktop.painting.photo import paint_layer
from desktop.painting.sizes import paint_size
from shared.job import Unit

SHAPE_PX = 2.0
GUIDE_PX = 1.0
SPOT_PX = 9.0
DOT_PX = 7.0
WORDS_AWAY_PX = 14.0
VEIL_SHARE = 0.12


def paint_preview(preview: Preview, unit: Unit, painter: QPainter, to_device: QTransform, look: Look) -> None:
    """Paint the preview; an empty one paints nothing."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    if preview.photo is not None:
        paint_layer(preview.photo, painter, to_device)
    font = QFont(painter.font())
    accent = QColor(look.accent)
    veil = QColor(look.accent)
    veil.setAlphaF(VEIL_SHARE)
    for path in (to_device.map(rings_shape((outline,)).path) for outline in preview.outlines):
        painter.fillPath(path, veil)
        painter.strokePath(path, QPen(accent, SHAPE_PX))
    painter.strokePath(to_device.map(line_shape(preview.path).path), QPen(accent, SHAPE_PX))
    _paint_rubber(preview, painter, to_device, accent, veil)
    painter.setPen(QPen(accent, GUIDE_PX, Qt.PenStyle.DashLine))
    painter.drawLines([QLineF(to_device.map(QPointF(*a)), to_device.map(QPointF(*b))) for a, b in preview.guides])
    for size in preview.sizes:
        paint_size(size, unit, painter, to_device, look, font)
    painter.setFont(font)
    _paint_marks(preview, painter, to_device, look)
    _paint_spot(preview, painter, to_device, look)


def _paint_rubber(preview: Preview, painter: QPainter, to_device: QTransform, accent: QColor, veil: QColor) -> None:
    if preview.rubber is None:
        return
    left, bottom, right, top = preview.rubber
    box = to_device.mapRect(QRectF(left, bottom, right - left, top - bottom))
    painter.fillRect(box, veil)
    painter.setPen(QPen(accent, GUIDE_PX))
    painter.drawRect(box)


def _paint_marks(preview: Preview, painter: QPainter, to_device: QTransform, look: Look) -> None:
    """Paint the dots, and a ring round each mark on a paler, wider ring, so that it is seen on any photo."""
    for mark in preview.marks:
        place = to_device.map(QPointF(*mark))
        for colour, width in ((look.field, 3 * SHAPE_PX), (look.accent, SHAPE_PX)):
            painter.setPen(QPen(QColor(colour), width))
            painter.drawEllipse(place, SPOT_PX / 2, SPOT_PX / 2)
    painter.setPen(QPen(QColor(look.field), SHAPE_PX))
    painter.setBrush(QColor(look.accent))
    for dot in preview.dots:
        painter.drawEllipse(to_device.map(QPointF(*dot)), DOT_PX / 2, DOT_PX / 2)
    painter.setBrush(Qt.BrushStyle.NoBrush)


def _paint_spot(preview: Preview, painter: QPainter, to_device: QTransform, look: Look) -> None:
    """Paint a ring round the point snapped to, and beside it on a plate what that is."""
    if preview.spot is None:
        return
    spot = to_device.map(QPointF(*preview.spot))
    painter.setPen(QPen(QColor(look.accent), SHAPE_PX))
    painter.drawEllipse(spot, SPOT_PX / 2, SPOT_PX / 2)
    if not preview.words:
        return
    metrics = QFontMetricsF(painter.font())
    place = spot + QPointF(WORDS_AWAY_PX, -WORDS_AWAY_PX)
    plate = QRectF(place.x(), place.y() - metrics.height(), metrics.horizontalAdvance(preview.words), metrics.height())
    plate.adjust(-4.0, -2.0, 4.0, 2.0)
    window = QRectF(painter.viewport())
    plate.moveRight(min(plate.right(), window.right()))
    plate.moveTop(max(plate.top(), window.top()))
    painter.fillRect(plate, QColor(look.field))
    painter.setPen(QColor(look.ink))
    painter.drawText(plate, Qt.AlignmentFlag.AlignCenter, preview.words)
