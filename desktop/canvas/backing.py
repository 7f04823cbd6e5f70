"""The picture behind a canvas. It is kept, and painted again only where a new drawing differs from the old."""

from typing import NamedTuple

from PySide6.QtCore import QRect, QSize
from PySide6.QtGui import QColor, QFont, QPainter, QPixmap, QRegion, QTransform

from desktop.canvas.differing import changed_boxes
from desktop.look.palette import Look
from desktop.painting.drawing import PaintOptions, paint_face
from desktop.painting.photo import PhotoLayer, paint_layer
from shared.drawing import Drawing

MOST_BOXES = 40
"""A clip of more boxes than these costs more than it saves; then one box round them all is painted."""


class Sight(NamedTuple):
    """How a drawing is looked at: the canvas's size and pixel ratio, what painting asks for, and a photo under it."""

    size: QSize
    ratio: float
    to_device: QTransform
    look: Look
    options: PaintOptions
    font: QFont
    photo: PhotoLayer | None = None


class Backing:
    """A picture of a drawing without the marks of picked parts, sharp at the screen's own pixel ratio."""

    def __init__(self) -> None:
        self._picture = QPixmap()
        self._drawing: Drawing | None = None
        self._sight: Sight | None = None

    def picture(self, drawing: Drawing, sight: Sight) -> QPixmap:
        """The picture of a drawing; only what changed since the last one is painted."""
        region = self._stale_region(drawing, sight)
        if not region.isEmpty():
            with QPainter(self._picture) as painter:
                _repaint(drawing, sight, region, painter)
        self._drawing, self._sight = drawing, sight
        return self._picture

    def _stale_region(self, drawing: Drawing, sight: Sight) -> QRegion:
        whole = QRect(0, 0, sight.size.width(), sight.size.height())
        if self._sight != sight:
            self._picture = QPixmap(sight.size * sight.ratio)
            self._picture.setDevicePixelRatio(sight.ratio)
            return QRegion(whole)
        if self._drawing is drawing:
            return QRegion()
        roles = sight.options.roles
        boxes = changed_boxes(self._drawing, drawing, sight.to_device, roles) if self._drawing else None
        return QRegion(whole) if boxes is None else _joined([box.toAlignedRect() for box in boxes]) & whole


def _joined(boxes: list[QRect]) -> QRegion:
    region = QRegion()
    for box in boxes:
        region += box
    return region if region.rectCount() <= MOST_BOXES else QRegion(region.boundingRect())


def _repaint(drawing: Drawing, sight: Sight, region: QRegion, painter: QPainter) -> None:
    painter.setClipRegion(region)
    painter.fillRect(region.boundingRect(), QColor(sight.look.paper))
    if sight.photo is not None:
        paint_layer(sight.photo, painter, sight.to_device)
    painter.setFont(sight.font)
    paint_face(drawing, painter, sight.to_device, sight.look, sight.options)
