"""Trace: an outline is drawn corner by corner and closes when it is back at its start.

Its sides are straight or arcs, and each is pointed or typed.
"""

import copy
import math

from desktop.gestures.aiming import aimed
from desktop.gestures.gesture import HELD_NONE, SIZE_AWAY, Done, Gesture, Held, Scene
from desktop.gestures.path import bent, last_way, slant, squared, straight_again, unit_way
from desktop.gestures.preview import Preview
from desktop.gestures.shaping import Shaping, positive
from geometry.outlines.sides import WELD_MM, Point
from geometry.snapping.snap import Snap
from shared.drawing import Size
from shared.errors import OutlineError, ReadingError
from shared.job import Outline, Unit, Vertex
from shared.typed.kinds import read_kind
from shared.typed.length_words import quoted
from shared.typed.ways import By, To, TracedSide, begins_with_place, names_ways, read_sides

EXAMPLES = {
    Unit.MM: ("as in 0, 900, 600 right, 400 up", "as in 600, 600 right, 600 at 45, to 0, 1800"),
    Unit.INCH: ("as in 0, 36, 24 right, 18 up", "as in 24, 24 right, 24 at 45, to 0, 72"),
}
"""What could be typed before there is a corner, and after."""

FEWEST_CORNERS = 3
"""The fewest corners of an outline with straight sides only; with an arc, two are enough."""


