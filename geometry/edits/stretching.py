"""What lies beyond a line is pulled along: parts beyond it move, parts that span it stretch, arcs stay arcs."""

from math import dist
from typing import NamedTuple

from msgspec.structs import replace

from geometry.edits.hand import said
from geometry.outlines.measured import check_outline, outline_box
from geometry.outlines.sides import WELD_MM, Point, sides
from geometry.parts.moves import moved
from shared.errors import OutlineError
from shared.job import Outline, Part, Vertex
from shared.trade.kinds import Kind, usual

AT_MM = 0.5
"""What is nearer to the line than this lies at it: half a division of a tape (common practice, no source)."""


class Pull(NamedTuple):
    """All beyond `at_mm` goes `by_mm` further (negative: back): across (`axis` 0) or up (1).

    Beyond is to the right or above where `sense` is 1, to the left or below where it is -1.
    """

    axis: int
    at_mm: float
    by_mm: float
    sense: int = 1

    @property
    def step(self) -> tuple[float, float]:
        """How far what is pulled goes across and up."""
        length = self.sense * self.by_mm
        return (0.0, length) if self.axis else (length, 0.0)

    def beyond_mm(self, place: float) -> float:
        """How far a place (x or y) lies beyond the line; negative before it."""
        return self.sense * (place - self.at_mm)

    def reach_mm(self, outline: Outline) -> tuple[float, float]:
        """How far the near and the far end of an outline lie beyond the line."""
        box = outline_box(outline)
        near, far = sorted((self.beyond_mm(box[self.axis]), self.beyond_mm(box[self.axis + 2])))
        return near, far


class Welded(NamedTuple):
    """Corners that a part has in common with others, and that go, or stay, with those wherever the line is."""

    going: tuple[Point, ...] = ()
    staying: tuple[Point, ...] = ()


ALONE = Welded()


def pulled(part: Part, pull: Pull, at_mm: float = AT_MM, welded: Welded = ALONE) -> Part:
    """The part as the pull leaves it; the same part where it stays. What is within `at_mm` of the line lies beyond it.

    Corners beyond move, the others stay. Corners that an arc joins go together: where the middle of their arcs lies
    beyond, or the arcs end at the line. What is made in one piece (a fixture, a window, an outlet, a cut-out) does not
    stretch unless it ends at the line: it goes with its middle. OutlineError where it would be turned inside out, or
    nothing would be left.
    """
    near, far = pull.reach_mm(part.outline)
    if far < -at_mm:
        return part
    if near >= -at_mm or (_is_one_piece(part) and far > at_mm):
        return moved(part, *pull.step) if near >= -at_mm or near + far >= 0 else part
    dx, dy = pull.step
    beyond = _corners_beyond(part.outline, pull, at_mm)
    goes = [_goes_with(vertex, welded, alone=alone) for vertex, alone in zip(part.outline, beyond, strict=True)]
    outline = tuple(
        Vertex(vertex.x + dx, vertex.y + dy, vertex.bulge) if went else vertex
        for vertex, went in zip(part.outline, goes, strict=True)
    )
    if not any(goes):
        return part
    _refuse_turned(part, outline, pull)
    return replace(part, outline=outline)


def _is_one_piece(part: Part) -> bool:
    return part.kind is Kind.FIXTURE or usual()[part.kind].hole


def _corners_beyond(outline: Outline, pull: Pull, at_mm: float) -> list[bool]:
    """Of each corner whether it is pulled; corners that arcs join are pulled together."""
    group = list(range(len(outline)))
    reaches = {place: pull.reach_mm((vertex,)) for place, vertex in enumerate(outline)}
    for side in sides(outline):
        if side.bulge:
            first, second = group[side.vertex], group[(side.vertex + 1) % len(outline)]
            arc = pull.reach_mm((Vertex(*side.start, side.bulge), Vertex(*side.end)))
            both = (arc, reaches[first], reaches[second])
            reaches[first] = (min(near for near, _ in both), max(far for _, far in both))
            group = [first if each == second else each for each in group]
    return [_goes(*reaches[each], at_mm) for each in group]


def _goes_with(vertex: Vertex, welded: Welded, *, alone: bool) -> bool:
    if any(dist((vertex.x, vertex.y), point) <= WELD_MM for point in welded.going):
        return True
    return alone and not any(dist((vertex.x, vertex.y), point) <= WELD_MM for point in welded.staying)


def _goes(near: float, far: float, at_mm: float) -> bool:
    """Whether what reaches from near to far is pulled as a whole."""
    return (near + far) / 2 >= -at_mm or abs(far) <= at_mm


def _refuse_turned(part: Part, outline: Outline, pull: Pull) -> None:
    """OutlineError where a side runs the other way now, or is nothing: the part is inside out, or gone."""
    where = said(part)
    before, after = sides(part.outline), {side.vertex: side for side in sides(outline)}
    for side in before:
        old = (side.x1 - side.x0, side.y1 - side.y0)[pull.axis]
        now = after.get(side.vertex)
        new = (now.x1 - now.x0, now.y1 - now.y0)[pull.axis] if now else 0.0
        if abs(old) > WELD_MM and old * new <= 0:
            raise OutlineError("nothing would be left of it", where=where, do="shift by less, or remove it first")
    check_outline(outline, where)
