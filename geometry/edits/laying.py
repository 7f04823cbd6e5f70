"""Lays a side of a part along the line of another side, so that the two touch."""

from msgspec.structs import replace

from geometry.outlines.measured import check_outline, signed_area_mm2
from geometry.outlines.sides import Point, Side, sides
from geometry.seen.near import PARALLEL
from shared.errors import OutlineError
from shared.job import Outline, Part, Vertex


def side_of(part: Part, vertex: int) -> Side:
    """The side that leaves this vertex. KeyError for a vertex that no side leaves."""
    return {side.vertex: side for side in sides(part.outline)}[vertex]


def way_onto(side: Side, line: Side) -> Point:
    """How far across and up a side must move, by the shortest way, so that its start lies on the line of another."""
    lx, ly = line.x1 - line.x0, line.y1 - line.y0
    dx, dy = line.x0 - side.x0, line.y0 - side.y0
    share = (dx * ly - dy * lx) / (lx * lx + ly * ly)
    return dx if lx == 0 else share * ly, dy if ly == 0 else -share * lx


def laid_along(part: Part, vertex: int, line: Side) -> Part:
    """The part with the side that leaves `vertex` laid on the endless line through another side.

    The sides before and after it become longer or shorter and keep their directions; all others stay. OutlineError
    where one of the three is an arc, where a side beside it is parallel to the line, or where nothing sensible would be
    left.
    """
    outline, count = part.outline, len(part.outline)
    before, start, end, after = (outline[(vertex + step) % count] for step in (-1, 0, 1, 2))
    where = part.called
    if before.bulge or start.bulge or end.bulge:
        raise OutlineError("an arc beside that side cannot follow", where=where, do="move the part, or draw it again")
    corners = {vertex: _met(before, start, line, where), (vertex + 1) % count: _met(after, end, line, where)}
    laid = tuple(Vertex(*corners.get(place, (v.x, v.y)), v.bulge) for place, v in enumerate(outline))
    if not _keeps_its_way(outline, laid):
        raise OutlineError("nothing would be left of it", where=where, do="remove it, or measure it again")
    check_outline(laid, where)
    return replace(part, outline=laid)


def _met(start: Vertex, end: Vertex, line: Side, where: str) -> Point:
    """Where the line through two corners meets another line. The point is exactly on a level or upright line."""
    dx, dy = end.x - start.x, end.y - start.y
    lx, ly = line.x1 - line.x0, line.y1 - line.y0
    turn = dx * ly - dy * lx
    if abs(turn) <= PARALLEL * line.chord_mm * (dx * dx + dy * dy) ** 0.5:
        raise OutlineError("the side beside it runs along the line", where=where, do="move the part, or draw it again")
    share = ((line.x0 - start.x) * ly - (line.y0 - start.y) * lx) / turn
    x = line.x0 if lx == 0 else start.x + share * dx
    y = line.y0 if ly == 0 else start.y + share * dy
    return x, y


def _keeps_its_way(before: Outline, after: Outline) -> bool:
    """Whether no side has turned round."""
    return signed_area_mm2(before) * signed_area_mm2(after) > 0 and all(
        (old.x1 - old.x0) * (new.x1 - new.x0) + (old.y1 - old.y0) * (new.y1 - new.y0) > 0
        for old, new in zip(sides(before), sides(after), strict=True)
    )