class Trace(Shaping):
    """Draws the outline of a new part corner by corner.

    Sides may be typed with their directions: `600 right, 400 up`, `600 at 45`, `to 600, 870`, `900 right rise 120 up`.

    A corner carries the bulge of the side that left it. While `_arc_to` is set, the arc to it waits for its rise.
    """

    start_words = "the first corner, or its distance from the left end"

    def __init__(self, scene: Scene) -> None:
        super().__init__(scene)
        self._corners: tuple[Vertex, ...] = ()
        self._as_arc = False
        self._arc_to: Point | None = None

    @property
    def corners(self) -> tuple[Vertex, ...]:
        """The corners so far."""
        return self._corners

    @property
    def wants(self) -> str:
        if self._arc_to is not None:
            return "a point of the arc, or its rise"
        if not self._corners:
            return super().wants
        return "the end of the arc, or how far it is" if self._as_arc else "length of the side"

    @property
    def example(self) -> str:
        if self._arc_to is not None:
            return ""
        first, further = EXAMPLES[self.scene.job.unit]
        return further if self._corners else first

    @property
    def wants_place(self) -> bool:
        return not self._corners or self._arc_to is not None

    @property
    def other_way(self) -> str:
        return "straight side" if self._as_arc else "arc"

    @property
    def is_begun(self) -> bool:
        return bool(self._corners) or super().is_begun

    @property
    def outline(self) -> Outline:
        """The corners so far and the place of the hand, closed by a straight side; empty while they are too few."""
        path = self._path()
        return path if len(path) >= FEWEST_CORNERS or any(corner.bulge for corner in path) else ()

    @property
    def preview(self) -> Preview:
        path = self._path()
        outline = self.outline
        shown = outline if self._is_sound(outline) else ()
        preview = super().preview._replace(outlines=(shown,) if shown else (), path=path)
        angle = slant(path)
        if not angle or self._pointed is None:
            return preview
        return preview._replace(spot=self._pointed, words=" · ".join(filter(None, (angle, preview.words))))

    @property
    def sizes(self) -> tuple[Size, ...]:
        path = self._path()
        if len(path) < 2:
            return ()
        start, end = path[-2:]
        return (Size((start.x, start.y), (end.x, end.y), SIZE_AWAY * self.scene.reach_mm),)

    def point(self, at: Point, held: Held = HELD_NONE) -> None:
        super().point(at, held)
        if self._returns(at):
            first = self._corners[0]
            self._here = Snap(first.x, first.y, "back at the start: the outline closes here")
        elif self._corners and self._here and not (held.shift or self._as_arc or self._is_at_a_corner()):
            self._here = squared(self._corners, self._here)

    def press(self, at: Point, held: Held = HELD_NONE) -> Done | None:
        self.point(at, held)
        return self._go_to(self._pointed or at)

    def says(self, text: str) -> str:
        """For sides with directions, how far it is from the end of the last one back to the start."""
        if not names_ways(_without_kind(text)):
            return super().says(text)
        trial = copy.copy(self)
        if trial.type(text) is not None:
            return "back at the start"
        first, last = trial.corners[0], trial.corners[-1]
        back = math.dist((first.x, first.y), (last.x, last.y))
        return f"{self.scene.writing.length(back)} back to the start"

    def type(self, text: str) -> Done | None:
        rest = _without_kind(text)
        if not names_ways(rest):
            return super().type(text)
        named = read_kind(text) if rest != text else None
        if named is not None:
            self._take_kind(named)
        done = None
        for side in read_sides(rest, self.scene.job.unit, decimal=self.scene.decimal):
            if done is not None:
                raise ReadingError(
                    "the outline closes before the last of these", where=quoted(text), do="leave the last one out"
                )
            done = self._walk(side)
        return done

    def read(self, length_mm: float) -> Done | None:
        if self._arc_to is not None:
            return self._end_arc(self._rise(positive(length_mm, "rise")))
        if not self._corners:
            self._read_start(length_mm)
            if self._start is not None:
                self._add(self._start)
            return None
        return self._go_to(self._along(positive(length_mm, "length of the side")))

    def enter(self) -> Done | None:
        """Close the outline, straight back to the start."""
        return self._close() if self._corners else None

    def turned(self) -> Gesture:
        self._as_arc = not self._as_arc
        self._arc_to = None
        return self

    def back(self) -> None:
        if self._arc_to is not None:
            self._arc_to = None
            return
        self._corners = straight_again(self._corners[:-1])
        if not self._corners:
            super().back()
        self._aim()

    def cancel(self) -> None:
        super().cancel()
        self._corners, self._as_arc, self._arc_to = (), False, None
        self._aim()

    def _walk(self, side: TracedSide) -> Done | None:
        """Take one typed item: a side, the first corner by its place, or the rise of an arc that waits for it."""
        go, rise = side
        if isinstance(go, By) and rise is None and (go.way is None or self._arc_to is not None):
            return self.read(go.length_mm) if go.way is None else self._end_arc(self._risen(go))
        if not self._corners:
            self._begin_at(go)
            return None
        end = (go.x, go.y) if isinstance(go, To) else self._end(go)
        if rise is None:
            return self._go_to(end)
        self._arc_to = end
        return self._end_arc(self._risen(rise))

    def _begin_at(self, go: By | To) -> None:
        if isinstance(go, By):
            raise ReadingError("the first corner is missing", do="type its place, as in to 600, 870")
        self._start = (go.x, go.y)
        self._add(self._start)

    def _end(self, go: By) -> Point:
        length = positive(go.length_mm, "length of the side")
        if go.way is None:
            return self._along(length)
        last = self._corners[-1]
        return last.x + go.way[0] * length, last.y + go.way[1] * length

    def _path(self) -> tuple[Vertex, ...]:
        """The corners with the side that the hand is drawing."""
        pointed = self._pointed
        if not self._corners or pointed is None:
            return self._corners
        if self._arc_to is not None:
            return bent(self._corners, self._arc_to, pointed)
        last = self._corners[-1]
        return self._corners if pointed == (last.x, last.y) else (*self._corners, Vertex(*pointed))

    def _returns(self, at: Point) -> bool:
        first = self._corners[0] if self._corners else None
        enough = len(self._corners) >= FEWEST_CORNERS or (self._as_arc and len(self._corners) > 1)
        return (
            first is not None
            and self._arc_to is None
            and (enough or any(corner.bulge for corner in self._corners))
            and math.dist((first.x, first.y), at) <= self.scene.reach_mm
        )

    def _is_at_a_corner(self) -> bool:
        """Whether the hand points at a corner: then that corner is meant, square or not."""
        return self._here is not None and self._here.words.startswith("corner")

    def _go_to(self, to: Point) -> Done | None:
        if self._arc_to is not None:
            return self._end_arc(to)
        last = self._corners[-1] if self._corners else None
        if last is not None and (last.x, last.y) == to:
            return None
        if last is not None and self._as_arc:
            self._arc_to = to
            return None
        return self._arrive(to)

    def _arrive(self, to: Point) -> Done | None:
        first = self._corners[0] if self._corners else None
        if first is not None and math.dist((first.x, first.y), to) <= WELD_MM:
            return self._close()
        self._add(to)
        return None

    def _end_arc(self, through: Point) -> Done | None:
        """End the arc to `_arc_to`, which goes through this point."""
        if self._arc_to is None:
            return None
        *_, last, end = bent(self._corners, self._arc_to, through)
        before = self._corners
        self._corners = (*before[:-1], last)
        try:
            done = self._arrive((end.x, end.y))
        except OutlineError:
            self._corners = before
            raise
        self._arc_to, self._as_arc = None, False
        return done

    def _close(self) -> Done:
        return self._finished(self._corners)

    def _add(self, to: Point) -> None:
        self._corners = (*self._corners, Vertex(*to))
        self._aim()

    def _aim(self) -> None:
        """Let the hand snap to the corners drawn so far as well."""
        own = tuple((corner.x, corner.y) for corner in self._corners)
        self._targets = aimed(self.scene, own)

    def _along(self, length_mm: float) -> Point:
        """The point this far from the last corner towards the hand. Before the hand points, the last side goes on."""
        last = self._corners[-1]
        x, y = self._direction()
        return last.x + x * length_mm, last.y + y * length_mm

    def _direction(self) -> Point:
        last = self._corners[-1]
        pointed = self._pointed
        if pointed is not None and pointed != (last.x, last.y):
            return unit_way(pointed[0] - last.x, pointed[1] - last.y)
        return last_way(self._corners)

    def _rise(self, length_mm: float) -> Point:
        """The top of an arc that rises so far from its chord, to the side where the hand is."""
        last = self._corners[-1]
        pointed = self._pointed or self._arc_to or (last.x, last.y)
        return self._risen(By(length_mm, (pointed[0] - last.x, pointed[1] - last.y)))

    def _risen(self, rise: By) -> Point:
        """The top of an arc that rises so far from its chord, to the side of it that lies in this direction."""
        length = positive(rise.length_mm, "rise")
        if rise.way is None:
            return self._rise(length)
        last, end = self._corners[-1], self._arc_to or (0.0, 0.0)
        along_x, along_y = unit_way(end[0] - last.x, end[1] - last.y)
        side = 1.0 if along_x * rise.way[1] - along_y * rise.way[0] >= 0 else -1.0
        return (last.x + end[0]) / 2 - along_y * length * side, (last.y + end[1]) / 2 + along_x * length * side


def _without_kind(text: str) -> str:
    """A line without the kind at its head."""
    named = None if begins_with_place(text) else read_kind(text)
    return named.rest if named else text
