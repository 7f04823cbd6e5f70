"""Faces as files: sheets to scale (PDF), and pictures (PNG, SVG), painted by the routine that paints the screen."""

from collections.abc import Callable, Sequence
from datetime import date
from functools import partial
from pathlib import Path
from typing import NamedTuple

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QMarginsF, QPointF, QRectF, QSize, QSizeF, Qt
from PySide6.QtGui import (
    QColor,
    QFont,
    QGuiApplication,
    QImage,
    QImageWriter,
    QPageLayout,
    QPageSize,
    QPainter,
    QPdfWriter,
    QTransform,
)
from PySide6.QtSvg import QSvgGenerator

from desktop.look.palette import light
from desktop.painting.drawing import PaintOptions, paint
from desktop.painting.viewing import fitted
from desktop.printing.sheet_frame import LETTERING_PX, PX_PER_MM, paint_frame
from geometry.drawn.sheets import Fit, Sheet, fit, room_for_drawing
from shared.drawing import Drawing
from shared.errors import FileError
from shared.files.disk import write_atomically

PDF_DPI = 1200

PICTURE_WIDTH_PX = 1200.0
"""The width of the widest face with its sizes, in a picture."""

PICTURE_RATIO = 2
"""A PNG has twice as many dots as its width in pixels, so that it is sharp on any screen."""

MOST_DOTS = 32_000
"""The most dots of a picture's height: few programs open a larger one, and a painter's own coordinates end there."""

TITLE_PX = 32.0
GAP_PX = 16.0

FULL = PaintOptions(joints=True, masking=True)
"""Files show everything: joints and masking as well."""


def write_picture(
    drawings: Sequence[Drawing], path: Path, *, drawn_on: date | None = None, options: PaintOptions = FULL
) -> None:
    """Write a PDF with a sheet for each drawing, or a PNG or SVG with one above another, by the ending of the path.

    FileError if the ending is another, there is nothing to draw or the file cannot be written.
    """
    makers = {".pdf": _pdf, ".png": _png, ".svg": _svg}
    maker = makers.get(path.suffix.lower())
    if maker is None:
        raise FileError(
            "Recoat cannot write a picture with this ending", where=path.name, do="choose .pdf, .png or .svg"
        )
    if not drawings:
        raise FileError("there is no face to draw", where=path.name, do="draw a face first")
    write_painted(path, lambda: maker(drawings, drawn_on, options))


def write_painted(path: Path, make: Callable[[], bytes]) -> None:
    """Write what `make` paints, even if no window is open. FileError if the file cannot be written."""
    application = QGuiApplication.instance() or QGuiApplication(["recoat", "-platform", "offscreen"])
    write_atomically(path, make())
    del application  # It had to live until the picture was painted.


class PrintedSheet(NamedTuple):
    """One sheet of a PDF, and what paints it, in 1/96 inch from the sheet's upper left corner."""

    sheet: Sheet
    paint: Callable[[QPainter], None]


def pdf_of(sheets: Sequence[PrintedSheet], title: str) -> bytes:
    """The sheets as a PDF; there must be at least one."""
    content = QByteArray()
    buffer = QBuffer(content)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setResolution(PDF_DPI)
    writer.setTitle(title)
    writer.setCreator("Recoat")
    writer.setPageLayout(_layout(sheets[0].sheet))
    with QPainter(writer) as painter:
        for number, printed in enumerate(sheets):
            if number:
                writer.setPageLayout(_layout(printed.sheet))
                writer.newPage()
            painter.save()
            painter.scale(PDF_DPI / 96, PDF_DPI / 96)
            painter.setFont(_font())
            printed.paint(painter)
            painter.restore()
    buffer.close()
    return bytes(content.data())


def png_of(size: QSize, paint_it: Callable[[QPainter], None]) -> bytes:
    """A PNG of this size in 1/96 inch, on the colour of paper. FileError if it would be too large."""
    image = QImage(size * PICTURE_RATIO, QImage.Format.Format_RGB32)
    if image.isNull() or image.height() > MOST_DOTS:
        raise FileError("the picture would be too large", do="draw fewer faces at a time, or choose .pdf")
    image.setDevicePixelRatio(PICTURE_RATIO)
    with QPainter(image) as painter:
        painter.fillRect(QRectF(0, 0, size.width(), size.height()), QColor(light().paper))
        painter.setFont(_font())
        paint_it(painter)
    content = QByteArray()
    buffer = QBuffer(content)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    if not QImageWriter(buffer, QByteArray(b"png")).write(image):
        raise FileError("the picture could not be made", do="choose .pdf or .svg")
    return bytes(content.data())


