"""What the hand does in Measure on a face of 300 parts: from the event to the picture of the window at 2x scaling.

Each figure is the processor time of one event (a move of the mouse, a key) with all that follows from it at once: the
gesture, the face, the strip, the details, the line, painted. The figures at the bottom follow within 40 ms; they are
timed by themselves, as they come between two events.
"""

from collections.abc import Callable, Iterable, Iterator
from functools import partial
from itertools import cycle, islice
from pathlib import Path
from statistics import median, quantiles
from tempfile import TemporaryDirectory
from time import process_time
from typing import NamedTuple

from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from benchmarks.kitchens import kitchen_wall
from benchmarks.measuring import Measured
from benchmarks.screen import screen
from desktop.app import App
from desktop.look.palette import light
from desktop.measure.modes import Mode
from desktop.start import settle_down
from geometry.edits.setting_out import with_running
from geometry.outlines.measured import outline_box
from geometry.outlines.shapes import box
from shared.files.job import JobFile
from shared.job import Face, Job, Part, Room, Tiles, Way
from shared.trade.kinds import Kind

PARTS = 300
FRAME_MS = 16.0
"""One frame of a usual screen, 60 a second."""

EVENTS = 80
FACE = "f"
TILED_MM = 3600.0

Act = Callable[[], object]


class Seat(NamedTuple):
    """The window, and the acts of the person before it."""

    app: App

    def open(self, job: Job, mode: Mode, picked: tuple[str, ...] = ()) -> None:
        """Show a job in a drawing mode, with these parts picked."""
        self.app.measure.line.clear()
        self.app.files.show_new(JobFile(job))
        self.app.hand.choose_mode(mode)
        self.app.store.pick(picked)
        settle()

    def move(self, x: float, y: float) -> None:
        """Move the hand to a point of the face."""
        self._point(QEvent.Type.MouseMove, x, y)

    def press(self, x: float, y: float) -> None:
        """Press at a point of the face."""
        self._point(QEvent.Type.MouseButtonPress, x, y)

    def click(self, x: float, y: float) -> None:
        """Click a point of the face."""
        self.press(x, y)
        self._point(QEvent.Type.MouseButtonRelease, x, y)

    def moves(self, *ways: tuple[float, float]) -> Iterator[Act]:
        """Move the hand to these points in turn, without end."""
        for way in cycle(ways):
            yield partial(self.move, *way)

    def typing(self, line: str) -> Iterator[Act]:
        """Type a line again and again. The keys after a bar (|) are acts: only a line that makes sense is tried out."""
        begin, _, rest = line.rpartition("|")
        while True:
            for letter in begin:
                self._key(letter)
            settle()
            for letter in rest:
                yield partial(self._key, letter)
            self.app.measure.line.clear()
            settle()

    def _key(self, letter: str) -> None:
        QTest.keyClicks(QApplication.focusWidget() or self.app.measure.canvas, letter)

    def _point(self, kind: QEvent.Type, x: float, y: float) -> None:
        canvas, button = self.app.measure.canvas, Qt.MouseButton.LeftButton
        at = canvas.glass.to_device.map(QPointF(x, y))
        keys = Qt.KeyboardModifier.NoModifier
        event = QMouseEvent(kind, at, QPointF(canvas.mapToGlobal(at)), button, button, keys)
        QApplication.sendEvent(canvas, event)


def measured() -> Iterator[Measured]:
    """The median and the 95th percentile of the events of each act, in milliseconds."""
    screen()
    with TemporaryDirectory() as folder:
        yield from _measured_in(Path(folder))


def _measured_in(copies: Path) -> Iterator[Measured]:
    """The same, with a folder for the copies of unsaved work."""
    seat = Seat(App(light(), copies_in=copies))
    seat.app.window.resize(1280, 720)
    seat.app.window.show()
    seat.app.window.activateWindow()
    while not seat.app.window.isActiveWindow():
        settle()
    settle_down()
    for what, begin in WORKS.items():
        times = _times(begin(seat))
        yield Measured(what, median(times), "{:.1f} ms", FRAME_MS)
        yield Measured(f"{what}, 95 of 100", quantiles(times, n=20)[-1], "{:.1f} ms")
    seat.app.window.close_now()


def settle() -> None:
    """Let everything happen that waits, until the window is painted."""
    QApplication.processEvents()


def _times(acts: Iterable[Act]) -> list[float]:
    """The processor time of each event and of all that follows from it, in milliseconds."""
    return [_time(act) for act in islice(acts, EVENTS)]


def _time(act: Act) -> float:
    begun = process_time()
    act()
    QApplication.sendPostedEvents()
    taken = process_time() - begun
    settle()
    return 1000 * taken


def job_of(*parts: Part) -> Job:
    """A job of one wall with these parts."""
    return Job("Benchmark", (Room("r", "Kitchen", (Face(FACE, "A", parts=parts),)),))


def wall() -> Job:
    """The kitchen wall."""
    return job_of(*kitchen_wall(PARTS))


def longer_wall() -> Job:
    """The kitchen wall with 12 m of bare wall after it."""
    first, *others = kitchen_wall(PARTS)
    right = outline_box(first.outline)[2]
    return job_of(Part(first.id, first.kind, box(0, 0, right + 12_000, 2400)), *others)


