"""Shifts what follows: a size is corrected, and all that lies beyond it goes along.

It changes parts and ties of the face, and the plans tied to it. Lengths are millimetres. `geometry.edits.stretching`
changes one part, and `geometry.edits.contradicted` says what becomes of readings.
"""

from collections.abc import Collection, Iterable, Iterator, Sequence
from typing import NamedTuple

from msgspec.structs import replace

from geometry.edits.contradicted import Correction, contradicted, readings_after
from geometry.edits.hand import picked_parts, refuse_far
from geometry.edits.stretching import AT_MM, Pull, Welded, pulled
from geometry.edits.tying import runs_with_wall
from geometry.outlines.measured import contains, outline_box, side_lengths_mm
from geometry.outlines.sides import WELD_MM, Point
from geometry.parts.extent import extent
from geometry.parts.moves import moved, resized
from shared.edits.drawn import find_face, find_room_of, with_changed_face
from shared.errors import JobError
from shared.job import Face, Heights, Job, Part, Reading, Room, Tie, View, Way
from shared.trade.kinds import usual


class Shifted(NamedTuple):
    """The result of a shift: the job after it, and what changed, by id, on the face and on its plans.

    Parts in `moved` kept their size, and parts in `stretched` are longer or shorter now. Parts in `stayed` would have
    moved but are locked. `ties` are the ties that changed, as they are now. `faces` are the plans that changed.
    `readings` are the readings of the face that the correction contradicts, by their places.
    """

    job: Job
    moved: tuple[str, ...]
    stretched: tuple[str, ...]
    stayed: tuple[str, ...]
    ties: tuple[Tie, ...]
    faces: tuple[str, ...]
    readings: tuple[int, ...] = ()


def shift(job: Job, face_id: str, way: Way, at_mm: float, by_mm: float, *, again: bool = False) -> Shifted:
    """Move all that lies beyond `at_mm` (to the right of it, or above it) by `by_mm`; a negative shift goes back.

    Readings stay as they were read; with `again` those that the shift contradicts are taken again by it.

    Parts that span the place stretch, as `geometry.edits.stretching.pulled` says. Fronts go with the cabinet that they
    hang on. A shift across an elevation takes along the ties to it and the plans that they are on: parts tied to this
    wall change as the wall does, and parts tied only to walls further round the room move as a whole. Corners that the
    two share stay together. A plan whose tied side lies aslant stays. Locked parts stay.

    A shift by 0 changes nothing. JobError where nothing that lies beyond may move, where nothing would be left of a
    part or a reading, or where a part would reach beyond 100 m.
    """
    return _shifted(job, face_id, Correction(way, Pull(_axis(way), at_mm, by_mm), again=again))


def corrected_to(
    job: Job, face_id: str, way: Way, size: tuple[float, float], new_size_mm: float, *, again: bool = False
) -> Shifted:
    """Make the size between two places of a face what the tape says; all that lies beyond goes along, as in `shift`.

    If it contradicts readings, and lines or ends of the face stand at both places, it becomes one more reading.
    """
    (start, end), axis = size, _axis(way)
    return _shifted(job, face_id, Correction(way, Pull(axis, end, new_size_mm - (end - start)), start, again))


def resized_to(
    job: Job, face_id: str, part_ids: Sequence[str], way: Way, new_size_mm: float, *, again: bool = False
) -> Shifted:
    """Make one part, or the gap between two parts, as large as the tape says; all that lies beyond goes along.

    JobError for parts of another face, for more than two parts, for two that have no gap between them, or for a locked
    part. OutlineError where the part's arcs cannot follow. Other errors as in `shift`.
    """
    parts = picked_parts(job, part_ids)
    if any(part not in find_face(job, face_id).parts for part in parts):
        raise JobError("the picked parts are not all on this face", do="pick parts of one face")
    axis = _axis(way)
    spans = sorted((outline_box(part.outline)[axis], outline_box(part.outline)[axis + 2]) for part in parts)
    if len(parts) == 1:
        if parts[0].locked:
            raise JobError("it is locked", where=parts[0].called, do="unlock it first")
        if not new_size_mm > 0:
            raise JobError("the new size is 0", where=parts[0].called, do="type a size above 0")
        at, by = spans[0][1], new_size_mm - (spans[0][1] - spans[0][0])
        return _shifted(job, face_id, Correction(way, Pull(axis, at, by), spans[0][0], again), resizing=parts[0])
    if len(parts) != 2 or spans[1][0] < spans[0][1] - WELD_MM:
        raise JobError("there is no gap between these parts", do="pick one part, or two that stand apart")
    if not new_size_mm >= 0:
        raise JobError("a gap cannot be negative", do="type a size from 0 up")
    at, by = spans[1][0], new_size_mm - (spans[1][0] - spans[0][1])
    return _shifted(job, face_id, Correction(way, Pull(axis, at, by), spans[0][1], again), is_gap=True)


