"""Ties: sides of plans that lie along elevations, so that lengths are compared and nothing is counted twice."""

from collections.abc import Collection, Iterable, Iterator, Mapping
from typing import NamedTuple

from geometry.edits.tying import runs_with_wall, wall_place_mm
from geometry.outlines.measured import contains, outline_box, side_lengths_mm
from geometry.outlines.sides import Side, sides
from geometry.parts.extent import walls
from shared.job import Face, Job, Outline, Part, Tie, View
from shared.trade.kinds import Kind, Treatment
from takeoff.edges.joints import FoundJoint, joint_table
from takeoff.edges.masking import NEAR_MM
from takeoff.edges.of_face import divided, part_below, ranked_parts
from takeoff.figures.measured import EdgeRow
from takeoff.surfaces.tags import BENCH_MM
from takeoff.surfaces.treatments import Treatments

Span = tuple[float, float]
"""A stretch of an elevation: its start and its end, mm from the elevation's left end."""

TURNED_BACK = -0.999
"""Two sides go in opposite directions if the cosine between them is below this (within about 2.5 degrees)."""


class Tied(NamedTuple):
    """A tie with all that it refers to: the plan, its part and side, and the elevation."""

    tie: Tie
    plan: Face
    part: Part
    side: Side
    elevation: Face

    @property
    def span(self) -> Span:
        """The stretch of the elevation along which the tie lies, the lesser end first."""
        return (min(self.tie.start_mm, self.tie.end_mm), max(self.tie.start_mm, self.tie.end_mm))


def tied_sides(job: Job) -> tuple[Tied, ...]:
    """All ties of the job's plans, except those whose part, side or face does not exist: `check_job` refuses them."""
    faces = {face.id: face for face in job.faces}
    return tuple(tied for plan in job.faces for tied in _tied_on(plan, faces))


def _tied_on(plan: Face, faces: Mapping[str, Face]) -> Iterator[Tied]:
    parts = {part.id: part for part in plan.parts}
    for tie in plan.ties:
        part, elevation = parts.get(tie.part), faces.get(tie.face)
        side = next((each for each in sides(part.outline) if each.vertex == tie.side), None) if part else None
        if part and side and elevation:
            yield Tied(tie, plan, part, side, elevation)


def side_length_mm(tied: Tied) -> float:
    """The length of the tied side as the plan draws it."""
    return side_lengths_mm(tied.part.outline)[tied.tie.side]


def benchtop_span(tied: Tied) -> Span | None:
    """The stretch over which the elevation shows benchtops, of those that the tie meets; None when it shows none."""
    spans = [span for _, span in _benchtops(tied)]
    return (min(start for start, _ in spans), max(end for _, end in spans)) if spans else None


def sides_counted_on_elevation(ties: Iterable[Tied], treatments: Treatments) -> dict[str, frozenset[int]]:
    """For each part of a plan, the sides that an elevation shows as front edges of coated benchtops, and so counts.

    A person who faces the wall sees the sides that go back along the tied side: those of the tied part, and those of
    the parts in which it goes on round a corner. They count where the elevation shows its benchtop.
    """
    counted: dict[str, frozenset[int]] = {}
    for tied in ties:
        if tied.part.kind is Kind.BENCHTOP:
            drawn = [span for part, span in _benchtops(tied) if treatments.of(part).treatment is not Treatment.LEFT]
            for part in _going_on(tied) if drawn else ():
                seen = frozenset(side.vertex for side in sides(part.outline) if _is_seen(side, tied, drawn))
                counted[part.id] = counted.get(part.id, frozenset()) | seen
    return {part: seen for part, seen in counted.items() if seen}


def unclaimed(tied: Tied, edges: Collection[EdgeRow]) -> tuple[FoundJoint, ...]:
    """The pairs that meet along a tied benchtop's side where the elevation shows no benchtop that counts them.

    There the elevation shows a splashback, a wall, or another kind that `joints.toml` seals where it ends on a
    benchtop; it begins above something else. Each stretch of its lower edge within the tie meets the benchtop. So does
    a wall on which nothing is drawn there. Empty when the elevation counts them all.
    """
    if tied.part.kind is not Kind.BENCHTOP:
        return ()
    parts = {part.id: part for part in tied.elevation.parts}
    free = without([tied.span], [span for _, span in _benchtops(tied)])
    found: list[FoundJoint] = []
    for kind in joint_table().ending_on(Kind.BENCHTOP):
        for part_id, spans in _lower_spans(kind, tied.elevation, edges).items():
            shared: list[Span] = []
            for span in spans:
                shared += _within(free, span)
                free = without(free, [span])
            if shared:
                found.append(_found(tied, parts[part_id], shared))
    for part_id, spans in _bare_wall(tied.elevation, edges).items():
        bare = [piece for span in spans for piece in _within(free, span)]
        if bare:
            found.append(_found(tied, parts[part_id], bare))
    return tuple(found)


