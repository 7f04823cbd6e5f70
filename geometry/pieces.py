"""The sides of a face, cut into pieces where they meet: each piece once, however many sides lie on it."""

from typing import NamedTuple

import numpy as np

from geometry.columns import Columns, Floats, Whole, position
from geometry.cutting import Meetings


class Nodes(NamedTuple):
    """The points where pieces end, numbered from left to right, then from the bottom up."""

    x: Floats
    y: Floats


class Stretches(NamedTuple):
    """What lies between two successive nodes on each side, in order along it: one row each.

    `begin` and `finish` say how far along `side` it runs (0 to 1), `start` and `end` are its nodes, `piece` is the
    piece it is, and `along` is 1 where the piece runs the same way (from its lower node to its higher), else -1.
    """

    side: Whole
    begin: Floats
    finish: Floats
    start: Whole
    end: Whole
    along: Whole
    piece: Whole


class Pieces(NamedTuple):
    """The middle of each piece, on its arc where it is one, and a stretch that lies on it."""

    x: Floats
    y: Floats
    stretch: Whole


def welded(x: Floats, y: Floats, tolerance: float) -> tuple[Nodes, Whole]:
    """The nodes, and the number of each point's node.

    Points are one node where no gap over the tolerance divides them in x nor in y; never rounded to cells, which would
    part near points that lie astride a border. A node stands exactly where its first point does: a vertex, if any.
    """
    key = _groups(x, tolerance) * len(x) + _groups(y, tolerance)
    _, first, node = np.unique(key, return_index=True, return_inverse=True)
    return Nodes(x[first], y[first]), node


def cut(sides: Columns, met: Meetings, tolerance: float) -> tuple[Nodes, Stretches, Pieces]:
    """All sides cut where they meet."""
    nodes, node = welded(np.concatenate((sides.x0, met.x)), np.concatenate((sides.y0, met.y)), tolerance)
    rows = np.arange(len(sides.x0), dtype=np.intp)
    crossing = np.arange(len(met.x), dtype=np.intp) + len(rows)
    side = np.concatenate((rows, rows, met.touched, met.one, met.other))
    point = np.concatenate((rows, sides.following, met.vertex, crossing, crossing))
    inner = side[2 * len(rows) :]
    where = point[2 * len(rows) :]
    x, y = np.concatenate((sides.x0, met.x))[where], np.concatenate((sides.y0, met.y))[where]
    along = np.concatenate((np.zeros(len(rows)), np.ones(len(rows)), position(sides, inner, x, y)))
    stretches, pieces = stretched(sides, nodes, (side, along, node[point]), tolerance)
    return nodes, stretches, pieces


def stretched(
    sides: Columns, nodes: Nodes, stops: tuple[Whole, Floats, Whole], tolerance: float
) -> tuple[Stretches, Pieces]:
    """The stretches between stops (a side, how far along it, a node), and the pieces they are."""
    order = np.lexsort((stops[1], stops[0]))
    side, along, node = stops[0][order], stops[1][order], stops[2][order]
    fresh = np.append(np.True_, (side[1:] != side[:-1]) | (node[1:] != node[:-1]))
    side, along, node = side[fresh], along[fresh], node[fresh]
    rows = np.flatnonzero(side[1:] == side[:-1])
    side, begin, finish = side[rows], along[rows], along[rows + 1]
    start, end = node[rows], node[rows + 1]
    low, high = np.minimum(start, end), np.maximum(start, end)
    forward = np.where(start < end, 1, -1)
    dx, dy = nodes.x[high] - nodes.x[low], nodes.y[high] - nodes.y[low]
    # Half the bulge is the sagitta over the chord; to the right of the chord where it is positive.
    bow = np.tan(sides.sweep[side] * (finish - begin) / 4) * forward / 2
    sagitta = bow * np.hypot(dx, dy)
    piece, first = _same(low * len(nodes.x) + high, sagitta, 2 * tolerance)
    x = (nodes.x[low] + nodes.x[high]) / 2 + dy * bow
    y = (nodes.y[low] + nodes.y[high]) / 2 - dx * bow
    return Stretches(side, begin, finish, start, end, forward, piece), Pieces(x[first], y[first], first)


def _groups(values: Floats, tolerance: float) -> Whole:
    order = np.argsort(values)
    ordered = values[order]
    group = np.empty(len(values), dtype=np.intp)
    group[order[:1]] = 0
    group[order[1:]] = np.cumsum(ordered[1:] - ordered[:-1] > tolerance)
    return group


def _same(chord: Whole, sagitta: Floats, tolerance: float) -> tuple[Whole, Whole]:
    """The number of each stretch's piece (same chord, sagittas without a gap), and the first stretch of each piece."""
    order = np.lexsort((sagitta, chord))
    chords, bows = chord[order], sagitta[order]
    fresh = np.append(np.True_, (chords[1:] != chords[:-1]) | (bows[1:] - bows[:-1] > tolerance))
    piece = np.empty(len(order), dtype=np.intp)
    piece[order] = np.cumsum(fresh) - 1
    return piece, order[fresh]
