"""From millimetres of a face to places on a screen or sheet, and back."""

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QTransform

from shared.job import View

Box = tuple[float, float, float, float]
"""Left, bottom, right, top, mm."""

LEAST_SIDE_MM = 1.0
"""A drawing with nothing on it, or a line, is shown as if it were this large."""


def to_device(view: View, scale: float, origin: QPointF) -> QTransform:
    """The face's origin at `origin`, one millimetre `scale` long.

    An elevation has y up. A plan is seen from above with its wall at the top, so y, which runs out from the wall, goes
    down: only so does x run to the right on it as it does for who faces the wall.
    """
    up = -scale if view is View.ELEVATION else scale
    return QTransform(scale, 0.0, 0.0, up, origin.x(), origin.y())


def fitted(box: Box, view: View, target: QRectF, scale: float | None = None) -> QTransform:
    """The box in the middle of `target`; as large as fits where no `scale` is given."""
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
