"""The canvas paints again only where a drawing changed; the picture must be the one that painting it all would give."""

from collections.abc import Callable

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QGuiApplication, QImage

from desktop.canvas.backing import Backing, Sight
from desktop.canvas.differing import changed_boxes
from desktop.look.palette import light
from desktop.painting.drawing import PaintOptions
from desktop.painting.viewing import fitted
from geometry.outlines.shapes import box, circle, rounded_box
from geometry.parts.moves import moved
from shared.drawing import Drawing
from shared.edits.drawn import raised, with_changed_parts, without_parts
from shared.job import Face, Job, Part, Room, Tiles
from shared.trade.kinds import Kind
from takeoff.drawing.face import draw_face
from takeoff.memory import Memory
from takeoff.take_off import take_off

pytestmark = pytest.mark.usefixtures("qapp")

PARTS = (
    Part("wall", Kind.WALL, box(0, 0, 3000, 2400)),
    Part("splash", Kind.SPLASHBACK, box(0, 910, 3000, 600)),
    Part("base", Kind.CABINET, box(0, 150, 600, 720), name="sink base"),
    Part("door", Kind.DOOR, box(3, 153, 594, 714)),
    Part("bench", Kind.BENCHTOP, box(0, 872, 2400, 38)),
    Part("oven", Kind.FIXTURE, rounded_box(1200, 150, 600, 600, 60)),
    Part("basin", Kind.FIXTURE, circle(2200, 1400, 250)),
    Part("outlet", Kind.OUTLET, box(800, 1100, 115, 72)),
    Part("fridge", Kind.FIXTURE, box(2450, 0, 500, 1700), hides=False),
)
JOB = Job("Harbour Row", (Room("r1", "Kitchen", (Face("f1", "A", parts=PARTS),)),))


def drawn(job: Job, sized: tuple[str, ...] = ()) -> Drawing:
    memory = Memory()
    return draw_face(job, job.faces[0], take_off(job, memory), memory, sized=sized)


MUCH = PaintOptions(joints=True, masking=True)


def sight(options: PaintOptions = MUCH) -> Sight:
    view = fitted((0.0, 0.0, 3000.0, 2400.0), JOB.faces[0].view, QRectF(40, 40, 420, 320))
    return Sight(QSize(500, 400), 1.5, view, light(), options, QGuiApplication.font())


def picture(backing: Backing, drawing: Drawing) -> QImage:
    return backing.picture(drawing, sight()).toImage()


def largest_difference(one: QImage, other: QImage) -> int:
    """Of any channel of any dot."""
    width = one.bytesPerLine()
    ours, theirs = bytes(one.constBits()), bytes(other.constBits())
    rows = ((ours[at : at + width], theirs[at : at + width]) for at in range(0, len(ours), width))
    return max((abs(a - b) for row, same in rows if row != same for a, b in zip(row, same, strict=True)), default=0)


@settings(max_examples=40, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    st.sampled_from([part.id for part in PARTS]),
    st.lists(st.tuples(st.integers(-900, 900), st.integers(-400, 400)), min_size=1, max_size=3),
)
def test_dragging_leaves_the_picture_that_painting_anew_gives(part: str, ways: list[tuple[int, int]]) -> None:
    backing = Backing()
    start = next(one for one in PARTS if one.id == part)
    picture(backing, drawn(JOB, (part,)))
    frames = [drawn(with_changed_parts(JOB, (moved(start, dx, dy),)), (part,)) for dx, dy in ways]
    last = [picture(backing, frame) for frame in frames][-1]
    assert largest_difference(last, picture(Backing(), frames[-1])) <= 2


@pytest.mark.parametrize(
    "edit",
    [
        lambda job: raised(job, ("base",), 9),
        lambda job: without_parts(job, ("basin",)),
        lambda job: with_changed_parts(job, (replace(PARTS[5], hides=False),)),
        lambda job: with_changed_parts(job, (replace(PARTS[2], kind=Kind.END_PANEL),)),
        lambda job: with_changed_parts(job, (replace(PARTS[3], name="left door"),)),
        lambda job: with_changed_parts(job, (replace(PARTS[1], tiles=Tiles(150, 75, 3, course_shift=0.5)),)),
    ],
    ids=["raised", "deleted", "no longer hiding", "of another kind", "named", "tiled"],
)
def test_edits_leave_the_picture_that_painting_anew_gives(edit: Callable[[Job], Job]) -> None:
    backing = Backing()
    picture(backing, drawn(JOB))
    after = drawn(edit(JOB))
    assert largest_difference(picture(backing, after), picture(Backing(), after)) <= 2


@pytest.mark.parametrize("tiles", [None, Tiles(150, 150, 3, 40, 20)], ids=["tiles gone", "tiles moved"])
def test_tiles_that_change_leave_the_picture_that_painting_anew_gives(tiles: Tiles | None) -> None:
    backing = Backing()
    picture(backing, drawn(with_changed_parts(JOB, (replace(PARTS[1], tiles=Tiles(150, 150, 3)),))))
    after = drawn(with_changed_parts(JOB, (replace(PARTS[1], tiles=tiles),)))
    assert largest_difference(picture(backing, after), picture(Backing(), after)) <= 2


def test_an_outlet_dragged_over_tiles_leaves_the_picture_that_painting_anew_gives() -> None:
    backing = Backing()
    tiled = with_changed_parts(JOB, (replace(PARTS[1], tiles=Tiles(150, 75, 3, course_shift=0.5)),))
    frames = [drawn(with_changed_parts(tiled, (moved(PARTS[7], 37 * step, 11 * step),))) for step in range(6)]
    last = [picture(backing, frame) for frame in frames][-1]
    assert largest_difference(last, picture(Backing(), frames[-1])) <= 2


def test_with_little_shown_a_drag_leaves_the_picture_that_painting_anew_gives() -> None:
    backing, few = Backing(), sight(PaintOptions(names=False, sizes=False))
    frames = [
        drawn(with_changed_parts(JOB, (moved(PARTS[7], 37 * step, 11 * step),)), ("outlet",)) for step in range(4)
    ]
    last = [backing.picture(frame, few).toImage() for frame in frames][-1]
    assert largest_difference(last, Backing().picture(frames[-1], few).toImage()) <= 2


def test_what_is_not_shown_is_not_painted_again_where_it_changes() -> None:
    picked, others, few = drawn(JOB, ("basin",)), drawn(JOB), sight(PaintOptions(sizes=False))
    assert changed_boxes(others, picked, few.to_device, sight().options.roles)
    assert changed_boxes(others, picked, few.to_device, few.options.roles) == []


def test_the_same_drawing_is_not_painted_again() -> None:
    backing = Backing()
    drawing = drawn(JOB)
    first = backing.picture(drawing, sight()).cacheKey()
    assert backing.picture(drawing, sight()).cacheKey() == first
