"""A gesture is one mode of drawing: it takes points, typed lines and keys, and ends in one edit.

Until then it shows what would come of them. To see one whole, read `mirror_copy`. Modes that draw a new part build on
`shaping`, modes that change picked parts on `on_parts`.
"""

from typing import NamedTuple

from desktop.gestures.preview import NOTHING, Preview
from geometry.outlines.sides import Point
from geometry.snapping.snap import Snap, SnapTargets, snap
from shared.drawing import Size
from shared.edits.drawn import find_face
from shared.errors import ReadingError
from shared.job import Face, Job, Unit
from shared.trade.kinds import Kind
from shared.typed.length_words import quoted
from shared.typed.lengths import read_lengths
from shared.written.writing import Writing

SIZE_AWAY = 3.0
"""How far a shown size stands away from what it measures, in reaches of the hand."""

REACH_DOTS = 8.0
"""How many dots of a screen the hand's reach is."""

DIVISIONS_MM = {
    Unit.MM: (1.0, 5.0, 10.0, 50.0, 100.0),
    Unit.INCH: (25.4 / 16, 25.4 / 4, 25.4, 6 * 25.4),
}
"""Divisions to which a pointed place goes, the finest first: those of tapes (common practice, no source)."""


class Scene(NamedTuple):
    """What a gesture works on: a face of a job, the parts picked on it, and the kind of new parts.

    `reach_mm` is how near the hand must come to what it means; it depends on the zoom. `decimal` is the decimal sign
    of typed lines.
    """

    job: Job
    face_id: str
    picked: tuple[str, ...] = ()
    kind: Kind = Kind.CABINET
    reach_mm: float = 10.0
    decimal: str = "."

    @property
    def face(self) -> Face:
        """The face. JobError if the job has no face with this id."""
        return find_face(self.job, self.face_id)

    @property
    def writing(self) -> Writing:
        """How lengths are written while one types them: with the sign that they are typed with."""
        return Writing(self.job.unit, self.decimal)


class Held(NamedTuple):
    """The keys held: `shift` adds to the picked parts, or lets a side go aslant; `free` (Ctrl) turns snapping off."""

    shift: bool = False
    free: bool = False


HELD_NONE = Held()


class Done(NamedTuple):
    """What a gesture came to: one edit, which undo takes back, and the parts that are picked after it.

    If only the picking changed, `job` is the very job that the scene had, and `label` is empty. `preview` is shown over
    the job itself while the line that leads to this edit is being typed.
    """

    label: str
    job: Job
    picked: tuple[str, ...]
    preview: Preview = NOTHING


class WayOut(NamedTuple):
    """A way out of trouble: `words` say what it does, `text` is the line to type for it."""

    words: str
    text: str


class Gesture:
    """One mode of drawing at work on one scene. After an edit, or when the job changes otherwise, make a new one.

    `press`, `release`, `type`, `read` and `enter` give what was done, or None while the gesture goes on. They raise
    RecoatError if the point or the text makes no sense.

    A gesture replaces the values that it holds and never changes them in place. So a copy (`copy.copy`) can be tried
    and dropped: that is how a line is shown while it is typed, and why a refused line leaves no trace.
    """

    title = ""
    """The name that the reading line uses for a gesture that is not a mode of its own; "" for a mode."""

    first_advice = "point at the face first"
    """What the person is told to do first while nothing can be typed."""

    def __init__(self, scene: Scene) -> None:
        self.scene = scene

    @property
    def wants(self) -> str:
        """What the reading line asks for; "" while nothing can be typed."""
        return ""

    @property
    def wants_place(self) -> bool:
        """Whether the gesture asks for a place or a distance, which may be zero or negative, and not for a size."""
        return True

    @property
    def example(self) -> str:
        """A hint for an empty line: what could be typed, or what to do; "" if `wants` says enough."""
        return ""

    @property
    def other_way(self) -> str:
        """The name of the variant that `turned` changes to, such as "arc"; "" if the mode has one way only."""
        return ""

    @property
    def is_begun(self) -> bool:
        """Whether there is anything to take back or cancel."""
        return False

    @property
    def is_steady(self) -> bool:
        """Whether the face stays still under the hand, even if the preview reaches beyond what is seen of it."""
        return self.is_begun

    @property
    def preview(self) -> Preview:
        """What is shown over the face while the gesture goes on."""
        return NOTHING

    @property
    def tried(self) -> Job | None:
        """The job as it would be if the hand let go now; None if nothing would change."""
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
        """The meaning of the line that is being typed, to show beside it. RecoatError if the line means nothing."""
        self._refuse_unwanted(text)
        words = " · ".join(map(self.scene.writing.length, self.lengths(text)))
        return f"= {words} mm" if self.scene.job.unit is Unit.MM else f"= {words}"

    def so_far(self, text: str) -> str:
        """How much of a line that is being typed can be shown already: all of it, unless its end is only begun."""
        return text

    def offers(self, text: str) -> tuple[WayOut, ...]:
        """Ways out of the trouble with a line that `says` or `type` has refused."""
        return ()

    def type(self, text: str) -> Done | None:
        """A line was typed: one length, or several with commas between them that answer one after the other.

        RecoatError if it does not answer what is asked for.
        """
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
        """The lengths in a line, in mm. ReadingError if the line is not a list of lengths."""
        scene, any_sign = self.scene, self.wants_place
        return read_lengths(text, scene.job.unit, decimal=scene.decimal, allow_zero=any_sign, allow_negative=any_sign)

    def _refuse_unwanted(self, text: str) -> None:
        """Raise ReadingError, which says what to do first, while nothing can be typed."""
        if not self.wants:
            do = self.example or self.first_advice
            raise ReadingError("there is nothing to type here yet", where=quoted(text), do=do)

    def read(self, length_mm: float) -> Done | None:
        """One length was typed, or the next one of a line."""
        return None

    def enter(self) -> Done | None:
        """Return was pressed with nothing typed."""
        return None

    def put_in(self) -> Done | None:
        """Insert was pressed."""
        return None

    def take_out(self) -> Done | None:
        """Delete was pressed after the gesture had begun. None if it has nothing of its own to take out."""
        return None

    def turned(self) -> "Gesture":
        """The gesture that goes on in the other variant; this one if the mode has one way only."""
        return self

    def again(self, scene: Scene) -> "Gesture":
        """The gesture to begin with on another scene: the same mode, or Pick after one that works once."""
        return type(self)(scene)

    def back(self) -> None:
        """Take back the last point or typed length."""

    def cancel(self) -> None:
        """Start again."""


def on_division(at: Point, scene: Scene) -> Point:
    """The nearest point on a tape's divisions. Zoomed out they are coarser: pointing is no finer than screen dots."""
    dot = max(scene.reach_mm / REACH_DOTS, 1.0)
    divisions = DIVISIONS_MM[scene.job.unit]
    division = max((each for each in divisions if each <= dot), default=divisions[0])
    return round(at[0] / division) * division, round(at[1] / division) * division


def snapped(at: Point, targets: SnapTargets, scene: Scene, held: Held) -> Snap:
    """The place that a pointed place snaps to. While snapping is held off it goes to the nearest division only."""
    place = on_division(at, scene)
    return Snap(*place) if held.free else snap(*place, targets, scene.reach_mm)


def box_sizes(left: float, bottom: float, width: float, height: float, scene: Scene) -> tuple[Size, ...]:
    """The sizes that show the width and height of a box that is being drawn; all lengths are mm."""
    away = SIZE_AWAY * scene.reach_mm
    right, top = left + width, bottom + height
    return Size((left, bottom), (right, bottom), -away), Size((left, bottom), (left, top), away)
