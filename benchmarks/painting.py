"""A dragged part on a face, from the moved part to the picture at 2x scaling, and to the totals."""

from collections.abc import Iterator
from itertools import cycle
from time import process_time

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QGuiApplication

from benchmarks.kitchens import kitchen_wall
from benchmarks.measuring import Measured, medians
from benchmarks.screen import RATIO, screen
from desktop.canvas.backing import Backing, Sight
from desktop.look.palette import light
from desktop.painting.drawing import PaintOptions
from desktop.painting.viewing import fitted
from geometry.parts.moves import moved
from shared.drawing import Drawing
from shared.edits.drawn import with_changed_parts
from shared.job import Face, Job, Room
from shared.trade.kinds import Kind
from takeoff.drawing.face import draw_face
from takeoff.figures.measured import Takeoff
from takeoff.memory import Memory
from takeoff.take_off import take_off

PARTS = 300
FRAME_MS = 16.0
"""One frame of a usual screen, 60 a second."""

SIZE = QSize(860, 500)
"""The size of the canvas in a window of 1280 x 720."""


def measured() -> Iterator[Measured]:
    """The times of one frame and of its parts. A frame is arranged, drawn and painted; the totals follow it."""
    screen()
    jobs = _dragged_jobs()
    takeoff = take_off(next(jobs), Memory())
    following, counting, backing, painting = Memory(), Memory(), Backing(), Backing()
    drawings = cycle([_drawing(next(jobs), takeoff, following) for _ in range(20)])
    frame, drawn, repainted, anew, counted = medians(
        lambda: _painted(_drawing(next(jobs), takeoff, following), backing),
        lambda: _drawing(next(jobs), takeoff, following),
        lambda: _painted(next(drawings), painting),
        lambda: _painted(next(drawings), Backing()),
        lambda: take_off(next(jobs), counting, sure=False),
        clock=process_time,
    )
    yield Measured(f"{PARTS} parts, one dragged: arranged, drawn, painted", frame, "{:.1f} ms", FRAME_MS)
    yield Measured("of that arranging and drawing", drawn, "{:.1f} ms")
    yield Measured("of that painting what changed", repainted, "{:.1f} ms")
    yield Measured("painting all of it", anew, "{:.1f} ms")
    yield Measured("counting it for the totals", counted, "{:.1f} ms")


def _dragged_jobs() -> Iterator[Job]:
    parts = kitchen_wall(PARTS)
    job = Job("Benchmark", (Room("r", "Kitchen", (Face("f", "A", parts=parts),)),))
    dragged = next(part for part in parts[PARTS // 2 :] if part.kind is Kind.CABINET)
    return cycle([with_changed_parts(job, (moved(dragged, step % 50, step % 37),)) for step in range(1, 100)])


def _drawing(job: Job, takeoff: Takeoff, memory: Memory) -> Drawing:
    return draw_face(job, job.faces[0], takeoff, memory)


def _painted(drawing: Drawing, backing: Backing) -> None:
    backing.picture(drawing, _sight(drawing))


def _sight(drawing: Drawing) -> Sight:
    view = fitted(drawing.box, drawing.view, QRectF(40, 40, SIZE.width() - 80, SIZE.height() - 80))
    options = PaintOptions(joints=True, masking=True)
    return Sight(SIZE, RATIO, view, light(), options, QGuiApplication.font())
