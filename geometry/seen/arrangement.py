"""What is seen of a face: the visible region of every part and every edge between two of them, as plain values.

`geometry.seen.arrange.arrange` computes it. No two regions overlap. Together they cover all that is seen, but no hole.
"""

from typing import NamedTuple

import msgspec

from shared.job import Outline


class Region(NamedTuple):
    """The visible region of one part: rings of vertices with bulges, outer ones anticlockwise, holes clockwise.

    It has no rings and an area of 0 when nothing of the part is seen, and for every hole (window, outlet, cut-out).
    """

    part: str
    rings: tuple[Outline, ...]
    area_mm2: float


class Edge(msgspec.Struct, frozen=True, gc=False):
    """A piece of boundary, straight or one arc, from (x0, y0) to (x1, y1); `bulge` as in `shared.job.Vertex`.

    `left` and `right` are the ids of the parts seen on either side of it, going from start to end; None for the outside
    and for a hole. `left_side` and `right_side` say on which side of that part's own outline the edge lies, by the
    index of the vertex that the side leaves; None when another part's outline ends the region here.
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
    """The regions of one face, in the order of the parts given, and its edges, each once."""

    regions: tuple[Region, ...]
    edges: tuple[Edge, ...]

    def region(self, part: str) -> Region:
        """The region of the part with this id. KeyError for an id that was not given."""
        for region in self.regions:
            if region.part == part:
                return region
        raise KeyError(part)
