"""Corners: one part's outline is changed corner by corner and side by side.

A corner or side is dragged, or changed by a typed line, which `reshape_lines` reads.
"""

import math
from collections.abc import Callable

from desktop.gestures.aiming import DEAD_SHARE, lines_said
from desktop.gestures.gesture import HELD_NONE, SIZE_AWAY, Done, Gesture, Held, Scene, snapped
from desktop.gestures.on_parts import OnParts
from desktop.gestures.pick import named
from desktop.gestures.preview import NOTHING, Preview
from desktop.gestures.reshape_lines import Chosen, read_change
from geometry.edits.renumbering import with_reshaped
from geometry.edits.reshaping import (
    Reshaped,
    corner_moved,
    corner_put_in,
    corner_taken_out,
    side_at,
    side_moved_to,
    side_through,
)
from geometry.outlines.measured import signed_area_mm2
from geometry.outlines.side_names import side_names
from geometry.outlines.sides import Point, sides
from geometry.snapping.snap import Snap, SnapTargets, snap_targets
from shared.drawing import Size
from shared.errors import JobError, RecoatError
from shared.job import Job, Outline, Part, Unit

OF_CORNERS = {Unit.MM: "as in 600, 870; round 50; cut 50", Unit.INCH: "as in 24, 34; round 2; cut 2"}
OF_SIDES = {
    Unit.MM: "as in 620, 620 at 45, rise 60, radius 300",
    Unit.INCH: "as in 24, 24 at 45, rise 2 1/2, radius 12",
}


