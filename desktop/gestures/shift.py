"""Shift what follows: a shown size becomes what the tape says, and all that lies beyond moves along.

Readings that say otherwise are told. They stay as they were read, unless the person takes them again by this one.
"""

import math
from collections.abc import Sequence

from desktop.gestures.gesture import HELD_NONE, Done, Gesture, Held, Scene
from desktop.gestures.preview import Preview
from geometry.edits.following import Shifted, corrected_to, resized_to
from geometry.outlines.sides import Point
from geometry.parts.extent import extent
from shared.drawing import Size
from shared.edits.drawn import find_part
from shared.errors import ReadingError
from shared.job import Way
from shared.typed.length_words import quoted
from shared.typed.lengths import read_length
from takeoff.drawing.sizes import face_sizes, part_sizes, step_mm
from takeoff.findings.readings import reading_words

NEAR = 2.0
"""How near the hand must come to the line of a size, in reaches of the hand: its number is written beside the line."""

MOST_NAMED = 3
"""More readings than this are counted, not named, beside the line."""


class Shift(Gesture):
    """Gives one size of the face the length that the tape says.

    The size is clicked, or it is the width of the one part that is picked, or its height. Where the face has readings,
    the other variant takes those that say otherwise again by it.
    """

    first_advice = "click a size of the face first"

    def __init__(self, scene: Scene, *, upright: bool = False, chosen: Size | None = None, again: bool = False) -> None:
        super().__init__(scene)
        self._upright = upright
        self._offered = (*face_sizes(scene.face), *self._sizes_of_picked())
        self._chosen = chosen or self._size_of_picked()
        self._pointed: Size | None = None
        self._again = again

    @property
    def wants(self) -> str:
        if self._chosen is None:
            return ""
        return f"what the tape says, now {self._words(self._chosen.length_mm)}"

    @property
    def wants_place(self) -> bool:
        return False

    @property
    def example(self) -> str:
        return "" if self._chosen else "click a size"

    @property
    def other_way(self) -> str:
        if self._may_take_again:
            return "take readings again"
        if len(self.scene.picked) == 1:
            return "its width" if self._upright else "its height"
        return "keep readings" if self._again else ""

    @property
    def is_begun(self) -> bool:
        return self._chosen is not None

    @property
    def preview(self) -> Preview:
        shown = self._chosen or self._pointed
        words = "" if self._chosen or self._pointed is None else "click if the tape says another size"
        spot = _middle(self._pointed) if words and self._pointed else None
        return Preview(sizes=(shown,) if shown else (), spot=spot, words=words)

    def point(self, at: Point, held: Held = HELD_NONE) -> None:
        self._pointed = self._size_at(at)

    def press(self, at: Point, held: Held = HELD_NONE) -> Done | None:
        self._pointed = self._size_at(at)
        self._chosen = self._pointed or self._chosen
        return None

    def says(self, text: str) -> str:
        """How much more or less it is, and what moves along."""
        found = self._shifted(text)
        new = self._length(text)
        by = new - (self._chosen.length_mm if self._chosen else 0.0)
        counted = (
            (len(found.moved), "moves", "move"),
            (len(found.stretched), "stretches", "stretch"),
        )
        said = [f"{self._words(abs(by))} {'more' if by > 0 else 'less'}"]
        said += [f"{many} {one if many == 1 else more}" for many, one, more in counted if many]
        if found.faces:
            said.append(f"{len(found.faces)} plan{'s follow' if len(found.faces) > 1 else ' follows'}")
        if found.stayed:
            said.append(f"locked, so not moved: {', '.join(map(self._called, found.stayed))}")
        if found.readings:
            said.append(self._of_readings(found.readings))
        return f"= {self.scene.writing.length_with_unit(new)}: {' · '.join(said)}"

    def type(self, text: str) -> Done | None:
        found = self._shifted(text)
        return Done(f"Shift what follows in {self.scene.face.name}", found.job, self.scene.picked)

    def turned(self) -> Gesture:
        if not self._may_take_again and len(self.scene.picked) == 1:
            return Shift(self.scene, upright=not self._upright)
        return Shift(self.scene, upright=self._upright, chosen=self._chosen, again=self._may_take_again)

    def back(self) -> None:
        self._chosen = None

    def cancel(self) -> None:
        self._chosen = None

    def _length(self, text: str) -> float:
        return read_length(text, self.scene.job.unit, decimal=self.scene.decimal)

    def _shifted(self, text: str) -> Shifted:
        scene, size = self.scene, self._chosen
        if size is None:
            raise ReadingError("no size is chosen yet", where=quoted(text), do=self.first_advice)
        new, way, span = self._length(text), *_span(size)
        if size.part:
            return resized_to(scene.job, scene.face_id, (size.part,), way, new, again=self._again)
        return corrected_to(scene.job, scene.face_id, way, span, new, again=self._again)

    @property
    def _may_take_again(self) -> bool:
        """Whether the face has readings along the chosen size, and they are kept so far."""
        if self._chosen is None or self._again:
            return False
        way, _ = _span(self._chosen)
        return any(reading.way is way for reading in self.scene.face.readings)

    def _of_readings(self, places: Sequence[int]) -> str:
        """Which readings say otherwise, and what becomes of them."""
        face = self.scene.face
        named = [reading_words(face, face.readings[place], self._words) for place in places[:MOST_NAMED]]
        if len(places) > MOST_NAMED:
            named.append(f"{len(places) - MOST_NAMED} more")
        many = "1 reading says" if len(places) == 1 else f"{len(places)} readings say"
        becomes = "taken again by this" if self._again else "kept as read"
        return f"{many} otherwise, {becomes}: {', '.join(named)}"

    def _size_at(self, at: Point) -> Size | None:
        best = min(self._offered, key=lambda size: _away(size, at), default=None)
        return best if best is not None and _away(best, at) <= NEAR * self.scene.reach_mm else None

    def _sizes_of_picked(self) -> tuple[Size, ...]:
        face, picked = self.scene.face, frozenset(self.scene.picked)
        step = step_mm(extent(face))
        return tuple(size for part in face.parts if part.id in picked for size in part_sizes(part, step))

    def _size_of_picked(self) -> Size | None:
        if len(self.scene.picked) != 1:
            return None
        way = Way.UP if self._upright else Way.ACROSS
        return next((size for size in self._sizes_of_picked() if _span(size)[0] is way), None)

    def _called(self, part_id: str) -> str:
        part = find_part(self.scene.job, part_id)[1]
        return part.called

    def _words(self, length_mm: float) -> str:
        return self.scene.writing.length(length_mm)


