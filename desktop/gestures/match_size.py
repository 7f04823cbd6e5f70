"""Match size: the picked parts take the size of the part that is clicked next."""

from desktop.gestures.gesture import HELD_NONE, Done, Gesture, Held, Scene
from desktop.gestures.on_parts import OnceOnParts
from desktop.gestures.pick import Pick, named
from desktop.gestures.preview import NOTHING, Preview
from geometry.edits.lining_up import matched_size
from geometry.outlines.sides import Point
from geometry.parts.picking import parts_at
from shared.edits.drawn import find_part
from shared.errors import ReadingError
from shared.job import Part
from shared.typed.length_words import quoted

SIZES = {"width": (True, False), "height": (False, True), "both": (True, True)}


class MatchSize(OnceOnParts):
    """Gives the picked parts the size of another part; the lower left corner of each stays.

    If `width` or `height` is typed, they take only that.
    """

    title = "Match size"
    first_advice = "click the part to change"

    def __init__(self, scene: Scene, size: str = "both") -> None:
        super().__init__(scene)
        self._size = size
        self._like: Part | None = None
        self._at: Point = (0.0, 0.0)

    @property
    def wants(self) -> str:
        if not self.parts:
            return ""
        taken = "size" if self._size == "both" else self._size
        return f"click the part whose {taken} {named(self.parts)} takes"

    @property
    def example(self) -> str:
        return "or type width or height to take only that one" if self.parts else super().example

    @property
    def preview(self) -> Preview:
        like, done = self._like, self.pointed
        if like is None:
            return NOTHING
        return done.preview if done else Preview((like.outline,), spot=self._at, words="the part cannot take this size")

    def point(self, at: Point, held: Held = HELD_NONE) -> None:
        under = parts_at(self.scene.face.parts, *at)
        self._at, self._like = at, under[0] if under else None

    def says(self, text: str) -> str:
        self._refuse_unwanted(text)
        return f"takes {'width and height' if self._read(text) == 'both' else f'the {self._read(text)} only'}"

    def type(self, text: str) -> Done | None:
        if not self.parts:
            return super().type(text)
        self._size = self._read(text)
        return None

    def cancel(self) -> None:
        self._like = None

    def again(self, scene: Scene) -> Gesture:
        return type(self)(scene, self._size) if self.is_of(scene) else Pick(scene)

    def act(self) -> Done | None:
        like = self._like
        if like is None:
            return None
        width, height = SIZES[self._size]
        job = matched_size(self.scene.job, self.scene.picked, like.id, width=width, height=height)
        outlines = tuple(find_part(job, part_id)[1].outline for part_id in self.scene.picked)
        return Done(f"Match the size of {named(self.parts)}", job, self.scene.picked, Preview(outlines))

    def _read(self, text: str) -> str:
        word = text.strip().lower()
        found = [size for size in SIZES if word and size.startswith(word)]
        if len(found) != 1:
            raise ReadingError(
                "this does not say which size to take", where=quoted(text), do="type width, height or both"
            )
        return found[0]
