"""What the form for a new face makes: a job with one more face."""

from desktop.rooms.face_form import NewFace
from geometry.outlines.shapes import box
from geometry.parts.drawn_size import GROUND
from shared.edits.build_ups import start_job
from shared.edits.drawn import fresh_id, next_letter, with_face
from shared.job import Face, Job, Part, Room, Unit

LONGEST_LETTER = 3
"""The most characters that the tags of a face begin with: a tag stands on a piece of tape (own choice)."""


def new_job(unit: Unit = Unit.MM) -> Job:
    """A job with one empty kitchen."""
    return start_job("New job", unit, (Room("r1", "Kitchen"),))


def with_new_face(job: Job, room_id: str, new: NewFace) -> tuple[Job, str]:
    """The job with this face, and the face's id. A new wall has its wall part on it, a new plan its benchtop.

    A short name is the letter of the face's tags too; beside a longer one that is the next free letter.
    """
    part = Part(
        id=fresh_id(job, "p"),
        kind=GROUND[new.view],
        outline=box(0.0, 0.0, new.width_mm, new.height_mm),
    )
    letter = "" if len(new.name) <= LONGEST_LETTER else next_letter(job)
    face = Face(id=fresh_id(job, "f"), name=new.name, view=new.view, parts=(part,), letter=letter)
    return with_face(job, room_id, face), face.id


def next_name(job: Job) -> str:
    """The name that the form offers for a new face."""
    return next_letter(job)
