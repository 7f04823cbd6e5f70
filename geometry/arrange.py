"""What is seen of a face: cut all sides where they meet, see which part is in front on either side, and trace.

The steps are modules of their own: `columns` (the sides), `cutting` (where they meet), `pieces` (cut and welded),
`owners` (who is in front), `border` (edges) and `rings` (regions). Arcs stay arcs; nothing is ever flattened to be cut.
"""

from collections.abc import Sequence

import numpy as np
import shapely

from geometry.arrangement import Arrangement, Edge, Region
from geometry.border import Border, TornError, border_of, runs_of
from geometry.columns import Columns, stack_of
from geometry.cutting import meetings, near_pairs
from geometry.owners import owners_of
from geometry.pieces import Nodes, cut
from geometry.rank import rank_key
from geometry.regions import ring_areas
from geometry.rings import Rings, rings_of
from geometry.sides import WELD_MM
from shared.errors import OutlineError
from shared.job import Part, Vertex
from shared.kinds import usual

WELDS_MM = (WELD_MM, 1e-5, 1e-4, 1e-3)
"""Tried one after the other: where contacts of a few micrometres do not close, a wider weld makes them one."""


def arrange(parts: Sequence[Part]) -> Arrangement:
    """The visible region of every part, in the order given, and every edge once; nothing for no parts.

    What is in front: `geometry.rank.rank_key`. OutlineError where an outline encloses nothing, holds a number that is
    not finite, or is so tangled that it does not close.
    """
    if not parts:
        return Arrangement((), ())
    order = sorted(range(len(parts)), key=lambda index: rank_key(parts[index], index))
    regions, edges = _closed([parts[index] for index in order], WELDS_MM)
    back = dict(zip(order, regions, strict=True))
    return Arrangement(tuple(back[index] for index in range(len(parts))), edges)


def _closed(stacked: Sequence[Part], welds: tuple[float, ...]) -> tuple[list[Region], tuple[Edge, ...]]:
    try:
        return _arranged(stacked, welds[0])
    except TornError as torn:
        if len(welds) > 1:
            return _closed(stacked, welds[1:])
        part = stacked[torn.part]
        raise OutlineError(
            "its outline cannot be told apart from what touches it",
            where=part.name or part.id,
            do="see whether it crosses itself, or move it a little",
        ) from torn


def _arranged(stacked: Sequence[Part], weld: float) -> tuple[list[Region], tuple[Edge, ...]]:
    stack = stack_of(stacked, weld)
    sides = stack.sides
    nodes, stretches, pieces = cut(sides, meetings(sides, *near_pairs(sides, weld), weld), weld)
    owners = owners_of(stack, stretches, pieces)
    rows = usual()
    surfaces = np.array([not rows[part.kind].hole for part in stacked])
    border = border_of(stack, surfaces, stretches, owners)
    return regions_of(stacked, rings_of(sides, nodes, border)), edges_of(stacked, sides, nodes, runs_of(border))


def edges_of(stacked: Sequence[Part], sides: Columns, nodes: Nodes, runs: Border) -> tuple[Edge, ...]:
    """The runs of the border as edges. The library measures straight ones; an arc is its share of its side's length."""
    ids = [*(part.id for part in stacked), None]
    numbers = [*sides.number.tolist(), None]
    share = runs.finish - runs.begin
    x0, y0, x1, y1 = nodes.x[runs.start], nodes.y[runs.start], nodes.x[runs.end], nodes.y[runs.end]
    sweep = sides.sweep[runs.side]
    lines = shapely.linestrings(np.stack((x0, x1), axis=1), np.stack((y0, y1), axis=1))
    length = np.where(sweep == 0, shapely.length(lines), sides.length[runs.side] * share)
    bulge = np.where(share == 1, sides.bulge[runs.side], np.tan(sweep * share / 4))
    bulge[sweep == 0] = 0.0
    return tuple(
        map(
            Edge,
            [ids[part] for part in runs.left.tolist()],
            [ids[part] for part in runs.right.tolist()],
            *(column.tolist() for column in (x0, y0, x1, y1, bulge, length)),
            [numbers[side] for side in runs.left_side.tolist()],
            [numbers[side] for side in runs.right_side.tolist()],
        )
    )


def regions_of(stacked: Sequence[Part], rings: Rings) -> list[Region]:
    """The rings as regions, one for each part in the order of the stack."""
    vertices = list(map(Vertex, rings.x.tolist(), rings.y.tolist(), rings.bulge.tolist()))
    own: list[list[tuple[Vertex, ...]]] = [[] for _ in stacked]
    area = np.bincount(rings.part, ring_areas(rings), len(stacked)).tolist()
    first = [*rings.first.tolist(), len(vertices)]
    for ring, part in enumerate(rings.part.tolist()):
        own[part].append(tuple(vertices[first[ring] : first[ring + 1]]))
    return [Region(part.id, tuple(own[place]), area[place]) for place, part in enumerate(stacked)]
