"""Copies parts along at a pitch, and mirrors parts."""

from collections.abc import Collection, Sequence

from msgspec.structs import replace

from geometry.edits.hand import MOST_AT_ONCE, picked_parts, with_copies, with_hand_changes
from geometry.outlines.measured import joined, outline_box
from geometry.parts.moves import mirrored, moved
from shared.edits.drawn import fresh_ids
from shared.errors import JobError
from shared.job import Job, Part, Way


def copied_along(
    job: Job, part_ids: Collection[str], count: int, pitch_mm: float, way: Way = Way.ACROSS
) -> tuple[Job, tuple[str, ...]]:
    """The job with `count` copies of each part at a pitch, and the ids of the copies, part by part.

    The copies go to the right, or for the way up upwards; a negative pitch goes left or down. They have no ties and no
    joint choices. JobError for fewer than 1 or more than 1000 copies, a pitch of 0, or copies beyond 100 m.
    """
    if not 1 <= count <= MOST_AT_ONCE:
        raise JobError(f"{count} copies cannot be made", do=f"make 1 to {MOST_AT_ONCE} at once")
    if not pitch_mm:
        raise JobError("the copies would stand on top of the part", do="type a pitch, from left edge to left edge")
    across, up = (0.0, pitch_mm) if way is Way.UP else (pitch_mm, 0.0)
    steps = range(1, count + 1)
    return _copied(
        job, [(part, [moved(part, n * across, n * up) for n in steps]) for part in picked_parts(job, part_ids)]
    )


def mirrored_parts(
    job: Job, part_ids: Collection[str], about_mm: float | None, way: Way = Way.ACROSS, *, copy: bool = False
) -> tuple[Job, tuple[str, ...]]:
    """The job with parts mirrored, or with `copy` mirrored copies of them; and the ids of the mirrored parts or copies.

    Across, left and right change places about the upright line at `about_mm`. Up, top and bottom change places about
    the level line there. None is the middle of all these parts. Arcs, coated sides and ties stay with their sides; a
    copy has no ties. JobError where a locked part would move, or a part would reach beyond 100 m.
    """
    parts = picked_parts(job, part_ids)
    low, high = (1, 3) if way is Way.UP else (0, 2)
    box = joined([outline_box(part.outline) for part in parts])
    about = (box[low] + box[high]) / 2 if about_mm is None else about_mm
    if copy:
        return _copied(job, [(part, [mirrored(part, about, way)]) for part in parts])
    return with_hand_changes(job, (mirrored(part, about, way) for part in parts)), tuple(part.id for part in parts)


def _copied(job: Job, made: Sequence[tuple[Part, Sequence[Part]]]) -> tuple[Job, tuple[str, ...]]:
    ids = fresh_ids(job, "p", sum(len(copies) for _, copies in made))
    left = iter(ids)
    copies = {part.id: [replace(each, id=next(left)) for each in each_copies] for part, each_copies in made}
    return with_copies(job, copies), ids
