"""Finds what the fronts of a face hang on, by their boxes."""

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
import shapely

from geometry.outlines.measured import joined, outline_box
from geometry.outlines.sides import Box
from geometry.seen.columns import Floats, Whole
from shared.job import Part
from shared.trade.kinds import usual

COVERED = 0.5
"""A front hangs on what it overlaps by more than this share of the smaller of both, across and up (own choice)."""


class Hung(NamedTuple):
    """A front, the cabinets that it hangs on, by id in drawing order, and the box that it may cover."""

    front: str
    behind: tuple[str, ...]
    box: Box


def hung_fronts(parts: Sequence[Part]) -> tuple[Hung, ...]:
    """The doors and drawer fronts that hang on at least one cabinet, in drawing order.

    A front that hangs on no cabinet is left out (the panel of a dishwasher).
    """
    fronts = [part for part in parts if usual()[part.kind].front]
    behind = [part for part in parts if usual()[part.kind].in_row or usual()[part.kind].below_row]
    if not fronts or not behind:
        return ()
    held: dict[int, list[int]] = {}
    boxes = _boxes(behind)
    for front, other in zip(*map(np.ndarray.tolist, _covering(_boxes(fronts), boxes)), strict=True):
        held.setdefault(front, []).append(other)
    found = (_hung(fronts[front], [behind[row] for row in rows], boxes[rows]) for front, rows in sorted(held.items()))
    return tuple(hung for hung in found if hung is not None)


def _boxes(parts: Sequence[Part]) -> Floats:
    return np.array([outline_box(part.outline) for part in parts], dtype=np.float64)


def _covering(fronts: Floats, behind: Floats) -> tuple[Whole, Whole]:
    """The pairs of a front and a part that it covers enough to hang on, by their rows, in order."""
    tree = shapely.STRtree(shapely.box(behind[:, 0], behind[:, 1], behind[:, 2], behind[:, 3]))
    front, other = tree.query(shapely.box(fronts[:, 0], fronts[:, 1], fronts[:, 2], fronts[:, 3]))
    covers = np.ones(len(front), dtype=np.bool_)
    for axis in (0, 1):
        low, high = behind[other, axis], behind[other, axis + 2]
        front_low, front_high = fronts[front, axis], fronts[front, axis + 2]
        shared = np.minimum(high, front_high) - np.maximum(low, front_low)
        covers &= shared > COVERED * np.minimum(high - low, front_high - front_low)
    order = np.lexsort((other[covers], front[covers]))
    return front[covers][order], other[covers][order]


def _hung(front: Part, behind: Sequence[Part], boxes: Floats) -> Hung | None:
    cabinets = tuple(part.id for part in behind if usual()[part.kind].holds_fronts)
    if not cabinets:
        return None
    beside = (_box(row) for part, row in zip(behind, boxes, strict=True) if usual()[part.kind].in_row)
    left, _, right, _ = joined(list(beside))
    _, bottom, _, top = joined([_box(row) for row in boxes])
    return Hung(front.id, cabinets, (left, bottom, right, top))


def _box(row: Floats) -> Box:
    left, bottom, right, top = row.tolist()
    return left, bottom, right, top
