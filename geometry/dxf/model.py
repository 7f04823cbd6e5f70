"""Draws faces in the model space of a DXF file: at true size, side by side, each with its name."""

import math
from collections.abc import Iterable
from typing import NamedTuple

from ezdxf.document import Drawing as Document
from ezdxf.entities.dxfgfx import DXFGraphic
from ezdxf.enums import MTextEntityAlignment

from geometry.drawn.sheets import Fit, fit, sheets
from geometry.dxf.layers import layer
from geometry.dxf.text import extended, paragraph
from shared.drawing import Area, Drawing, Line, Role, Size, Text
from shared.job import Unit, Vertex, View
from shared.written.units import show_length

APPLICATION = "RECOAT"
"""The name under which extended data is registered."""

UNIT_MM = {Unit.MM: 1.0, Unit.INCH: 25.4}
"""The length of the file's unit, mm, exactly (16 CFR 500.19)."""

GAP_MM = 10.0
"""The paper between two faces, at the scale of the left one (own choice)."""

UNDER_MM = 3.0
"""The paper between a face and its name, at the face's scale, so that no sheet shows half a name (own choice)."""

LETTER_WIDTH = 0.75
"""The width of a letter as a share of its height, taken large so that words do not leave their place (own choice)."""

LETTER_ROOM = 1.3
"""The height that a line of letters needs, as a share of the letters' height (own choice)."""

LINE_HEIGHT = 5 / 3
"""The distance between two lines of an MTEXT, as a share of the height of its letters (DXF reference, from memory)."""


class PlacedFace(NamedTuple):
    """A drawing at its place in model space, moved by `dx` and `dy` millimetres.

    A plan is turned over, so that its wall is at the top and x goes to the right, as for a person who faces the wall.
    """

    drawing: Drawing
    fit: Fit
    dx: float
    dy: float

    @property
    def unit_mm(self) -> float:
        """The length of the file's unit, mm."""
        return UNIT_MM[self.drawing.unit]

    @property
    def turned(self) -> bool:
        """Whether y goes down in the file: true of a plan."""
        return self.drawing.view is View.PLAN

    def point(self, x: float, y: float) -> tuple[float, float]:
        """The place in the file of a point of the face, in units of the file."""
        return ((x + self.dx) / self.unit_mm, ((-y if self.turned else y) + self.dy) / self.unit_mm)

    def vertices(self, path: Iterable[Vertex]) -> list[tuple[float, float, float]]:
        """The vertices of a path as x, y and bulge, in units of the file."""
        return [(*self.point(v.x, v.y), -v.bulge if self.turned else v.bulge) for v in path]

    def on_paper(self, paper_mm: float) -> float:
        """The length in model space, in units of the file, of something that is `paper_mm` long on the sheet."""
        return paper_mm * self.fit.scale / self.unit_mm

    @property
    def shown(self) -> tuple[float, float, float, float]:
        """The box that the sheet shows: left, bottom, right and top, in units of the file."""
        left, low, right, high = self.fit.shown
        (x0, y0), (x1, y1) = self.point(left, low), self.point(right, high)
        return (x0, min(y0, y1), x1, max(y0, y1))


def placed(drawings: Iterable[Drawing]) -> tuple[PlacedFace, ...]:
    """The drawings side by side from the left, with the floors of elevations and the fronts of plans on one level."""
    standing = []
    x = 0.0
    for drawing in drawings:
        fitted = fit(drawing)
        left, _, right, _ = fitted.shown
        up = drawing.box[3] if drawing.view is View.PLAN else 0.0
        standing.append(PlacedFace(drawing, fitted, x - left, up))
        x += right - left + GAP_MM * fitted.scale
    return tuple(standing)


def add_face(document: Document, face: PlacedFace) -> None:
    """Draw one face in model space: areas, lines, words, sizes, and its name under it."""
    for area in face.drawing.areas:
        _add_area(document, face, area)
    for line in face.drawing.lines:
        _add_line(document, face, line)
    for text in face.drawing.texts:
        _add_text(document, face, text)
    style = _size_style(document, face)
    for size in face.drawing.sizes:
        _add_size(document, face, size, style)
    _add_face_name(document, face)


def _add_area(document: Document, face: PlacedFace, area: Area) -> None:
    """Draw each ring as a closed polyline. Its extended data names the part and the ring's number among the rings."""
    if not area.rings:
        return
    overlay = area.role is Role.OUTLINE and not area.in_front
    on = layer(document, "overlay" if overlay else area.role, area.kind)
    for number, ring in enumerate(area.rings, start=1):
        line = document.modelspace().add_lwpolyline(
            face.vertices(ring), format="xyb", close=True, dxfattribs={"layer": on}
        )
        _mark(line, (f"part {area.part}", f"ring {number} of {len(area.rings)}"), area.name)


def _add_line(document: Document, face: PlacedFace, line: Line) -> None:
    drawn = document.modelspace().add_lwpolyline(
        face.vertices(line.path), format="xyb", dxfattribs={"layer": layer(document, line.role)}
    )
    _mark(drawn, tuple(f"part {part}" for part in line.parts))


