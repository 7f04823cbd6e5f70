"""Round: a circle from its centre, a circle from edge to edge, or a rounded box."""

import math

from desktop.gestures.box import Box
from desktop.gestures.gesture import HELD_NONE, Done, Gesture, Held, Scene, box_sizes
from desktop.gestures.shaping import Shaping, positive
from geometry.outlines.shapes import circle, rounded_box
from geometry.outlines.sides import Box as Bounds
from geometry.outlines.sides import Point
from shared.drawing import Size
from shared.errors import ReadingError
from shared.job import Outline


class Circle(Shaping):
    """Draws a circle from its centre and a point of its edge, or its radius."""

    start_words = "the centre, or its distance from the left end"
    reach_words = "radius"

    def __init__(self, scene: Scene) -> None:
        super().__init__(scene)
        self._pressed_at: Point | None = None

    @property
    def wants(self) -> str:
        return super().wants if self._start is None else self.reach_words

    @property
    def other_way(self) -> str:
        return "circle from edge to edge"

    @property
    def outline(self) -> Outline:
        if self._start is None or self._pointed is None or self._start == self._pointed:
            return ()
        return self._circle(self._start, self._pointed)

    @property
    def sizes(self) -> tuple[Size, ...]:
        return (Size(self._start, self._pointed, 0.0),) if self._start and self._pointed else ()

    def press(self, at: Point, held: Held = HELD_NONE) -> Done | None:
        self.point(at, held)
        if self._start is None:
            self._start = self._pressed_at = self._pointed
            return None
        return self._finished(self.outline)

    def release(self, at: Point, held: Held = HELD_NONE) -> Done | None:
        pressed_at, self._pressed_at = self._pressed_at, None
        if pressed_at is None or math.dist(pressed_at, at) <= self.scene.reach_mm:
            return None
        self.point(at, held)
        return self._finished(self.outline)

    def read(self, length_mm: float) -> Done | None:
        if self._start is None:
            self._read_start(length_mm)
            return None
        return self._finished(self._circle(self._start, self._at_distance(positive(length_mm, self.reach_words))))

    def from_middle(self, sizes: tuple[float, ...]) -> Point | None:
        return 0.0, 0.0

    def turned(self) -> Gesture:
        return CircleAcross(self.scene)

    def cancel(self) -> None:
        super().cancel()
        self._pressed_at = None

    def _circle(self, start: Point, to: Point) -> Outline:
        return circle(*start, math.dist(start, to))

    def _at_distance(self, length_mm: float) -> Point:
        """The point at this distance from the start, towards the hand; to the right if the hand shows no direction."""
        x, y = self._start or (0.0, 0.0)
        to_x, to_y = self._pointed or (x, y)
        away = math.hypot(to_x - x, to_y - y)
        if not away:
            return x + length_mm, y
        return x + (to_x - x) / away * length_mm, y + (to_y - y) / away * length_mm


class CircleAcross(Circle):
    """A circle from one point of its edge to the opposite one, or its diameter."""

    start_words = "a point of the edge, or its distance from the left end"
    reach_words = "diameter"

    @property
    def other_way(self) -> str:
        return "rounded box"

    def from_middle(self, sizes: tuple[float, ...]) -> Point | None:
        return sizes[0] / 2, 0.0

    def turned(self) -> Gesture:
        return RoundedBox(self.scene)

    def _circle(self, start: Point, to: Point) -> Outline:
        return circle((start[0] + to[0]) / 2, (start[1] + to[1]) / 2, math.dist(start, to) / 2)


class RoundedBox(Box):
    """A box whose corners are rounded: after its width and height it asks for their radius."""

    def __init__(self, scene: Scene) -> None:
        super().__init__(scene)
        self._bounds: Bounds | None = None

    @property
    def wants(self) -> str:
        return "radius of its corners" if self._bounds else super().wants

    @property
    def other_way(self) -> str:
        return "circle"

    @property
    def outline(self) -> Outline:
        return self._rounded(self._pointed_radius()) if self._bounds else super().outline

    @property
    def sizes(self) -> tuple[Size, ...]:
        if self._bounds is None:
            return super().sizes
        left, bottom, right, top = self._bounds
        radius = Size((left, bottom), (left + self._pointed_radius(), bottom), -self.scene.reach_mm)
        return (*box_sizes(left, bottom, right - left, top - bottom, self.scene), radius)

    def press(self, at: Point, held: Held = HELD_NONE) -> Done | None:
        if self._bounds is None:
            return super().press(at, held)
        self.point(at, held)
        return self._finished(self._rounded(self._pointed_radius()))

    def read(self, length_mm: float) -> Done | None:
        if self._bounds is None:
            return super().read(length_mm)
        if not 0 <= length_mm <= self._greatest_radius():
            raise ReadingError(
                "the radius is more than half the shorter side of the box", do="type half of that side or less"
            )
        return self._finished(self._rounded(length_mm))

    def turned(self) -> Gesture:
        return Circle(self.scene)

    def back(self) -> None:
        if self._bounds is None:
            super().back()
        self._bounds = None

    def cancel(self) -> None:
        super().cancel()
        self._bounds = None

    def _bounded(self, bounds: Bounds) -> Done | None:
        self._finished(self._shape(bounds))
        self._bounds = bounds
        return None

    def _greatest_radius(self) -> float:
        left, bottom, right, top = self._bounds or (0.0, 0.0, 0.0, 0.0)
        return min(right - left, top - bottom) / 2

    def _pointed_radius(self) -> float:
        """How far inside the nearest upright side of the box the hand is, mm; at most half the box's shorter side."""
        if self._bounds is None or self._pointed is None:
            return 0.0
        left, _, right, _ = self._bounds
        x = self._pointed[0]
        return min(max(min(x - left, right - x), 0.0), self._greatest_radius())

    def _rounded(self, radius: float) -> Outline:
        left, bottom, right, top = self._bounds or (0.0, 0.0, 0.0, 0.0)
        return rounded_box(left, bottom, right - left, top - bottom, radius)
