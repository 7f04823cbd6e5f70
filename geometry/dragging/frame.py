"""One frame of a drag: what the moved parts meet is cut anew and spliced into what stands.

`geometry.dragging.standing` calls it; the stages are those of `geometry.seen.arrange`.
"""

from itertools import compress

import numpy as np

from geometry.dragging.ground import Ground
from geometry.outlines.sides import WELD_MM, Box
from geometry.seen.arrange import edges_of, regions_of, unseen
from geometry.seen.arrangement import Arrangement, Edge, Region
from geometry.seen.border import Border, TornError, border_of, joined_pieces
from geometry.seen.columns import Flags, Floats, Stack, Whole, filled, rows_where, stack_of
from geometry.seen.cutting import Meetings, meetings
from geometry.seen.neighbours import near_boxes, near_pairs
from geometry.seen.owners import Owners, in_front
from geometry.seen.pieces import Nodes, Pieces, Stops, Stretches, inner_stops, stretched, welded
from geometry.seen.rings import rings_of
from shared.job import Part

REACH_MM = 0.01
"""How far round the moved parts the others are cut anew: far more than a weld, far less than a part."""

FEW_PAIRS = 20_000
"""Up to this many pairs of sides it is quicker to look at each pair than to search."""

ROUNDING = 1e-9
"""How far past the end of its stretch rounding may put a point, as a share of the side."""


def frame(ground: Ground, parts: list[Part]) -> Arrangement:
    """The face arranged with its moving parts as given. TornError where the pieces do not close."""
    moved = stack_of(parts, WELD_MM)
    box = _reach(moved)
    stack = filled(ground.laid.stack, ground.places, moved)
    touched = _meets(ground.boxes, box)
    nodes, stretches, pieces, behind = _recut(ground, stack, touched, box)
    owners = in_front(stack, stretches, pieces, _over(ground, stack, pieces, behind, box), behind)
    fresh = border_of(stack, stretches, owners)
    border, sides, shown = _spliced(ground.laid.border, touched, fresh, stack)
    edges = _edges(ground, stack, nodes, border, sides)
    return Arrangement(_regions(ground, stack, nodes, border, shown), edges)


def _reach(moved: Stack) -> Box:
    left, bottom, right, top = (column.tolist() for column in (moved.left, moved.bottom, moved.right, moved.top))
    return (min(left) - REACH_MM, min(bottom) - REACH_MM, max(right) + REACH_MM, max(top) + REACH_MM)


def _meets(boxes: tuple[Floats, Floats, Floats, Floats], box: Box) -> Flags:
    left, bottom, right, top = boxes
    meets: Flags = (left <= box[2]) & (right >= box[0]) & (bottom <= box[3]) & (top >= box[1])
    return meets


def _recut(ground: Ground, stack: Stack, touched: Flags, box: Box) -> tuple[Nodes, Stretches, Pieces, Owners]:
    """The touched pieces and the moved sides, cut where they meet, and the standing parts behind the touched pieces."""
    sides, laid, first = stack.sides, ground.laid, len(ground.vertex)
    moved = np.arange(first, len(sides.part), dtype=np.intp)
    rows = rows_where(touched[laid.stretches.piece])
    old = Stretches._make(column[rows] for column in laid.stretches)
    met = _met(stack, first, box)
    nodes, vertex, crossing = _nodes(ground, stack, met, box)
    # Each touched stretch is a line of its own; so is each moved side, after them.
    inner = inner_stops(sides, met)
    line = _line(old, moved, inner.line, inner.along)
    known = rows_where(line >= 0)
    at = np.concatenate((vertex[met.vertex], crossing, crossing))
    if (at < 0).any():
        raise TornError(int(sides.part[first]))
    whole = np.arange(len(rows) + len(moved), dtype=np.intp)
    stops = Stops(
        np.concatenate((whole, whole, line[known])),
        np.concatenate((old.begin, np.zeros(len(moved)), old.finish, np.ones(len(moved)), inner.along[known])),
        np.concatenate((old.start, vertex[moved], old.end, vertex[sides.following[moved]], at[known])),
    )
    stretches, pieces = stretched(sides, nodes, stops, np.concatenate((old.side, moved)), WELD_MM)
    line = _line(old, moved, stretches.side, (stretches.begin + stretches.finish) / 2)
    return nodes, stretches, pieces, _behind(laid.owners, old, line, stretches, len(pieces.x))


def _met(stack: Stack, first: int, box: Box) -> Meetings:
    """Where the moved sides, which are those from row `first` on, meet others."""
    sides = stack.sides
    near = rows_where(_meets((sides.left, sides.bottom, sides.right, sides.top), box))
    moved = near[near >= first]
    if len(near) * len(moved) <= FEW_PAIRS:
        one, other = np.repeat(near, len(moved)), np.tile(moved, len(near))
        rows = near_boxes(sides, one, sides, other, WELD_MM)
        rows = rows[(one[rows] < other[rows]) & (sides.part[one[rows]] != sides.part[other[rows]])]
    else:
        one, other = near_pairs(stack, WELD_MM)
        rows = rows_where((one >= first) | (other >= first))
    one, other = one[rows], other[rows]
    # The part farther back comes first, as in `arrange`: otherwise crossings could differ in the last digit.
    swap = sides.part[one] > sides.part[other]
    return meetings(sides, np.where(swap, other, one), np.where(swap, one, other), WELD_MM)


