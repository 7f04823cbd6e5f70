"""What all gestures are: they take points, typed lines and keys, show what would come of it, and end in one edit."""

from typing import NamedTuple

from desktop.gestures.preview import NOTHING, Point, Preview
from geometry.snapping.snap import Snap, SnapTargets, snap
from shared.drawing import Size
from shared.edits.drawn import find_face
from shared.errors import ReadingError
from shared.job import Face, Job, Unit
from shared.trade.kinds import Kind
from shared.typed.length_words import quoted
from shared.typed.lengths import read_lengths
from shared.written.units import show_length

SIZE_AWAY = 3.0
"""How far a shown size stands away from what it measures, in reaches of the hand."""

REACH_DOTS = 8.0
"""How many dots of a screen the hand's reach is."""

STEPS_MM = {
    Unit.MM: (1.0, 5.0, 10.0, 50.0, 100.0),
    Unit.INCH: (25.4 / 16, 25.4 / 4, 25.4, 6 * 25.4),
}
"""Divisions to which a pointed place goes, the finest first: those of tapes (common practice, no source)."""


class Scene(NamedTuple):
    """What a gesture works on: a face of a job, what of it is picked, and the kind that new parts are.

    `reach_mm` is how near the hand must come to what it means; it depends on how near one looks. `decimal` is the
    decimal sign of what is typed.
    """

    job: Job
    face_id: str
    picked: tuple[str, ...] = ()
    kind: Kind = Kind.CABINET
    reach_mm: float = 10.0
    decimal: str = "."

    @property
    def face(self) -> Face:
        """The face. JobError where the job has none with this id."""
        return find_face(self.job, self.face_id)


class Held(NamedTuple):
    """Keys held: `shift` adds to what is picked, or lets a side run aslant; `free` (Ctrl) holds snapping off."""

    shift: bool = False
    free: bool = False


HELD_NONE = Held()


class Done(NamedTuple):
    """What a gesture came to: one step of the history, and what is picked after it.

    Where only the picking changed, `job` is the very job that the scene had, and `label` is empty. `preview` is what is
    shown of it, over the job itself, while the line that comes to it is being typed.
    """

    label: str
    job: Job
    picked: tuple[str, ...]
    preview: Preview = NOTHING


class WayOut(NamedTuple):
    """A way out of trouble: what it comes to in words, and the line to type for it."""

    words: str
    text: str


