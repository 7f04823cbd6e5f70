"""Mending: edits that put one odd thing right at once, worked out from the job as it is."""

from collections.abc import Iterator

from geometry.edits.laying import laid_along, side_of, way_onto
from geometry.outlines.measured import outline_box
from geometry.outlines.sides import Box
from geometry.parts.moves import moved, resized
from geometry.seen.hanging import hung_fronts
from geometry.seen.near import NearMiss, near_misses
from shared.edits.drawn import find_face, find_part, find_room_of, with_changed_parts, without_parts
from shared.edits.locking import refuse_locked
from shared.errors import JobError, RecoatError
from shared.findings import Code, Finding
from shared.job import Face, Job, Part
from shared.trade.kinds import Kind, usual
from takeoff.findings.shapes import TRIM, common_box, look_at_shapes, wall_box, way_inside
from takeoff.surfaces.fronts import encloses, is_front, is_opening

NEAR_MISSES = (Code.GAP, Code.OVERLAP)

_Which = tuple[Code, str, tuple[str, ...]]
"""What tells one finding from another, whatever sizes it names: its code, its face and its parts."""


def mended(job: Job, finding: Finding) -> Job:
    """The job with one thing put right, and nothing else changed but what a moved part carries with it.

    Two parts that nearly touch are brought to touch. The facing side of one of them moves, or the whole part if its
    side cannot. The way that makes the fewest new things to look at is taken. Of ways that make as many, a part that is
    made to fit moves before others, and a part drawn later before one drawn earlier. A part beyond the wall is trimmed
    or moved. A front is trimmed to what it hangs on. Of two parts with one outline, the later one is removed.

    JobError if there is nothing to mend, or no longer, if a locked part would have to change, or if no single edit
    mends it.
    """
    face = find_face(job, finding.face)
    if not finding.mend:
        raise JobError("no single step mends this", where=face.name, do="put it right by hand")
    there = frozenset(map(_which, look_at_shapes(face, job.unit)))
    if _which(finding) not in there:
        raise JobError("this has been mended already", where=face.name, do="look at the list again")
    if finding.code in NEAR_MISSES:
        return _brought_together(job, face, finding, there)
    if finding.code is Code.SAME_OUTLINE:
        return _without_one(job, finding)
    part = find_part(job, finding.parts[0])[1]
    changed = _brought_inside(face, part) if finding.code is Code.OUTSIDE_WALL else _trimmed(job, face, part)
    refuse_locked(find_part(job, each.id)[1] for each in changed)
    return with_changed_parts(job, changed)


def all_mended(job: Job, code: Code) -> Job:
    """The job with all things of one code put right, as far as they can be. JobError if none of them can."""
    after = job
    for finding in (each for face in job.faces for each in look_at_shapes(face, job.unit) if each.code is code):
        try:
            after = mended(after, finding)
        except RecoatError:
            continue  # It stays in the list; an earlier mend may also have put it right.
    if after is job:
        raise JobError("none of these can be mended in one step", do="put them right by hand")
    return after


def _which(finding: Finding) -> _Which:
    return finding.code, finding.face, finding.parts


def _brought_together(job: Job, face: Face, finding: Finding, there: frozenset[_Which]) -> Job:
    """The job in which two parts touch, by the first way that makes no new thing to look at, or else the fewest.

    Only new things count. Otherwise a way that moves a part off a third one would look better: a small gap is a thing
    to look at, and a large one is not.
    """
    miss = next(each for each in near_misses(face.parts) if each.parts == finding.parts)
    best: tuple[int, Job] | None = None
    for changed in _ways(face, miss):
        if any(find_part(job, part.id)[1].locked for part in changed):
            continue
        tried = with_changed_parts(job, changed)
        after = frozenset(map(_which, look_at_shapes(find_face(tried, face.id), job.unit)))
        new = len(after - there)
        stays = any(code in NEAR_MISSES and parts == finding.parts for code, _, parts in after)
        if not stays and (best is None or new < best[0]):
            best = (new, tried)
        if best is not None and not best[0]:
            break
    if best is None:
        refuse_locked(find_part(job, part)[1] for part in finding.parts)
        raise JobError("no single step mends this", where=face.name, do="measure both parts again")
    return best[1]


def _ways(face: Face, miss: NearMiss) -> Iterator[tuple[Part, ...]]:
    """The ways to let two parts touch, as the changed parts: first with one side moved, then with one part moved."""
    places = {part.id: place for place, part in enumerate(face.parts)}
    first, second = (face.parts[places[part]] for part in miss.parts)
    one, other = side_of(first, miss.sides[0]), side_of(second, miss.sides[1])
    pairs = [(first, one, other), (second, other, one)]
    pairs.sort(key=lambda pair: (not usual()[pair[0].kind].made_to_fit, -places[pair[0].id]))
    able = [pair for pair in pairs if pair[0].kind is not Kind.WALL]
    for part, side, line in able:
        try:
            yield (laid_along(part, side.vertex, line),)
        except RecoatError:
            continue  # An arc beside it cannot follow: another way is tried.
    for part, side, line in able:
        yield _carried_along(face, part, *way_onto(side, line))


def _carried_along(face: Face, part: Part, dx: float, dy: float) -> tuple[Part, ...]:
    """A part moved by a distance, and with it the fronts and openings that lie within it. A wall carries nothing."""
    box = outline_box(part.outline)
    with_it = (
        each
        for each in face.parts
        if each is not part and (is_front(each) or is_opening(each)) and encloses(box, outline_box(each.outline))
    )
    loose = () if part.kind is Kind.WALL else with_it
    return tuple(moved(each, dx, dy) for each in (part, *loose))


def _brought_inside(face: Face, part: Part) -> tuple[Part, ...]:
    wall, box = wall_box(face), outline_box(part.outline)
    if wall is None:
        return ()  # Nothing lies beyond a wall that is not drawn.
    if way_inside(part, wall) == TRIM:
        return (resized(part, common_box(box, wall)),)
    dx = max(wall[0] - box[0], 0.0) + min(wall[2] - box[2], 0.0)
    dy = max(wall[1] - box[1], 0.0) + min(wall[3] - box[3], 0.0)
    return _carried_along(face, part, dx, dy)


def _trimmed(job: Job, face: Face, part: Part) -> tuple[Part, ...]:
    """A front whose sides that reach beyond what it hangs on are set back inside it by half the room's reveal."""
    hung = next(each for each in hung_fronts(face.parts) if each.front == part.id)
    half = find_room_of(job, face.id).heights.reveal_mm / 2
    left, bottom, right, top = hung.box
    room: Box = (left + half, bottom + half, right - half, top - half)
    box = outline_box(part.outline)
    trimmed = (
        room[0] if box[0] < left else box[0],
        room[1] if box[1] < bottom else box[1],
        room[2] if box[2] > right else box[2],
        room[3] if box[3] > top else box[3],
    )
    return (resized(part, trimmed),)


def _without_one(job: Job, finding: Finding) -> Job:
    """The job without the later of two parts with one outline, or without the other if the later one is locked."""
    parts = [find_part(job, part)[1] for part in reversed(finding.parts)]
    loose = next((part for part in parts if not part.locked), None)
    if loose is None:
        refuse_locked(parts)
        return job
    return without_parts(job, (loose.id,))