def _nodes(ground: Ground, stack: Stack, met: Meetings, box: Box) -> tuple[Nodes, Whole, Whole]:
    """All nodes, the standing ones first; the node at which each side starts; and the node of each crossing.

    TornError where a moved point brings standing nodes together.
    """
    sides, known = stack.sides, ground.laid.nodes
    count, first = len(known.x), len(ground.vertex)
    near = rows_where(_meets((known.x, known.y, known.x, known.y), box))
    moved = len(sides.part) - first
    corner = np.concatenate((known.corner[near], np.arange(moved + len(met.x)) < moved))
    x = np.concatenate((known.x[near], sides.x0[first:], met.x))
    y = np.concatenate((known.y[near], sides.y0[first:], met.y))
    local, node = welded(Nodes(x, y, corner), WELD_MM)
    name = np.full(len(local.x), -1, dtype=np.intp)
    name[node[: len(near)]] = near
    if np.count_nonzero(name >= 0) < len(near):
        raise TornError(int(sides.part[first]))
    new = rows_where(name < 0)
    name[new] = count + np.arange(len(new))
    nodes = Nodes._make(np.concatenate((old, fresh[new])) for old, fresh in zip(known, local, strict=True))
    nodes.x[name], nodes.y[name] = local.x, local.y
    vertex = np.concatenate((ground.vertex, name[node[len(near) : len(near) + moved]]))
    return nodes, vertex, name[node[len(near) + moved :]]


def _line(old: Stretches, moved: Whole, side: Whole, along: Floats) -> Whole:
    """The line that holds each place on a side: a touched stretch or a moved side; -1 for neither.

    Moved sides are numbered after the touched stretches.
    """
    row = np.searchsorted(old.side + old.begin / 2, side + np.clip(along, 0.0, 1.0) / 2, side="right") - 1
    holds = rows_where((row >= 0) & (side < moved[0]))
    on = row[holds]
    fits = (old.side[on] == side[holds]) & (along[holds] <= old.finish[on] + ROUNDING)
    line = np.where(side >= moved[0], len(old.side) + side - moved[0], -1)
    line[holds[fits]] = on[fits]
    return line


def _behind(owners: Owners, old: Stretches, line: Whole, stretches: Stretches, count: int) -> Owners:
    """The standing owners of what the touched pieces were cut into; -1 for pieces that lie on moved sides alone."""
    new = rows_where(line < len(old.side))
    row = line[new]
    same = stretches.along[new] == old.along[row]
    left, right = owners.left[old.piece[row]], owners.right[old.piece[row]]
    behind = Owners(np.full(count, -1, dtype=np.intp), np.full(count, -1, dtype=np.intp))
    behind.left[stretches.piece[new]] = np.where(same, left, right)
    behind.right[stretches.piece[new]] = np.where(same, right, left)
    return behind


def _over(ground: Ground, stack: Stack, pieces: Pieces, behind: Owners, box: Box) -> tuple[Whole, Whole]:
    """Pairs of a piece and a part that may cover it.

    A moved part may cover any piece; a standing part is asked only for pieces whose standing owners are not known.
    """
    stands = _meets((stack.left, stack.bottom, stack.right, stack.top), box)
    stands[ground.places] = False
    standing, moving = rows_where(stands), ground.places
    unknown = rows_where((behind.left < 0) & (behind.right < 0))
    every = np.arange(len(pieces.x), dtype=np.intp)
    return (
        np.concatenate((np.repeat(every, len(moving)), np.repeat(unknown, len(standing)))),
        np.concatenate((np.tile(moving, len(every)), np.tile(standing, len(unknown)))),
    )


def _spliced(known: Border, touched: Flags, fresh: Border, stack: Stack) -> tuple[Border, Flags, Flags]:
    """The border of all sides and parts whose border changed, and which sides and which parts those are.

    The parts have one more row at the end, for no part.
    """
    sides = np.zeros(len(stack.sides.part), dtype=np.bool_)
    shown = np.zeros(len(stack.number) + 1, dtype=np.bool_)
    stays = ~touched[known.piece]
    gone = rows_where(~stays)
    for left, right, side in (
        (known.left[gone], known.right[gone], known.side[gone]),
        (fresh.left, fresh.right, fresh.side),
    ):
        sides[side] = shown[left] = shown[right] = True
    shown[-1] = False
    rows = rows_where(stays & (sides[known.side] | shown[known.left] | shown[known.right]))
    border = Border._make(np.concatenate((old[rows], new)) for old, new in zip(known, fresh, strict=True))
    return border, sides, shown


def _edges(ground: Ground, stack: Stack, nodes: Nodes, border: Border, sides: Flags) -> tuple[Edge, ...]:
    """All edges; those along sides whose border changed are put together anew."""
    rows = rows_where(sides[border.side])
    rows = rows[np.lexsort((border.begin[rows], border.side[rows]))]
    joined = joined_pieces(Border._make(column[rows] for column in border))
    stays = (~sides[ground.sides]).tolist()
    return (*compress(ground.edges, stays), *edges_of(ground.ids, stack.sides, nodes, joined))


def _regions(ground: Ground, stack: Stack, nodes: Nodes, border: Border, shown: Flags) -> tuple[Region, ...]:
    """All regions in drawing order; those of parts whose border changed are put together anew."""
    own = border._replace(left=np.where(shown[border.left], border.left, -1))
    own = own._replace(right=np.where(shown[border.right], border.right, -1))
    seen = regions_of(ground.ids, rings_of(stack.sides, nodes, own))
    regions = list(ground.regions)
    for place in rows_where(shown).tolist():
        regions[ground.order[place]] = seen.get(place) or unseen(ground.ids[place])
    return tuple(regions)