def _span(size: Size) -> tuple[Way, tuple[float, float]]:
    """The way that a size is measured, and the two places along it, mm."""
    (x0, y0), (x1, y1) = size.start, size.end
    if abs(x1 - x0) >= abs(y1 - y0):
        return Way.ACROSS, (min(x0, x1), max(x0, x1))
    return Way.UP, (min(y0, y1), max(y0, y1))


def _drawn(size: Size) -> tuple[Point, Point]:
    """The ends of the line that a size is drawn with."""
    (x0, y0), (x1, y1) = size.start, size.end
    length = math.dist(size.start, size.end) or 1.0
    aside = (-(y1 - y0) / length * size.away_mm, (x1 - x0) / length * size.away_mm)
    return (x0 + aside[0], y0 + aside[1]), (x1 + aside[0], y1 + aside[1])


def _middle(size: Size) -> Point:
    (x0, y0), (x1, y1) = _drawn(size)
    return (x0 + x1) / 2, (y0 + y1) / 2


def _away(size: Size, at: Point) -> float:
    """How far a point is from the line that a size is drawn with, mm."""
    (x0, y0), (x1, y1) = _drawn(size)
    dx, dy = x1 - x0, y1 - y0
    share = ((at[0] - x0) * dx + (at[1] - y0) * dy) / ((dx * dx + dy * dy) or 1.0)
    share = min(max(share, 0.0), 1.0)
    return math.dist(at, (x0 + share * dx, y0 + share * dy))
