"""Box: a corner, then width and height, typed or pointed."""

import math

from desktop.gestures.aiming import like, snapped_size
from desktop.gestures.gesture import HELD_NONE, Done, Held, Scene, box_sizes
from desktop.gestures.shaping import Shaping, positive, way
from geometry.outlines.shapes import box
from geometry.outlines.sides import Box as Bounds
from geometry.outlines.sides import Point
from geometry.snapping.snap import SnapTargets
from shared.drawing import Size
from shared.job import Outline
from shared.trade.kinds import Kind


class Box(Shaping):
    """Draws a new part as a box.

    The hand presses one corner, then releases or presses the opposite one. Typed, a box is four lengths: from the left
    end, from the floor (on a plan from the wall), width and height.
    """

    has_width_and_height = True

    def __init__(self, scene: Scene) -> None:
        super().__init__(scene)
        self._width: float | None = None
        self._pressed_at: Point | None = None
        self._alike: tuple[Kind, SnapTargets] | None = None

    @property
    def wants(self) -> str:
        if self._start is None:
            return super().wants
        return "width" if self._width is None else "height"

    @property
    def bounds(self) -> Bounds | None:
        """Left, bottom, right and top as they would be now; None until there is a first corner and a pointed place."""
        if self._start is None or self._pointed is None:
            return None
        (x0, y0), (x1, y1) = self._start, self._pointed
        return _ordered(x0, y0, x1 if self._width is None else x0 + self._width, y1)

    @property
    def outline(self) -> Outline:
        return self._shape(self.bounds) if self.bounds else ()

    @property
    def sizes(self) -> tuple[Size, ...]:
        if self.bounds is None:
            return ()
        left, bottom, right, top = self.bounds
        return box_sizes(left, bottom, right - left, top - bottom, self.scene)

    def point(self, at: Point, held: Held = HELD_NONE) -> None:
        """The hand moves. Once there is a first corner, the box also snaps to the size of another part of its kind."""
        if self._start is None:
            super().point(at, held)
            return
        kind = self.scene.kind
        if self._alike is None or self._alike[0] is not kind:
            self._alike = (kind, self._targets._replace(peers=like(self.scene, kind)))
        self._here = snapped_size(at, self._start, self._alike[1], self.scene, held)

    def press(self, at: Point, held: Held = HELD_NONE) -> Done | None:
        self.point(at, held)
        if self._start is None:
            self._start = self._pressed_at = self._pointed
            return None
        return self._complete()

    def release(self, at: Point, held: Held = HELD_NONE) -> Done | None:
        """End a drag from corner to corner. After a mere click the opposite corner is still to come."""
        pressed_at, self._pressed_at = self._pressed_at, None
        if pressed_at is None or math.dist(pressed_at, at) <= self.scene.reach_mm:
            return None
        self.point(at, held)
        return self._complete()

    def read(self, length_mm: float) -> Done | None:
        if self._start is None:
            self._read_start(length_mm)
            return None
        (x, y), pointed = self._start, self._pointed
        if self._width is None:
            self._width = positive(length_mm, "width") * way(x, pointed[0] if pointed else None)
            return None
        height = positive(length_mm, "height") * way(y, pointed[1] if pointed else None)
        return self._bounded(_ordered(x, y, x + self._width, y + height))

    def from_middle(self, sizes: tuple[float, ...]) -> Point | None:
        return (sizes[0] / 2, sizes[1] / 2) if len(sizes) > 1 else None

    def back(self) -> None:
        if self._width is None:
            super().back()
        self._width = None

    def cancel(self) -> None:
        super().cancel()
        self._width = self._pressed_at = None

    def _complete(self) -> Done | None:
        return self._bounded(self.bounds) if self.bounds else None

    def _bounded(self, bounds: Bounds) -> Done | None:
        """Go on once width and height are known: a plain box is then finished."""
        return self._finished(self._shape(bounds))

    def _shape(self, bounds: Bounds) -> Outline:
        left, bottom, right, top = bounds
        return box(left, bottom, right - left, top - bottom)


def _ordered(x0: float, y0: float, x1: float, y1: float) -> Bounds:
    return min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1)