def set_out_wall(count: int) -> Job:
    """The kitchen wall with so many running readings."""
    return with_running(wall(), FACE, Way.ACROSS, [350.0 * (number + 1) for number in range(count)])


def middle(kind: Kind) -> Part:
    """A part of this kind in the middle of the kitchen wall."""
    return next(part for part in kitchen_wall(PARTS)[PARTS // 2 :] if part.kind is kind)


def tiled_wall(tiles: Tiles) -> Job:
    """The kitchen wall with one splashback of 3.6 x 0.6 m in place of its first six, tiled so."""
    first, *others = kitchen_wall(PARTS)
    tiled = Part("tiled", Kind.SPLASHBACK, box(0, 908, TILED_MM, 600), tiles=tiles)
    rest = (part for part in others if part.kind is not Kind.SPLASHBACK or part.outline[0].x >= TILED_MM)
    return job_of(first, tiled, *rest)


def ragged_wall() -> Job:
    """The kitchen wall with two shelves above it that miss each other by 3 mm."""
    shelves = (Part(f"shelf {at:g}", Kind.SHELF, box(at, 2250, 600, 18)) for at in (6000.0, 6603.0))
    return job_of(*kitchen_wall(PARTS), *shelves)


def _drawing_a_box(seat: Seat) -> Iterator[Act]:
    seat.open(set_out_wall(20), Mode.BOX)
    seat.click(5050, 2250)
    return seat.moves(*((5100 + 37 * step, 2180 - 29 * step) for step in range(40)))


def _drag(seat: Seat, job: Job, part: Part, by: tuple[float, float] = (0.0, 0.0)) -> Iterator[Act]:
    """Press in the middle of a part (or beside it) and drag it away, and back."""
    seat.open(job, Mode.PICK, (part.id,))
    left, bottom, right, top = outline_box(part.outline)
    x, y = (left + right) / 2 + by[0], (bottom + top) / 2 + by[1]
    seat.press(x, y)
    return seat.moves(*((x + 45 * step, y + 13 * step) for step in range(1, 40)))


def _drag_an_outlet(seat: Seat, job: Job) -> Iterator[Act]:
    return _drag(seat, job, next(part for part in job.faces[0].parts if part.kind is Kind.OUTLET))


def _drag_a_corner(seat: Seat) -> Iterator[Act]:
    part = middle(Kind.DOOR)
    seat.open(wall(), Mode.CORNERS, (part.id,))
    x, y = part.outline[2].x, part.outline[2].y
    seat.press(x, y)
    return seat.moves(*((x + 23 * step, y + 17 * step) for step in range(1, 40)))


def _type(seat: Seat, job: Job, mode: Mode, line: str, picked: Kind | None = None) -> Iterator[Act]:
    seat.open(job, mode, (middle(picked).id,) if picked else ())
    return seat.typing(line)


def _click_through(seat: Seat) -> Iterator[Act]:
    seat.open(wall(), Mode.PICK)
    at = outline_box(middle(Kind.OUTLET).outline)
    return cycle([partial(seat.click, at[0] + 40, at[1] + 40)])


def _try_a_mend(seat: Seat) -> Iterator[Act]:
    """Go to the button that mends, and away from it."""
    seat.open(ragged_wall(), Mode.PICK)
    view = seat.app.frame.findings
    seat.app.frame.open_findings()
    settle()
    return cycle([partial(view.mend.setFocus), partial(seat.app.measure.canvas.setFocus)])


RUN = ", ".join(("450 door", "600 drawers 3", "900 pair", "600 oven", "50 filler") * 4)
READINGS = ", ".join(f"{600 + 850 * number}" for number in range(20))

WORKS: dict[str, Callable[[Seat], Iterator[Act]]] = {
    "a box drawn, 20 set-out lines": _drawing_a_box,
    "an outlet dragged": lambda seat: _drag_an_outlet(seat, wall()),
    "an outlet dragged, 50 readings": lambda seat: _drag_an_outlet(seat, set_out_wall(50)),
    "an outlet dragged over tiles of 150": lambda seat: _drag_an_outlet(seat, tiled_wall(Tiles(150, 150, 2))),
    "an outlet dragged over tiles of 20": lambda seat: _drag_an_outlet(seat, tiled_wall(Tiles(20, 20, 2))),
    "a door dragged": lambda seat: _drag(seat, wall(), middle(Kind.DOOR)),
    "a corner dragged": _drag_a_corner,
    "a box typed, a key": lambda seat: _type(seat, wall(), Mode.BOX, "shelf 5050, 2200, 900, |18"),
    "20 cabinets typed, a key": lambda seat: _type(seat, longer_wall(), Mode.RUN, RUN),
    "20 readings typed onto 50, a key": lambda seat: _type(seat, set_out_wall(50), Mode.SET_OUT, READINGS),
    "a size shifted, a key": lambda seat: _type(seat, wall(), Mode.SHIFT, "65|0", Kind.CABINET),
    "a part split, a key": lambda seat: _type(seat, wall(), Mode.SPLIT, "|3", Kind.CABINET),
    "a part copied along, a key": lambda seat: _type(seat, wall(), Mode.COPY_ALONG, "9 at |600", Kind.CABINET),
    "a click through the stack": _click_through,
    "a mend seen, and put away": _try_a_mend,
}
"""What is measured, by name. Each function sets up the window and gives the acts to time."""
