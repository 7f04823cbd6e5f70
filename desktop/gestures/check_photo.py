"""Check a length on the squared photo: the person shows its two ends, then types what the tape says.

The reading line says by how much the two differ.
"""

import math

from msgspec.structs import replace

from desktop.gestures.gesture import HELD_NONE, Done, Gesture, Held, Scene
from desktop.gestures.pick import Pick
from desktop.gestures.preview import Preview
from desktop.gestures.shaping import positive
from geometry.outlines.sides import Point
from geometry.photos.squaring import LengthCheck, homography
from shared.drawing import Size
from shared.edits.drawn import with_changed_face
from shared.errors import JobError, ReadingError
from shared.job import PhotoLength, PhotoPlace, Vertex
from shared.written.writing import Writing

WANTED = ("one end of a length that you have measured", "its other end")


class CheckPhoto(Gesture):
    """Compares a length on the photo with what the tape says.

    The ends are pointed at without snapping, or each is typed as two lengths: from the left end and from the floor.
    """

    title = "Check the photo"

    def __init__(self, scene: Scene) -> None:
        super().__init__(scene)
        self._ends: tuple[Point, ...] = ()
        self._left: float | None = None
        self._here: Point | None = None

    @property
    def wants(self) -> str:
        return WANTED[len(self._ends)] if len(self._ends) < len(WANTED) else "its length by the tape"

    @property
    def is_begun(self) -> bool:
        return bool(self._ends) or self._left is not None

    @property
    def preview(self) -> Preview:
        ends = self._ends if len(self._ends) == len(WANTED) or self._here is None else (*self._ends, self._here)
        path = tuple(Vertex(*end) for end in ends)
        sizes = (Size(ends[0], ends[1], 0.0),) if len(ends) == len(WANTED) and ends[0] != ends[1] else ()
        return Preview(path=path, sizes=sizes, marks=ends)

    def point(self, at: Point, held: Held = HELD_NONE) -> None:
        self._here = at

    def press(self, at: Point, held: Held = HELD_NONE) -> Done | None:
        self._here, self._left = at, None
        if len(self._ends) < len(WANTED):
            self._ends = (*self._ends, at)
        return None

    def says(self, text: str) -> str:
        words = super().says(text)
        lengths = self.lengths(text)
        if len(self._ends) < len(WANTED) or len(lengths) > 1:
            return words
        return f"{words} · {off_words(LengthCheck(lengths[0], self._read_mm), self.scene.writing)}"

    def read(self, length_mm: float) -> Done | None:
        if len(self._ends) == len(WANTED):
            return self._checked(positive(length_mm, "length"))
        if self._left is None:
            self._left = length_mm
        else:
            self._ends, self._left = (*self._ends, (self._left, length_mm)), None
        return None

    def again(self, scene: Scene) -> Gesture:
        """Pick: the length is checked, or another face is shown."""
        return Pick(scene)

    def back(self) -> None:
        if self._left is None:
            self._ends = self._ends[:-1]
        self._left = None

    def cancel(self) -> None:
        self._ends, self._left = (), None

    @property
    def _place(self) -> PhotoPlace:
        place = self.scene.face.photo_place
        if place is None:
            raise JobError("the photo is not straightened yet", do="straighten it first")
        return place

    @property
    def _read_mm(self) -> float:
        return math.dist(*self._ends)

    def _checked(self, length_mm: float) -> Done:
        place, squared = self._place, homography(self._place.marks)
        if not self._read_mm:
            raise ReadingError("both ends are at the same point", do="point at the other end again")
        (u0, v0), (u1, v1) = (squared.to_photo(*end) for end in self._ends)
        known = PhotoLength(u0, v0, u1, v1, length_mm)
        face = replace(self.scene.face, photo_place=replace(place, lengths=(*place.lengths, known)))
        return Done(self.title, with_changed_face(self.scene.job, face), (), self.preview)


def off_words(check: LengthCheck, writing: Writing) -> str:
    """What the photo says of a length, beside the tape: "the photo says 1196, 4 less"."""
    read = writing.length(check.read_mm)
    off = writing.length(abs(check.off_mm))
    if off == writing.length(0.0):
        return f"the photo says {read}, the same"
    return f"the photo says {read}, {off} {'more' if check.off_mm > 0 else 'less'}"
