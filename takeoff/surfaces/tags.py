"""Tags: a front and its opening share a tag of face letter and number, "B3". Once given it stays with its front."""

from collections.abc import Iterable, Mapping
from itertools import count

from msgspec.structs import replace

from geometry.outlines.measured import outline_box
from geometry.outlines.sides import Box
from shared.edits.drawn import with_each_face
from shared.job import Face, Job, Part
from shared.limits import HIGHEST_TAG
from takeoff.surfaces.fronts import is_front

BENCH_MM = 920.0
"""A front that begins below this height is a base front; one that begins higher is an upper front (the highest base
unit of EN 1116, as other works quote it)."""

STACK_MM = 20.0
"""Fronts whose left ends differ by no more than this stand over each other (common practice, no source)."""


def tags(face: Face) -> dict[str, str]:
    """The tag of each door and drawer front of a face, by the front's id; empty for a face without fronts."""
    return {part_id: f"{face.tag_letter}{number}" for part_id, number in _numbers(face).items()}


def with_tags_given(job: Job, among: Job | None = None) -> Job:
    """The job whose fronts all have the number of their tag, as `tags` gives it, so that no edit changes it any more.

    Faces that the job `among` has too, as the same object, are left as they are: their fronts got their numbers before.
    """
    known = frozenset(map(id, among.faces)) if among else frozenset[int]()
    return with_each_face(job, lambda face: face if id(face) in known else _with_numbers(face, _numbers(face)))


def renumbered(job: Job, face_id: str) -> Job:
    """The job whose face with this id has its fronts numbered anew, in order, from 1 on."""

    def anew(face: Face) -> Face:
        return _with_numbers(face, dict(zip(_in_order(face), count(1), strict=False)))

    return with_each_face(job, lambda face: anew(face) if face.id == face_id else face)


def _numbers(face: Face) -> dict[str, int]:
    """The number of each front of a face: the one that was given to it, or else the next after all that were given.

    Of two fronts with one number the one that was drawn first keeps it: the other is a copy of it.
    """
    given: dict[int, str] = {}
    for part in face.parts:
        if part.tag_number and is_front(part):
            given.setdefault(part.tag_number, part.id)
    kept = {part_id: number for number, part_id in given.items()}
    highest = max((part.tag_number for part in face.parts), default=0)
    is_room = highest + len(face.parts) <= HIGHEST_TAG
    following = (number for number in count(highest + 1 if is_room else 1) if number not in given)
    return {part_id: kept.get(part_id) or next(following) for part_id in _in_order(face)}


def _in_order(face: Face) -> tuple[str, ...]:
    """The ids of the fronts of a face in the order of new tags.

    Base fronts come first, from left to right, and within a stack from the bottom up. Upper fronts follow in the same
    order.
    """
    fronts = [(outline_box(part.outline), part) for part in face.parts if is_front(part)]
    base = [each for each in fronts if each[0][1] < BENCH_MM]
    upper = [each for each in fronts if each[0][1] >= BENCH_MM]
    return tuple(part.id for part in (*_in_stacks(base), *_in_stacks(upper)))


def _with_numbers(face: Face, numbers: Mapping[str, int]) -> Face:
    """The face whose fronts have these numbers; the same object if they have them already."""
    if all(part.tag_number == numbers.get(part.id, part.tag_number) for part in face.parts):
        return face
    return replace(face, parts=tuple(_with_number(part, numbers.get(part.id, part.tag_number)) for part in face.parts))


def _with_number(part: Part, number: int) -> Part:
    return part if part.tag_number == number else replace(part, tag_number=number)


def _in_stacks(fronts: Iterable[tuple[Box, Part]]) -> list[Part]:
    stacks: list[list[tuple[Box, Part]]] = []
    for box, part in sorted(fronts, key=lambda each: each[0][0]):
        if stacks and box[0] - stacks[-1][0][0][0] <= STACK_MM:
            stacks[-1].append((box, part))
        else:
            stacks.append([(box, part)])
    return [part for stack in stacks for _, part in sorted(stack, key=lambda each: each[0][1])]
