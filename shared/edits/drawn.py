"""Edits of what is drawn: functions that make a new job from a job. What an edit does not touch stays the same object.

JobError where an id is not in the job, or is new but in it already. An edit keeps a job whole: a part or a face that
goes takes with it the ties and the joint choices that refer to it. Whether the values themselves make sense is for
`shared.checks.job`. `shared.edits.finishes` edits finishes and products.
"""

from collections.abc import Callable, Collection, Iterable, Sequence
from itertools import chain

from msgspec.structs import replace

from shared.errors import JobError
from shared.job import Face, Job, JointChoice, Part, Room, Tie, View


def find_room(job: Job, room_id: str) -> Room:
    """The room with this id."""
    for room in job.rooms:
        if room.id == room_id:
            return room
    raise _missing("room", room_id)


def find_room_of(job: Job, face_id: str) -> Room:
    """The room that a face is in. JobError where the job has no such face."""
    room = job.room_of.get(face_id)
    if room is None:
        raise _missing("face", face_id)
    return room


def find_face(job: Job, face_id: str) -> Face:
    """The face with this id."""
    for face in job.faces:
        if face.id == face_id:
            return face
    raise _missing("face", face_id)


def find_part(job: Job, part_id: str) -> tuple[Face, Part]:
    """The part with this id, and the face that it is on."""
    for face in job.faces:
        for part in face.parts:
            if part.id == part_id:
                return face, part
    raise _missing("part", part_id)


def fresh_ids(job: Job, prefix: str, count: int) -> tuple[str, ...]:
    """This many ids that no room, face or part has: the prefix and a number, counted on from the highest one used."""
    return next_ids(_ids(job), prefix, count)


def next_ids(used: Iterable[str], prefix: str, count: int) -> tuple[str, ...]:
    """This many ids that are not among those used: the prefix and a number, counted on from the highest one used."""
    tails = (name.removeprefix(prefix) for name in used if name.startswith(prefix))
    highest = max((int(tail) for tail in tails if tail.isdecimal()), default=0)
    return tuple(f"{prefix}{highest + step}" for step in range(1, count + 1))


def fresh_id(job: Job, prefix: str) -> str:
    """One id that no room, face or part has."""
    return fresh_ids(job, prefix, 1)[0]


def with_parts(job: Job, face_id: str, parts: Iterable[Part]) -> Job:
    """The job with parts added to a face, in front of those of their rank."""
    added = tuple(parts)
    _refuse_taken(job, (part.id for part in added))
    return with_changed_face(job, _plus_parts(find_face(job, face_id), added))


def with_changed_parts(job: Job, parts: Iterable[Part]) -> Job:
    """The job with each of these parts in place of the one with its id. Ties to sides that it lost are dropped."""
    changes = {part.id: part for part in parts}
    _require("part", changes, (part.id for face in job.faces for part in face.parts))

    def changed(face: Face) -> Face:
        if not any(part.id in changes for part in face.parts):
            return face
        sides = {part.id: len(part.outline) for part in changes.values()}
        ties = tuple(tie for tie in face.ties if tie.side < sides.get(tie.part, tie.side + 1))
        return replace(
            face, parts=tuple(changes.get(part.id, part) for part in face.parts), ties=_same(face.ties, ties)
        )

    return with_each_face(job, changed)


def without_parts(job: Job, ids: Collection[str]) -> Job:
    """The job without these parts, the ties of their sides and the choices about their joints."""
    gone = frozenset(ids)
    _require("part", gone, (part.id for face in job.faces for part in face.parts))

    def kept(face: Face) -> Face:
        parts = tuple(part for part in face.parts if part.id not in gone)
        if len(parts) == len(face.parts):
            return face
        return replace(
            face, parts=parts, ties=_same(face.ties, tuple(tie for tie in face.ties if tie.part not in gone))
        )

    return _with_joints(with_each_face(job, kept), lambda choice: gone.isdisjoint(choice.parts))


