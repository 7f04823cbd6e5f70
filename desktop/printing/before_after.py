"""Before and after, for the client: every face of a room is drawn twice, as it is and in its finish colours."""

from collections.abc import Sequence
from datetime import date
from functools import partial
from pathlib import Path
from typing import NamedTuple

from PySide6.QtCore import QPointF, QRectF, QSize, QSizeF, Qt
from PySide6.QtGui import QColor, QFont, QPainter

from desktop.look.palette import light
from desktop.painting.drawing import PaintOptions, paint
from desktop.painting.finish_colours import Colours, colours_by_face
from desktop.painting.lettering import fit as fit_words
from desktop.painting.viewing import fitted
from desktop.printing.pictures import GAP_PX, PICTURE_WIDTH_PX, PrintedSheet, pdf_of, png_of, write_painted
from desktop.printing.sheet_frame import PX_PER_MM
from geometry.drawn.sheets import Sheet, sheets
from shared.drawing import Drawing
from shared.errors import FileError
from shared.job import Job, Unit
from takeoff.drawing.face import draw_face
from takeoff.figures.measured import Fronts, Takeoff
from takeoff.memory import Memory

PICTURES = {"pdf": "Sheets to scale (*.pdf)", "png": "Picture (*.png)"}
"""The endings that can be written, each with what a person calls such a file."""

WORDS = ("Before", "After")
TITLE_PX, CAPTION_PX, BETWEEN_PX, PAIRS_PX = 34.0, 24.0, 12.0, 28.0
ADVICE = "Colours on a screen or on paper differ from the coating itself. Look at a sample."


class Pair(NamedTuple):
    """A face, and the colours that its parts will have."""

    name: str
    drawing: Drawing
    finishes: Colours


class Comparison(NamedTuple):
    """A room of a job: all its faces that have something on them."""

    title: str
    unit: Unit
    pairs: tuple[Pair, ...]


class PlacedPairs(NamedTuple):
    """Pairs set one after another like words in lines: the corner of each, and the height of all, in 1/96 inch."""

    corners: tuple[QPointF, ...]
    height: float


def comparisons(job: Job, takeoff: Takeoff, memory: Memory) -> tuple[Comparison, ...]:
    """One comparison for each room that has something on its faces, in the order of the rooms."""
    colours = colours_by_face(job, takeoff)
    rooms = ((room, [face for face in room.faces if face.parts]) for room in job.rooms)
    return tuple(
        Comparison(
            f"{job.name}, {room.name}",
            job.unit,
            tuple(
                Pair(
                    face.name,
                    draw_face(job, face, takeoff, memory, fronts=Fronts.HUNG),
                    colours[face.id],
                )
                for face in faces
            ),
        )
        for room, faces in rooms
        if faces
    )


def write_comparisons(rooms: Sequence[Comparison], path: Path, drawn_on: date) -> None:
    """Write a PDF with a sheet to scale for each room, or a PNG with one room below another, by the path's ending.

    FileError if the ending is another, there is nothing to draw or the file cannot be written.
    """
    makers = {".pdf": _pdf, ".png": _png}
    maker = makers.get(path.suffix.lower())
    if maker is None:
        raise FileError("Recoat cannot write a picture with this ending", where=path.name, do="choose .pdf or .png")
    if not rooms:
        raise FileError("there is no face to draw", where=path.name, do="draw a face first")
    write_painted(path, lambda: maker(rooms, drawn_on))


def placed(room: Comparison, scale: float, width: float) -> PlacedPairs:
    """The pairs of a room set in lines of this width, one millimetre `scale` long.

    A pair that is wider than a line has one to itself.
    """
    corners: list[QPointF] = []
    x = y = line = 0.0
    for pair in room.pairs:
        size = _pair_size(pair, scale)
        if corners and x + size.width() > width:
            x, y, line = 0.0, y + line + PAIRS_PX / 2, 0.0
        corners.append(QPointF(x, y))
        x, line = x + size.width() + PAIRS_PX, max(line, size.height())
    return PlacedPairs(tuple(corners), y + line)


def sheet_and_scale(room: Comparison) -> tuple[Sheet, int]:
    """The smallest sheet for the largest scale at which a room fits a sheet.

    If the room fits at no scale, the largest sheet and the smallest scale.
    """
    paper = sheets().mm if room.unit is Unit.MM else sheets().inch
    for scale in paper.scales:
        for sheet in paper.sheets:
            area, size = _room_on(sheet), PX_PER_MM / scale
            widest = max(_pair_size(pair, size).width() for pair in room.pairs)
            if widest <= area.width() and TITLE_PX + placed(room, size, area.width()).height <= area.height():
                return sheet, scale
    return paper.sheets[-1], paper.scales[-1]


