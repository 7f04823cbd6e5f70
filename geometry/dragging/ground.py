"""The parts that stand still while others are dragged: cut and labelled once, for all frames of the drag."""

from collections.abc import Collection
from itertools import compress
from typing import NamedTuple

import numpy as np

from geometry.outlines.sides import WELD_MM
from geometry.parts.rank import rank_key
from geometry.seen.arrange import Laid, edges_of, in_order, laid_out, regions_of
from geometry.seen.arrangement import Edge, Region
from geometry.seen.border import TornError, joined_pieces
from geometry.seen.columns import Floats, Whole, rows_where, spread, stack_of
from geometry.seen.owners import Owners
from geometry.seen.rings import rings_of
from shared.job import Part


class Ground(NamedTuple):
    """The parts that stand still, cut and labelled, each at its place in the stack of all parts.

    `order` gives the drawing order of the part at each place, and `ids` its id. `moving` are the dragged parts as they
    were, and `places` are their places. `vertex` is the node at which each side starts; -1 for a side too short to have
    a piece. `boxes` are the boxes of the pieces. `sides` are the sides along which the edges lie. `regions` are in
    drawing order.
    """

    order: list[int]
    ids: list[str]
    moving: list[Part]
    places: Whole
    laid: Laid
    vertex: Whole
    boxes: tuple[Floats, Floats, Floats, Floats]
    regions: tuple[Region, ...]
    edges: tuple[Edge, ...]
    sides: Whole


def ground_of(parts: tuple[Part, ...], moving: Collection[str]) -> Ground | None:
    """The ground of a drag; None when nothing stands still, or when that does not close at the finest weld.

    Without a ground every frame is arranged anew.
    """
    order = sorted(range(len(parts)), key=lambda index: rank_key(parts[index], index))
    ids = [parts[index].id for index in order]
    stays = np.array([name not in moving for name in ids], dtype=np.bool_)
    if not stays.any():
        return None
    places = rows_where(~stays)
    try:
        dense = laid_out(stack_of([parts[index] for index in compress(order, stays)], WELD_MM), WELD_MM)
        laid = _placed(dense, rows_where(stays), len(ids))
        seen = regions_of(ids, rings_of(laid.stack.sides, laid.nodes, laid.border))
    except TornError:
        return None
    joined = joined_pieces(laid.border)
    edges = edges_of(ids, laid.stack.sides, laid.nodes, joined)
    regions = in_order(order, ids, seen)
    moved = [parts[order[place]] for place in places.tolist()]
    return Ground(order, ids, moved, places, laid, _vertices(laid), _piece_boxes(laid), regions, edges, joined.side)


def _placed(laid: Laid, places: Whole, total: int) -> Laid:
    """The same with its parts at their places in the stack of all parts."""
    place = np.append(places, -1)
    owners = Owners(place[laid.owners.left], place[laid.owners.right])
    border = laid.border._replace(left=place[laid.border.left], right=place[laid.border.right])
    return laid._replace(stack=spread(laid.stack, places, total), owners=owners, border=border)


def _vertices(laid: Laid) -> Whole:
    vertex = np.full(len(laid.stack.sides.part), -1, dtype=np.intp)
    starts = rows_where(laid.stretches.begin == 0)
    vertex[laid.stretches.side[starts]] = laid.stretches.start[starts]
    return vertex


def _piece_boxes(laid: Laid) -> tuple[Floats, Floats, Floats, Floats]:
    """The box of each piece: left, bottom, right, top. An arc's is the box of its chord, larger by its sagitta."""
    rows = laid.pieces.stretch
    start, end = laid.stretches.start[rows], laid.stretches.end[rows]
    x0, y0, x1, y1 = laid.nodes.x[start], laid.nodes.y[start], laid.nodes.x[end], laid.nodes.y[end]
    bow = np.hypot(laid.pieces.x - (x0 + x1) / 2, laid.pieces.y - (y0 + y1) / 2)
    # An arc of more than half a circle is wider than its chord by up to its radius, which its sagitta exceeds.
    bow[bow < WELD_MM] = 0.0
    return np.minimum(x0, x1) - bow, np.minimum(y0, y1) - bow, np.maximum(x0, x1) + bow, np.maximum(y0, y1) + bow