def on_sheet(drawing: Drawing, placed: Fit) -> QTransform:
    """The transform from the face to its sheet in 1/96 inch: to scale, in the middle of the sheet's space for it."""
    left, bottom, right, top = room_for_drawing(placed.sheet)
    room = QRectF(left, placed.sheet.height - top, right - left, top - bottom)
    target = QRectF(room.topLeft() * PX_PER_MM, room.size() * PX_PER_MM)
    return fitted(placed.shown, drawing.view, target, PX_PER_MM / placed.scale)


def _pdf(drawings: Sequence[Drawing], drawn_on: date | None, options: PaintOptions) -> bytes:
    sheets = []
    for number, drawing in enumerate(drawings, 1):
        placed = fit(drawing)
        of = f"{number} of {len(drawings)}"
        sheets.append(PrintedSheet(placed.sheet, partial(_paint_sheet, drawing, placed, drawn_on, of, options)))
    return pdf_of(sheets, drawings[0].job or drawings[0].title)


def _paint_sheet(
    drawing: Drawing, placed: Fit, drawn_on: date | None, of: str, options: PaintOptions, painter: QPainter
) -> None:
    paint_frame(painter, drawing, placed, drawn_on, of)
    paint(drawing, painter, on_sheet(drawing, placed), light(), options)


def _layout(sheet: Sheet) -> QPageLayout:
    size = QSizeF(sheet.width, sheet.height)
    exact = QPageSize.SizeMatchPolicy.ExactMatch
    page = QPageSize(size, QPageSize.Unit.Millimeter, sheet.name, exact)
    return QPageLayout(page, QPageLayout.Orientation.Portrait, QMarginsF())


def _png(drawings: Sequence[Drawing], _: date | None, options: PaintOptions) -> bytes:
    size = _picture_size(drawings).toSize()
    return png_of(size, lambda painter: _paint_column(painter, drawings, options))


def _svg(drawings: Sequence[Drawing], _: date | None, options: PaintOptions) -> bytes:
    size = _picture_size(drawings).toSize()
    content = QByteArray()
    buffer = QBuffer(content)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    generator = QSvgGenerator(QSvgGenerator.SvgVersion.Svg11)
    generator.setOutputDevice(buffer)
    generator.setResolution(96)
    generator.setSize(size)
    generator.setViewBox(QRectF(0, 0, size.width(), size.height()))
    generator.setTitle(drawings[0].job or drawings[0].title)
    with QPainter(generator) as painter:
        painter.fillRect(QRectF(0, 0, size.width(), size.height()), QColor(light().paper))
        painter.setFont(_font())
        _paint_column(painter, drawings, options)
    buffer.close()
    return bytes(content.data())


def _picture_scale(drawings: Sequence[Drawing]) -> float:
    """One scale for all faces, so that they can be compared; pixels a millimetre."""
    return PICTURE_WIDTH_PX / max(_width(fit(drawing)) for drawing in drawings)


def _picture_size(drawings: Sequence[Drawing]) -> QSizeF:
    scale = _picture_scale(drawings)
    height = sum(TITLE_PX + _height(fit(drawing)) * scale + GAP_PX for drawing in drawings)
    return QSizeF(PICTURE_WIDTH_PX + 2 * GAP_PX, height + GAP_PX)


def _paint_column(painter: QPainter, drawings: Sequence[Drawing], options: PaintOptions) -> None:
    look, scale = light(), _picture_scale(drawings)
    top = GAP_PX
    for drawing in drawings:
        placed = fit(drawing)
        painter.setPen(QColor(look.ink))
        title = QRectF(GAP_PX, top, PICTURE_WIDTH_PX, TITLE_PX)
        painter.drawText(title, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter, drawing.title)
        room = QRectF(QPointF(GAP_PX, top + TITLE_PX), QSizeF(PICTURE_WIDTH_PX, _height(placed) * scale))
        paint(drawing, painter, fitted(placed.shown, drawing.view, room, scale), look, options)
        top = room.bottom() + GAP_PX


def _width(placed: Fit) -> float:
    return placed.shown[2] - placed.shown[0]


def _height(placed: Fit) -> float:
    return placed.shown[3] - placed.shown[1]


def _font() -> QFont:
    font = QGuiApplication.font()
    font.setPixelSize(LETTERING_PX)
    return font
