"""Lines parts up with each other: aligns them, evens out their gaps, makes them the same size."""

from collections.abc import Collection
from enum import StrEnum
from itertools import accumulate

from geometry.edits.hand import picked_parts, with_hand_changes
from geometry.outlines.measured import joined, outline_box
from geometry.outlines.sides import WELD_MM, Box
from geometry.parts.moves import moved, resized
from shared.edits.drawn import find_part
from shared.errors import JobError
from shared.job import Job, Part, Way
from shared.written.units import length_words


class Alignment(StrEnum):
    """What to bring into line: an edge of the parts or their middles.

    `MIDDLE_ACROSS` puts the middles on an upright line, `MIDDLE_UP` on a level one.
    """

    LEFT = "left"
    RIGHT = "right"
    TOP = "top"
    BOTTOM = "bottom"
    MIDDLE_ACROSS = "middle across"
    MIDDLE_UP = "middle up"


def aligned(job: Job, part_ids: Collection[str], alignment: Alignment) -> Job:
    """The job with these parts in line within the box round all of them: all left edges at the leftmost, for instance.

    JobError for fewer than two parts, and where a locked part would move. A part that is in line already may be locked.
    """
    parts = picked_parts(job, part_ids, least=2)
    common = joined([outline_box(part.outline) for part in parts])
    return with_hand_changes(job, (_in_line(part, common, alignment) for part in parts))


def evened_out(job: Job, part_ids: Collection[str], way: Way = Way.ACROSS) -> Job:
    """The job with equal gaps between these parts, across or up. The first and the last part stay.

    JobError for fewer than three parts, for parts longer together than their space, and where a locked part would move.
    """
    axis = 1 if way is Way.UP else 0
    parts = sorted(picked_parts(job, part_ids, least=3), key=lambda part: _span(part, axis))
    spans = [_span(part, axis) for part in parts]
    sizes = [high - low for low, high in spans]
    space = spans[-1][1] - spans[0][0]
    gap = (space - sum(sizes)) / (len(parts) - 1)
    if gap < -WELD_MM:
        raise JobError(
            f"together they are {length_words(sum(sizes) - space, job.unit)} longer than the space they have",
            do="move the first and the last further apart",
        )
    places = accumulate((size + gap for size in sizes[:-1]), initial=spans[0][0])
    by = [place - low for place, (low, _) in zip(places, spans, strict=True)]
    between = list(zip(parts, by, strict=True))[1:-1]
    return with_hand_changes(job, (_moved_by(part, axis, length) for part, length in between))


def matched_size(job: Job, part_ids: Collection[str], like: str, *, width: bool = True, height: bool = True) -> Job:
    """The job with these parts as wide and as high as the part `like`; the lower left corner of each stays.

    Without `width` or without `height`, that size stays. OutlineError where arcs cannot follow, JobError where a locked
    part would change.
    """
    left, bottom, right, top = outline_box(find_part(job, like)[1].outline)
    changed = []
    for part in picked_parts(job, part_ids):
        box = outline_box(part.outline)
        across = box[0] + right - left if width else box[2]
        up = box[1] + top - bottom if height else box[3]
        changed.append(part if part.id == like else resized(part, (box[0], box[1], across, up)))
    return with_hand_changes(job, changed)


def _in_line(part: Part, common: Box, alignment: Alignment) -> Part:
    own = outline_box(part.outline)
    by = [theirs - ours for theirs, ours in zip(common, own, strict=True)]
    ways = {
        Alignment.LEFT: (by[0], 0.0),
        Alignment.RIGHT: (by[2], 0.0),
        Alignment.BOTTOM: (0.0, by[1]),
        Alignment.TOP: (0.0, by[3]),
        Alignment.MIDDLE_ACROSS: ((by[0] + by[2]) / 2, 0.0),
        Alignment.MIDDLE_UP: (0.0, (by[1] + by[3]) / 2),
    }
    across, up = ways[alignment]
    return moved(part, across, up) if max(abs(across), abs(up)) > WELD_MM else part


def _span(part: Part, axis: int) -> tuple[float, float]:
    box = outline_box(part.outline)
    return box[axis], box[axis + 2]


def _moved_by(part: Part, axis: int, length_mm: float) -> Part:
    if abs(length_mm) <= WELD_MM:
        return part
    return moved(part, 0.0, length_mm) if axis else moved(part, length_mm, 0.0)