def _mark(entity: DXFGraphic, words: tuple[str, ...], name: str = "") -> None:
    """Say in extended data what an entity belongs to. A name longer than one string goes on in the next."""
    strings = [chunk for word in words for chunk in extended(word)]
    named = ["name", *extended(name)] if name else []
    if strings or named:
        entity.set_xdata(APPLICATION, [(1000, string) for string in (*strings, *named)])


def _add_text(document: Document, face: PlacedFace, text: Text) -> None:
    """Write a tag always, and a name if there is room for it. The extended data of the part's areas has it anyway."""
    heights = sheets().lettering[1::-1] if text.role is Role.TAG else sheets().lettering[:1]
    height, turned, fits = _lettering(face, text, heights)
    words = paragraph(text.text)
    if not words or not (fits or text.role is Role.TAG):
        return
    kind = next((area.kind for area in face.drawing.areas if area.part == text.part), None)
    entity = document.modelspace().add_mtext(words, dxfattribs={"layer": layer(document, text.role, kind)})
    entity.dxf.char_height = face.on_paper(height)
    entity.dxf.width = (text.height_mm if turned else text.width_mm) / face.unit_mm
    entity.set_location(face.point(text.x, text.y), 90 if turned else 0, MTextEntityAlignment.MIDDLE_CENTER)
    _mark(entity, (f"part {text.part}",) if text.part else ())


def _lettering(face: PlacedFace, text: Text, heights: tuple[float, ...]) -> tuple[float, bool, bool]:
    """The height of letters on paper, whether they are written upwards, and whether they fit.

    Level letters are tried before upward ones, and `heights` in their order.
    """
    for turned in (False, True):
        across, up = (text.height_mm, text.width_mm) if turned else (text.width_mm, text.height_mm)
        for height in heights:
            if _fits(text.text, across / face.fit.scale, up / face.fit.scale, height):
                return height, turned, True
    return heights[-1], False, False


def _fits(text: str, width_mm: float, height_mm: float, letters_mm: float) -> bool:
    """Whether words fit in a place on paper. They may be broken into lines between words."""
    per_line = int(width_mm / (letters_mm * LETTER_WIDTH))
    lines, used = 1, 0
    for word in text.split():
        if len(word) > per_line:
            return False
        if used and used + 1 + len(word) > per_line:
            lines, used = lines + 1, len(word)
        else:
            used += len(word) + bool(used)
    return letters_mm * (LETTER_ROOM + (lines - 1) * LINE_HEIGHT) <= height_mm


def _size_style(document: Document, face: PlacedFace) -> str:
    """The name of the style of sizes for a face's scale: true lengths, letters and strokes as large as on paper."""
    name = f"SIZE-{face.fit.scale}"
    if name in document.dimstyles:
        return name
    paper = {"dimtxt": sheets().lettering[0], "dimtsz": 1.0, "dimexo": 1.5, "dimexe": 1.5, "dimgap": 0.8, "dimdle": 1.0}
    shown = (
        {"dimlunit": 2, "dimdec": 1, "dimzin": 8}
        if face.drawing.unit is Unit.MM
        else {"dimlunit": 5, "dimdec": 5, "dimfrac": 2}
    )
    document.dimstyles.add(
        name,
        dxfattribs={
            **{key: value / face.unit_mm for key, value in paper.items()},
            **shown,
            "dimscale": face.fit.scale,
            "dimlfac": 1.0,
            "dimtad": 1,
            "dimtih": 0,
            "dimtoh": 0,
            "dimtxsty": "Standard",
        },
    )
    return name


def _add_size(document: Document, face: PlacedFace, size: Size, style: str) -> None:
    """Draw a size as a dimension that measures itself. Its picture has the words that every other view shows."""
    length_mm = math.dist(size.start, size.end)
    if not length_mm:
        return
    start, end = face.point(*size.start), face.point(*size.end)
    away = (-size.away_mm if face.turned else size.away_mm) / face.unit_mm
    if end < start:  # words are written from start to end, so start is put to the left or below
        start, end, away = end, start, -away
    drawn = document.modelspace().add_aligned_dim(
        start,
        end,
        distance=away,
        text=show_length(length_mm, face.drawing.unit),
        dimstyle=style,
        # The inch sign is set on each size, as the library leaves it out of the styles that it writes.
        override={"dimpost": '<>"'} if face.drawing.unit is Unit.INCH else None,
        dxfattribs={"layer": layer(document, size.role)},
    )
    drawn.render()
    drawn.dimension.dxf.text = ""
    _mark(drawn.dimension, (f"part {size.part}",) if size.part else ())


def _add_face_name(document: Document, face: PlacedFace) -> None:
    left, bottom, right, _ = face.shown
    words = paragraph(face.drawing.title)
    if words:
        entity = document.modelspace().add_mtext(words, dxfattribs={"layer": layer(document, "face name")})
        entity.dxf.char_height = face.on_paper(sheets().lettering[2])
        entity.dxf.width = right - left
        entity.set_location(((left + right) / 2, bottom - face.on_paper(UNDER_MM)), 0, MTextEntityAlignment.TOP_CENTER)