def raised(job: Job, ids: Collection[str], by: int) -> Job:
    """The job with these parts raised by this many levels; a negative number lowers them."""
    wanted = frozenset(ids)
    parts = (part for face in job.faces for part in face.parts if part.id in wanted)
    changed = tuple(replace(part, level=part.level + by) for part in parts)
    _require("part", wanted, (part.id for part in changed))
    return with_changed_parts(job, changed)


def with_face(job: Job, room_id: str, face: Face, at: int | None = None) -> Job:
    """The job with a face added to a room: at this place, or last of its view. Elevations always come before plans."""
    _refuse_taken(job, chain((face.id,), (part.id for part in face.parts)))
    room = find_room(job, room_id)
    return with_changed_room(job, replace(room, faces=_inserted(room.faces, face, at)))


def with_changed_face(job: Job, face: Face) -> Job:
    """The job with this face in place of the one that has its id."""
    find_face(job, face.id)
    return with_each_face(job, lambda old: face if old.id == face.id else old)


def without_face(job: Job, face_id: str) -> Job:
    """The job without a face, the ties to it and the choices about its joints."""
    room = find_room_of(job, face_id)
    gone = frozenset(part.id for part in find_face(job, face_id).parts)
    smaller = with_changed_room(job, replace(room, faces=tuple(face for face in room.faces if face.id != face_id)))

    def untied(face: Face) -> Face:
        ties = tuple(tie for tie in face.ties if tie.face != face_id)
        return face if len(ties) == len(face.ties) else replace(face, ties=ties)

    def stays(choice: JointChoice) -> bool:
        return face_id not in (choice.face, choice.next_face) and gone.isdisjoint(choice.parts)

    return _with_joints(with_each_face(smaller, untied), stays)


def with_face_moved(job: Job, face_id: str, to: int) -> Job:
    """The job with a face at another place of its room, counted from 0; elevations stay before plans."""
    room = find_room_of(job, face_id)
    others = tuple(face for face in room.faces if face.id != face_id)
    return with_changed_room(job, replace(room, faces=_inserted(others, find_face(job, face_id), to)))


def copied_face(job: Job, face_id: str) -> Job:
    """The job with a copy of a face right after it: the same parts, corner and joint choices, with ids of their own.

    The copy's name is the next free letter, and its fronts get tags of their own. Ties are not copied: two benchtops do
    not run along the same stretch of a wall.
    """
    room, face = find_room_of(job, face_id), find_face(job, face_id)
    fresh = dict(zip((part.id for part in face.parts), fresh_ids(job, "p", len(face.parts)), strict=True))
    parts = tuple(replace(part, id=fresh[part.id], tag_number=0) for part in face.parts)
    copy = replace(face, id=fresh_id(job, "f"), name=next_letter(job), letter="", parts=parts, ties=())
    larger = with_face(job, room.id, copy, room.faces.index(face) + 1)
    choices = tuple(
        replace(choice, face=copy.id, parts=(fresh[choice.parts[0]], fresh[choice.parts[1]]))
        for choice in job.joints
        if choice.face == face_id and not choice.next_face
    )
    return replace(larger, joints=(*larger.joints, *choices)) if choices else larger


def next_letter(job: Job) -> str:
    """The first of A, B ... Z, AA, AB ... that is no face's name, and begins no face's tags."""
    names = {name for face in job.faces for name in (face.name, face.tag_letter)}
    number = 1
    while _letters(number) in names:
        number += 1
    return _letters(number)


def with_room(job: Job, room: Room, at: int | None = None) -> Job:
    """The job with a room added: at this place, or last."""
    ids = (part.id for face in room.faces for part in face.parts)
    _refuse_taken(job, chain((room.id,), (face.id for face in room.faces), ids))
    place = len(job.rooms) if at is None else at
    return replace(job, rooms=(*job.rooms[:place], room, *job.rooms[place:]))