def _axis(way: Way) -> int:
    return 1 if way is Way.UP else 0


class _Changes(NamedTuple):
    """The parts of one face that a shift changes, as they are then; and the ids of those that stay, being locked."""

    parts: tuple[Part, ...]
    stayed: tuple[str, ...]


def _shifted(
    job: Job, face_id: str, correction: Correction, *, resizing: Part | None = None, is_gap: bool = False
) -> Shifted:
    face, pull = find_face(job, face_id), correction.pull
    if not pull.by_mm:
        return Shifted(job, (), (), (), (), ())
    room = find_room_of(job, face_id)
    asked = [(part, _pulled_on_face(part, pull, room.heights, resizing, is_gap)) for part in face.parts]
    changes = {face.id: _changes(asked)}
    places = contradicted(job, face, correction, [(old, old if old.locked else new) for old, new in asked])
    after = _with_face(job, face, changes[face.id], readings_after(job, face, correction, places))
    if face.view is View.ELEVATION and correction.way is not Way.UP:
        for plan in job.faces:
            if any(tie.face == face.id for tie in plan.ties):
                changes[plan.id] = _on_plan(plan, face, room, pull)
                after = _with_plan(after, plan, changes[plan.id], face, pull)
    return _told(job, after, changes, face.id)._replace(readings=places)


def _pulled_on_face(part: Part, pull: Pull, heights: Heights, resizing: Part | None, is_gap: bool) -> Part:
    # A front ends a little before the cabinet that it hangs on.
    at = AT_MM + (heights.reveal_mm if usual()[part.kind].front else 0.0)
    near, far = pull.reach_mm(part.outline)
    if is_gap and near < -at and abs(far) <= at:
        return part
    if part is resizing and any(vertex.bulge for vertex in part.outline):
        box = list(outline_box(part.outline))
        box[pull.axis + 2] += pull.by_mm
        return resized(part, (box[0], box[1], box[2], box[3]))
    return pulled(part, pull, at)


def _changes(asked: Sequence[tuple[Part, Part]]) -> _Changes:
    changed = [(old, new) for old, new in asked if new is not old]
    parts = tuple(new for old, new in changed if not old.locked)
    refuse_far(parts)
    return _Changes(parts, tuple(old.id for old, _ in changed if old.locked))


def _with_face(job: Job, face: Face, changes: _Changes, readings: tuple[Reading, ...]) -> Job:
    """The job with the face's parts shifted, and these readings. On a plan, ties grow and shrink with their sides."""
    parts = _replaced(face.parts, changes.parts)
    ties = tuple(_as_long(tie, face.parts, parts) for tie in face.ties)
    return with_changed_face(job, replace(face, parts=parts, readings=readings, ties=ties))


def _replaced(parts: Sequence[Part], changed: Sequence[Part]) -> tuple[Part, ...]:
    new = {part.id: part for part in changed}
    return tuple(new.get(part.id, part) for part in parts)


def _as_long(tie: Tie, before: Sequence[Part], after: Sequence[Part]) -> Tie:
    old, new = (next(part for part in parts if part.id == tie.part) for parts in (before, after))
    longer = side_lengths_mm(new.outline)[tie.side] - side_lengths_mm(old.outline)[tie.side] if new is not old else 0.0
    return replace(tie, end_mm=tie.end_mm + longer) if abs(longer) > WELD_MM else tie


def _on_plan(plan: Face, wall: Face, room: Room, pull: Pull) -> _Changes:
    """The changes that a shift along a wall makes on a plan that is tied to it."""
    on_plan = _pull_on_plan(plan, wall, pull)
    if on_plan is None or pull.beyond_mm(extent(wall)[2]) < -AT_MM:
        return _Changes((), ())
    walls = {part.id: _walls_of(part, plan) for part in plan.parts}
    order = {face.id: place for place, face in enumerate(room.faces)}
    elsewhere = [part for part in plan.parts if walls[part.id] and wall.id not in walls[part.id]]
    further = [part for part in elsewhere if max(order.get(each, -1) for each in walls[part.id]) > order[wall.id]]
    nearer = [part for part in elsewhere if part not in further]
    welded = Welded(going=_corners(further), staying=_corners(nearer))
    new = {part.id: moved(part, *on_plan.step) for part in further} | {part.id: part for part in nearer}
    return _changes([(part, new.get(part.id) or pulled(part, on_plan, welded=welded)) for part in plan.parts])


