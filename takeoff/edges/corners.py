"""Corners of a room, where one elevation meets the next: upright joints, and masking up the corner."""

import math
from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise
from typing import NamedTuple

from geometry.seen.ends import EndLine, Stretch
from shared.job import Corner, Face, Part, Room, View
from shared.trade.kinds import usual
from takeoff.edges.joints import FoundJoint, joint_table
from takeoff.edges.masking import NEAR_MM, Finishes, masking_row
from takeoff.figures.measured import EdgeRow, MaskingRow


class Meeting(NamedTuple):
    """A corner of a room: the right end of `face` meets the left end of `next_face`."""

    face: Face
    next_face: Face
    corner: Corner


class FaceEnd(NamedTuple):
    """An end of a face as it is worked on: the line up it, and the stretches of parts that are `seen` there.

    `has_wall`, `parts` and `finishes` are those of the face: whether it has a wall, its parts by id, and the finish
    that each gets in place.
    """

    line: EndLine
    has_wall: bool
    parts: Mapping[str, Part]
    finishes: Finishes
    seen: tuple[Stretch, ...]

    def at(self, height: float) -> str | None:
        """The id of the part seen at this height; None when no part is."""
        return next((each.part for each in self.seen if each.low_mm < height < each.high_mm), None)


def meetings_round(room: Room) -> tuple[Meeting, ...]:
    """The corners of a room in order; the last elevation meets the first. A room with one elevation has none."""
    round_it = [face for face in room.faces if face.view is View.ELEVATION]
    if len(round_it) < 2:
        return ()
    pairs = zip(round_it, round_it[1:] + round_it[:1], strict=True)
    return tuple(Meeting(a, b, a.corner) for a, b in pairs if a.corner is not Corner.NONE)


def corner_joints(meeting: Meeting, here: FaceEnd, there: FaceEnd) -> tuple[FoundJoint, ...]:
    """The pairs of parts that meet up an inside corner; pairs of wet-area kinds are sealed by rule.

    Empty for an outside corner.
    """
    if meeting.corner is not Corner.INSIDE:
        return ()
    paths: dict[tuple[str, str], list[EdgeRow]] = {}
    for first, second, bottom, top in _alongside(here, there):
        if first is not None and second is not None:
            paths.setdefault((first, second), []).append(_upright(meeting.face.id, first, here.line, bottom, top))
    return tuple(
        _found(meeting, here.parts[first], there.parts[second], tuple(path)) for (first, second), path in paths.items()
    )


def corner_masking(meeting: Meeting, here: FaceEnd, there: FaceEnd) -> tuple[MaskingRow, ...]:
    """The masking up a corner: the heights at which the finishes on its two sides differ.

    Each height is taped once: on the face that is coated there, or on the left-hand face if both are. A face without a
    wall has no outside to protect.
    """
    paths: dict[tuple[bool, str], list[EdgeRow]] = {}
    here_id, there_id = meeting.face.id, meeting.next_face.id
    for first, second, bottom, top in _alongside(here, there):
        ours, theirs = here.finishes.get(first or ""), there.finishes.get(second or "")
        if ours == theirs:
            continue
        if first is not None and ours is not None and here.has_wall:
            paths.setdefault((True, first), []).append(_upright(here_id, first, here.line, bottom, top))
        elif second is not None and theirs is not None and there.has_wall:
            paths.setdefault((False, second), []).append(_upright(there_id, second, there.line, bottom, top))
    return tuple(
        _masked_up(meeting, is_here, (here if is_here else there).parts[part], path)
        for (is_here, part), path in paths.items()
    )


def _masked_up(meeting: Meeting, is_here: bool, part: Part, path: Sequence[EdgeRow]) -> MaskingRow:
    other = meeting.next_face if is_here else meeting.face
    return masking_row(path[0].face, (part.id, None), f"{part.called} to the corner with {other.name}", path)


def _alongside(here: FaceEnd, there: FaceEnd) -> Iterator[tuple[str | None, str | None, float, float]]:
    """The stretches of a corner from the floor up: the part seen here, the part seen there, the bottom and the top."""
    heights = sorted({height for each in (*here.seen, *there.seen) for height in (each.low_mm, each.high_mm)})
    for bottom, top in pairwise(heights):
        if top - bottom > NEAR_MM:
            middle = (bottom + top) / 2
            yield here.at(middle), there.at(middle), bottom, top


def _upright(face: str, part: str, line: EndLine, bottom: float, top: float) -> EdgeRow:
    start, end = line.at(bottom), line.at(top)
    return EdgeRow(face, (part, None), start, end, 0.0, math.dist(start, end))


def _found(meeting: Meeting, first: Part, second: Part, path: tuple[EdgeRow, ...]) -> FoundJoint:
    is_wet = usual()[first.kind].wet and usual()[second.kind].wet
    bead = joint_table().upright if is_wet else None
    return FoundJoint(meeting.face.id, meeting.next_face.id, (first, second), bead, path)
