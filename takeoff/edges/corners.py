"""Where the right end of one elevation meets the left end of the next: upright joints, and masking up the corner."""

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
    """An end of a face, worked on: the line up it, whether it has a wall, its parts, and what they show there."""

    line: EndLine
    has_wall: bool
    parts: Mapping[str, Part]
    finishes: Finishes
    seen: tuple[Stretch, ...]

    def at(self, height: float) -> str | None:
        """The part seen at this height; None for none."""
        return next((each.part for each in self.seen if each.low_mm < height < each.high_mm), None)


def meetings_round(room: Room) -> tuple[Meeting, ...]:
    """The corners of a room in order; the last elevation meets the first."""
    round_it = [face for face in room.faces if face.view is View.ELEVATION]
    if len(round_it) < 2:
        return ()
    pairs = zip(round_it, round_it[1:] + round_it[:1], strict=True)
    return tuple(Meeting(a, b, a.corner) for a, b in pairs if a.corner is not Corner.NONE)


def corner_joints(meeting: Meeting, here: FaceEnd, there: FaceEnd) -> tuple[FoundJoint, ...]:
    """The pairs that meet up an inside corner, those of wet-area surfaces sealed by rule; none up an outside one."""
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
    """What is taped up a corner: the heights at which the finishes on its two sides differ.

    Each height once: on the face that is coated there, the left-hand one where both are. A face without a wall has no
    outside to protect.
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
    """From the floor up, what the two ends show beside each other: part here, part there, from, to."""
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