def without(spans: Iterable[Span], taken: Iterable[Span]) -> list[Span]:
    """The pieces left of spans when others are taken away. Pieces no longer than `NEAR_MM` are dropped."""
    left = list(spans)
    for start, end in taken:
        left = [
            piece for a, b in left for piece in ((a, min(b, start)), (max(a, end), b)) if piece[1] - piece[0] > NEAR_MM
        ]
    return left


def _benchtops(tied: Tied) -> list[tuple[Part, Span]]:
    boxes = [(part, outline_box(part.outline)) for part in tied.elevation.parts if part.kind is Kind.BENCHTOP]
    start, end = tied.span
    return [(part, (box[0], box[2])) for part, box in boxes if box[0] < end and box[2] > start]


def _going_on(tied: Tied) -> Iterator[Part]:
    """The tied benchtop, and the benchtops on its plan that touch it."""
    own = tied.part.outline
    for part in tied.plan.parts:
        if part.kind is Kind.BENCHTOP and (_reaches(part.outline, own) or _reaches(own, part.outline)):
            yield part


def _reaches(outline: Outline, other: Outline) -> bool:
    """Whether a corner of an outline lies in or on another outline."""
    return any(contains(other, vertex.x, vertex.y) for vertex in outline)


def _is_seen(side: Side, tied: Tied, drawn: Iterable[Span]) -> bool:
    """Whether a side faces away from the wall, at a place where one of these spans of the wall shows a benchtop."""
    places = sorted(wall_place_mm(tied.part, tied.tie, *end) for end in (side.start, side.end))
    return _faces(side, tied.side) and bool(_within(drawn, (places[0], places[1])))


def _faces(side: Side, tied: Side) -> bool:
    """Whether a side goes back along the tied side."""
    ax, ay, bx, by = side.x1 - side.x0, side.y1 - side.y0, tied.x1 - tied.x0, tied.y1 - tied.y0
    return ax * bx + ay * by < TURNED_BACK * side.chord_mm * tied.chord_mm


def _lower_spans(kind: Kind, face: Face, edges: Iterable[EdgeRow]) -> dict[str, list[Span]]:
    """For each part of this kind, the spans over which its lower edge is level, off the floor, and at another part."""
    ranked = ranked_parts(face.parts)
    spans: dict[str, list[Span]] = {}
    for edge in edges:
        (x0, y0), (x1, y1) = edge.start, edge.end
        below = part_below(edge, ranked) if edge.parts[1] is not None else None
        if below is None or abs(y0 - y1) > NEAR_MM or y0 <= NEAR_MM:
            continue
        above = next(part for part in divided(edge) if part != below.id)
        if above is not None and ranked[above].part.kind is kind:
            spans.setdefault(above, []).append((min(x0, x1), max(x0, x1)))
    return spans


def _bare_wall(face: Face, edges: Iterable[EdgeRow]) -> dict[str, list[Span]]:
    """For each wall, the spans over which it is seen at the height of a bench: a benchtop's end meets it there.

    The level line at that height crosses the edges of the seen wall: it is seen from the first crossing to the second,
    from the third to the fourth, and so on.
    """
    ids = {part.id for part in walls(face)}
    crossings: dict[str, list[float]] = {}
    for edge in edges:
        (x0, y0), (x1, y1) = edge.start, edge.end
        if min(y0, y1) <= BENCH_MM < max(y0, y1):
            at = x0 + (x1 - x0) * (BENCH_MM - y0) / (y1 - y0)
            for part in divided(edge):
                if part in ids:
                    crossings.setdefault(part, []).append(at)
    ordered = {wall: sorted(places) for wall, places in crossings.items()}
    return {wall: list(zip(places[::2], places[1::2], strict=False)) for wall, places in ordered.items()}


def _within(spans: Iterable[Span], limits: Span) -> list[Span]:
    low, high = limits
    cut = ((max(start, low), min(end, high)) for start, end in spans)
    return [(start, end) for start, end in cut if end - start > NEAR_MM]


def _found(tied: Tied, other: Part, spans: Iterable[Span]) -> FoundJoint:
    bead = joint_table().between(frozenset((tied.part.kind, other.kind)), View.ELEVATION)
    path = tuple(_along(tied, span) for span in spans)
    return FoundJoint(tied.plan.id, tied.elevation.id, (tied.part, other), bead, path)


def _along(tied: Tied, span: Span) -> EdgeRow:
    """The piece of the tied side that lies along this span of the elevation, as a row of the plan."""
    start, end = tied.tie.start_mm, tied.tie.end_mm
    shares = [(x - start) / (end - start) if end != start else 0.0 for x in span]
    points = [_at(tied.side, share if runs_with_wall(tied.part) else 1 - share) for share in shares]
    return EdgeRow(tied.plan.id, (tied.part.id, None), points[0], points[1], 0.0, span[1] - span[0])


def _at(side: Side, share: float) -> tuple[float, float]:
    return (side.x0 + share * (side.x1 - side.x0), side.y0 + share * (side.y1 - side.y0))
