"""Gross and net areas of parts, each with the terms that sum to it. Square millimetres."""

from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from geometry.outlines.measured import area_mm2, outline_box
from geometry.outlines.sides import Box
from geometry.parts.holding import holds_box
from geometry.parts.rank import rank_key
from geometry.seen.arrangement import Region
from shared.job import Outline, Part
from takeoff.figures.measured import Figure, Fronts, Reason, Term
from takeoff.surfaces.fronts import encloses, is_opening

BY_OUTLINE = "exact: straight sides and arcs of circles"
SAME_MM2 = 1e-6
"""Areas that differ by less than this are the same: far below a square millimetre, above the rounding of floats."""


class PlacedPart(NamedTuple):
    """A part as it stands on its face: its place from back to front, the box round it, its region and its gross area.

    `is_rectangle` says that its outline is that box.
    """

    part: Part
    rank: tuple[bool, int, int, int]
    box: Box
    region: Region
    gross_mm2: float
    is_rectangle: bool

    @property
    def size(self) -> tuple[float, float]:
        """The width and the height of the box round the part."""
        return (self.box[2] - self.box[0], self.box[3] - self.box[1])


def standings(parts: Sequence[Part], regions: Sequence[Region]) -> tuple[PlacedPart, ...]:
    """The parts of a face, in their order, each with its region from the arrangement of those parts."""
    return tuple(
        _standing(part, index, region) for index, (part, region) in enumerate(zip(parts, regions, strict=True))
    )


def _standing(part: Part, index: int, region: Region) -> PlacedPart:
    box = outline_box(part.outline)
    rectangle = _is_rectangle(part.outline, box)
    area = (box[2] - box[0]) * (box[3] - box[1]) if rectangle else area_mm2(part.outline)
    return PlacedPart(part, rank_key(part, index), box, region, area, rectangle)


def _is_rectangle(outline: Outline, box: Box) -> bool:
    """Whether an outline is the box round it: four straight sides, level and upright."""
    if len(outline) != 4 or any(vertex.bulge for vertex in outline):
        return False
    if any(a.x != b.x and a.y != b.y for a, b in pairwise((*outline, outline[0]))):
        return False
    corners = {(vertex.x, vertex.y) for vertex in outline}
    return corners == {(box[0], box[1]), (box[2], box[1]), (box[2], box[3]), (box[0], box[3])}


def gross(standing: PlacedPart, fronts: Fronts) -> Figure:
    """The gross area of a part: the area of its outline."""
    reason = Reason("gross: the whole outline", BY_OUTLINE, fronts, (outline_term(standing),))
    return Figure(standing.gross_mm2, reason)


def net(standing: PlacedPart, face: Sequence[PlacedPart], fronts: Fronts) -> Figure:
    """The net area of a part: what is seen of it among the parts of its face. All that hides it is deducted.

    Openings are deducted too. An opening itself has a net area of 0.
    """
    if is_opening(standing.part):
        return _net_of_opening(standing, fronts)
    amount = standing.region.area_mm2
    terms: tuple[Term, ...] = (outline_term(standing),)
    if standing.gross_mm2 - amount > SAME_MM2:
        terms += tuple(_hidden_terms(standing, face))
    elif amount != standing.gross_mm2:
        terms = (terms[0]._replace(amount=amount),)
    return Figure(amount, Reason("net: what is seen of it, all that hides it deducted", BY_OUTLINE, fronts, terms))


def _net_of_opening(standing: PlacedPart, fronts: Fronts) -> Figure:
    whole = outline_term(standing)
    none = whole._replace(what="less the opening itself", amount=-whole.amount)
    return Figure(0.0, Reason("net: an opening has no surface of its own", BY_OUTLINE, fronts, (whole, none)))


def outline_term(standing: PlacedPart) -> Term:
    """The whole outline as the first term of a sum."""
    factors = standing.size if standing.is_rectangle else ()
    what = "width x height" if factors else "outline, straight sides and arcs"
    return Term(what, standing.gross_mm2, factors, (standing.part.id,))


def _hidden_terms(standing: PlacedPart, face: Sequence[PlacedPart]) -> list[Term]:
    """One term for each part that hides a piece of known size, and one for the rest, which names all that share it.

    A part that lies wholly within the outline hides exactly the area of it that is seen there. The seen areas of two
    parts never overlap, so such terms count nothing twice.
    """
    hiders = [each for each in face if each.rank > standing.rank and overlap(each.box, standing.box)]
    known = [each for each in hiders if _is_plain(each, standing, hiders)]
    terms = [_less(each) for each in known if _seen_mm2(each) > SAME_MM2]
    rest = standing.gross_mm2 - standing.region.area_mm2 + sum(term.amount for term in terms)
    others = [each for each in hiders if each not in known and (each.region.area_mm2 or is_opening(each.part))]
    if others and rest > SAME_MM2:
        names = others[0].part if len(others) == 1 else None
        what = f"less {names.called}" if names else "less what else hides it"
        terms.append(Term(what, -rest, (), tuple(each.part.id for each in others)))
    return terms


def _is_plain(hider: PlacedPart, hidden: PlacedPart, hiders: Sequence[PlacedPart]) -> bool:
    """Whether a part hides exactly the area of it that is seen: it lies within the hidden part's outline.

    An opening must have nothing in front of it, too.
    """
    if not _holds(hidden, hider.box):
        return False
    if not is_opening(hider.part):
        return True
    return not any(each.rank > hider.rank and overlap(each.box, hider.box) for each in hiders)


def _holds(standing: PlacedPart, box: Box) -> bool:
    """Whether the whole of a box lies within the outline of a part."""
    if not encloses(standing.box, box):
        return False
    return standing.is_rectangle or holds_box(standing.part.outline, box)


def _seen_mm2(standing: PlacedPart) -> float:
    return standing.gross_mm2 if is_opening(standing.part) else standing.region.area_mm2


def _less(hider: PlacedPart) -> Term:
    amount = _seen_mm2(hider)
    whole = hider.is_rectangle and abs(amount - hider.gross_mm2) <= SAME_MM2
    return Term(f"less {hider.part.called}", -amount, hider.size if whole else (), (hider.part.id,))


def overlap(a: Box, b: Box) -> bool:
    """Whether two boxes share more than a line."""
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]
