"""How a face is looked at: from its millimetres to places on a screen or sheet, and back."""

from typing import NamedTuple

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QTransform

from geometry.outlines.sides import Box
from shared.job import View

LEAST_SIDE_MM = 1.0
"""A drawing with nothing on it, or a line, is shown as if it were this large."""


def to_device(view: View, scale: float, origin: QPointF) -> QTransform:
    """The transform that puts the face's origin at `origin` and makes one millimetre `scale` long.

    An elevation has y up. A plan is seen from above with its wall at the top, so its y, which goes out from the wall,
    goes down. Only then does its x go to the right, as it does for a person who faces the wall.
    """
    up = -scale if view is View.ELEVATION else scale
    return QTransform(scale, 0.0, 0.0, up, origin.x(), origin.y())


def fitted(box: Box, view: View, target: QRectF, scale: float | None = None) -> QTransform:
    """The transform that puts the box in the middle of `target`, as large as fits if no `scale` is given."""
    left, bottom, right, top = box
    width = max(right - left, LEAST_SIDE_MM)
    height = max(top - bottom, LEAST_SIDE_MM)
    size = scale if scale is not None else min(target.width() / width, target.height() / height)
    centred = to_device(view, size, QPointF(0, 0)).map(QPointF((left + right) / 2, (bottom + top) / 2))
    return to_device(view, size, target.center() - centred)


def in_mm(place: QPointF, transform: QTransform) -> tuple[float, float]:
    """The point of the face that is shown at `place`."""
    back, _ = transform.inverted()
    point = back.map(place)
    return point.x(), point.y()


EMPTY_FACE: Box = (0.0, 0.0, 3600.0, 2400.0)
"""The box that is shown of a face with nothing on it: room for a usual wall (common practice, no source)."""

SMALLEST_SCALE = 0.005
GREATEST_SCALE = 50.0
"""The limits of zooming, in pixels a millimetre: 100 m of wall on a screen; a tenth of a millimetre as five pixels."""


class Glass(NamedTuple):
    """How a face is looked at: `scale` in pixels a millimetre, and where its origin stands, `x` and `y` in pixels."""

    view: View = View.ELEVATION
    scale: float = 0.2
    x: float = 0.0
    y: float = 0.0

    @staticmethod
    def on(box: Box, view: View, target: QRectF) -> "Glass":
        """The glass that shows the whole box in the middle of `target`; EMPTY_FACE for a box with no size."""
        empty = box[2] - box[0] < LEAST_SIDE_MM and box[3] - box[1] < LEAST_SIDE_MM
        transform = fitted(EMPTY_FACE if empty else box, view, _at_least_a_pixel(target))
        return Glass(view, transform.m11(), transform.dx(), transform.dy())

    @property
    def to_device(self) -> QTransform:
        """From millimetres to pixels."""
        return to_device(self.view, self.scale, QPointF(self.x, self.y))

    def in_mm(self, place: QPointF) -> tuple[float, float]:
        """The point of the face at a place of the canvas."""
        return in_mm(place, self.to_device)

    def panned(self, by: QPointF) -> "Glass":
        """The glass moved by so many pixels."""
        return self._replace(x=self.x + by.x(), y=self.y + by.y())

    def zoomed(self, factor: float, about: QPointF) -> "Glass":
        """The glass nearer by a factor, within the limits; the point of the face at `about` stays there."""
        scale = min(max(self.scale * factor, SMALLEST_SCALE), GREATEST_SCALE)
        share = scale / self.scale
        x, y = about.x() + (self.x - about.x()) * share, about.y() + (self.y - about.y()) * share
        return Glass(self.view, scale, x, y)


def _at_least_a_pixel(target: QRectF) -> QRectF:
    """The box, at least one pixel wide and high: a window may be smaller than its own margins."""
    wide, high = max(target.width(), 1.0), max(target.height(), 1.0)
    centre = target.center()
    return QRectF(centre.x() - wide / 2, centre.y() - high / 2, wide, high)
