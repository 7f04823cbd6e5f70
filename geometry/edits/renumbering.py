"""Keeps coated sides and ties with their sides when an outline is reshaped and its sides are numbered anew."""

from collections.abc import Iterator

from msgspec.structs import replace

from geometry.edits.hand import with_hand_changes
from geometry.edits.reshaping import Origin, Reshaped, side_at
from geometry.edits.tying import wall_place_mm
from geometry.outlines.measured import check_outline
from geometry.outlines.sides import WELD_MM
from shared.edits.drawn import find_face, find_part, with_changed_face
from shared.job import Job, Part, Tie


def with_reshaped(job: Job, part_id: str, reshaped: Reshaped) -> Job:
    """The job with a part's outline changed. Coated sides and ties stay with their sides.

    A new side is coated if both its neighbours are. A tied side that was shortened or parted is tied along what is left
    of it. One that became longer or moved away keeps its place on the wall. OutlineError where the outline cannot be
    measured, JobError where the part is locked or would reach beyond 100 m.
    """
    face, part = find_part(job, part_id)
    check_outline(reshaped.outline, part.called)
    changed = replace(part, outline=reshaped.outline, coated_sides=_coated(part, reshaped.origins))
    job = with_hand_changes(job, (changed,))
    if reshaped.origins == tuple((number,) for number in range(len(part.outline))):
        return job
    ties = tuple(new for tie in face.ties for new in _tied(tie, part, reshaped))
    return with_changed_face(job, replace(find_face(job, face.id), ties=_joined(ties)))


def _coated(part: Part, origins: tuple[Origin, ...]) -> tuple[int, ...] | None:
    if part.coated_sides is None:
        return None
    coated = set(part.coated_sides)
    own = [not coated.isdisjoint(origin) for origin in origins]
    around = [own[number - 1] and own[(number + 1) % len(own)] for number in range(len(own))]
    return tuple(number for number, origin in enumerate(origins) if (own if origin else around)[number])


def _tied(tie: Tie, part: Part, reshaped: Reshaped) -> Iterator[Tie]:
    """The ties of the new sides that come from the side of this tie; another part's tie stays as it is."""
    if tie.part != part.id:
        yield tie
        return
    old = side_at(part.outline, tie.side)
    for number, origin in enumerate(reshaped.origins):
        if tie.side in origin:
            new = side_at(reshaped.outline, number)
            if all(old.distance_mm(*end) <= WELD_MM for end in (new.start, new.end)):
                ends = sorted(wall_place_mm(part, tie, *end) for end in (new.start, new.end))
                yield replace(tie, side=number, start_mm=ends[0], end_mm=ends[1])
            else:
                yield replace(tie, side=number)


def _joined(ties: tuple[Tie, ...]) -> tuple[Tie, ...]:
    """The ties, with those of one side to one face made one, as two tied sides may have become one side."""
    by_side: dict[tuple[str, int, str], Tie] = {}
    for tie in ties:
        key = (tie.part, tie.side, tie.face)
        other = by_side.get(key, tie)
        by_side[key] = replace(tie, start_mm=min(tie.start_mm, other.start_mm), end_mm=max(tie.end_mm, other.end_mm))
    return tuple(by_side.values())
