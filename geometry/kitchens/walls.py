"""Begins a kitchen from the lengths of its walls: each gets an elevation as long as itself, as high as the ceiling."""

from collections.abc import Sequence

from msgspec.structs import replace

from geometry.outlines.shapes import box
from shared.checks.aids import check_heights
from shared.checks.job import check_job
from shared.edits.build_ups import start_job
from shared.edits.drawn import find_room, fresh_id, next_letter, with_changed_room, with_face, with_room
from shared.errors import ReadingError
from shared.job import Face, Heights, Job, Part, Room, Unit
from shared.trade.kinds import Kind
from shared.typed.walls import WallLength


def start_kitchen(name: str, walls: Sequence[WallLength], heights: Heights, unit: Unit) -> Job:
    """A new job of this name and unit, whose one room is a kitchen with these walls. Errors as for `with_kitchen`."""
    return with_kitchen(start_job(name, unit), "Kitchen", walls, heights)


def with_kitchen(job: Job, room_name: str, walls: Sequence[WallLength], heights: Heights) -> Job:
    """The job with one more room, of these walls and usual heights. The walls' names are the next free letters.

    ReadingError for no walls, JobError where the job cannot hold the room.
    """
    if not walls:
        raise ReadingError("a room has at least one wall", do="type lengths such as 2400, 3000, 1800")
    check_heights(heights, room_name)
    room = Room(fresh_id(job, "r"), room_name, heights=heights)
    larger = with_room(job, room)
    for wall in walls:
        part = Part(fresh_id(larger, "p"), Kind.WALL, box(0.0, 0.0, wall.length_mm, heights.ceiling_mm))
        face = Face(fresh_id(larger, "f"), next_letter(larger), parts=(part,), corner=wall.corner)
        larger = with_face(larger, room.id, face)
    check_job(larger)
    return larger


def with_heights(job: Job, room_id: str, heights: Heights) -> Job:
    """The job with other usual heights for a room. What is drawn stays. JobError for heights that no room can have."""
    room = find_room(job, room_id)
    check_heights(heights, room.called)
    return job if room.heights == heights else with_changed_room(job, replace(room, heights=heights))
