"""Edits by hand: they never change a locked part and never leave what can be measured."""

from collections.abc import Collection, Iterable, Mapping, Sequence

from msgspec.structs import replace

from shared.edits.drawn import find_part, with_changed_face, with_changed_parts
from shared.edits.locking import refuse_locked
from shared.errors import JobError
from shared.job import Job, Part
from shared.limits import LONGEST_MM, MOST_PARTS

MOST_AT_ONCE = 1_000
"""The most pieces or copies that one edit makes of a part: more is a slip of the finger."""


def picked_parts(job: Job, ids: Collection[str], least: int = 1) -> tuple[Part, ...]:
    """The parts with these ids, in the order of the ids. JobError for fewer than `least`, or for an unknown id."""
    if len(ids) < least:
        raise JobError(f"this needs at least {least} picked part{'s' if least > 1 else ''}", do="pick them first")
    return tuple(find_part(job, part_id)[1] for part_id in ids)


def with_hand_changes(job: Job, parts: Iterable[Part]) -> Job:
    """The job with each of these parts in place of the one with its id.

    JobError where a locked part would change, or a part would reach beyond 100 m. A locked part may be given if it
    stays as it is.
    """
    changed = []
    for part in parts:
        before = find_part(job, part.id)[1]
        if before == part:
            continue
        refuse_locked((before,))
        changed.append(part)
    refuse_far(changed)
    return with_changed_parts(job, changed) if changed else job


def with_copies(job: Job, copies: Mapping[str, Sequence[Part]]) -> Job:
    """The job with copies, each right in front of the part whose id it is listed under, on that part's face.

    A copy is never locked. JobError where a copy would reach beyond 100 m, or the job would hold too many parts.
    """
    fresh = [part for each in copies.values() for part in each]
    refuse_far(fresh)
    total = len(fresh) + sum(len(face.parts) for face in job.faces)
    if total > MOST_PARTS:
        raise JobError(
            f"the job would have {total} parts, and at most {MOST_PARTS} can be measured", do="make fewer at once"
        )
    for face in job.faces:
        if any(part.id in copies for part in face.parts):
            parts = (new for part in face.parts for new in (part, *_unlocked(copies.get(part.id, ()))))
            job = with_changed_face(job, replace(face, parts=tuple(parts)))
    return job


def locked(job: Job, ids: Collection[str], lock: bool) -> Job:
    """The job with these parts locked, or no longer locked."""
    return with_changed_parts(job, (replace(part, locked=lock) for part in picked_parts(job, ids)))


def refuse_far(parts: Iterable[Part]) -> None:
    """Refuse parts that reach beyond 100 m from their face's corner: JobError, which names the first."""
    for part in parts:
        if not all(abs(vertex.x) <= LONGEST_MM and abs(vertex.y) <= LONGEST_MM for vertex in part.outline):
            raise JobError("it would reach beyond 100 m", where=part.called, do="check the reading and its unit")


def _unlocked(parts: Sequence[Part]) -> tuple[Part, ...]:
    return tuple(replace(part, locked=False) for part in parts)
