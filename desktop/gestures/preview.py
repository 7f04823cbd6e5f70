"""What a gesture shows before it happens, as a value."""

from typing import NamedTuple

from desktop.painting.photo import PhotoLayer
from geometry.outlines.sides import Box, Point
from shared.drawing import Size
from shared.job import Outline, Vertex


class Preview(NamedTuple):
    """What is shown over the face, in millimetres of the face.

    `outlines` are closed shapes that would come to be. `path` is an open line being traced. `rubber` is the box (left,
    bottom, right, top) that picks what is in it. `guides` lead to what was snapped to, `spot` is the point snapped to
    and `words` say what it is. `photo` lies over the face and under everything else here. `marks` are points set on
    the photo, or corners that can be taken hold of. `dots` are smaller than marks.
    """

    outlines: tuple[Outline, ...] = ()
    path: tuple[Vertex, ...] = ()
    rubber: Box | None = None
    sizes: tuple[Size, ...] = ()
    guides: tuple[tuple[Point, Point], ...] = ()
    spot: Point | None = None
    words: str = ""
    photo: PhotoLayer | None = None
    marks: tuple[Point, ...] = ()
    dots: tuple[Point, ...] = ()


NOTHING = Preview()
