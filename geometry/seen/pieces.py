"""Cuts the sides of a face into pieces where they meet: each piece is there once, however many sides lie on it."""

from typing import NamedTuple

import numpy as np

from geometry.seen.columns import Columns, Flags, Floats, Whole, begins, position, rows_where
from geometry.seen.cutting import Meetings


class Nodes(NamedTuple):
    """The points where pieces end. `corner` is true of a vertex of an outline, false of a mere crossing."""

    x: Floats
    y: Floats
    corner: Flags


class Stops(NamedTuple):
    """Where lines are to be cut: the line, how far along its side (0 to 1), and the node there.

    A line is a whole side or a stretch of one.
    """

    line: Whole
    along: Floats
    node: Whole


class Stretches(NamedTuple):
    """The stretches of each side between two successive nodes, in order along the side: one row each.

    `begin` and `finish` say how far along `side` the stretch reaches, 0 to 1. `start` and `end` are its nodes. `piece`
    is the piece that lies there; it goes from its lower node to its higher one. `along` is 1 for a stretch that goes
    the same way, else -1.
    """

    side: Whole
    begin: Floats
    finish: Floats
    start: Whole
    end: Whole
    along: Whole
    piece: Whole


class Pieces(NamedTuple):
    """The middle of each piece (of an arc, half way along it) and one stretch that lies on the piece."""

    x: Floats
    y: Floats
    stretch: Whole


def welded(points: Nodes, tolerance: float) -> tuple[Nodes, Whole]:
    """The points as nodes, and the number of each point's node.

    Points are one node when no gap above the tolerance divides them in x or in y. They are not rounded to cells, as
    that would part near points on either side of a cell's border. A node stands exactly where one of its points does:
    at a vertex if it has one, and at the leftmost, lowest of several. So it does not depend on the order of the points.
    """
    x, y, corner = points
    key = _groups(x, tolerance) * len(x) + _groups(y, tolerance)
    _, first, node = np.unique(key, return_index=True, return_inverse=True)
    differs = (x != x[first][node]) | (y != y[first][node]) | (corner != corner[first][node])
    if differs.any():
        unsettled = np.zeros(len(first), dtype=np.bool_)
        unsettled[node[differs]] = True
        rows = rows_where(unsettled[node])
        rows = rows[np.lexsort((y[rows], x[rows], ~corner[rows], node[rows]))]
        best = rows[begins(node[rows])]
        first[node[best]] = best
    return Nodes(x[first], y[first], corner[first]), node


def cut(sides: Columns, met: Meetings, tolerance: float) -> tuple[Nodes, Stretches, Pieces]:
    """All sides cut where they meet."""
    rows = np.arange(len(sides.x0), dtype=np.intp)
    corner = np.arange(len(rows) + len(met.x)) < len(rows)
    nodes, node = welded(Nodes(np.concatenate((sides.x0, met.x)), np.concatenate((sides.y0, met.y)), corner), tolerance)
    inner = inner_stops(sides, met)
    crossing = np.arange(len(met.x), dtype=np.intp) + len(rows)
    stops = Stops(
        np.concatenate((rows, rows, inner.line)),
        np.concatenate((np.zeros(len(rows)), np.ones(len(rows)), inner.along)),
        node[np.concatenate((rows, sides.following, met.vertex, crossing, crossing))],
    )
    stretches, pieces = stretched(sides, nodes, stops, rows, tolerance)
    return nodes, stretches, pieces


def inner_stops(sides: Columns, met: Meetings) -> Stops:
    """Where sides are met between their ends: first at the vertices that touch them, then at the crossings.

    Each crossing is there twice, once for either side. The lines are the sides. The nodes are all 0, as they are not
    known yet.
    """
    side = np.concatenate((met.touched, met.one, met.other))
    x = np.concatenate((sides.x0[met.vertex], met.x, met.x))
    y = np.concatenate((sides.y0[met.vertex], met.y, met.y))
    return Stops(side, position(sides, side, x, y), np.zeros(len(side), dtype=np.intp))


def stretched(sides: Columns, nodes: Nodes, stops: Stops, side_of: Whole, tolerance: float) -> tuple[Stretches, Pieces]:
    """The stretches between successive stops of each line, and their pieces. `side_of` gives the side of each line."""
    order = np.lexsort((stops.along, stops.line))
    line, along, node = stops.line[order], stops.along[order], stops.node[order]
    fresh = begins(line, node)
    line, along, node = line[fresh], along[fresh], node[fresh]
    rows = rows_where(line[1:] == line[:-1])
    side, begin, finish = side_of[line[rows]], along[rows], along[rows + 1]
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
    """The piece of each stretch, by its number, and the first stretch of each piece.

    Stretches are one piece when they have the same chord and no gap above the tolerance divides their sagittas.
    """
    order = np.lexsort((sagitta, chord))
    chords, bows = chord[order], sagitta[order]
    fresh = begins(chords)
    fresh[1:] |= bows[1:] - bows[:-1] > tolerance
    piece = np.empty(len(order), dtype=np.intp)
    piece[order] = np.cumsum(fresh) - 1
    return piece, order[fresh]
