"""Finds what is seen of a face: all sides are cut where they meet, and visible regions are traced along the pieces.

Each stage is a module of its own, to be read in this order: `columns` (the sides), `cutting` (where they meet),
`pieces` (the sides cut and welded), `owners` (which part is in front beside each piece), `border` (edges) and `rings`
(regions). Arcs stay arcs: nothing is flattened to be cut.
"""

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
import shapely

from geometry.outlines.sides import WELD_MM
from geometry.parts.rank import rank_key
from geometry.seen.arrangement import Arrangement, Edge, Region
from geometry.seen.border import Border, TornError, border_of, joined_pieces
from geometry.seen.columns import Columns, Stack, Whole, stack_of
from geometry.seen.cutting import meetings, with_passing
from geometry.seen.neighbours import near_pairs
from geometry.seen.owners import Owners, owners_of
from geometry.seen.pieces import Nodes, Pieces, Stretches, cut
from geometry.seen.regions import ring_areas
from geometry.seen.rings import Rings, rings_of
from shared.errors import OutlineError
from shared.job import Outline, Part, Vertex

WELDS_MM = (WELD_MM, WELD_MM, 1e-5, 1e-4, 1e-3)
"""The welds to try one after the other: when contacts of a few micrometres do not close, a wider weld makes them one.

The first try is the quick one. From the second on, sides are also cut where they merely pass a crossing of others.
"""


def arrange(parts: Sequence[Part]) -> Arrangement:
    """The visible region of every part, in the order given, and every edge once; both empty for no parts.

    `geometry.parts.rank.rank_key` says which part is in front. OutlineError where an outline encloses nothing, holds a
    number that is not finite, or is so tangled that it does not close. JobError where too many parts lie on each other.
    """
    if not parts:
        return Arrangement((), ())
    order = sorted(range(len(parts)), key=lambda index: rank_key(parts[index], index))
    return _closed([parts[index] for index in order], order, WELDS_MM)


def _closed(stacked: Sequence[Part], order: Sequence[int], welds: tuple[float, ...]) -> Arrangement:
    try:
        return _arranged(stacked, order, welds[0], passing=len(welds) < len(WELDS_MM))
    except TornError as torn:
        if len(welds) > 1:
            return _closed(stacked, order, welds[1:])
        part = stacked[torn.part]
        raise OutlineError(
            "its outline cannot be told apart from what touches it",
            where=part.called,
            do="check whether it crosses itself, or move it a little",
        ) from torn


def _arranged(stacked: Sequence[Part], order: Sequence[int], weld: float, *, passing: bool) -> Arrangement:
    laid = laid_out(stack_of(stacked, weld), weld, passing=passing)
    ids = [part.id for part in stacked]
    sides, nodes = laid.stack.sides, laid.nodes
    regions = in_order(order, ids, regions_of(ids, rings_of(sides, nodes, laid.border)))
    return Arrangement(regions, edges_of(ids, sides, nodes, joined_pieces(laid.border)))


class Laid(NamedTuple):
    """A face with its sides cut and its pieces labelled, before regions and edges are put together."""

    stack: Stack
    nodes: Nodes
    stretches: Stretches
    pieces: Pieces
    owners: Owners
    border: Border


def laid_out(stack: Stack, weld: float, *, passing: bool = False) -> Laid:
    """The stack cut and labelled; `passing` cuts also where sides pass crossings. TornError if it does not close."""
    sides = stack.sides
    met = meetings(sides, *near_pairs(stack, weld), weld)
    nodes, stretches, pieces = cut(sides, with_passing(sides, met, weld) if passing else met, weld)
    owners = owners_of(stack, stretches, pieces)
    return Laid(stack, nodes, stretches, pieces, owners, border_of(stack, stretches, owners))


def edges_of(ids: Sequence[str], sides: Columns, nodes: Nodes, joined: Border) -> tuple[Edge, ...]:
    """The joined pieces of the border as edges.

    The library measures the straight ones; an arc's length is its share of the length of its side. `ids` are the ids of
    the parts in the order of the stack.
    """
    names = [*ids, None]
    share = joined.finish - joined.begin
    x0, y0, x1, y1 = nodes.x[joined.start], nodes.y[joined.start], nodes.x[joined.end], nodes.y[joined.end]
    sweep = sides.sweep[joined.side]
    lines = np.stack((x0, y0, x1, y1), axis=1).reshape(-1, 2, 2)
    length = np.where(sweep == 0, shapely.length(shapely.linestrings(lines)), sides.length[joined.side] * share)
    bulge = np.where(share == 1, sides.bulge[joined.side], np.tan(sweep * share / 4))
    bulge[sweep == 0] = 0.0
    return tuple(
        map(
            Edge,
            [names[part] for part in joined.left.tolist()],
            [names[part] for part in joined.right.tolist()],
            *(column.tolist() for column in (x0, y0, x1, y1, bulge, length)),
            _numbers(sides, joined.left_side),
            _numbers(sides, joined.right_side),
        )
    )


def _numbers(sides: Columns, rows: Whole) -> list[int | None]:
    numbers = np.where(rows < 0, -1, sides.number[rows])
    return [None if number < 0 else number for number in numbers.tolist()]


def regions_of(ids: Sequence[str], rings: Rings) -> dict[int, Region]:
    """The regions made of these rings, by place in the stack. Parts of which nothing is seen are not in it."""
    vertices = list(map(Vertex, rings.x.tolist(), rings.y.tolist(), rings.bulge.tolist()))
    first = [*rings.first.tolist(), len(vertices)]
    own: dict[int, list[Outline]] = {}
    for ring, part in enumerate(rings.part.tolist()):
        own.setdefault(part, []).append(tuple(vertices[first[ring] : first[ring + 1]]))
    area = np.bincount(rings.part, ring_areas(rings)).tolist()
    return {part: Region(ids[part], tuple(outlines), area[part]) for part, outlines in own.items()}


def unseen(part: str) -> Region:
    """The region of a part of which nothing is seen."""
    return Region(part, (), 0.0)


def in_order(order: Sequence[int], ids: Sequence[str], seen: dict[int, Region]) -> tuple[Region, ...]:
    """The regions of all parts in drawing order. `order` is the place in it of the part at each place in the stack."""
    back = {index: seen.get(place) or unseen(ids[place]) for place, index in enumerate(order)}
    return tuple(back[index] for index in range(len(back)))
