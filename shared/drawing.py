"""A drawing as a value: what is on it and in which role, before anybody paints or writes it.

`takeoff.drawing.face` puts it together from a job and its takeoff. The painter (screen, strip, print, PDF, SVG, PNG)
and the DXF writer both read it, so they cannot disagree. It is in millimetres, at true size, with y up and the face's
own origin. Arcs stay arcs: every path is made of vertices with bulges.
"""

import math
from enum import StrEnum
from typing import NamedTuple

from shared.job import Outline, Unit, Vertex, View
from shared.trade.kinds import Kind


class Role(StrEnum):
    """What an item of a drawing is for."""

    OUTLINE = "outline"
    REGION = "region"
    FRONTS_OFF = "fronts off"
    JOINT = "joint"
    MASKING = "masking"
    GROUT = "grout"
    SIZE = "size"
    NAME = "name"
    TAG = "tag"
    FLOOR = "floor"
    SET_OUT = "set-out"


class Area(NamedTuple):
    """A closed area of one part: its `rings` of vertices, outer ones anticlockwise and holes clockwise.

    The role says which area it is. OUTLINE is the part's whole outline, one ring. REGION is its visible region, without
    rings when nothing of the part is visible. FRONTS_OFF is its region with the fronts taken off, which the takeoff
    measures; only a part that fronts hide in part has one.
    `in_front` is false for a part that does not hide what is behind it: it is shown as an overlay. `name` is what the
    person calls the part, "" when it has no name of its own.
    """

    role: Role
    part: str
    kind: Kind
    rings: tuple[Outline, ...]
    in_front: bool = True
    name: str = ""


class Line(NamedTuple):
    """An open path, with the one or two parts that it divides. The bulge of its last vertex is ignored."""

    role: Role
    path: tuple[Vertex, ...]
    parts: tuple[str, ...] = ()


class Text(NamedTuple):
    """Words centred on (x, y) that fit in a box of `width_mm` x `height_mm`. `part` is the part named, "" for none."""

    role: Role
    x: float
    y: float
    text: str
    width_mm: float
    height_mm: float
    part: str = ""


class Size(NamedTuple):
    """The distance between two points, drawn as a line parallel to them, `away_mm` to the left going start to end."""

    start: tuple[float, float]
    end: tuple[float, float]
    away_mm: float
    part: str = ""

    @property
    def role(self) -> Role:
        """Always SIZE."""
        return Role.SIZE

    @property
    def length_mm(self) -> float:
        """The straight distance from start to end."""
        return math.dist(self.start, self.end)


class Drawing(NamedTuple):
    """One face, drawn. `box` is (left, bottom, right, top) of all its areas and its wall; areas stand back to front.

    `job` is the name of the whole job, for the sheet.
    """

    face: str
    title: str
    view: View
    unit: Unit
    box: tuple[float, float, float, float]
    areas: tuple[Area, ...] = ()
    lines: tuple[Line, ...] = ()
    texts: tuple[Text, ...] = ()
    sizes: tuple[Size, ...] = ()
    job: str = ""
