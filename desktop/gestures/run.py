"""Run: a row of cabinets with their fronts, from one line of widths and words."""

from desktop.gestures.gesture import HELD_NONE, SIZE_AWAY, Done, Gesture, Held, Scene, WayOut, snapped
from desktop.gestures.preview import Preview
from geometry.kitchens.rows import LaidRow, lay_row, left_for, next_start, over_mm, with_row
from geometry.outlines.sides import Point
from geometry.parts.extent import extent
from geometry.snapping.snap import Snap, snap_targets
from shared.drawing import Size
from shared.errors import JobError, ReadingError, RecoatError
from shared.job import Unit, View
from shared.typed.lengths import read_length
from shared.typed.row_beginnings import row_so_far
from shared.typed.row_shortening import shortened
from shared.typed.rows import ABOVE, Row, read_row

EXAMPLES = {
    Unit.MM: "600 door, 450 drawers 3, 900 pair, rest open, splashback",
    Unit.INCH: "24 door, 18 drawers 3, 36 pair, rest open, splashback",
}

ONLY_BEGUN = "…"

BASE, WALL = "cabinets", "wall cabinets"


class Run(Gesture):
    """Draws a row of cabinets from a typed line of widths and words.

    The row begins where the hand points or at a length typed alone; otherwise it goes on from the cabinets that stand
    there. In the other variant, or if the line begins with `above`, it is a row of wall cabinets.
    """

    first_advice = "choose a wall: a row of cabinets stands on one"

    def __init__(self, scene: Scene) -> None:
        super().__init__(scene)
        self._targets = snap_targets(scene.face)
        self._here: Snap | None = None
        self._start: float | None = None
        self._above = False
        # How far from the left end a row of cabinets goes on, and one of wall cabinets; empty on a plan.
        goes_on = (next_start(scene.job, scene.face_id, above) for above in (False, True))
        self._goes_on = tuple(goes_on) if scene.face.view is View.ELEVATION else ()

    @property
    def wants(self) -> str:
        if not self._goes_on:
            return ""
        return f"{self._what(above=self._above)} from {self._words(self._begins(self._above))}: widths and words"

    @property
    def example(self) -> str:
        return f"as in {EXAMPLES[self.scene.job.unit]}" if self.wants else self.first_advice

    @property
    def other_way(self) -> str:
        return self._what(above=not self._above) if self.wants else ""

    @property
    def is_begun(self) -> bool:
        return self._start is not None

    @property
    def preview(self) -> Preview:
        if not self._goes_on:
            return Preview()
        _, bottom, _, top = extent(self.scene.face)
        begins = ((self._begins(self._above), bottom), (self._begins(self._above), top))
        here = self._here
        if here is None:
            return Preview(guides=(begins,))
        spot = (here.x, here.y) if here.words else None
        return Preview(guides=(begins, *here.guides), spot=spot, words=here.words)

    def point(self, at: Point, held: Held = HELD_NONE) -> None:
        self._here = snapped(at, self._targets, self.scene, held)

    def press(self, at: Point, held: Held = HELD_NONE) -> Done | None:
        """Begin the row straight above or below the hand, at its distance from the left end."""
        self.point(at, held)
        if self._goes_on and self._here is not None:
            self._begin_at(self._here.x)
        return None

    def says(self, text: str) -> str:
        self._refuse_plan()
        start, so_far = self._start_in(text), self.so_far(text)
        if start is not None:
            return f"⏎ the row begins at {self._words(start)}"
        if not so_far:
            return ONLY_BEGUN
        more = "" if so_far == text else f" {ONLY_BEGUN}"
        return self._summary(self._laid(self._row(so_far))) + more

    def so_far(self, text: str) -> str:
        """The line up to its last whole item; "" for a length alone, which mostly is the width of a first item."""
        if self._start_in(text) is not None:
            return ""
        return row_so_far(text, self.scene.job.unit, decimal=self.scene.decimal)

    def offers(self, text: str) -> tuple[WayOut, ...]:
        """Lines for a narrower row, if the typed row does not fit; none if it cannot be read."""
        scene = self.scene
        try:
            self._refuse_plan()
            row = self._row(text)
            over = over_mm(scene.job, scene.face_id, row, self._begins(row.above))
        except RecoatError:
            return ()
        return tuple(WayOut(words, line) for words, line in shortened(row, over) if self._fits(line))

    def type(self, text: str) -> Done | None:
        self._refuse_plan()
        start = self._start_in(text)
        if start is not None:
            self._begin_at(start)
            return None
        row = self._row(text)
        job, laid = with_row(self.scene.job, self.scene.face_id, row, self._begins(row.above))
        ids = tuple(part.id for part in laid.parts)
        return Done(f"Row of {self._what(above=row.above)}", job, ids, self._shown(laid))

    def turned(self) -> Gesture:
        return self._in_way(self.scene, above=not self._above)

    def again(self, scene: Scene) -> Gesture:
        """The same mode. On another face it begins with cabinets that stand on the floor."""
        return self._in_way(scene, above=self._above and scene.face_id == self.scene.face_id)

    def back(self) -> None:
        self._start = None

    def cancel(self) -> None:
        self._start = None

    def _begins(self, above: bool) -> float:
        return self._goes_on[above] if self._start is None else self._start

    def _refuse_plan(self) -> None:
        if not self._goes_on:
            raise JobError("a row of cabinets stands on a wall", do="choose a wall")

    def _begin_at(self, start_mm: float) -> None:
        free = left_for(self.scene.job, self.scene.face_id, self._above, start_mm)
        if free is not None and free <= 0:
            where = self._words(start_mm)
            raise ReadingError(
                "there is no room for a row here", where=where, do="begin the row where the wall is free"
            )
        self._start = start_mm

    def _in_way(self, scene: Scene, *, above: bool) -> Gesture:
        turned = Run(scene)
        turned._above = above
        return turned

    def _what(self, *, above: bool) -> str:
        return WALL if above else BASE

    def _words(self, length_mm: float) -> str:
        return self.scene.writing.length(length_mm)

    def _start_in(self, text: str) -> float | None:
        """Where the row begins, in mm, if the line is one length alone; None if it says more, or nothing."""
        try:
            return read_length(text, self.scene.job.unit, decimal=self.scene.decimal, allow_zero=True)
        except ReadingError:
            return None

    def _row(self, text: str) -> Row:
        unit, decimal = self.scene.job.unit, self.scene.decimal
        row = read_row(text, unit, decimal=decimal)
        return row if row.above or not self._above else read_row(f"{ABOVE} {text}", unit, decimal=decimal)

    def _laid(self, row: Row) -> LaidRow:
        return lay_row(self.scene.job, self.scene.face_id, row, self._begins(row.above))

    def _fits(self, line: str) -> bool:
        try:
            self._laid(self._row(line))
        except RecoatError:
            return False
        return True

    def _summary(self, laid: LaidRow) -> str:
        """How many cabinets, and how much of the free wall they take."""
        many = f"{laid.cabinets} cabinet{'s' if laid.cabinets > 1 else ''}, " if laid.cabinets else ""
        with_unit = self.scene.writing.length_with_unit
        if laid.left_mm is None:
            return f"{many}{with_unit(laid.width_mm)}"
        free = with_unit(laid.width_mm + laid.left_mm)
        return f"{many}{self._words(laid.width_mm)} of {free}, {self._words(laid.left_mm)} left"

    def _shown(self, laid: LaidRow) -> Preview:
        """The row's length, shown as a size under the face."""
        bottom = extent(self.scene.face)[1]
        end = laid.start_mm + laid.width_mm
        return Preview(sizes=(Size((laid.start_mm, bottom), (end, bottom), -SIZE_AWAY * self.scene.reach_mm),))
