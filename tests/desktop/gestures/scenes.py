"""A wall with two cabinets side by side, a door on the first and an outlet over it."""

from desktop.gestures.gesture import Done, Scene
from geometry.outlines.measured import outline_box
from geometry.outlines.shapes import box
from shared.edits.drawn import find_part
from shared.job import Face, Job, Outline, Part, Room
from shared.trade.kinds import Kind

PARTS = (
    Part("wall", Kind.WALL, box(0, 0, 3600, 2400)),
    Part("base", Kind.CABINET, box(0, 150, 600, 720), name="sink base"),
    Part("next", Kind.CABINET, box(600, 150, 900, 720)),
    Part("door", Kind.DOOR, box(3, 153, 594, 714)),
    Part("outlet", Kind.OUTLET, box(800, 1100, 115, 72)),
)

JOB = Job("Harbour Row", (Room("r1", "Kitchen", (Face("f1", "A", parts=PARTS),)),))

SCENE = Scene(JOB, "f1", kind=Kind.CABINET, reach_mm=20.0)


def ended(done: Done | None) -> Done:
    """What a gesture came to, which must have ended."""
    assert done is not None
    return done


def box_of(done: Done | None, part: str) -> tuple[float, float, float, float]:
    """The box round a part after a gesture."""
    return outline_box(find_part(ended(done).job, part)[1].outline)


def new_outline(done: Done | None) -> Outline:
    """The outline of the only part that a gesture ended with picked."""
    (picked,) = ended(done).picked
    return find_part(ended(done).job, picked)[1].outline


def new_box(done: Done | None) -> tuple[float, float, float, float]:
    """The box round it."""
    return outline_box(new_outline(done))
