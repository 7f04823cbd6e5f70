"""Pulls along what lies beyond a line: a part beyond it moves, a part that spans it stretches, arcs stay arcs."""

from math import dist
from typing import NamedTuple

from msgspec.structs import replace

from geometry.outlines.measured import check_outline, outline_box
from geometry.outlines.sides import WELD_MM, Point, sides
from geometry.parts.moves import moved
from shared.errors import OutlineError
from shared.job import Outline, Part, Vertex
from shared.trade.kinds import usual

AT_MM = 0.5
"""A corner nearer to the line than this is at it: half a division of a tape (common practice, no source)."""


class Pull(NamedTuple):
    """Moves all that lies beyond `at_mm` by `by_mm`, across (`axis` 0) or up (`axis` 1); a negative length goes back.

    Beyond is to the right or above for a `sense` of 1, and to the left or below for -1.
    """

    axis: int
    at_mm: float
    by_mm: float
    sense: int = 1

    @property
    def step(self) -> tuple[float, float]:
        """How far a pulled part goes, across and up."""
        length = self.sense * self.by_mm
        return (0.0, length) if self.axis else (length, 0.0)

    def beyond_mm(self, place: float) -> float:
        """How far a place, by its x or y, lies beyond the line; negative for a place before it."""
        return self.sense * (place - self.at_mm)

    def reach_mm(self, outline: Outline) -> tuple[float, float]:
        """How far the near and the far end of an outline lie beyond the line."""
        box = outline_box(outline)
        near, far = sorted((self.beyond_mm(box[self.axis]), self.beyond_mm(box[self.axis + 2])))
        return near, far


class Welded(NamedTuple):
    """Corners that a part shares with others. They go or stay with those others, wherever the line is."""

    going: tuple[Point, ...] = ()
    staying: tuple[Point, ...] = ()


ALONE = Welded()


def pulled(part: Part, pull: Pull, at_mm: float = AT_MM, welded: Welded = ALONE) -> Part:
    """The part after the pull; the same object if it stays. A corner within `at_mm` of the line counts as beyond it.

    Corners beyond the line move; the others stay. Corners that arcs join go together, if the middle of the arcs lies
    beyond or the arcs end at the line. A part made in one piece (a fixture, a window, an outlet, a cut-out) stretches
    only if it ends at the line; otherwise it goes with its middle. OutlineError where a part would be turned inside
    out, or nothing of it would be left.
    """
    near, far = pull.reach_mm(part.outline)
    if far < -at_mm:
        return part
    if near >= -at_mm or (usual()[part.kind].one_piece and far > at_mm):
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


def _corners_beyond(outline: Outline, pull: Pull, at_mm: float) -> list[bool]:
    """For each corner, whether it is pulled. Corners that arcs join are pulled together."""
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
    """Whether corners that reach from `near` to `far` are pulled as a whole."""
    return (near + far) / 2 >= -at_mm or abs(far) <= at_mm


def _refuse_turned(part: Part, outline: Outline, pull: Pull) -> None:
    """OutlineError where a side now goes the other way or has no length: the part is inside out, or gone."""
    where = part.called
    before, after = sides(part.outline), {side.vertex: side for side in sides(outline)}
    for side in before:
        old = (side.x1 - side.x0, side.y1 - side.y0)[pull.axis]
        now = after.get(side.vertex)
        new = (now.x1 - now.x0, now.y1 - now.y0)[pull.axis] if now else 0.0
        if abs(old) > WELD_MM and old * new <= 0:
            raise OutlineError("nothing would be left of it", where=where, do="shift by less, or remove it first")
    check_outline(outline, where)
