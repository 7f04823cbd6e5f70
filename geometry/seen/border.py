"""The border of a face: the pieces that have one part on their left and another, or none, on their right."""

from typing import NamedTuple

import numpy as np

from geometry.seen.columns import Floats, Stack, Whole, begins, rows_where
from geometry.seen.owners import Owners
from geometry.seen.pieces import Stretches


class TornError(Exception):
    """The pieces of a face do not close: some contacts are so narrow that a wider weld must decide them.

    It never leaves geometry. `part` is the place in the stack of the part at which it was found.
    """

    def __init__(self, part: int) -> None:
        self.part = part
        super().__init__(part)


class Border(NamedTuple):
    """The border, one row for each piece or for each row of joined pieces, in the order and direction of their sides.

    `piece` is the first of the joined pieces. `side` is the row of the side they come from, at which the front one of
    the two parts ends. `start` and `end` are nodes; `begin` and `finish` say how far along the side they lie, 0 to 1.
    `left` and `right` are the places in the stack of the parts seen there, -1 for none or a hole. `left_side` and
    `right_side` are the rows of those parts' own sides there, -1 for none.
    """

    piece: Whole
    side: Whole
    start: Whole
    end: Whole
    begin: Floats
    finish: Floats
    left: Whole
    right: Whole
    left_side: Whole
    right_side: Whole


def border_of(stack: Stack, stretches: Stretches, owners: Owners) -> Border:
    """The border, piece by piece. A hole counts as nothing.

    TornError where a part begins to be seen at a place where it has no side of its own.
    """
    on_left = _own_stretches(stack, stretches, owners.left)
    on_right = _own_stretches(stack, stretches, owners.right)
    source = np.where(owners.left > owners.right, on_left, on_right)
    changes = owners.left != owners.right
    torn = rows_where(changes & (source < 0))
    if len(torn):
        raise TornError(int(max(owners.left[torn[0]], owners.right[torn[0]])))
    left, right = _with_surface(stack, owners.left), _with_surface(stack, owners.right)
    piece = rows_where(left != right)
    piece = piece[np.argsort(source[piece])]
    row, left, right = source[piece], left[piece], right[piece]
    left_side, right_side = _sides_of(stretches, on_left[piece], left), _sides_of(stretches, on_right[piece], right)
    along = stretches.along[row] > 0
    return Border(
        piece,
        stretches.side[row],
        stretches.start[row],
        stretches.end[row],
        stretches.begin[row],
        stretches.finish[row],
        np.where(along, left, right),
        np.where(along, right, left),
        np.where(along, left_side, right_side),
        np.where(along, right_side, left_side),
    )


def joined_pieces(border: Border) -> Border:
    """The same border, with successive pieces of one side joined where they divide the same two parts."""
    fresh = begins(border.side, border.left, border.right, border.left_side, border.right_side)
    fresh[1:] |= border.start[1:] != border.end[:-1]
    first = rows_where(fresh)
    last = np.concatenate((first, [len(fresh)]))[1:] - 1
    return Border(
        border.piece[first],
        border.side[first],
        border.start[first],
        border.end[last],
        border.begin[first],
        border.finish[last],
        border.left[first],
        border.right[first],
        border.left_side[first],
        border.right_side[first],
    )


def _own_stretches(stack: Stack, stretches: Stretches, owner: Whole) -> Whole:
    """For each piece, the stretch of its owner's own outline that lies on it; -1 when none does."""
    own = np.full(len(owner), -1, dtype=np.intp)
    rows = rows_where(stack.sides.part[stretches.side] == owner[stretches.piece])
    own[stretches.piece[rows]] = rows
    return own


def _with_surface(stack: Stack, owner: Whole) -> Whole:
    """The owners, with -1 in place of holes."""
    return np.where((owner >= 0) & stack.surface[owner], owner, -1)


def _sides_of(stretches: Stretches, own: Whole, owner: Whole) -> Whole:
    """The sides of the owners' own stretches; -1 without an owner or without a stretch."""
    return np.where((own >= 0) & (owner >= 0), stretches.side[own], -1)