def with_changed_room(job: Job, room: Room) -> Job:
    """The job with this room in place of the one that has its id."""
    find_room(job, room.id)
    return replace(job, rooms=tuple(room if old.id == room.id else old for old in job.rooms))


def without_room(job: Job, room_id: str) -> Job:
    """The job without a room, its faces, the ties to them and the choices about their joints."""
    emptied = job
    for face in find_room(job, room_id).faces:
        emptied = without_face(emptied, face.id)
    return replace(emptied, rooms=tuple(room for room in emptied.rooms if room.id != room_id))


def with_joint_choice(job: Job, choice: JointChoice) -> Job:
    """The job with this choice in place of an earlier one about the same joint.

    A choice that decides nothing only removes the earlier one.
    """
    find_face(job, choice.face)
    others = tuple(old for old in job.joints if _joint_of(old) != _joint_of(choice))
    decides = (choice.sealed, choice.section, choice.old_bead) != (None, None, None)
    return replace(job, joints=(*others, choice) if decides else others)


def _joint_of(choice: JointChoice) -> tuple[str, str, tuple[str, ...]]:
    """Which joint a choice is about. The order of its parts matters only for a joint up a corner of the room."""
    parts = choice.parts if choice.next_face else tuple(sorted(choice.parts))
    return choice.face, choice.next_face, parts


def with_each_face(job: Job, change: Callable[[Face], Face]) -> Job:
    """The job with every face changed. A room whose faces all stay the same objects stays the same object."""
    rooms = tuple(_changed_room(room, change) for room in job.rooms)
    return job if all(map(_is, rooms, job.rooms)) else replace(job, rooms=rooms)


def _changed_room(room: Room, change: Callable[[Face], Face]) -> Room:
    faces = tuple(change(face) for face in room.faces)
    return room if all(map(_is, faces, room.faces)) else replace(room, faces=faces)


def _is(one: object, other: object) -> bool:
    return one is other


def _same(before: tuple[Tie, ...], after: tuple[Tie, ...]) -> tuple[Tie, ...]:
    """The ties before when none was dropped, so that they stay the same object; else the ties after."""
    return before if len(before) == len(after) else after


def _with_joints(job: Job, stays: Callable[[JointChoice], bool]) -> Job:
    joints = tuple(choice for choice in job.joints if stays(choice))
    return job if len(joints) == len(job.joints) else replace(job, joints=joints)


def _plus_parts(face: Face, parts: tuple[Part, ...]) -> Face:
    return replace(face, parts=(*face.parts, *parts)) if parts else face


def _inserted(faces: Sequence[Face], face: Face, at: int | None) -> tuple[Face, ...]:
    elevations = sum(other.view is View.ELEVATION for other in faces)
    first, last = (0, elevations) if face.view is View.ELEVATION else (elevations, len(faces))
    place = last if at is None else min(max(at, first), last)
    return (*faces[:place], face, *faces[place:])


def _letters(number: int) -> str:
    """The number-th name of A, B ... Z, AA, AB ..., counted from 1."""
    before, last = divmod(number - 1, 26)
    return (_letters(before) if before else "") + chr(ord("A") + last)


def _ids(job: Job) -> Iterable[str]:
    for room in job.rooms:
        yield room.id
        for face in room.faces:
            yield face.id
            yield from (part.id for part in face.parts)


def _require(what: str, wanted: Iterable[str], present: Iterable[str]) -> None:
    missing = set(wanted).difference(present)
    if missing:
        raise _missing(what, min(missing))


def _missing(what: str, name: str) -> JobError:
    return JobError(f'the job has no {what} "{name}"', do="choose one that it has")


def _refuse_taken(job: Job, ids: Iterable[str]) -> None:
    used = set(_ids(job))
    for new in ids:
        if new in used:
            raise JobError(f'the id "{new}" is used already', do="give the new one an id of its own")
        used.add(new)
