"""Tells which readings of a face a corrected size contradicts.

A reading is a record of what the tape said: it stays as it was read, unless the person takes it again.
"""

from collections.abc import Collection, Sequence
from typing import NamedTuple, Self

from msgspec.structs import replace

from geometry.edits.stretching import Pull
from geometry.set_out.lines import SetOut, set_out
from shared.errors import JobError
from shared.job import START, Face, Job, Part, Reading, Way
from shared.written.units import length_words

LINE_MM = 2.0
"""A set-out line this near to a place is at that place: adjusted readings are off by about the error of a tape
(UK SI 2016/1153 schedule 1I, class II: 0.9 at 3 m, 1.3 at 5 m)."""


class Correction(NamedTuple):
    """What the tape says of a size: the pull moves all from its end on.

    `start_mm` is where the size begins; None if that is not known. With `again`, the readings that the correction
    contradicts are taken again by it.
    """

    way: Way
    pull: Pull
    start_mm: float | None = None
    again: bool = False


def contradicted(job: Job, face: Face, correction: Correction, parts: Sequence[tuple[Part, Part]]) -> tuple[int, ...]:
    """The places of the readings that a correction contradicts; `parts` are those of the face, before and after it.

    It contradicts a reading across its place if it takes away all that was drawn at the end of it. If what is drawn
    comes nearer to what was read, it contradicts nothing.
    """
    if not face.readings:
        return ()
    found = set_out(face, job.tape, job.unit)
    corners = _Corners.of(parts, correction.pull.axis)
    return tuple(
        place
        for place, reading in enumerate(face.readings)
        if reading.way is correction.way and _is_contradicted(reading, found, correction.pull, corners)
    )


def readings_after(job: Job, face: Face, correction: Correction, places: Collection[int]) -> tuple[Reading, ...]:
    """The readings of a face after a correction that contradicts those at these places.

    They stay as they are. If the size was between two lines or ends, the correction becomes one more reading, so that
    they are seen to disagree. With `again` they are as much longer as the size is. JobError where nothing would be left
    of one.
    """
    if correction.again:
        by_mm = correction.pull.by_mm
        return tuple(
            _longer(job, face, reading, by_mm) if place in places else reading
            for place, reading in enumerate(face.readings)
        )
    more = _as_reading(job, face, correction) if places else None
    return face.readings if more is None else (*face.readings, more)


def _longer(job: Job, face: Face, reading: Reading, by_mm: float) -> Reading:
    length = reading.length_mm + by_mm
    if not length > 0:
        was = length_words(reading.length_mm, job.unit)
        raise JobError(f"nothing would be left of the reading {was}", where=face.name, do="shift by less")
    return replace(reading, length_mm=length)


def _as_reading(job: Job, face: Face, correction: Correction) -> Reading | None:
    """The correction as a reading; None unless its size was between two lines or ends."""
    if correction.start_mm is None:
        return None
    found, end_mm = set_out(face, job.tape, job.unit), correction.pull.at_mm
    start, end = (_mark_at(found, correction.way, place) for place in (correction.start_mm, end_mm))
    length = end_mm + correction.pull.by_mm - correction.start_mm
    if start is None or end is None or start == end or not length > 0:
        return None
    return Reading(start, end, length, correction.way)


def _mark_at(found: SetOut, way: Way, place: float) -> str | None:
    """The line or end of the face that stands at a place; None if none does."""
    marks = [(0.0, START), *((line.at_mm, line.name) for line in found.lines if line.way is way)]
    at, mark = min(marks, key=lambda each: abs(each[0] - place))
    return mark if abs(at - place) <= LINE_MM else None


class _Corners(NamedTuple):
    """Where corners stood along the axis of a correction, mm: those that it moves, and those that stay."""

    moved: tuple[float, ...]
    stayed: tuple[float, ...]

    @classmethod
    def of(cls, parts: Sequence[tuple[Part, Part]], axis: int) -> Self:
        pairs = [
            (was.y, now.y) if axis else (was.x, now.x)
            for old, new in parts
            for was, now in zip(old.outline, new.outline, strict=True)
        ]
        moved = tuple(was for was, now in pairs if was != now)
        return cls(moved, tuple(was for was, now in pairs if was == now))


def _is_contradicted(reading: Reading, found: SetOut, pull: Pull, corners: _Corners) -> bool:
    start, end = (found.at_mm(reading.way, mark) for mark in (reading.start, reading.end))
    if start is None or end is None:
        return False
    is_before = reading.start == START or pull.beyond_mm(start) < -LINE_MM
    if not is_before or pull.beyond_mm(end) < -LINE_MM:
        return False
    near = [corner for corner in corners.moved if abs(corner - end) <= LINE_MM]
    if not near or any(abs(corner - end) <= LINE_MM for corner in corners.stayed):
        return False
    off_mm = min(near, key=lambda corner: abs(corner - end)) - start - reading.length_mm
    return abs(off_mm + pull.by_mm) > abs(off_mm)
