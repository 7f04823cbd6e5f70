"""Makes a sheet for each face of a DXF file: the face at a standard scale, a border and a title block."""

from datetime import date
from typing import NamedTuple

from ezdxf.document import Drawing as Document
from ezdxf.enums import MTextEntityAlignment
from ezdxf.layouts.layout import Paperspace

from geometry.drawn.sheets import room_for_drawing, sheets
from geometry.dxf.layers import layer, layer_name
from geometry.dxf.model import LETTER_WIDTH, PlacedFace
from geometry.dxf.text import layout_name, paragraph, readable
from geometry.outlines.sides import Box
from shared.drawing import Role
from shared.job import Unit
from shared.trade.kinds import Kind, usual

WARNING = "Sizes from tape readings: verify on site"

LABEL_MM = 1.8
"""The height of the small word over an entry (ISO 3098 series, from memory)."""

ROWS = ((0.0, 0.62, 1.0), (0.0, 0.12, 0.24, 0.42, 0.56, 1.0))
"""Where the entries of the upper and of the lower row begin and end, as shares of the title block's width (own
choice)."""


class PaperLayout(NamedTuple):
    """One layout while it is filled. It takes millimetres of paper and writes units of the file."""

    document: Document
    layout: Paperspace
    face: PlacedFace

    def in_units(self, *lengths_mm: float) -> tuple[float, ...]:
        """Lengths on paper in units of the file."""
        return tuple(length / self.face.unit_mm for length in lengths_mm)


def add_sheets(document: Document, faces: tuple[PlacedFace, ...], drawn_on: date | None) -> None:
    """Add a layout for each face. Without faces the empty layout stays that every document must have."""
    taken = {"model"}
    for number, face in enumerate(faces, start=1):
        name = layout_name(face.drawing.title, taken)
        taken.add(name.casefold())
        paper = PaperLayout(document, _layout(document, name, first=number == 1), face)
        _set_up(paper)
        _add_view(paper)
        _add_border(paper)
        _add_title_block(paper, _entries(face, f"{number} of {len(faces)}", drawn_on))


def _layout(document: Document, name: str, *, first: bool) -> Paperspace:
    """A new layout; for the first face, the layout that is there from the beginning."""
    if not first:
        return document.layouts.new(name)
    present = document.layouts.names_in_taborder()[1]
    if present != name:
        document.layouts.rename(present, name)
    return next(layout for layout in document.layouts if isinstance(layout, Paperspace))


def _set_up(paper: PaperLayout) -> None:
    sheet = paper.face.fit.sheet
    paper.layout.page_setup(
        size=(sheet.width / paper.face.unit_mm, sheet.height / paper.face.unit_mm),
        units="mm" if paper.face.drawing.unit is Unit.MM else "inch",
        scale=(1, 1),
        name=sheet.name,
    )


def _add_view(paper: PaperLayout) -> None:
    """Show the face through a window in the sheet, without the layers of whole outlines and of fronts off."""
    face = paper.face
    left, bottom, right, top = room_for_drawing(face.fit.sheet)
    x0, y0, x1, y1 = face.shown
    window = ((x1 - x0) / face.fit.scale, (y1 - y0) / face.fit.scale)
    view = paper.layout.add_viewport(
        center=paper.in_units((left + right) / 2, (bottom + top) / 2),
        size=window,
        view_center_point=((x0 + x1) / 2, (y0 + y1) / 2),
        view_height=y1 - y0,
        dxfattribs={"layer": layer(paper.document, "view")},
    )
    outlines = [layer_name(Role.OUTLINE, kind) for kind, row in usual().items() if not row.hole]
    hidden = [*outlines, *(layer_name(Role.FRONTS_OFF, kind) for kind in Kind)]
    view.frozen_layers = [name for name in hidden if name in paper.document.layers]


def _add_border(paper: PaperLayout) -> None:
    table, sheet = sheets(), paper.face.fit.sheet
    frame = (table.left_margin, table.margin, sheet.width - table.margin, sheet.height - table.margin)
    _add_box(paper, frame)


def _title_box(paper: PaperLayout) -> Box:
    """The box of the title block, in the lower right corner of the border, mm of paper."""
    table = sheets()
    right = paper.face.fit.sheet.width - table.margin
    return (right - table.title_width, table.margin, right, table.margin + table.title_height)


def _entries(face: PlacedFace, number: str, drawn_on: date | None) -> tuple[tuple[tuple[str, str], ...], ...]:
    """The entries of the title block, row by row: for each its label and its words."""
    unit = "mm" if face.drawing.unit is Unit.MM else "in"
    return (
        (("Job", face.drawing.job), ("Face", face.drawing.title)),
        (
            ("Scale", f"1:{face.fit.scale}"),
            ("Unit", unit),
            ("Date", drawn_on.isoformat() if drawn_on else ""),
            ("Sheet", number),
            ("Note", WARNING),
        ),
    )


def _add_title_block(paper: PaperLayout, entries: tuple[tuple[tuple[str, str], ...], ...]) -> None:
    left, bottom, right, top = _title_box(paper)
    height = (top - bottom) / len(entries)
    for number, (row, shares) in enumerate(zip(entries, ROWS, strict=True), start=1):
        low = top - number * height
        for (label, words), start, end in zip(row, shares, shares[1:], strict=False):
            cell = (left + (right - left) * start, low, left + (right - left) * end, low + height)
            _add_box(paper, cell)
            _add_entry(paper, cell, label, words)


def _add_box(paper: PaperLayout, box: Box) -> None:
    left, bottom, right, top = paper.in_units(*box)
    corners = [(left, bottom), (right, bottom), (right, top), (left, top)]
    paper.layout.add_lwpolyline(corners, close=True, dxfattribs={"layer": layer(paper.document, "sheet")})


def _add_entry(paper: PaperLayout, cell: Box, label: str, words: str) -> None:
    """Write the label at the top of a cell and the words under it. Words too long for the cell end in "…"."""
    left, bottom, right, top = cell
    letters = sheets().lettering[0]
    most = int((right - left - 2) / (letters * LETTER_WIDTH))
    plain = readable(words)
    shown = plain if len(plain) <= most else f"{plain[: most - 1]}…"
    _write(paper, label, (left + 1, top - 1), LABEL_MM, MTextEntityAlignment.TOP_LEFT)
    _write(paper, shown, (left + 1, bottom + 2), letters, MTextEntityAlignment.BOTTOM_LEFT)


def _write(
    paper: PaperLayout, words: str, at: tuple[float, float], letters_mm: float, align: MTextEntityAlignment
) -> None:
    if words:
        on = layer(paper.document, "sheet")
        entity = paper.layout.add_mtext(paragraph(words), dxfattribs={"layer": on})
        entity.dxf.char_height = letters_mm / paper.face.unit_mm
        entity.set_location(paper.in_units(*at), 0, align)
