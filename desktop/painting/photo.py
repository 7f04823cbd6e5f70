"""A photo under a face or over it: its picture, the box on the face that it fills, and its opacity."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QImage, QPainter, QPainterPath, QPolygonF, QTransform

from desktop.painting.viewing import fitted
from geometry.outlines.sides import Box, Point
from geometry.photos.squaring import Homography, homography, mm_per_dot, shown_corners
from shared.errors import JobError
from shared.job import PhotoMark, View

LONG_SIDE_DOTS = 3000
"""The long side of a squared picture, at most: as fine as the photo that is kept."""

BAND_DOTS = 200
"""The height in dots of the bands in which a picture is squared. While Qt paints a band, no other thread runs Python,
so the window stands still."""


@dataclass(frozen=True, eq=False)
class PhotoLayer:
    """A picture upright on its face; `box` is (left, bottom, right, top) in mm. A layer is equal only to itself."""

    image: QImage
    box: Box
    view: View
    opacity: float = 1.0

    @property
    def to_face(self) -> QTransform:
        """The transform from dots of the picture to millimetres of the face. On a plan y goes down, as dots do."""
        left, bottom, right, top = self.box
        across, up = (right - left) / self.image.width(), (top - bottom) / self.image.height()
        if self.view is View.PLAN:
            return QTransform(across, 0.0, 0.0, up, left, bottom)
        return QTransform(across, 0.0, 0.0, -up, left, top)

    def dot(self, x: float, y: float) -> Point:
        """The dot at a point of the face."""
        back, _ = self.to_face.inverted()
        dot = back.map(QPointF(x, y))
        return dot.x(), dot.y()

    def place(self, u: float, v: float) -> Point:
        """The point of the face where a dot lies."""
        place = self.to_face.map(QPointF(u, v))
        return place.x(), place.y()


def fitted_layer(image: QImage, box: Box, view: View) -> PhotoLayer:
    """The picture as it was taken, in the middle of a box of the face and as large as fits there."""
    left, bottom, right, top = box
    size = fitted((0.0, 0.0, image.width(), image.height()), view, QRectF(0, 0, right - left, top - bottom)).m11()
    wide, high = image.width() * size / 2, image.height() * size / 2
    x, y = (left + right) / 2, (bottom + top) / 2
    return PhotoLayer(image, (x - wide, y - high, x + wide, y + high), view)


def squared_layer(image: QImage, marks: Sequence[PhotoMark], view: View) -> PhotoLayer:
    """The picture squared by its marks, as fine as the photo is between them. JobError if the marks do not square it.

    A long side of 3000 dots takes some 80 ms, so call it off the window's thread.
    """
    squared = homography(marks)
    corners = [QPointF(*corner) for corner in shown_corners(squared, marks, image.width(), image.height())]
    if not corners:
        raise JobError("its marks are outside the photo", where="photo", do="straighten the photo again")
    box = _box(squared, corners)
    scale = min(1 / mm_per_dot(marks), LONG_SIDE_DOTS / max(box[2] - box[0], box[3] - box[1]))
    wide, high = (max(round(size * scale), 1) for size in (box[2] - box[0], box[3] - box[1]))
    picture = QImage(wide, high, QImage.Format.Format_ARGB32_Premultiplied)
    picture.fill(0)
    layer = PhotoLayer(picture, box, view)
    to_picture, _ = layer.to_face.inverted()
    seen = QPainterPath()
    seen.addPolygon(QPolygonF(corners))
    with QPainter(picture) as painter:
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        for top in range(0, high, BAND_DOTS):
            painter.resetTransform()
            painter.setClipRect(0, top, wide, BAND_DOTS)
            painter.setTransform(_transform(squared) * to_picture)
            painter.setClipPath(seen, Qt.ClipOperation.IntersectClip)
            painter.drawImage(QPointF(0, 0), image)
    return layer


def paint_layer(layer: PhotoLayer, painter: QPainter, to_device: QTransform) -> None:
    """Paint the picture where it lies. `to_device` leads from millimetres of the face to the painter's units."""
    left, bottom, right, top = layer.box
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
    painter.setOpacity(layer.opacity)
    painter.drawImage(to_device.mapRect(QRectF(left, bottom, right - left, top - bottom)), layer.image)
    painter.restore()


def _box(squared: Homography, corners: Sequence[QPointF]) -> Box:
    places = [squared.to_face(corner.x(), corner.y()) for corner in corners]
    xs, ys = [x for x, _ in places], [y for _, y in places]
    return min(xs), min(ys), max(xs), max(ys)


def _transform(squared: Homography) -> QTransform:
    """The same projection in Qt's order: its rows are our columns."""
    a, b, c, d, e, f, g, h, i = squared
    return QTransform(a, d, g, b, e, h, c, f, i)
