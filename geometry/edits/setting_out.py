"""Edits of a face's readings: they are taken, taken again, accepted, spread. Parts on their lines go along.

Lengths are millimetres. JobError for a face that the job does not have. `geometry.set_out.closing.closures` tells
beforehand where new readings would end.
"""

from collections.abc import Collection, Sequence
from math import dist

from msgspec.structs import replace

from geometry.edits.moving_along import with_readings
from geometry.edits.renumbering import with_reshaped
from geometry.edits.reshaping import Reshaped, four_sides
from geometry.parts.drawn_size import BOX_MM, measured_parts
from geometry.set_out.closing import JOIN_MM, Closing, Closings, closures, end_words
from geometry.set_out.lines import set_out
from geometry.set_out.slips import slip_for
from geometry.set_out.squareness import FaceCorners
from shared import limits
from shared.edits.drawn import find_face, with_changed_face
from shared.errors import JobError, ReadingError
from shared.job import CORNERS, END, START, Face, Job, Reading, Unit, Vertex, Way
from shared.written.units import length_words, show_length

SLIP_MM = 5.0
"""A slip explains a chain that is too long if without it the chain ends this near to the end of the face."""


def with_running(
    job: Job, face_id: str, way: Way, lengths: Sequence[float], *, hooked: bool = True, fresh: bool = False
) -> Job:
    """The job with readings that were all taken from the left end or the floor, usually from the tape's hook.

    `fresh` is as in `closures`. ReadingError where one goes beyond the end of the face or is typed twice.
    """
    for place, length in enumerate(lengths):
        if length in lengths[:place]:
            what = f"{length_words(length, job.unit)} is there twice"
            raise ReadingError(what, where=_reading(place), do="type every running reading once")
    return _with_closings(job, face_id, way, closures(job, face_id, way, lengths, fresh=fresh), hooked=hooked)


def with_chain(
    job: Job, face_id: str, way: Way, lengths: Sequence[float], start: str = START, *, fresh: bool = False
) -> Job:
    """The job with a chain of readings: the first begins at `start`, each other one at the end of the one before.

    ReadingError where one goes beyond the end of the face.
    """
    found = closures(job, face_id, way, lengths, start, fresh=fresh)
    return _with_closings(job, face_id, way, found, hooked=False)


def with_overall(job: Job, face_id: str, way: Way, length_mm: float, start: str = START, end: str = END) -> Job:
    """The job with a reading between two lines or ends, in either order. JobError for a line that does not exist."""
    found = set_out(find_face(job, face_id), job.tape, job.unit)
    for mark in (start, end):
        if mark != END and found.at_mm(way, mark) is None:
            raise JobError(f'no reading tells where the line "{mark}" is', do="choose one of the face's lines")
    first, last = found.at_mm(way, start), found.at_mm(way, end)
    backwards = start == END or end == START or (None not in (first, last) and (first or 0.0) > (last or 0.0))
    marks = (end, start) if backwards else (start, end)
    return _with_more(job, face_id, (Reading(*marks, length_mm, way),))


def with_straight(job: Job, face_id: str, start: str, end: str, length_mm: float) -> Job:
    """The job with a straight reading between two of `CORNERS`: a side or a diagonal. JobError for any other word."""
    for corner in (start, end):
        if corner not in CORNERS:
            raise JobError(f'"{corner}" is not a corner', do=f"choose one of {', '.join(CORNERS)}")
    return _with_more(job, face_id, (Reading(start, end, length_mm, Way.STRAIGHT),))


def without_readings(job: Job, face_id: str, places: Collection[int]) -> Job:
    """The job without these readings of a face, by their places."""
    face = _face_with(job, face_id, places)
    return with_readings(job, face, tuple(each for place, each in enumerate(face.readings) if place not in places))


def replaced(job: Job, face_id: str, place: int, length_mm: float) -> Job:
    """The job with a reading taken again. Parts on the lines that it moves go along, as `followed` says."""
    face = _face_with(job, face_id, (place,))
    _refuse_senseless(length_mm, place)
    again = replace(face.readings[place], length_mm=length_mm, accepted=False)
    return with_readings(job, face, (*face.readings[:place], again, *face.readings[place + 1 :]))


def accepted(job: Job, face_id: str, places: Collection[int]) -> Job:
    """The job in which these readings are kept as they are, although others disagree with them."""
    face = _face_with(job, face_id, places)
    readings = (replace(each, accepted=True) if place in places else each for place, each in enumerate(face.readings))
    return with_changed_face(job, replace(face, readings=tuple(readings)))


