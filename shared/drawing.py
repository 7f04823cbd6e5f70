"""A drawing as a value: what is on it and in which role, before anybody paints or writes it.

`takeoff.drawing.face` puts it together from a job and its takeoff; the painter (screen, strip, print, PDF, SVG, PNG)
and the DXF writer read it, so they cannot disagree. Millimetres, true size, y up, the face's own origin. Arcs stay
arcs: every path is made of vertices with bulges.
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
    """A closed surface: `rings` of vertices (outer ones anticlockwise, holes clockwise), of a part and its kind.

    Role OUTLINE: the part's whole outline, one ring; REGION: its visible region, no rings where nothing is visible;
    FRONTS_OFF: on a face with its fronts hung, what they hide of it as well (what the takeoff measures), where they do.
    `in_front` is false for a part that does not hide what is behind it: it is shown as an overlay. `name` is what the
    person calls the part, "" where it has no name of its own.
    """

    role: Role
    part: str
    kind: Kind
    rings: tuple[Outline, ...]
    in_front: bool = True
    name: str = ""


class Line(NamedTuple):
    """An open path (the bulge of its last vertex counts for nothing), with the one or two parts that it divides."""

    role: Role
    path: tuple[Vertex, ...]
    parts: tuple[str, ...] = ()


class Text(NamedTuple):
    """Words centred on (x, y), which fit in a box of `width_mm` x `height_mm`; of a part where one is named."""

    role: Role
    x: float
    y: float
    text: str
    width_mm: float
    height_mm: float
    part: str = ""


class Size(NamedTuple):
    """A size between two points, drawn parallel to them at `away_mm` to the left of the way from start to end."""

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
        """How long what it measures is."""
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
