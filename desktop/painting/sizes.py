"""One size of a drawing, painted as a line with a tick at either end and its length in a gap of the line."""

from PySide6.QtCore import QLineF, QPointF, QRectF
from PySide6.QtGui import QColor, QFont, QPainter, QPen, QTransform

from desktop.look.palette import Look
from desktop.look.wording import own_writing
from desktop.painting.lettering import Fitted, box_at, draw_centred, fit
from geometry.drawn.sheets import line_of_size
from shared.drawing import Size
from shared.job import Unit

LINE_PX = 1.0
TICK_PX = 5.0
GAP_PX = 5.0
"""Clear of the number on either side of it, and between a part and the lines that lead from it to its size."""

QUARTER = 90.0

SIZE_REACH_PX = 12.0
"""How far a size reaches beyond its line to either side: ticks and half the height of its number."""


def size_line(size: Size, view: QTransform) -> QLineF:
    """Where the size's line stands, in the painter's units."""
    start, end = line_of_size(size)
    return QLineF(view.map(QPointF(*start)), view.map(QPointF(*end)))


def size_box(size: Size, view: QTransform) -> QRectF:
    """The box of all that painting a size may touch, in the painter's units."""
    line = size_line(size, view)
    places = (line.p1(), line.p2(), view.map(QPointF(*size.start)), view.map(QPointF(*size.end)))
    left, right = min(place.x() for place in places), max(place.x() for place in places)
    top, bottom = min(place.y() for place in places), max(place.y() for place in places)
    reach = SIZE_REACH_PX
    return QRectF(left - reach, top - reach, right - left + 2 * reach, bottom - top + 2 * reach)


def paint_size(size: Size, unit: Unit, painter: QPainter, view: QTransform, look: Look, font: QFont) -> None:
    """Paint the size. A number that does not fit between the ticks is left out; a size of no length is not painted."""
    line = size_line(size, view)
    if line.length() < 1.0:
        return
    painter.setPen(QPen(QColor(look.accent), LINE_PX))
    painter.drawLines([*_leading_lines(size, line, view), *_ticks(line)])
    length = own_writing(unit).length(size.length_mm)
    words = fit(length, font, line.length() - 2 * GAP_PX, 2 * SIZE_REACH_PX, whole=True)
    if words is None:
        painter.drawLine(line)
        return
    painter.drawLines(_halves(line, words.width / 2 + GAP_PX))
    _draw_number(words, line, painter, look)


def _leading_lines(size: Size, line: QLineF, view: QTransform) -> list[QLineF]:
    """The lines from the measured points to the size's ends, with a gap at the points."""
    leading = (
        QLineF(view.map(QPointF(*size.start)), line.p1()),
        QLineF(view.map(QPointF(*size.end)), line.p2()),
    )
    return [QLineF(one.pointAt(GAP_PX / one.length()), one.p2()) for one in leading if one.length() > GAP_PX]


def _ticks(line: QLineF) -> list[QLineF]:
    upright = line.normalVector()
    aside = QPointF(upright.dx(), upright.dy()) * (TICK_PX / line.length())
    return [QLineF(end - aside, end + aside) for end in (line.p1(), line.p2())]


def _halves(line: QLineF, clear: float) -> list[QLineF]:
    share = max(0.0, 0.5 - clear / line.length())
    return [QLineF(line.p1(), line.pointAt(share)), QLineF(line.pointAt(1 - share), line.p2())]


def _draw_number(words: Fitted, line: QLineF, painter: QPainter, look: Look) -> None:
    """Draw the number along its line, readable from below or from the right as drafters letter.

    It stands on a plate, so that it can be read over parts too.
    """
    painter.save()
    painter.translate(line.center())
    painter.rotate(_readable(line.angle()))
    painter.fillRect(box_at(words, QPointF(0, 0)), QColor(look.paper))
    draw_centred(painter, words, QPointF(0, 0))
    painter.restore()


def _readable(angle: float) -> float:
    """How many degrees to turn the letters, clockwise as painters do, along a line at this angle; never upside down."""
    turn = -angle % 180.0
    return turn if turn < QUARTER else turn - 180.0
