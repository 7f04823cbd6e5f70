"""What is seen of a face: the visible region of every part and every edge between two of them, as plain values.

`geometry.seen.arrange.arrange` computes it. No two regions overlap; together they are the union of all that has a
surface.
"""

from typing import NamedTuple

import msgspec

from shared.job import Outline


class Region(NamedTuple):
    """The visible region of one part: rings of vertices with bulges, outer ones anticlockwise, holes clockwise.

    No rings and zero area where nothing is seen of the part, and for holes (window, outlet, cut-out): they own nothing.
    """

    part: str
    rings: tuple[Outline, ...]
    area_mm2: float


class Edge(msgspec.Struct, frozen=True, gc=False):
    """A piece of boundary, straight or one arc, from (x0, y0) to (x1, y1); `bulge` as in `shared.job.Vertex`.

    `left` and `right` are the ids of the parts seen on either side on the way along it, None where there is none
    (outside, or a hole).
    `left_side` and `right_side` say on which side of that part's own outline it lies; None where it is another part's
    outline that ends the region here.
    """

    left: str | None
    right: str | None
    x0: float
    y0: float
    x1: float
    y1: float
    bulge: float
    length_mm: float
    left_side: int | None
    right_side: int | None


class Arrangement(NamedTuple):
    """The regions, in the order of the parts given, and the edges, each once, of one face."""

    regions: tuple[Region, ...]
    edges: tuple[Edge, ...]

    def region(self, part: str) -> Region:
        """The region of the part with this id. KeyError where there is none."""
        for region in self.regions:
            if region.part == part:
                return region
        raise KeyError(part)
