"""The grout lines of tiled parts, which show their own tiles instead of the pattern of their kind."""

from collections.abc import Callable, Iterable, Mapping, Sequence

from PySide6.QtCore import QLineF, QRectF
from PySide6.QtGui import QPainter, QTransform

from desktop.painting.paths import line_shape
from shared.drawing import Line, Role

Grout = Mapping[str, Sequence[Line]]
"""The grout lines of each tiled part."""


def grout_of(lines: Iterable[Line]) -> Grout:
    """The grout lines among the lines of a drawing, by part id; a part that shows none is left out."""
    grout: dict[str, list[Line]] = {}
    for line in lines:
        if line.role is Role.GROUT:
            grout.setdefault(line.parts[0], []).append(line)
    return grout


def paint_grout(
    lines: Iterable[Line], painter: QPainter, to_device: QTransform, is_seen: Callable[[QRectF], bool]
) -> None:
    """Draw lines in the painter's pen, if they can be seen: `is_seen` says that of a box on the face round each."""
    ends = (line.path for line in lines if is_seen(line_shape(line.path).box))
    painter.drawLines([to_device.map(QLineF(one.x, one.y, other.x, other.y)) for one, other in ends])
