"""Parts that stand on set-out lines go along where the lines move."""

from collections.abc import Collection, Iterable, Mapping, Sequence

from msgspec.structs import replace

from geometry.drawn_size import BOX_MM, drawn_box, drawn_size_mm, is_overall
from geometry.outline import check_outline, outline_box, signed_area_mm2
from geometry.set_out import ALONG, Line, set_out
from shared.edits import find_face, with_changed_face, with_changed_parts
from shared.errors import OutlineError
from shared.job import Face, Job, Outline, Part, Reading, Vertex, Way

ON_LINE_MM = 0.5
"""A corner this near to a line stands on it; a tape is read to half a millimetre at best (common practice, no source).
"""


def with_readings(job: Job, face: Face, readings: tuple[Reading, ...]) -> Job:
    """The job with these readings of a face in place of its own, and its parts where they then belong.

    The wall stays as wide and high as it is drawn, unless it was drawn from a reading of which the length has changed.
    OutlineError where a part would be turned inside out.
    """
    before = set_out(face, job.tape, job.unit)
    drawn = drawn_box(face)
    changed = replace(face, readings=readings)
    bare = replace(changed, parts=tuple(part for part in face.parts if part is not drawn))
    job = with_changed_face(job, changed)
    for way in ALONG:
        goes = drawn is None or _is_drawn_from_changed(drawn, way, face.readings, readings)
        after = set_out(bare if goes else changed, job.tape, job.unit)
        old, new = ([line for line in found.lines if line.way is way] for found in (before, after))
        job = followed(job, face.id, old, new, () if goes or drawn is None else (drawn.id,))
    return job


def _is_drawn_from_changed(drawn: Part, way: Way, before: Sequence[Reading], after: Sequence[Reading]) -> bool:
    """Whether a wall is as large as an overall reading was that now has another length."""
    size = drawn_size_mm(drawn, way)
    return any(
        is_overall(old, way)
        and abs(old.length_mm - size) <= BOX_MM
        and is_overall(new, way)
        and new.length_mm != old.length_mm
        for old, new in zip(before, after, strict=False)
    )


def followed(
    job: Job, face_id: str, old_lines: Iterable[Line], new_lines: Iterable[Line], staying: Collection[str] = ()
) -> Job:
    """The job with the parts of a face moved as its lines did, by name; parts that are locked or `staying` stay.

    Every corner on a line goes with it. The other corners of a part, and all of one with arcs, keep their distance from
    the line to the left of the part (or below it), so that a part between lines keeps its size. OutlineError where a
    part would be turned inside out.
    """
    after = {(line.way, line.name): line.at_mm for line in new_lines}
    moves: dict[Way, list[tuple[float, float]]] = {Way.ACROSS: [(0.0, 0.0)], Way.UP: [(0.0, 0.0)]}
    for line in old_lines:
        moves[line.way].append((line.at_mm, after.get((line.way, line.name), line.at_mm) - line.at_mm))
    parts = find_face(job, face_id).parts
    changed = [
        new for part in parts if not part.locked and part.id not in staying and (new := _along(part, moves)) is not part
    ]
    return with_changed_parts(job, changed) if changed else job


def _along(part: Part, moves: Mapping[Way, Sequence[tuple[float, float]]]) -> Part:
    """The part moved with its lines; the same part where nothing moves it."""
    left, bottom, _, _ = outline_box(part.outline)
    is_round = any(vertex.bulge for vertex in part.outline)
    across = _shifts(left, [left if is_round else vertex.x for vertex in part.outline], moves[Way.ACROSS])
    up = _shifts(bottom, [bottom if is_round else vertex.y for vertex in part.outline], moves[Way.UP])
    if not any((*across, *up)):
        return part
    outline = tuple(
        Vertex(vertex.x + right, vertex.y + higher, vertex.bulge)
        for vertex, right, higher in zip(part.outline, across, up, strict=True)
    )
    _refuse_turned(part, outline)
    return replace(part, outline=outline)


def _shifts(begin: float, corners: Sequence[float], moves: Sequence[tuple[float, float]]) -> list[float]:
    """How far each corner goes, one way, from pairs of where a line stood and how far it went."""
    before = [move for move in moves if move[0] <= begin + ON_LINE_MM]
    with_part = max(before, key=lambda move: move[0])[1] if before else 0.0
    nearest = [min(moves, key=lambda move: abs(move[0] - corner)) for corner in corners]
    return [
        line[1] if abs(line[0] - corner) <= ON_LINE_MM else with_part
        for line, corner in zip(nearest, corners, strict=True)
    ]


def _refuse_turned(part: Part, outline: Outline) -> None:
    where = part.name or part.kind.value
    check_outline(outline, where)
    if signed_area_mm2(outline) * signed_area_mm2(part.outline) < 0:
        raise OutlineError("the lines that it stands on would change places", where=where, do="check the readings")
