"""Words that never leave their box: they are shrunk to fit, then shortened, then left out."""

from typing import NamedTuple

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFont, QFontInfo, QFontMetricsF, QPainter

LEAST_PX = 8.0
"""The smallest lettering that is still read, in 1/96 inch (common practice, no source)."""

FEWEST_LETTERS = 3
"""A name shortened to fewer letters than this says nothing and is left out."""


class Fitted(NamedTuple):
    """Words as they fit: the text, perhaps shortened, its font, and its width and height in the painter's units."""

    text: str
    font: QFont
    width: float
    height: float


def fit(text: str, font: QFont, width: float, height: float, *, whole: bool = False) -> Fitted | None:
    """The words in a box of `width` x `height`; None if they do not fit. With `whole` they are never shortened."""
    usual = QFontInfo(font).pixelSize()
    sized = _sized(font, usual)
    metrics = QFontMetricsF(sized)
    wide, high = metrics.horizontalAdvance(text), metrics.height()
    if not wide:
        return None
    shrink = min(1.0, width / wide, height / high)
    if usual * shrink >= LEAST_PX:
        return _measured(text, _sized(font, usual * shrink))
    if whole:
        return None
    return _shortened(text, _sized(font, LEAST_PX), width, height)


def _shortened(text: str, font: QFont, width: float, height: float) -> Fitted | None:
    metrics = QFontMetricsF(font)
    short = metrics.elidedText(text, Qt.TextElideMode.ElideRight, width)
    if metrics.height() > height or len(short.rstrip("\N{HORIZONTAL ELLIPSIS}")) < FEWEST_LETTERS:
        return None
    return _measured(short, font)


def _sized(font: QFont, px: float) -> QFont:
    sized = QFont(font)
    sized.setPixelSize(int(px))
    return sized


def _measured(text: str, font: QFont) -> Fitted:
    metrics = QFontMetricsF(font)
    return Fitted(text, font, metrics.horizontalAdvance(text), metrics.height())


def draw_centred(painter: QPainter, fitted: Fitted, centre: QPointF) -> None:
    """Draw the words in the painter's pen, centred on a point."""
    painter.setFont(fitted.font)
    painter.drawText(box_at(fitted, centre), Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextDontClip, fitted.text)


def box_at(fitted: Fitted, centre: QPointF) -> QRectF:
    """The box that the words take when centred on a point."""
    return QRectF(centre.x() - fitted.width / 2, centre.y() - fitted.height / 2, fitted.width, fitted.height)
