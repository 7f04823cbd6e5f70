"""Things to look at between the faces of a job: ties, names of faces, and choices about joints that do not exist."""

from collections.abc import Iterable, Iterator, Mapping, Sequence

from geometry.parts.extent import extent
from shared.findings import Code, Finding
from shared.job import Job, JointChoice, Part, Unit
from shared.written.units import length_words
from takeoff.edges.ties import Tied, benchtop_span, side_length_mm
from takeoff.figures.measured import JointRow
from takeoff.surfaces.coated import coated_sides
from takeoff.surfaces.fronts import is_front

TIE_MM = 2.0
"""A tied side whose length differs by more from the length along its face is worth a look. Two readings of a few metres
with a class II tape may differ by about that much (UK SI 2016/1153 schedule 1I: 0.9 mm at 3 m, 1.3 mm at 5 m)."""


def look_at_ties(ties: Iterable[Tied], unit: Unit, on_elevations: Mapping[str, frozenset[int]]) -> Iterator[Finding]:
    """Ties whose lengths disagree, and front edges that both a plan and an elevation have.

    `on_elevations` are the sides, by part, that an elevation shows as the front edge of a benchtop.
    """
    told: set[str] = set()
    ties = tuple(ties)
    drawn = [tied for tied in ties if benchtop_span(tied) is not None]
    for tied in ties:
        yield from _disagreements(tied, unit)
        yield from _other_span(tied, [each.span for each in drawn if each.elevation is tied.elevation], unit)
        twice = on_elevations.get(tied.part.id, frozenset()).intersection(coated_sides(tied.part))
        if twice and tied.part.id not in told:
            told.add(tied.part.id)
            message = (
                f"The front edge of {tied.part.called} is marked as coated on {tied.plan.name} and drawn on "
                f"{tied.elevation.name}; it is counted once, on {tied.elevation.name}."
            )
            yield Finding(Code.EDGE_TWICE, message, tied.plan.id, (tied.part.id,))


def _disagreements(tied: Tied, unit: Unit) -> Iterator[Finding]:
    start, end = tied.span
    along, drawn = end - start, side_length_mm(tied)
    what, wall = f"the tied side of {tied.part.called}", tied.elevation.name
    if abs(along - drawn) > TIE_MM:
        message = (
            f"On {tied.plan.name} {what} is {length_words(drawn, unit)} long, along {wall} it is "
            f"{length_words(along, unit)}; measure it again."
        )
        yield Finding(Code.TIE_LENGTH, message, tied.plan.id, (tied.part.id,))
    left, _, right, _ = extent(tied.elevation)
    if start < left - TIE_MM or end > right + TIE_MM:
        message = f"{wall} is not long enough for {what}; correct from where to where it runs."
        yield Finding(Code.TIE_OUTSIDE, message, tied.plan.id, (tied.part.id,))


def _other_span(tied: Tied, along: Sequence[tuple[float, float]], unit: Unit) -> Iterator[Finding]:
    """A tie that does not run where the elevation shows its benchtop. `along` are the spans of all ties along it, mm.

    An end at which another tie goes on does not count, as the benchtop ends with that other tie.
    """
    shown = benchtop_span(tied)
    if shown is None:
        return
    start, end = tied.span
    goes_on = (
        any(abs(each[1] - start) <= TIE_MM for each in along),
        any(abs(each[0] - end) <= TIE_MM for each in along),
    )
    off = [abs(there - here) for there, here, more in zip(shown, (start, end), goes_on, strict=True) if not more]
    if off and max(off) > TIE_MM:
        wall = tied.elevation.name
        message = (
            f"{wall} shows its benchtop from {length_words(shown[0], unit)} to {length_words(shown[1], unit)}, but "
            f"the tied side of {tied.part.called} runs from {length_words(start, unit)} to {length_words(end, unit)}; "
            "correct one of them."
        )
        yield Finding(Code.TIE_BENCHTOP, message, tied.plan.id, (tied.part.id,))


def look_at_names(job: Job) -> Iterator[Finding]:
    """Faces with fronts whose tags begin alike, so that their tags are the same."""
    first: dict[str, str] = {}
    for face in job.faces:
        if any(is_front(part) for part in face.parts) and first.setdefault(face.tag_letter, face.id) != face.id:
            message = (
                f'The tags of two faces begin with "{face.tag_letter}", so they are the same; change one tag letter.'
            )
            yield Finding(Code.SAME_NAME, message, face.id)


def look_at_choices(job: Job, rows: Iterable[JointRow]) -> Iterator[Finding]:
    """Choices about joints that do not exist: the parts do not meet, or a joint was added without a section."""
    there = {(row.face, row.next_face, frozenset(row.parts)) for row in rows}
    parts = {part.id: part for face in job.faces for part in face.parts} if job.joints else {}
    for choice in job.joints:
        if (choice.face, choice.next_face, frozenset(choice.parts)) not in there and choice.sealed is not False:
            yield _nowhere(choice, parts)


def _nowhere(choice: JointChoice, parts: Mapping[str, Part]) -> Finding:
    first, second = (parts[part].called for part in choice.parts)
    if choice.sealed and choice.section is None:
        message = f"The joint between {first} and {second} was added without a section; give it one."
        return Finding(Code.JOINT_SECTION, message, choice.face, choice.parts)
    message = f"{first} and {second} do not meet, so the choice about their joint has no effect."
    return Finding(Code.JOINT_NOWHERE, message, choice.face, choice.parts)
