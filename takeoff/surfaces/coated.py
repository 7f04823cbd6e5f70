"""Coated areas: of parts coated in place, taken off to be coated, or coated only along front edges. In mm2."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from geometry.outlines.measured import side_lengths_mm
from geometry.seen.arrangement import Edge
from geometry.seen.openings import uncovered_area_mm2
from shared.job import Part
from shared.trade.kinds import Treatment, usual
from takeoff.figures.measured import Figure, Fronts, Reason, Term
from takeoff.surfaces.areas import BY_OUTLINE, SAME_MM2, PlacedPart, outline_term, overlap
from takeoff.surfaces.measuring_rules import MeasuringRule
from takeoff.surfaces.treatments import Treated
from takeoff.surfaces.voids import LeftIn

NOT_COATED = "not coated"
IN_PLACE = "coated in place: net area x profile factor, and its coated edges"
BY_RULE = "coated in place: area x profile factor, and its coated edges; "
FRAME = "frame: what is seen of its front edges x thickness"
TAKEN_OFF = "taken off: outline less openings x profile factor, coated edges, back where coated"
PRACTICE = "common practice, no source"

SeenEdges = Mapping[int, Sequence[Edge]]
"""For each side of a part's outline, the edges at which its visible region ends at that side."""


class CoatedPart(NamedTuple):
    """A part, and all that its coated area depends on.

    `net` is its net area. `seen` are the edges at which it ends by a side of its own, for the sides whose edge is
    counted on this face. `openings` are the openings of its face with the fronts hung. `left_in` is what the `rule`
    leaves in of those that a part coated in place has.
    """

    standing: PlacedPart
    treated: Treated
    net: Figure
    seen: SeenEdges
    openings: tuple[PlacedPart, ...]
    rule: MeasuringRule
    left_in: LeftIn

    @property
    def is_frame(self) -> bool:
        """Whether only its front edges are coated."""
        return usual()[self.standing.part.kind].frame

    @property
    def edges(self) -> tuple[Edge, ...]:
        """The seen pieces of its coated edges: they count for a part coated in place."""
        return tuple(edge for side in coated_sides(self.standing.part) for edge in self.seen.get(side, ()))

    @property
    def opened_by(self) -> tuple[PlacedPart, ...]:
        """The openings in front of it: they are deducted from a part that is taken off."""
        return tuple(each for each in self.openings if _opens(each, self.standing))


def coated(surface: CoatedPart) -> Figure:
    """The area of a part that is coated; 0 for a part that is not."""
    if surface.treated.treatment is Treatment.LEFT:
        return Figure(0.0, Reason(NOT_COATED, PRACTICE, Fronts.OFF, ()))
    if surface.treated.treatment is Treatment.IN_PLACE:
        return _in_place(surface)
    return _taken_off(surface)


def coated_sides(part: Part) -> tuple[int, ...]:
    """The sides of a part's outline whose edge is coated: its own choice, else all or none, as usual for its kind."""
    if part.coated_sides is not None:
        return part.coated_sides
    return tuple(range(len(part.outline))) if usual()[part.kind].sides else ()


def thickness_mm(part: Part) -> float:
    """The thickness of a part's board: its own, or if it says none what is usual for its kind."""
    return part.thickness_mm or usual()[part.kind].thickness


def _in_place(surface: CoatedPart) -> Figure:
    part, net = surface.standing.part, surface.net
    edges = _edge_terms(part, sum(edge.length_mm for edge in surface.edges))
    if surface.is_frame:
        return _summed(FRAME, edges, PRACTICE)
    terms = (*net.reason.terms, *surface.left_in.terms)
    rule = surface.rule
    words, source = (BY_RULE + rule.words, rule.source) if surface.left_in.terms else (IN_PLACE, BY_OUTLINE)
    return _summed(words, _moulded(terms, part.profile_factor) + edges, source)


def _taken_off(surface: CoatedPart) -> Figure:
    part = surface.standing.part
    lengths = dict(enumerate(side_lengths_mm(part.outline)))
    edges = _edge_terms(part, sum(lengths.get(side, 0.0) for side in coated_sides(part)))
    if surface.is_frame:
        return _summed(FRAME, edges, PRACTICE)
    terms = _surface_terms(surface.standing, surface.opened_by)
    back = tuple(term._replace(what=f"back: {term.what}") for term in terms) if part.back_coated else ()
    return _summed(TAKEN_OFF, _moulded(terms, part.profile_factor) + edges + back, BY_OUTLINE)


def _opens(each: PlacedPart, standing: PlacedPart) -> bool:
    """Whether an opening is in front of a part, so that it is deducted from the part."""
    return each.rank > standing.rank and overlap(each.box, standing.box)


def _surface_terms(standing: PlacedPart, openings: Sequence[PlacedPart]) -> tuple[Term, ...]:
    part, whole = standing.part, standing.gross_mm2
    outline = outline_term(standing)
    if not openings:
        return (outline,)
    left = uncovered_area_mm2(part, [each.part for each in openings])
    if whole - left <= SAME_MM2:
        return (outline,)
    alone = openings[0] if len(openings) == 1 else None
    size = alone.size if alone and alone.is_rectangle and abs(alone.gross_mm2 - (whole - left)) <= SAME_MM2 else ()
    what = f"less {alone.part.called}" if alone else "less openings"
    return (outline, Term(what, left - whole, size, tuple(each.part.id for each in openings)))


def _moulded(terms: tuple[Term, ...], factor: float) -> tuple[Term, ...]:
    """The terms times the profile factor. Their words name the factor unless it is 1."""
    if factor == 1:
        return terms
    return tuple(
        Term(
            f"{term.what} x profile {factor:g}",
            term.amount * factor,
            term.factors,
            term.parts,
            factor,
        )
        for term in terms
    )


def _edge_terms(part: Part, length_mm: float) -> tuple[Term, ...]:
    thick = thickness_mm(part)
    if not length_mm or not thick:
        return ()
    return (Term("edges, length x thickness", length_mm * thick, (length_mm, thick), (part.id,)),)


def _summed(rule: str, terms: tuple[Term, ...], source: str) -> Figure:
    return Figure(sum(term.amount for term in terms), Reason(rule, source, Fronts.OFF, terms))
