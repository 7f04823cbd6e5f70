"""Trace: corner after corner, sides typed or pointed, straight or arcs, closed by returning to the start."""

import math

from desktop.gestures.aiming import aimed
from desktop.gestures.gesture import HELD_NONE, SIZE_AWAY, Done, Gesture, Held, Scene
from desktop.gestures.preview import Point, Preview
from desktop.gestures.shaping import Shaping, positive
from geometry.shapes import bulge_through
from geometry.snapping import Snap
from shared.drawing import Size
from shared.errors import OutlineError
from shared.job import Outline, Vertex

FEWEST_CORNERS = 3
"""Of an outline with straight sides; with an arc two do."""


STILL_MM = 1e-6
"""A point brought less far than this has not moved."""


class Trace(Shaping):
    """A corner carries the bulge of the side that left it. While `_arc_to` is set, the arc to it waits for its rise."""

    start_words = "the first corner, or its distance from the left end"

    def __init__(self, scene: Scene) -> None:
        super().__init__(scene)
        self._corners: tuple[Vertex, ...] = ()
        self._as_arc = False
        self._arc_to: Point | None = None

    @property
    def wants(self) -> str:
        if self._arc_to is not None:
            return "a point of the arc, or its rise"
        if not self._corners:
            return super().wants
        return "the end of the arc, or how far it is" if self._as_arc else "length of the side"

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
        """Closed straight from where the hand is."""
        path = self._path()
        return path if len(path) >= FEWEST_CORNERS or any(corner.bulge for corner in path) else ()

    @property
    def preview(self) -> Preview:
        path = self._path()
        outline = self.outline
        shown = outline if self._is_sound(outline) else ()
        return super().preview._replace(outlines=(shown,) if shown else (), path=path)

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
            self._here = _square(self._corners, self._here)

    def press(self, at: Point, held: Held = HELD_NONE) -> Done | None:
        self.point(at, held)
        return self._go_to(self._pointed or at)

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
        self._corners = _straight_again(self._corners[:-1])
        if not self._corners:
            super().back()
        self._aim()

    def cancel(self) -> None:
        super().cancel()
        self._corners, self._as_arc, self._arc_to = (), False, None
        self._aim()

    def _path(self) -> tuple[Vertex, ...]:
        """The corners with the side that the hand is drawing."""
        pointed = self._pointed
        if not self._corners or pointed is None:
            return self._corners
        if self._arc_to is not None:
            return _bent(self._corners, self._arc_to, pointed)
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
        """A corner pointed at is meant, square or not."""
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
        if first is not None and (first.x, first.y) == to:
            return self._close()
        self._add(to)
        return None

    def _end_arc(self, through: Point) -> Done | None:
        """The arc to `_arc_to` goes through this point."""
        if self._arc_to is None:
            return None
        *_, last, end = _bent(self._corners, self._arc_to, through)
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
        """What is drawn can be snapped to as well."""
        own = tuple((corner.x, corner.y) for corner in self._corners)
        self._targets = aimed(self.scene, own)

    def _along(self, length_mm: float) -> Point:
        """So far from the last corner towards the hand; on as before, or to the right, where it is nowhere."""
        last = self._corners[-1]
        x, y = self._direction()
        return last.x + x * length_mm, last.y + y * length_mm

    def _direction(self) -> Point:
        last = self._corners[-1]
        pointed = self._pointed
        if pointed is not None and pointed != (last.x, last.y):
            return _unit(pointed[0] - last.x, pointed[1] - last.y)
        return _last_way(self._corners)

    def _rise(self, length_mm: float) -> Point:
        """The top of an arc that rises so far from its chord, to the side where the hand is."""
        last, end = self._corners[-1], self._arc_to or (0.0, 0.0)
        along_x, along_y = _unit(end[0] - last.x, end[1] - last.y)
        pointed = self._pointed or end
        aside = along_x * (pointed[1] - last.y) - along_y * (pointed[0] - last.x)
        side = 1.0 if aside >= 0 else -1.0
        return (last.x + end[0]) / 2 - along_y * length_mm * side, (last.y + end[1]) / 2 + along_x * length_mm * side


def _bent(corners: tuple[Vertex, ...], end: Point, through: Point) -> tuple[Vertex, ...]:
    """The corners with one more, at the end of an arc through a point."""
    last = corners[-1]
    bulge = bulge_through((last.x, last.y), through, end)
    return (*corners[:-1], Vertex(last.x, last.y, bulge), Vertex(*end))


def _straight_again(corners: tuple[Vertex, ...]) -> tuple[Vertex, ...]:
    """The side that left the last corner has been taken back."""
    return (*corners[:-1], Vertex(corners[-1].x, corners[-1].y)) if corners else ()


def _last_way(corners: tuple[Vertex, ...]) -> Point:
    """The direction of the last straight side; to the right where there is none."""
    if len(corners) < 2 or corners[-2].bulge:
        return 1.0, 0.0
    return _unit(corners[-1].x - corners[-2].x, corners[-1].y - corners[-2].y)


def _unit(x: float, y: float) -> Point:
    length = math.hypot(x, y)
    return (x / length, y / length) if length else (1.0, 0.0)


def _square(corners: tuple[Vertex, ...], here: Snap) -> Snap:
    """The pointed place brought onto the line of the last side or square to it, whichever is nearer."""
    last = corners[-1]
    along_x, along_y = _last_way(corners)
    dx, dy = here.x - last.x, here.y - last.y
    along, aside = dx * along_x + dy * along_y, along_x * dy - along_y * dx
    if abs(along) >= abs(aside):
        x, y = last.x + along * along_x, last.y + along * along_y
    else:
        x, y = last.x - aside * along_y, last.y + aside * along_x
    if math.dist((x, y), (here.x, here.y)) <= STILL_MM:
        return here
    guides = tuple((seen, (x, y)) for seen, _ in here.guides if _is_straight(seen, (x, y)))
    return Snap(x, y, here.words if guides else "", guides)


def _is_straight(start: Point, end: Point) -> bool:
    return min(abs(start[0] - end[0]), abs(start[1] - end[1])) <= STILL_MM
