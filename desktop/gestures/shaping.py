"""What modes that draw a new part have in common: a point to start from, snapping, a trial, and adding the part.

`box`, `round` and `trace` are the shapes.
"""

import re

from desktop.gestures.aiming import aimed
from desktop.gestures.gesture import HELD_NONE, Done, Gesture, Held, Scene, snapped
from desktop.gestures.preview import Preview
from geometry.outlines.measured import check_outline, joined, outline_box
from geometry.outlines.sides import Point
from geometry.snapping.snap import Snap
from shared.drawing import Size
from shared.edits.drawn import fresh_id, with_parts
from shared.errors import ReadingError, RecoatError
from shared.job import Job, Outline, Part, View
from shared.typed.kinds import Named, read_kind
from shared.typed.length_words import quoted
from shared.typed.lengths import parted

_AT = re.compile(r"\bat\b", re.IGNORECASE)
_BY = re.compile(r"\bby\b", re.IGNORECASE)
_TIMES = re.compile(r"[x*\u00d7]", re.IGNORECASE)
_CENTRED = re.compile(r"\bcent(?:red|ered)\b", re.IGNORECASE)

PLACE_READINGS = 2
"""A place is typed as two lengths: from the left end, and from the floor or the wall."""


class Shaping(Gesture):
    """A gesture that draws a new part. It starts from a point, which is pointed at or typed as two lengths.

    A line may begin with what the part is. It may say the sizes before the place, as people do:
    `sink 900 by 440 at 860, 80`, or `900 x 440`, is `sink 860, 80, 900, 440`. `cut-out 500 by 400 centred` goes in the
    middle of the picked parts.
    """

    has_width_and_height = False
    """Whether the shape has a width and a height to type, and not one size alone."""

    start_words = "a corner, or its distance from the left end"
    """What the reading line asks for first."""

    def __init__(self, scene: Scene) -> None:
        super().__init__(scene)
        self._targets = aimed(scene)
        self._here: Snap | None = None
        self._left: float | None = None
        self._start: Point | None = None
        self._name = ""

    @property
    def outline(self) -> Outline:
        """The new part as it would be now; empty while there is none."""
        return ()

    @property
    def sizes(self) -> tuple[Size, ...]:
        """The sizes that are shown while the part is drawn."""
        return ()

    @property
    def wants(self) -> str:
        if self._left is None:
            return self.start_words
        return "height above the floor" if self.scene.face.view is View.ELEVATION else "distance from the wall"

    @property
    def wants_place(self) -> bool:
        return self._start is None

    @property
    def is_begun(self) -> bool:
        return self._start is not None or self._left is not None

    @property
    def tried(self) -> Job | None:
        return self._added(self.outline).job if self._is_sound(self.outline) else None

    @property
    def preview(self) -> Preview:
        here = self._here
        shown = Preview(outlines=(self.outline,) if self.outline else (), sizes=self.sizes)
        if here is None:
            return shown
        spot = (here.x, here.y) if here.words else None
        return shown._replace(guides=here.guides, spot=spot, words=here.words)

    def says(self, text: str) -> str:
        named = read_kind(text)
        if named is None:
            return super().says(text)
        what = named.called
        return f"{what} {super().says(named.rest)}" if named.rest.strip() else what

    def type(self, text: str) -> Done | None:
        named = read_kind(text)
        if named is None:
            return super().type(text)
        self._take_kind(named)
        return super().type(named.rest) if named.rest.strip() else None

    def lengths(self, text: str) -> tuple[float, ...]:
        rest = _CENTRED.sub(" ", text)
        sizes = super().lengths(self.in_order(rest, has_place=rest != text))
        return sizes if rest == text else (*self._centred(sizes, text), *sizes)

    def from_middle(self, sizes: tuple[float, ...]) -> Point | None:
        """How far left of its middle, and below it, a part of these sizes begins, mm; None if the sizes do not say."""
        return None

    def in_order(self, text: str, *, has_place: bool = False) -> str:
        """The lengths of a line in the order in which they are asked for: the place, then the sizes.

        Before a place, or if the place is known (`has_place`), `900 x 440` is a width and a height, not a multiple.
        ReadingError if only half a place follows `at`: a size must not be taken for the other half.
        """
        size, *place = _AT.split(_BY.sub(",", text), maxsplit=1)
        if (place or has_place) and self.has_width_and_height and len(parted(size, self.scene.decimal)) == 1:
            size = _TIMES.sub(";", size)
        if not place:
            return size
        if len(super().lengths(place[0])) != PLACE_READINGS:
            raise ReadingError("a place needs two readings", where=quoted(text), do="type them last, as in at 860, 80")
        return f"{place[0]}, {size}"

    def point(self, at: Point, held: Held = HELD_NONE) -> None:
        self._here = snapped(at, self._targets, self.scene, held)

    def back(self) -> None:
        """Take back the start. A typed start is typed again as a whole."""
        self._start = self._left = None

    def cancel(self) -> None:
        self._start = self._left = None

    @property
    def _pointed(self) -> Point | None:
        """Where the hand points, after snapping; None before it has pointed."""
        return (self._here.x, self._here.y) if self._here else None

    def _centred(self, sizes: tuple[float, ...], text: str) -> Point:
        """Where a part of these sizes begins if it stands in the middle of the picked parts.

        ReadingError if no part is picked or the line says more than sizes.
        """
        boxes = [outline_box(part.outline) for part in self.scene.face.parts if part.id in self.scene.picked]
        away = None if self.is_begun else self.from_middle(sizes)
        if not boxes:
            raise ReadingError("no part is picked to centre it on", where=quoted(text), do="pick a part first")
        if away is None:
            do = "type only its sizes, as in 500 by 400 centred"
            raise ReadingError("this line cannot be centred", where=quoted(text), do=do)
        left, bottom, right, top = joined(boxes)
        return (left + right) / 2 - away[0], (bottom + top) / 2 - away[1]

    def _take_kind(self, named: Named) -> None:
        """Take over what a line says at its head: the kind and the name of the new part."""
        self.scene = self.scene._replace(kind=named.kind)
        self._name = named.name

    def _read_start(self, length_mm: float) -> None:
        """Take a typed length: the first is the distance from the left end, the second the height."""
        if self._left is None:
            self._left = length_mm
        else:
            self._start = (self._left, length_mm)

    def _is_sound(self, outline: Outline) -> bool:
        try:
            check_outline(outline, "")
        except RecoatError:
            return False
        return True

    def _added(self, outline: Outline) -> Done:
        scene = self.scene
        part = Part(fresh_id(scene.job, "p"), scene.kind, outline, self._name)
        what = self._name or scene.kind.value
        return Done(f"Draw {what}", with_parts(scene.job, scene.face_id, (part,)), (part.id,))

    def _finished(self, outline: Outline) -> Done:
        """The edit that adds the new part. OutlineError if the part cannot be measured."""
        check_outline(outline, f"new {self.scene.kind.value}")
        return self._added(outline)


def positive(length_mm: float, what: str) -> float:
    """The same length. ReadingError if it is zero or negative."""
    if length_mm <= 0:
        raise ReadingError(f"the {what} must be above 0", do="type it again")
    return length_mm


def way(start: float, pointed: float | None) -> float:
    """The side of `start` on which the hand is: -1 to the left or below; otherwise, or before it has pointed, 1."""
    return -1.0 if pointed is not None and pointed < start else 1.0
