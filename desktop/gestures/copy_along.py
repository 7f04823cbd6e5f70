"""Copy along: several copies of the picked parts at one pitch, which is typed or shown by dragging the first copy."""

import math

from desktop.gestures.aiming import aimed
from desktop.gestures.gesture import HELD_NONE, SIZE_AWAY, Done, Gesture, Held, Scene, on_division
from desktop.gestures.on_parts import OnParts
from desktop.gestures.pick import named
from desktop.gestures.preview import NOTHING, Preview
from geometry.edits.copying import copied_along
from geometry.outlines.measured import joined, outline_box
from geometry.outlines.sides import Point
from geometry.snapping.snap import Snap, SnapTargets, snapped_move
from shared.drawing import Size
from shared.edits.drawn import find_part
from shared.errors import JobError
from shared.job import Job, Unit, Way
from shared.typed.counts import read_copies
from shared.typed.ways import WAYS

EXAMPLES = {Unit.MM: "as in 4, 4 at 450, or 4 at 450 left", Unit.INCH: "as in 4, 4 at 18, or 4 at 18 left"}
RIGHT, UP = WAYS["right"], WAYS["up"]


class CopyAlong(OnParts):
    """Copies the picked parts to the right or upwards, unless the typed line or a drag says otherwise.

    The pitch is measured from an edge to the same edge of the next copy. If it is not said, the copies stand side by
    side without a gap. A drag from a picked part shows the pitch with a first copy; then Return makes that one copy,
    and a typed number makes so many.
    """

    first_advice = "click the part to copy"

    def __init__(self, scene: Scene, *, up: bool = False) -> None:
        super().__init__(scene)
        self._up = up
        self._down: Point | None = None
        self._pitch: float | None = None
        self._snap = Snap(0.0, 0.0)
        self._at: Point = (0.0, 0.0)
        self._targets: SnapTargets | None = None

    @property
    def wants(self) -> str:
        if not self.parts:
            return ""
        if self._pitch is not None:
            return f"how many more, {self.words(self._pitch)} from edge to edge"
        return f"how many more {'upwards' if self._up else 'to the right'}"

    @property
    def example(self) -> str:
        return EXAMPLES[self.scene.job.unit] if self.parts else super().example

    @property
    def other_way(self) -> str:
        return "to the right" if self._up else "upwards"

    @property
    def is_begun(self) -> bool:
        return self._pitch is not None

    @property
    def tried(self) -> Job | None:
        done = self._first()
        return done.job if done else None

    @property
    def preview(self) -> Preview:
        done = self._first()
        if done is None:
            return NOTHING
        spot = self._at if self._snap.words else None
        return done.preview._replace(guides=self._snap.guides, spot=spot, words=self._snap.words)

    def press(self, at: Point, held: Held = HELD_NONE) -> Done | None:
        done = super().press(at, held)
        self.cancel()
        self._down = at if done is None and self.parts else None
        return done

    def point(self, at: Point, held: Held = HELD_NONE) -> None:
        """While the button is down, the first copy goes with the hand, across or up."""
        if self._down is None or math.dist(self._down, at) <= self.scene.reach_mm:
            return
        self._at = at
        across, high = on_division((at[0] - self._down[0], at[1] - self._down[1]), self.scene)
        self._up = abs(high) > abs(across)
        pitch = high if self._up else across
        self._snap = Snap(0.0, 0.0) if held.free else self._aligned(pitch)
        self._pitch = (pitch + (self._snap.y if self._up else self._snap.x)) or None

    def release(self, at: Point, held: Held = HELD_NONE) -> Done | None:
        self.point(at, held)
        self._down = None
        return None

    def enter(self) -> Done | None:
        return self._first()

    def says(self, text: str) -> str:
        self._refuse_unwanted(text)
        many, pitch, _ = self._read(text)
        return f"{many} more, {self.words(abs(pitch))} from edge to edge"

    def type(self, text: str) -> Done | None:
        if not self.parts:
            return super().type(text)
        return self._done(*self._read(text))

    def turned(self) -> Gesture:
        return type(self)(self.scene, up=not self._up)

    def again(self, scene: Scene) -> Gesture:
        return type(self)(scene, up=self._up)

    def back(self) -> None:
        self.cancel()

    def cancel(self) -> None:
        self._down = self._pitch = None
        self._snap = Snap(0.0, 0.0)

    def _read(self, text: str) -> tuple[int, float, Way]:
        """How many copies, their pitch in mm (left and down are negative), and which way."""
        many, pitch, way = read_copies(text, self.scene.job.unit, decimal=self.scene.decimal)
        along = way or (UP if self._up else RIGHT)
        up = bool(along[1])
        if pitch is None:
            pitch = self._pitch if self._pitch is not None and way is None else self._own(up)
        return many, pitch * (along[0] + along[1]), Way.UP if up else Way.ACROSS

    def _own(self, up: bool) -> float:
        """How wide all picked parts are together, or how high if `up`, mm."""
        box = joined([outline_box(part.outline) for part in self.parts])
        return box[2 + up] - box[up]

    def _aligned(self, pitch: float) -> Snap:
        """How much farther the copy goes to be in line with something; nothing if it had to go aside for that."""
        across, high = (0.0, pitch) if self._up else (pitch, 0.0)
        corners = [(vertex.x + across, vertex.y + high) for part in self.parts for vertex in part.outline]
        self._targets = self._targets or aimed(self.scene)
        snap = snapped_move(corners, self._targets, self.scene.reach_mm)
        return snap if not (snap.x if self._up else snap.y) else Snap(0.0, 0.0)

    def _first(self) -> Done | None:
        """One copy, where the hand has shown it; None if the hand has shown none, or there is no room for it."""
        if self._pitch is None:
            return None
        try:
            return self._done(1, self._pitch, Way.UP if self._up else Way.ACROSS)
        except JobError:
            return None

    def _done(self, many: int, pitch: float, way: Way) -> Done:
        job, ids = copied_along(self.scene.job, self.scene.picked, many, pitch, way)
        made = tuple(find_part(job, part_id)[1] for part_id in ids)
        left, bottom, _, _ = joined([outline_box(part.outline) for part in self.parts])
        near, far = min(pitch, 0.0), max(pitch, 0.0)
        away = SIZE_AWAY * self.scene.reach_mm
        if way is Way.UP:
            size = Size((left, bottom + near), (left, bottom + far), away)
        else:
            size = Size((left + near, bottom), (left + far, bottom), -away)
        preview = Preview(tuple(part.outline for part in made), sizes=(size,))
        return Done(f"Copy {named(self.parts)} along", job, (*self.scene.picked, *ids), preview)
