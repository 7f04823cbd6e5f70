"""The border and the title block that a printed sheet has round its drawing."""

from datetime import date

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QFont, QPainter, QPen

from desktop.look.palette import light
from desktop.painting.lettering import fit as fit_words
from geometry.drawn.sheets import Fit, sheets
from shared.drawing import Drawing

PX_PER_MM = 96 / 25.4

LETTERING_PX = 13
"""The size of letters whose capitals are 2.5 mm high (ISO 3098), as capitals are about 0.73 of a letter's size."""

SMALL_PX = 9
BORDER_PX = 0.7 * PX_PER_MM
"""The width of the border's line, 0.7 mm (ISO 128, from memory)."""

INNER_PX = 0.25 * PX_PER_MM
PAD_PX = 6.0

ADVICE = "Sizes from tape readings: verify on site"

Entry = tuple[str, str]


def paint_frame(painter: QPainter, drawing: Drawing, placed: Fit, drawn_on: date | None, number: str) -> None:
    """The border inside the sheet's margins, and at its lower right the title block."""
    table, sheet = sheets(), placed.sheet
    left, low, right = table.left_margin, sheet.height - table.margin, sheet.width - table.margin
    painter.setPen(QPen(QColor(light().ink), BORDER_PX))
    painter.drawRect(_box(left, table.margin, right, low))
    width = min(table.title_width, right - left)
    block = _box(right - width, low - table.title_height, right, low)
    painter.drawRect(block)
    unit = "millimetres" if drawing.unit.value == "mm" else "inches"
    day = drawn_on.isoformat() if drawn_on else ""
    upper = (("Face", drawing.title), ("Job", drawing.job))
    lower = (("Scale", f"1:{placed.scale} on {sheet.name}"), ("Unit", unit), ("Date", day), ("Sheet", number))
    third = block.height() / 3
    for row, entries in enumerate((upper, lower)):
        _paint_row(painter, entries, QRectF(block.left(), block.top() + row * third, block.width(), third))
    words = QRectF(block.left() + PAD_PX, block.bottom() - third, block.width() - 2 * PAD_PX, third)
    _paint_words(painter, ADVICE, words)


def _paint_row(painter: QPainter, entries: tuple[Entry, ...], row: QRectF) -> None:
    width = row.width() / len(entries)
    for column, (label, words) in enumerate(entries):
        cell = QRectF(row.left() + column * width, row.top(), width, row.height())
        painter.setPen(QPen(QColor(light().ink), INNER_PX))
        painter.drawRect(cell)
        inner = cell.adjusted(PAD_PX, PAD_PX / 2, -PAD_PX, 0)
        font = QFont(painter.font())
        small = QFont(font)
        small.setPixelSize(SMALL_PX)
        painter.setFont(small)
        painter.setPen(QColor(light().quiet))
        painter.drawText(inner, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop, label)
        painter.setFont(font)
        _paint_words(painter, words, inner.adjusted(0, SMALL_PX + 1, 0, 0))


def _paint_words(painter: QPainter, words: str, box: QRectF) -> None:
    """Paint words, shortened if they are longer than their box; nothing if even short ones do not fit."""
    font = QFont(painter.font())
    fitted = fit_words(words, font, box.width(), box.height())
    if fitted is None:
        return
    painter.setFont(fitted.font)
    painter.setPen(QColor(light().ink))
    painter.drawText(box, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter, fitted.text)
    painter.setFont(font)


def _box(left: float, top: float, right: float, bottom: float) -> QRectF:
    """A box on the sheet in 1/96 inch, from millimetres with y down."""
    return QRectF(left * PX_PER_MM, top * PX_PER_MM, (right - left) * PX_PER_MM, (bottom - top) * PX_PER_MM)
