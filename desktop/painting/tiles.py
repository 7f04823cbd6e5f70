"""The grout lines of tiled parts, which show their own tiles instead of the pattern of their kind."""

from collections.abc import Callable, Iterable, Mapping, Sequence

from PySide6.QtCore import QLineF, QRectF
from PySide6.QtGui import QPainter, QTransform

from desktop.painting.paths import line_shape
from shared.drawing import Line, Role

Grout = Mapping[str, Sequence[Line]]
"""The grout lines of each tiled part."""


def grout_of(lines: Iterable[Line]) -> Grout:
    """The grout lines among those of a drawing; nothing for a part that shows none."""
    grout: dict[str, list[Line]] = {}
    for line in lines:
        if line.role is Role.GROUT:
            grout.setdefault(line.parts[0], []).append(line)
    return grout


def paint_grout(
    lines: Iterable[Line], painter: QPainter, to_device: QTransform, is_seen: Callable[[QRectF], bool]
) -> None:
    """Draw those lines, in the painter's pen, of which `is_seen` says of a box round them, on the face, that it is."""
    ends = (line.path for line in lines if is_seen(line_shape(line.path).box))
    painter.drawLines([to_device.map(QLineF(one.x, one.y, other.x, other.y)) for one, other in ends])