class Corners(OnParts):
    """Changes the outline of the one part that is picked.

    A click chooses a corner or a side of it, Return the next one; a drag or a typed line then changes that. In the
    other variant a click on a side puts a corner in.
    """

    first_advice = "click a corner or a side first, or press Return"

    def __init__(self, scene: Scene, chosen: Chosen | None = None, *, puts_in: bool = False) -> None:
        super().__init__(scene)
        self._chosen = chosen
        self._puts_in = puts_in
        self._down: Point | None = None
        self._changed: Reshaped | None = None
        self._snap: Snap | None = None
        self._targets: SnapTargets | None = None

    @property
    def part(self) -> Part | None:
        """The part that is reshaped; None until one alone is picked."""
        return self.parts[0] if len(self.parts) == 1 else None

    @property
    def wants(self) -> str:
        part, chosen = self.part, self._chosen
        if part is None or chosen is None:
            return ""
        if not chosen.is_side:
            corner = part.outline[chosen.number]
            return f"corner at {self.words(corner.x)} · {self.words(corner.y)}, its new place"
        facing = side_names(part.outline, self.scene.face.view)[chosen.number]
        long = self.words(side_at(part.outline, chosen.number).length_mm)
        return f"{facing} side, now {long}, its length"

    @property
    def example(self) -> str:
        if self.part is None:
            return "click the part to reshape"
        if self._chosen is None:
            return "click a corner or a side; Return goes from one to the next"
        return (OF_SIDES if self._chosen.is_side else OF_CORNERS)[self.scene.job.unit]

    @property
    def other_way(self) -> str:
        return "move corners and sides" if self._puts_in else "put corners in"

    @property
    def is_begun(self) -> bool:
        return self._chosen is not None

    @property
    def tried(self) -> Job | None:
        if self.part is None or self._changed is None:
            return None
        return with_reshaped(self.scene.job, self.part.id, self._changed)

    @property
    def preview(self) -> Preview:
        if self.part is None:
            return NOTHING
        outline = self._changed.outline if self._changed else self.part.outline
        around = sides(outline)
        snap = self._snap
        return Preview(
            outlines=(outline,) if self._changed else (),
            sizes=self._sizes(outline),
            guides=snap.guides if snap else (),
            spot=(snap.x, snap.y) if snap and snap.words else None,
            words=snap.words if snap else "",
            marks=(*(side.start for side in around), *_middle(outline, self._chosen)),
            dots=(*(side.middle for side in around), *_corner(outline, self._chosen)),
        )

    def press(self, at: Point, held: Held = HELD_NONE) -> Done | None:
        part = self.part
        found = self._under(part.outline, at) if part else None
        self._let_go()
        if part is None or found is None:
            self._chosen = None
            return super().press(at)
        if self._puts_in and found.is_side:
            return self._put_in(part, found.number, at)
        self._chosen, self._down = found, at
        return None

    def point(self, at: Point, held: Held = HELD_NONE) -> None:
        """While the button is down, the chosen corner or side goes with the hand."""
        part, chosen, down = self.part, self._chosen, self._down
        if part is None or chosen is None or down is None:
            return
        if self._changed is None and math.dist(down, at) <= self.scene.reach_mm * DEAD_SHARE:
            return
        self._snap = snapped(at, self._aimed(part, chosen), self.scene, held)
        place = (self._snap.x, self._snap.y)
        try:
            changed = _dragged(part.outline, chosen, place)
            with_reshaped(self.scene.job, part.id, changed)
        except RecoatError as trouble:
            self._snap = Snap(*at, words=trouble.what)
        else:
            self._changed = changed

    def release(self, at: Point, held: Held = HELD_NONE) -> Done | None:
        self.point(at, held)
        changed = self._changed
        self._let_go()
        return self._reshaped(changed) if changed else None

    def says(self, text: str) -> str:
        if self.part is None or self._chosen is None:
            return super().says(text)
        return read_change(self.part.outline, self._chosen, text, self.scene).words

    def type(self, text: str) -> Done | None:
        if self.part is None or self._chosen is None:
            return super().type(text)
        return self._reshaped(read_change(self.part.outline, self._chosen, text, self.scene).reshaped)

    def enter(self) -> Done | None:
        """Choose the next corner or side, round the part."""
        if self.part is not None:
            self._let_go()
            around = [Chosen(side.vertex, is_side) for side in sides(self.part.outline) for is_side in (False, True)]
            place = around.index(self._chosen) + 1 if self._chosen in around else 0
            self._chosen = around[place % len(around)]
        return None

    def put_in(self) -> Done | None:
        """Put a corner in the middle of the chosen side. JobError if no side is chosen."""
        part, chosen = self.part, self._chosen
        if part is None or chosen is None or not chosen.is_side:
            raise JobError("a new corner needs a side", do="click the side first")
        return self._put_in(part, chosen.number, side_at(part.outline, chosen.number).middle)

    def take_out(self) -> Done | None:
        """Take the chosen corner out; None if nothing is chosen. JobError if a side is chosen."""
        part, chosen = self.part, self._chosen
        if part is None or chosen is None:
            return None
        if chosen.is_side:
            raise JobError("a side cannot be removed on its own", do="remove one of its corners")
        done = self._reshaped(corner_taken_out(part.outline, chosen.number))
        self._chosen = None
        return done

    def turned(self) -> Gesture:
        self._puts_in = not self._puts_in
        return self

    def again(self, scene: Scene) -> Gesture:
        """The same mode. The chosen corner or side stays chosen if the same part is picked and still has it."""
        parts = [part for part in scene.face.parts if part.id in scene.picked]
        is_there = (
            self._chosen is not None
            and [part.id for part in parts] == [part.id for part in self.parts]
            and self._chosen.number < len(parts[0].outline)
        )
        return type(self)(scene, self._chosen if is_there else None, puts_in=self._puts_in)

    def back(self) -> None:
        self.cancel()

    def cancel(self) -> None:
        self._let_go()
        self._chosen = None

    def _let_go(self) -> None:
        self._down = self._changed = self._snap = self._targets = None

    def _under(self, outline: Outline, at: Point) -> Chosen | None:
        """The corner under the hand, else the side; None if neither is within reach."""
        reach, around = self.scene.reach_mm, sides(outline)
        corner = min(around, key=lambda side: math.dist(side.start, at))
        if math.dist(corner.start, at) <= reach:
            return Chosen(corner.vertex)
        side = min(around, key=lambda side: side.distance_mm(*at))
        return Chosen(side.vertex, is_side=True) if side.distance_mm(*at) <= reach else None

    def _aimed(self, part: Part, chosen: Chosen) -> SnapTargets:
        """What the chosen corner or side can snap to: everything that stays."""
        if self._targets is None:
            gone = {chosen.number, (chosen.number + chosen.is_side) % len(part.outline)}
            own = [(vertex.x, vertex.y) for number, vertex in enumerate(part.outline) if number not in gone]
            self._targets = snap_targets(self.scene.face, {part.id}, own=own, lines=lines_said(self.scene))
        return self._targets

    def _put_in(self, part: Part, number: int, at: Point) -> Done:
        done = self._reshaped(corner_put_in(part.outline, number, at))
        self._chosen = Chosen(number + 1)
        return done

    def _reshaped(self, reshaped: Reshaped) -> Done:
        job = with_reshaped(self.scene.job, self.parts[0].id, reshaped)
        shown = Preview(outlines=(reshaped.outline,), sizes=self._sizes(reshaped.outline))
        return Done(f"Reshape {named(self.parts)}", job, self.scene.picked, shown)

    def _sizes(self, outline: Outline) -> tuple[Size, ...]:
        """The sizes to show: the chosen side's, its neighbours' while it is dragged, or those of a corner's two sides.

        Arcs show no size.
        """
        chosen = self._chosen
        if chosen is None or chosen.number >= len(outline):
            return ()
        number = chosen.number
        numbers = [number] if chosen.is_side else [number - 1, number]
        if chosen.is_side and self._changed is not None:
            numbers = [number - 1, number + 1]
        shown = [side for side in (side_at(outline, number) for number in numbers) if not side.bulge]
        away = -SIZE_AWAY * self.scene.reach_mm * math.copysign(1.0, signed_area_mm2(outline))
        return tuple(Size(side.start, side.end, away) for side in shown)


def _dragged(outline: Outline, chosen: Chosen, to: Point) -> Reshaped:
    if not chosen.is_side:
        return corner_moved(outline, chosen.number, to)
    move: Callable[[Outline, int, Point], Reshaped] = side_through if outline[chosen.number].bulge else side_moved_to
    return move(outline, chosen.number, to)


def _middle(outline: Outline, chosen: Chosen | None) -> tuple[Point, ...]:
    """The middle of the chosen side, which gets a ring: what is chosen has a ring and a dot. Empty for a corner."""
    return (side_at(outline, chosen.number).middle,) if chosen and chosen.is_side else ()


def _corner(outline: Outline, chosen: Chosen | None) -> tuple[Point, ...]:
    """The chosen corner, which gets a dot in its ring. Empty for a side."""
    return (side_at(outline, chosen.number).start,) if chosen and not chosen.is_side else ()
