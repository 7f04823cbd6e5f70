"""Traces the rings round the visible regions along the border."""

import math
from typing import NamedTuple

import numpy as np

from geometry.seen.border import Border, TornError
from geometry.seen.columns import Columns, Flags, Floats, Whole, rows_where
from geometry.seen.pieces import Nodes


class Rings(NamedTuple):
    """Rings of vertices: one row a vertex, one ring after another, the rings of a part together.

    `part` is the place of each ring's part in the stack. `first` is the row at which the ring begins, its leftmost
    corner. `x`, `y` and `bulge` are as in `shared.job.Vertex`.
    """

    part: Whole
    first: Whole
    x: Floats
    y: Floats
    bulge: Floats


class _Ways(NamedTuple):
    """Pieces of the border, each with its part on the left: one row for each piece and part.

    `side` is the side of the part's own outline there, if it has one, so that a ring has no corners where only its
    neighbours change.
    """

    part: Whole
    start: Whole
    end: Whole
    side: Whole
    sweep: Floats


def rings_of(sides: Columns, nodes: Nodes, border: Border) -> Rings:
    """All rings: outer ones anticlockwise, holes clockwise, none touching itself. TornError where they do not close.

    The border must come piece by piece: joined pieces could hide that a ring touches itself between them.
    """
    ways = _ways(sides, border)
    following, pinches = _linked(nodes, ways)
    before = np.empty_like(following)
    before[following] = np.arange(len(following))
    corner = (ways.side != ways.side[before]) | (np.sign(ways.sweep) != np.sign(ways.sweep[before]))
    for arriving in pinches:
        corner[following[arriving]] = True
        _part_touching(following, arriving)
    order, first = _walked(nodes, ways, following, corner)
    return _corners(sides, nodes, ways, order, first, corner)


def _ways(sides: Columns, border: Border) -> _Ways:
    sweep = sides.sweep[border.side] * (border.finish - border.begin)
    on_left, on_right = rows_where(border.left >= 0), rows_where(border.right >= 0)
    own = np.concatenate((border.left_side[on_left], border.right_side[on_right]))
    source = np.concatenate((border.side[on_left], border.side[on_right]))
    return _Ways(
        np.concatenate((border.left[on_left], border.right[on_right])),
        np.concatenate((border.start[on_left], border.end[on_right])),
        np.concatenate((border.end[on_left], border.start[on_right])),
        np.where(own >= 0, own, source),
        np.concatenate((sweep[on_left], -sweep[on_right])),
    )


def _linked(nodes: Nodes, ways: _Ways) -> tuple[Whole, list[list[int]]]:
    """For each way the one that follows it; and for each node where a part touches itself, the ways that end there."""
    many = len(nodes.x)
    starts, ends = ways.part * many + ways.start, ways.part * many + ways.end
    by_start, by_end = np.argsort(starts, kind="stable"), np.argsort(ends, kind="stable")
    open_ = rows_where(starts[by_start] != ends[by_end])
    if len(open_):
        raise TornError(int(ways.part[by_start[open_[0]]]))
    following = np.empty(len(starts), dtype=np.intp)
    following[by_end] = by_start
    key = ends[by_end]
    pinched = np.unique(key[1:][key[1:] == key[:-1]])
    low, high = np.searchsorted(key, pinched), np.searchsorted(key, pinched, side="right")
    pinches = []
    for first, last in zip(low.tolist(), high.tolist(), strict=True):
        arriving, leaving = by_end[first:last].tolist(), by_start[first:last].tolist()
        _link_round(nodes, ways, arriving, leaving, following)
        pinches.append(arriving)
    return following, pinches


def _link_round(nodes: Nodes, ways: _Ways, arriving: list[int], leaving: list[int], following: Whole) -> None:
    """Link each way that arrives at a node to the way that leaves it along the other border of the same wedge.

    The wedge of the part is on the left of the arriving way, so the leaving way is the next one clockwise.
    """
    ends = [(*_direction(nodes, ways, way, away=False), way, False) for way in arriving]
    ends += [(*_direction(nodes, ways, way, away=True), way, True) for way in leaving]
    ends.sort()
    for index, (_, _, way, leaves) in enumerate(ends):
        if leaves:
            continue
        _, _, next_way, next_leaves = ends[index - 1]
        if not next_leaves:
            raise TornError(int(ways.part[way]))
        following[way] = next_way


def _direction(nodes: Nodes, ways: _Ways, way: int, *, away: bool) -> tuple[float, float]:
    """Where a way points, seen from its start or, if not `away`, from its end: its angle, and its curvature.

    The curvature puts ways in order that leave in the same direction.
    """
    start, end, sweep = int(ways.start[way]), int(ways.end[way]), float(ways.sweep[way])
    if not away:
        start, end, sweep = end, start, -sweep
    dx, dy = float(nodes.x[end] - nodes.x[start]), float(nodes.y[end] - nodes.y[start])
    # Rounding makes the angles of tangent ways equal. Angles begin a hair before 0, so that it parts none at 0.
    angle = (math.atan2(dy, dx) - sweep / 2 + 1e-6) % math.tau
    return round(angle, 7), math.sin(sweep / 2) / math.hypot(dx, dy)


def _part_touching(following: Whole, arriving: list[int]) -> None:
    """Split a ring that comes through one node more than once into as many rings."""
    for index, one in enumerate(arriving):
        for other in arriving[index + 1 :]:
            way = int(following[one])
            while way not in (one, other):
                way = int(following[way])
            if way == other:
                following[one], following[other] = following[other], following[one]


def _walked(nodes: Nodes, ways: _Ways, following: Whole, corner: Flags) -> tuple[Whole, Whole]:
    """The ways ring by ring, each ring from its leftmost corner, sorted by part; and where each ring begins."""
    corners = rows_where(corner)
    start = ways.start[corners]
    seeds = corners[np.lexsort((nodes.y[start], nodes.x[start], ways.part[corners]))]
    then = following.tolist()
    fresh = [True] * len(then)
    order: list[int] = []
    first: list[int] = []
    for seed in seeds.tolist():
        if fresh[seed]:
            first.append(len(order))
            way = seed
            while fresh[way]:
                fresh[way] = False
                order.append(way)
                way = then[way]
    return np.array(order, dtype=np.intp), np.array(first, dtype=np.intp)


def _corners(sides: Columns, nodes: Nodes, ways: _Ways, order: Whole, first: Whole, corner: Flags) -> Rings:
    """The rings with a vertex at each corner only."""
    kept = rows_where(corner[order])
    at = order[kept]
    part = ways.part[order[first]]
    sweep = np.add.reduceat(ways.sweep[order], kept) if len(kept) else np.zeros(0)
    full = np.abs(sweep) >= np.abs(sides.sweep[ways.side[at]]) - 1e-12
    bulge = np.where(full, np.copysign(sides.bulge[ways.side[at]], sweep), np.tan(sweep / 4))
    bulge[sweep == 0] = 0.0
    rings = Rings(part, np.searchsorted(kept, first), nodes.x[ways.start[at]], nodes.y[ways.start[at]], bulge)
    _refuse_flat(rings)
    return rings


def _refuse_flat(rings: Rings) -> None:
    """TornError for a ring of two straight sides: they are so close that they should have been one."""
    last = np.append(rings.first, len(rings.x))[1:] - 1
    flat = rows_where((last - rings.first <= 1) & (rings.bulge[rings.first] == 0) & (rings.bulge[last] == 0))
    if len(flat):
        raise TornError(int(rings.part[flat[0]]))
