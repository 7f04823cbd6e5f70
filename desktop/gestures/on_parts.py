"""What gestures on picked parts have in common: if no part is picked, a click picks one first."""

from desktop.gestures.gesture import HELD_NONE, Done, Gesture, Held, Scene
from geometry.outlines.sides import Point
from geometry.parts.picking import parts_at
from shared.errors import RecoatError
from shared.job import Job, Part


class OnParts(Gesture):
    """A gesture on the picked parts. A click on another part picks that one instead."""

    first_advice = "click a part first"

    @property
    def parts(self) -> tuple[Part, ...]:
        """The picked parts, in drawing order."""
        return tuple(part for part in self.scene.face.parts if part.id in self.scene.picked)

    @property
    def example(self) -> str:
        return "" if self.parts else self.first_advice

    def press(self, at: Point, held: Held = HELD_NONE) -> Done | None:
        """Pick the part in front, unless a part under the hand is picked already. Shift adds it to the picked ones."""
        under = parts_at(self.scene.face.parts, *at)
        if not under or any(part.id in self.scene.picked for part in under):
            return None
        return Done("", self.scene.job, (*(self.scene.picked if held.shift else ()), under[0].id))

    def words(self, length_mm: float) -> str:
        """A length as it is shown."""
        return self.scene.writing.length(length_mm)


class OnceOnParts(OnParts):
    """A gesture that does something once to the picked parts, where the hand points. Then the hand picks again."""

    @property
    def is_steady(self) -> bool:
        return True

    @property
    def tried(self) -> Job | None:
        done = self.pointed
        return done.job if done else None

    @property
    def pointed(self) -> Done | None:
        """What a click would do now; None if it would do nothing or would be refused."""
        if not self.parts:
            return None
        try:
            return self.act()
        except RecoatError:
            return None

    def press(self, at: Point, held: Held = HELD_NONE) -> Done | None:
        if not self.parts:
            return super().press(at, held)
        self.point(at, held)
        return self.act()

    def act(self) -> Done | None:
        """What is done where the hand points; None if it points at nothing. RecoatError if that cannot be done."""
        raise NotImplementedError

    def is_of(self, scene: Scene) -> bool:
        """Whether a scene shows the job and the face that this gesture works on. Only then the gesture goes on."""
        return scene.job is self.scene.job and scene.face_id == self.scene.face_id