def _pdf(rooms: Sequence[Comparison], drawn_on: date) -> bytes:
    sheets = []
    for room in rooms:
        sheet, scale = sheet_and_scale(room)
        sheets.append(PrintedSheet(sheet, partial(_paint_sheet, room, sheet, scale, drawn_on)))
    return pdf_of(sheets, "Before and after")


def _paint_sheet(room: Comparison, sheet: Sheet, scale: int, drawn_on: date, painter: QPainter) -> None:
    area = _room_on(sheet)
    _paint_room(room, PX_PER_MM / scale, area, painter)
    foot = QRectF(area.left(), area.bottom(), area.width(), CAPTION_PX)
    words = f"1:{scale} on {sheet.name}   {drawn_on.isoformat()}   {ADVICE}"
    _write(painter, words, foot, quiet=True)


def _png(rooms: Sequence[Comparison], _: date) -> bytes:
    widest = max(_pair_size(pair, 1.0).width() - BETWEEN_PX for room in rooms for pair in room.pairs)
    scale = (PICTURE_WIDTH_PX - BETWEEN_PX) / widest
    heights = [TITLE_PX + placed(room, scale, PICTURE_WIDTH_PX).height + GAP_PX for room in rooms]
    size = QSize(round(PICTURE_WIDTH_PX + 2 * GAP_PX), round(sum(heights) + CAPTION_PX + GAP_PX))
    return png_of(size, partial(_paint_column, rooms, scale, heights))


def _paint_column(rooms: Sequence[Comparison], scale: float, heights: Sequence[float], painter: QPainter) -> None:
    top = GAP_PX
    for room, height in zip(rooms, heights, strict=True):
        _paint_room(room, scale, QRectF(GAP_PX, top, PICTURE_WIDTH_PX, height), painter)
        top += height
    _write(painter, ADVICE, QRectF(GAP_PX, top, PICTURE_WIDTH_PX, CAPTION_PX), quiet=True)


def _paint_room(room: Comparison, scale: float, area: QRectF, painter: QPainter) -> None:
    font = QFont(painter.font())
    bold = QFont(font)
    bold.setBold(True)
    painter.setFont(bold)
    _write(painter, room.title, QRectF(area.left(), area.top(), area.width(), TITLE_PX))
    painter.setFont(font)
    start = area.topLeft() + QPointF(0.0, TITLE_PX)
    for pair, corner in zip(room.pairs, placed(room, scale, area.width()).corners, strict=True):
        _paint_pair(pair, scale, start + corner, painter)


def _paint_pair(pair: Pair, scale: float, corner: QPointF, painter: QPainter) -> None:
    plain = PaintOptions(names=False, tags=False, sizes=False)
    size = _face_size(pair.drawing, scale)
    for place, (word, finishes) in enumerate(zip(WORDS, (None, pair.finishes), strict=True)):
        room = QRectF(corner + QPointF(place * (size.width() + BETWEEN_PX), 0.0), size)
        view = fitted(pair.drawing.box, pair.drawing.view, room, scale)
        paint(pair.drawing, painter, view, light(), plain._replace(finishes=finishes))
        caption = QRectF(room.left(), room.bottom(), room.width(), CAPTION_PX)
        _write(painter, f"{pair.name}  {word.lower()}", caption, quiet=True)


def _write(painter: QPainter, words: str, box: QRectF, *, quiet: bool = False) -> None:
    """Write words in one line, shortened if they are longer than their box."""
    font = QFont(painter.font())
    fits = fit_words(words, font, box.width(), box.height())
    if fits is not None:
        painter.setFont(fits.font)
        painter.setPen(QColor(light().quiet if quiet else light().ink))
        painter.drawText(box, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter, fits.text)
        painter.setFont(font)


def _room_on(sheet: Sheet) -> QRectF:
    """The space inside a sheet's margins, above the words at its foot, in 1/96 inch from the upper left corner."""
    table = sheets()
    left, top = table.left_margin * PX_PER_MM, table.margin * PX_PER_MM
    right, bottom = (sheet.width - table.margin) * PX_PER_MM, (sheet.height - table.margin) * PX_PER_MM - CAPTION_PX
    return QRectF(left, top, right - left, bottom - top)


def _face_size(drawing: Drawing, scale: float) -> QSizeF:
    left, bottom, right, top = drawing.box
    return QSizeF((right - left) * scale, (top - bottom) * scale)


def _pair_size(pair: Pair, scale: float) -> QSizeF:
    size = _face_size(pair.drawing, scale)
    return QSizeF(2 * size.width() + BETWEEN_PX, size.height() + CAPTION_PX)