def spread(job: Job, face_id: str) -> Job:
    """The job in which all readings of a face have their adjusted lengths, so that they agree. Parts go along.

    The readings give way to the size at which the wall is drawn, if that counts as a reading. JobError where readings
    contradict each other so much that they cannot be spread.
    """
    face = find_face(job, face_id)
    found = set_out(face, job.tape, job.unit, drawn_holds=True)
    if found.trouble:
        raise JobError(found.trouble.removesuffix("."), do="measure one of them again first")
    readings = tuple(
        replace(reading, length_mm=reading.length_mm + residual, accepted=False)
        for reading, residual in zip(face.readings, found.residuals_mm, strict=True)
    )
    if not all(0 < reading.length_mm <= limits.LONGEST_MM for reading in readings):
        raise JobError(
            "the readings differ too much to share out the difference",
            where=face.name,
            do="measure the wrong one again first",
        )
    return with_readings(job, face, readings)


def with_corners(job: Job, face_id: str) -> Job:
    """The job in which the wall of an elevation, or the benchtop of a plan, has the four corners that were read.

    Coated sides and ties stay with the sides that are there now. JobError where the readings do not place the corners,
    the part is locked, or the face has no such part or several.
    """
    face = find_face(job, face_id)
    found = set_out(face, job.tape, job.unit)
    if found.corners is None:
        raise JobError(found.trouble.removesuffix(".") or "no corner was read", do="measure the sides and a diagonal")
    parts = measured_parts(face)
    if len(parts) != 1:
        raise JobError(
            "the face must have exactly one wall or benchtop for this",
            where=face.name,
            do="correct its corners by hand",
        )
    outline = tuple(Vertex(x, y) for x, y in found.corners.points)
    return with_reshaped(job, parts[0].id, Reshaped(outline, four_sides(parts[0].outline)))


def has_corners(face: Face, corners: FaceCorners) -> bool:
    """Whether the face is drawn with these corners already, to within what a tape is read to."""
    parts = measured_parts(face)
    if len(parts) != 1 or len(parts[0].outline) != len(corners.points):
        return False
    pairs = zip(parts[0].outline, corners.points, strict=True)
    return all(dist((vertex.x, vertex.y), point) <= BOX_MM for vertex, point in pairs)


def _with_closings(job: Job, face_id: str, way: Way, found: Closings, *, hooked: bool) -> Job:
    _refuse_beyond(found, end_words(find_face(job, face_id).view, way, END), job.unit)
    readings = tuple(Reading(each.start, each.end, each.length_mm, way, hooked) for each in found.readings)
    return _with_more(job, face_id, readings)


def _refuse_beyond(found: Closings, side: str, unit: Unit) -> None:
    """Refuse readings that end farther beyond the face than a slip of the tape: ReadingError, which names the first."""
    if found.left_mm is None or found.left_mm >= -JOIN_MM:
        return
    end = max(reading.at_mm for reading in found.readings) + found.left_mm
    place, first = next(each for each in enumerate(found.readings) if each[1].at_mm > end + JOIN_MM)
    beyond_mm = first.at_mm - end
    what = f"{length_words(first.length_mm, unit)} ends {length_words(beyond_mm, unit)} beyond {side}"
    slip = _slip_words(found.readings, place, beyond_mm, unit) if place == len(found.readings) - 1 else ""
    raise ReadingError(what + slip, where=_reading(place), do="check it and those before it")


def _slip_words(readings: Sequence[Closing], last: int, beyond_mm: float, unit: Unit) -> str:
    """The words for the reading whose usual slip explains that the last ends beyond the face; "" if not just one."""
    first = last
    while first > 0 and readings[first].start == readings[first - 1].end:
        first -= 1
    lengths = [each.length_mm for each in readings[first : last + 1]]
    slips = {length: slip_for(length, length - beyond_mm, SLIP_MM, unit) for length in lengths}
    found = [(read, meant) for read, meant in slips.items() if meant is not None]
    if len(found) != 1:
        return ""
    read, meant = found[0]
    return f" (was {show_length(meant, unit)} read as {show_length(read, unit)}?)"


def _with_more(job: Job, face_id: str, readings: tuple[Reading, ...]) -> Job:
    face = find_face(job, face_id)
    for place, reading in enumerate(readings):
        _refuse_senseless(reading.length_mm, place)
        if reading.start == reading.end:
            raise JobError(
                "the reading begins and ends at the same place", where=_reading(place), do="choose another end"
            )
    if len(face.readings) + len(readings) > limits.MOST_READINGS:
        raise JobError(f"a face can have at most {limits.MOST_READINGS} readings", do="remove some first")
    return with_readings(job, face, (*face.readings, *readings)) if readings else job


def _refuse_senseless(length_mm: float, place: int) -> None:
    if not 0 < length_mm <= limits.LONGEST_MM:
        raise ReadingError("a reading must be above 0 and at most 100 m", where=_reading(place), do="measure it again")


def _face_with(job: Job, face_id: str, places: Collection[int]) -> Face:
    """The face, if it has a reading at each of these places; else JobError."""
    face = find_face(job, face_id)
    if any(not 0 <= place < len(face.readings) for place in places):
        raise JobError("the face has no such reading", do="choose one that it has")
    return face


def _reading(place: int) -> str:
    return f"reading {place + 1}"
