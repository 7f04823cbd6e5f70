"""Voids: the holes that openings make together, and those that a measuring rule leaves in a surface."""

from collections.abc import Sequence
from typing import NamedTuple

from geometry.outlines.measured import joined
from geometry.outlines.shapes import box
from geometry.outlines.sides import Box
from geometry.parts.holding import holds_box
from geometry.seen.arrange import arrange
from geometry.seen.arrangement import Region
from geometry.seen.openings import uncovered_area_mm2
from shared.job import Part
from shared.trade.kinds import Kind
from takeoff.figures.measured import Term
from takeoff.surfaces.areas import SAME_MM2, PlacedPart, overlap
from takeoff.surfaces.fronts import is_opening
from takeoff.surfaces.measuring_rules import MeasuringRule

CLEAR_MM = 1e-3
"""An opening nearer to the border of a part, or to another opening, touches it: far below a tape's reading."""


class LeftIn(NamedTuple):
    """What a measuring rule leaves in a surface: a term for each void, and the region that is measured with them."""

    terms: tuple[Term, ...]
    region: Region


class _Void(NamedTuple):
    """Openings that overlap or touch. They are one hole, whose area is `area_mm2`."""

    openings: tuple[PlacedPart, ...]
    area_mm2: float


def left_in(surface: PlacedPart, face: Sequence[PlacedPart], rule: MeasuringRule) -> LeftIn:
    """What the rule leaves in a surface among the parts of its face.

    Openings that overlap or touch are judged as one, by their area together. An opening that reaches beyond the surface
    is judged by the whole of its area too; what is left in is the piece of it that lies in the surface.
    """
    before = tuple(each for each in face if each.rank > surface.rank and overlap(each.box, surface.box))
    has_some = rule.left_in_m2 and not is_opening(surface.part)
    openings = tuple(each for each in before if is_opening(each.part)) if has_some else ()
    terms: list[Term] = []
    left: set[str] = set()
    for void in _voids(openings):
        ids = {each.part.id for each in void.openings}
        gained = _region(surface, before, ids).area_mm2 - surface.region.area_mm2
        is_inside = abs(gained - void.area_mm2) <= SAME_MM2 and _is_clear(void, surface, before)
        if gained > SAME_MM2 and not rule.deducts(void.area_mm2, is_inside=is_inside):
            left |= ids
            terms.append(_term(void, gained))
    return LeftIn(tuple(terms), _region(surface, before, left) if left else surface.region)


def _region(surface: PlacedPart, before: Sequence[PlacedPart], without: set[str]) -> Region:
    """What is seen of a surface if these openings before it were not there."""
    ordered = sorted((surface, *before), key=lambda each: each.rank)
    return arrange([each.part for each in ordered if each.part.id not in without]).region(surface.part.id)


def _term(void: _Void, gained: float) -> Term:
    alone = void.openings[0] if len(void.openings) == 1 else None
    is_whole = alone is not None and alone.is_rectangle and abs(gained - alone.gross_mm2) <= SAME_MM2
    what = f"{alone.part.called if alone else 'openings'}, left in by the rule"
    return Term(what, gained, alone.size if alone and is_whole else (), tuple(each.part.id for each in void.openings))


def _voids(openings: Sequence[PlacedPart]) -> tuple[_Void, ...]:
    """The openings, those together that overlap or touch."""
    gathered: list[list[PlacedPart]] = []
    for opening in openings:
        meets = [group for group in gathered if any(_meet(opening, other) for other in group)]
        gathered = [group for group in gathered if group not in meets]
        gathered.append([opening, *(other for group in meets for other in group)])
    return tuple(_Void(tuple(group), _area_mm2(group)) for group in gathered)


def _meet(one: PlacedPart, other: PlacedPart) -> bool:
    """Whether two openings overlap, or touch along a side. Round ones must overlap: their boxes say too much."""
    if not overlap(_grown(one.box), other.box):
        return False
    if one.is_rectangle and other.is_rectangle:
        return True
    return one.gross_mm2 + other.gross_mm2 - _area_mm2((one, other)) > SAME_MM2


def _area_mm2(openings: Sequence[PlacedPart]) -> float:
    """The area of openings together; where they overlap it counts once."""
    if len(openings) == 1:
        return openings[0].gross_mm2
    left, bottom, right, top = _grown(joined([each.box for each in openings]))
    ground = Part("", Kind.WALL, box(left, bottom, right - left, top - bottom))
    return (right - left) * (top - bottom) - uncovered_area_mm2(ground, [each.part for each in openings])


def _is_clear(void: _Void, surface: PlacedPart, before: Sequence[PlacedPart]) -> bool:
    """Whether a void touches neither the border of a surface nor anything else that stands before it."""
    others = [each for each in before if not is_opening(each.part)]
    grown = [_grown(each.box) for each in void.openings]
    return all(
        holds_box(surface.part.outline, each) and not any(overlap(each, other.box) for other in others)
        for each in grown
    )


def _grown(each: Box) -> Box:
    left, bottom, right, top = each
    return (left - CLEAR_MM, bottom - CLEAR_MM, right + CLEAR_MM, top + CLEAR_MM)
