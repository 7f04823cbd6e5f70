"""Moves parts along with the set-out lines that they stand on, when readings of a face change."""

from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

from msgspec.structs import replace

from geometry.outlines.measured import check_outline, outline_box, signed_area_mm2
from geometry.parts.drawn_size import BOX_MM, drawn_box, drawn_size_mm, is_overall
from geometry.set_out.closing import end_mm
from geometry.set_out.lines import ALONG, SetOut, SetOutLine, set_out
from shared.edits.drawn import find_face, find_room_of, with_changed_face, with_changed_parts
from shared.errors import OutlineError
from shared.job import END, Face, Job, Outline, Part, Reading, Room, Vertex, Way
from shared.trade.kinds import usual

ON_LINE_MM = 0.5
"""A corner this near to a line stands on it; a tape is read to half a millimetre at best (common practice, no source).
"""


def with_readings(job: Job, face: Face, readings: tuple[Reading, ...]) -> Job:
    """The job with these readings in place of a face's own, and with the face's parts moved along with the lines.

    The wall stays as wide and as high as it is drawn, unless it was drawn from a reading whose length has changed.
    Parts that end with the wall do as the wall does. OutlineError where a part would be turned inside out.
    """
    before = set_out(face, job.tape, job.unit)
    drawn = drawn_box(face)
    changed = replace(face, readings=readings)
    bare = replace(changed, parts=tuple(part for part in face.parts if part is not drawn))
    job = with_changed_face(job, changed)
    for way in ALONG:
        held_mm = _held_end_mm(face, before, readings, way)
        after = set_out(bare if held_mm is None else changed, job.tape, job.unit)
        job = followed(job, face.id, _lines(before, way, held_mm), _lines(after, way, held_mm))
    return job


def _held_end_mm(face: Face, before: SetOut, readings: Sequence[Reading], way: Way) -> float | None:
    """Where the end of a face stays; None when it goes where the readings say."""
    drawn = drawn_box(face)
    if drawn is not None:
        return None if _is_drawn_from_changed(drawn, way, face.readings, readings) else drawn_size_mm(drawn, way)
    return end_mm(face, before, way) if before.at_mm(way, END) is None else None


def _lines(found: SetOut, way: Way, held_mm: float | None) -> list[SetOutLine]:
    """The lines of one way; when the end of the face is held, it is at that place."""
    lines = [line for line in found.lines if line.way is way]
    if held_mm is None:
        return lines
    return [*(line for line in lines if line.name != END), SetOutLine(way, END, held_mm, 0.0)]


def _is_drawn_from_changed(drawn: Part, way: Way, before: Sequence[Reading], after: Sequence[Reading]) -> bool:
    """Whether a wall is as large as a reading from end to end was that now has another length."""
    size = drawn_size_mm(drawn, way)
    return any(
        is_overall(old, way)
        and abs(old.length_mm - size) <= BOX_MM
        and is_overall(new, way)
        and new.length_mm != old.length_mm
        for old, new in zip(before, after, strict=False)
    )


def followed(job: Job, face_id: str, old_lines: Iterable[SetOutLine], new_lines: Iterable[SetOutLine]) -> Job:
    """The job with the parts of a face moved as its lines moved; lines are known by name. Locked parts stay.

    Every corner on a line goes with it; a front's corner also goes with a line that is a reveal away. The other corners
    of a part, and all corners of a part with arcs, keep their distance from the line to the left of the part, or below
    it. So a part between two lines keeps its size. OutlineError where a part would be turned inside out.
    """
    after = {(line.way, line.name): line.at_mm for line in new_lines}
    moves: dict[Way, list[_Move]] = {way: [_Move(0.0, 0.0)] for way in ALONG}
    for line in old_lines:
        moves[line.way].append(_Move(line.at_mm, after.get((line.way, line.name), line.at_mm) - line.at_mm))
    if not any(move.by_mm for way in moves.values() for move in way):
        return job
    face = find_face(job, face_id)
    room = find_room_of(job, face_id)
    changed = [
        new
        for part in face.parts
        if not part.locked and (new := _along(part, moves, _reach_mm(part, room))) is not part
    ]
    return with_changed_parts(job, changed) if changed else job


class _Move(NamedTuple):
    """Where a line was, and how far it moved."""

    at_mm: float
    by_mm: float


def _reach_mm(part: Part, room: Room) -> float:
    """How near to a line a corner of this part must be to stand on it."""
    return ON_LINE_MM + (room.heights.reveal_mm if usual()[part.kind].front else 0.0)


def _along(part: Part, moves: Mapping[Way, Sequence[_Move]], reach_mm: float) -> Part:
    """The part moved with its lines; the same object when nothing moves it."""
    left, bottom, _, _ = outline_box(part.outline)
    is_round = any(vertex.bulge for vertex in part.outline)
    across = _shifts(left, [left if is_round else vertex.x for vertex in part.outline], moves[Way.ACROSS], reach_mm)
    up = _shifts(bottom, [bottom if is_round else vertex.y for vertex in part.outline], moves[Way.UP], reach_mm)
    if not any((*across, *up)):
        return part
    outline = tuple(
        Vertex(vertex.x + right, vertex.y + higher, vertex.bulge)
        for vertex, right, higher in zip(part.outline, across, up, strict=True)
    )
    _refuse_turned(part, outline)
    return replace(part, outline=outline)


def _shifts(begin: float, corners: Sequence[float], moves: Sequence[_Move], reach_mm: float) -> list[float]:
    """How far each corner goes, across or up."""
    before = [move for move in moves if move.at_mm <= begin + reach_mm]
    with_part = max(before).by_mm if before else 0.0
    nearest = [min(moves, key=lambda move: abs(move.at_mm - corner)) for corner in corners]
    return [
        line.by_mm if abs(line.at_mm - corner) <= reach_mm else with_part
        for line, corner in zip(nearest, corners, strict=True)
    ]


def _refuse_turned(part: Part, outline: Outline) -> None:
    where = part.called
    check_outline(outline, where)
    if signed_area_mm2(outline) * signed_area_mm2(part.outline) < 0:
        raise OutlineError("the lines that it stands on would change places", where=where, do="check the readings")