def _corners(parts: Iterable[Part]) -> tuple[Point, ...]:
    return tuple((vertex.x, vertex.y) for part in parts for vertex in part.outline)


def _walls_of(part: Part, plan: Face) -> set[str]:
    """The walls that a part is tied to; for a part without ties, the walls of the tied part that it stands on."""
    own = {tie.face for tie in plan.ties if tie.part == part.id}
    if own:
        return own
    left, bottom, right, top = outline_box(part.outline)
    x, y = (left + right) / 2, (bottom + top) / 2
    tied = {tie.part for tie in plan.ties}
    under = {each.id for each in plan.parts if each.id in tied and contains(each.outline, x, y)}
    return {tie.face for tie in plan.ties if tie.part in under}


def _pull_on_plan(plan: Face, wall: Face, pull: Pull) -> Pull | None:
    """The pull along a wall as it is on a plan, by the tie nearest to its place; None when that tied side is aslant."""
    ties = [tie for tie in plan.ties if tie.face == wall.id]
    tie = min(ties, key=lambda tie: max(tie.start_mm - pull.at_mm, pull.at_mm - tie.end_mm))
    part = next(part for part in plan.parts if part.id == tie.part)
    ends = [part.outline[tie.side], part.outline[(tie.side + 1) % len(part.outline)]]
    begin, end = ends if runs_with_wall(part) else ends[::-1]
    along = (end.x - begin.x, end.y - begin.y)
    axis = 0 if abs(along[0]) > abs(along[1]) else 1
    if abs(along[1 - axis]) > WELD_MM or not along[axis]:
        return None
    sense = 1 if along[axis] > 0 else -1
    at = (begin.x, begin.y)[axis] + sense * (pull.at_mm - tie.start_mm)
    return Pull(axis, at, pull.by_mm, sense)


def _with_plan(job: Job, plan: Face, changes: _Changes, wall: Face, pull: Pull) -> Job:
    """The job with the plan shifted. A tie to the wall follows its part, so that both stay equally long."""
    aslant = _pull_on_plan(plan, wall, pull) is None
    ties = tuple(
        _shifted_tie(tie, pull, whole=aslant or tie.part in changes.stayed) if tie.face == wall.id else tie
        for tie in plan.ties
    )
    parts = _replaced(plan.parts, changes.parts)
    if ties == plan.ties and not changes.parts:
        return job
    return with_changed_face(job, replace(plan, parts=parts, ties=ties))


def _shifted_tie(tie: Tie, pull: Pull, *, whole: bool) -> Tie:
    """The tie with each end that lies beyond the place moved along; with `whole`, only if both ends lie beyond it."""
    start, end = (
        place + (pull.by_mm if pull.beyond_mm(place) >= -AT_MM else 0.0) for place in (tie.start_mm, tie.end_mm)
    )
    if whole and start - tie.start_mm != end - tie.end_mm:
        return tie
    return replace(tie, start_mm=start, end_mm=end) if start < end else tie


def _told(before: Job, after: Job, changes: dict[str, _Changes], face_id: str) -> Shifted:
    old = {part.id: part for part_face in before.faces for part in part_face.parts}
    parts = [part for each in changes.values() for part in each.parts]
    went = {part.id for part in parts if _is_moved(old[part.id], part)}
    was = {tie for face in before.faces for tie in face.ties}
    shifted = Shifted(
        after,
        moved=tuple(part.id for part in parts if part.id in went),
        stretched=tuple(part.id for part in parts if part.id not in went),
        stayed=tuple(part_id for each in changes.values() for part_id in each.stayed),
        ties=tuple(tie for face in after.faces for tie in face.ties if tie not in was),
        faces=tuple(_changed_plans(before, after, changes, face_id)),
    )
    if after == before:
        raise JobError("nothing beyond it can move", do="unlock what should move, or choose another size")
    return shifted


def _is_moved(old: Part, new: Part) -> bool:
    """Whether all corners of a part went the same way."""
    steps = [(b.x - a.x, b.y - a.y) for a, b in zip(old.outline, new.outline, strict=True)]
    return all(abs(x - steps[0][0]) <= WELD_MM and abs(y - steps[0][1]) <= WELD_MM for x, y in steps)


def _changed_plans(before: Job, after: Job, ids: Collection[str], face_id: str) -> Iterator[str]:
    for plan in ids:
        if plan != face_id and find_face(before, plan) is not find_face(after, plan):
            yield plan
