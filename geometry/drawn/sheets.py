"""Chooses the sheet for a drawing and its scale from `data/sheets.toml`; screen, print and DXF use the same."""

import math
import tomllib
from functools import cache
from importlib.resources import files
from typing import NamedTuple

import msgspec

from geometry.outlines.measured import joined
from geometry.outlines.sides import Box, Point
from shared.drawing import Drawing, Size
from shared.job import Unit

AROUND_MM = 5.0
"""The paper kept free round a drawing and its sizes, so that the outermost letters are not cut (own choice)."""


class Sheet(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """A sheet of paper, landscape, mm."""

    name: str
    width: float
    height: float


class Paper(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """The sheets and the scales of one unit."""

    sheets: tuple[Sheet, ...]
    scales: tuple[int, ...]


class Sheets(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """The table in `data/sheets.toml`; its head explains the fields. Lengths are millimetres."""

    left_margin: float
    margin: float
    title_width: float
    title_height: float
    lettering: tuple[float, ...]
    mm: Paper
    inch: Paper = msgspec.field(name="in")


class Fit(NamedTuple):
    """The sheet for a drawing, its scale (20 for 1:20), and the box of the face that it shows, in mm of the face.

    The box is left, bottom, right, top.
    """

    sheet: Sheet
    scale: int
    shown: Box


@cache
def sheets() -> Sheets:
    """The table of sheets and scales."""
    return msgspec.convert(tomllib.loads((files("geometry") / "data" / "sheets.toml").read_text("utf-8")), Sheets)


def room_for_drawing(sheet: Sheet) -> Box:
    """The box for a drawing on a sheet, from the sheet's lower left corner: inside margins, above the title block."""
    table = sheets()
    return (
        table.left_margin,
        table.margin + table.title_height,
        sheet.width - table.margin,
        sheet.height - table.margin,
    )


def fit(drawing: Drawing) -> Fit:
    """The largest scale at which a drawing with its sizes fits a sheet, and the smallest sheet that has room for it.

    Jobs in millimetres get ISO sheets and scales; jobs in inches get those of feet and inches. A drawing that fits at
    no scale gets the smallest scale and the largest sheet.
    """
    paper = sheets().mm if drawing.unit is Unit.MM else sheets().inch
    reach = _reach(drawing)
    for scale in paper.scales:
        shown = _widened(reach, AROUND_MM * scale)
        for sheet in paper.sheets:
            if _has_room(sheet, shown, scale):
                return Fit(sheet, scale, shown)
    return Fit(paper.sheets[-1], paper.scales[-1], _widened(reach, AROUND_MM * paper.scales[-1]))


def line_of_size(size: Size) -> tuple[Point, Point]:
    """The ends of the line that shows a size: beside its points, `away_mm` to the left, going from start to end."""
    (x0, y0), (x1, y1) = size.start, size.end
    length = math.dist(size.start, size.end)
    if not length:
        return size.start, size.end
    across, up = -(y1 - y0) / length * size.away_mm, (x1 - x0) / length * size.away_mm
    return (x0 + across, y0 + up), (x1 + across, y1 + up)


def _reach(drawing: Drawing) -> Box:
    lines = (line_of_size(size) for size in drawing.sizes)
    return joined([drawing.box, *((min(a, c), min(b, d), max(a, c), max(b, d)) for (a, b), (c, d) in lines)])


def _widened(box: Box, by_mm: float) -> Box:
    return (box[0] - by_mm, box[1] - by_mm, box[2] + by_mm, box[3] + by_mm)


def _has_room(sheet: Sheet, shown: Box, scale: int) -> bool:
    left, bottom, right, top = room_for_drawing(sheet)
    return shown[2] - shown[0] <= (right - left) * scale and shown[3] - shown[1] <= (top - bottom) * scale