class Gesture:
    """One mode of drawing at work on one scene. After an edit, or when the job changes otherwise, make a new one.

    `press`, `release`, `type`, `read` and `enter` give what was done, or None while it goes on. They raise RecoatError
    where that makes no sense. What a gesture holds it replaces and never changes in place, so a copy (`copy.copy`) can
    be tried and dropped: that is how a line is shown while it is typed, and why a line that is refused leaves no trace.
    """

    title = ""
    """What the reading line calls it, where it is no mode of its own."""

    first_step = "point at the face first"
    """What to do where nothing can be typed."""

    def __init__(self, scene: Scene) -> None:
        self.scene = scene

    @property
    def wants(self) -> str:
        """What the reading line asks for; "" where nothing can be typed."""
        return ""

    @property
    def wants_place(self) -> bool:
        """Whether what is asked for is a place or a way, where zero or less is an answer too; else it is a size."""
        return True

    @property
    def example(self) -> str:
        """What could be typed, for a line that is empty; "" where what is wanted says it all."""
        return ""

    @property
    def other_way(self) -> str:
        """What `turned` changes to ("arc"); "" where there is no other way."""
        return ""

    @property
    def is_begun(self) -> bool:
        """Whether there is anything to take back or cancel."""
        return False

    @property
    def is_steady(self) -> bool:
        """Whether the face stays where it is under the hand, however far what is shown reaches beyond."""
        return self.is_begun

    @property
    def preview(self) -> Preview:
        """What is shown of it over the face."""
        return NOTHING

    @property
    def tried(self) -> Job | None:
        """The job as it would be if the hand let go now; None where nothing would change."""
        return None

    def press(self, at: Point, held: Held = HELD_NONE) -> Done | None:
        """The hand goes down."""
        return None

    def point(self, at: Point, held: Held = HELD_NONE) -> None:
        """The hand moves, up or down."""

    def release(self, at: Point, held: Held = HELD_NONE) -> Done | None:
        """The hand goes up."""
        return None

    def says(self, text: str) -> str:
        """What the line that is being typed means, for beside it. RecoatError where it means nothing."""
        self._refuse_unwanted(text)
        unit, decimal = self.scene.job.unit, self.scene.decimal
        words = " · ".join(show_length(length, unit, decimal=decimal) for length in self.lengths(text))
        return f"= {words} mm" if unit is Unit.MM else f"= {words}"

    def so_far(self, text: str) -> str:
        """How much of a line that is being typed can be shown already: all of it, unless its end is only begun."""
        return text

    def offers(self, text: str) -> tuple[WayOut, ...]:
        """Ways out of the trouble with a line that `says` or `type` has refused."""
        return ()

    def type(self, text: str) -> Done | None:
        """A line was typed: one reading, or several parted by commas that answer one after the other."""
        self._refuse_unwanted(text)
        done = None
        for length in self.lengths(text):
            if done is not None:
                raise ReadingError(
                    "there are more readings here than are needed", where=quoted(text), do="leave some out"
                )
            done = self.read(length)
        return done

    def lengths(self, text: str) -> tuple[float, ...]:
        """The readings of a line, in mm. ReadingError where it is no list of lengths."""
        scene, any_sign = self.scene, self.wants_place
        return read_lengths(text, scene.job.unit, decimal=scene.decimal, allow_zero=any_sign, allow_negative=any_sign)

    def _refuse_unwanted(self, text: str) -> None:
        """ReadingError, with what to do first, where nothing can be typed."""
        if not self.wants:
            do = self.example or self.first_step
            raise ReadingError("there is nothing to type here yet", where=quoted(text), do=do)

    def read(self, length_mm: float) -> Done | None:
        """One reading was typed."""
        return None

    def enter(self) -> Done | None:
        """Return, with nothing typed."""
        return None

    def put_in(self) -> Done | None:
        """Insert was pressed."""
        return None

    def take_out(self) -> Done | None:
        """Delete was pressed; None where it has nothing of its own to take out, so that the picked parts are meant."""
        return None

    def turned(self) -> "Gesture":
        """The gesture that goes on in the other way; this one where there is none."""
        return self

    def again(self, scene: Scene) -> "Gesture":
        """The same gesture, to begin with on another scene."""
        return type(self)(scene)

    def back(self) -> None:
        """Take back the last point or reading."""

    def cancel(self) -> None:
        """Start again."""


def stepped(at: Point, scene: Scene) -> Point:
    """The nearest point that a tape's division would give: pointing is no finer than the screen's dots."""
    dot = max(scene.reach_mm / REACH_DOTS, 1.0)
    step = max((step for step in STEPS_MM[scene.job.unit] if step <= dot), default=STEPS_MM[scene.job.unit][0])
    return round(at[0] / step) * step, round(at[1] / step) * step


def snapped(at: Point, targets: SnapTargets, scene: Scene, held: Held) -> Snap:
    """Where a point goes; where snapping is held off, only to the nearest division."""
    place = stepped(at, scene)
    return Snap(*place) if held.free else snap(*place, targets, scene.reach_mm)


def box_sizes(left: float, bottom: float, width: float, height: float, scene: Scene) -> tuple[Size, ...]:
    """The width and height of a box that is being drawn."""
    away = SIZE_AWAY * scene.reach_mm
    right, top = left + width, bottom + height
    return Size((left, bottom), (right, bottom), -away), Size((left, bottom), (left, top), away)
