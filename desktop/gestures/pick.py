"""Pick: a click picks the part in front, one more click the part behind it.

A drag moves the picked parts, pulls a corner of one, or picks all parts in a box. What is moved or pulled keeps to the
axis that the hand mainly follows, until the hand clearly leaves it.
"""

import math
from collections.abc import Iterable
from enum import Enum, auto

from desktop.gestures.aiming import DEAD_SHARE, aims, kept_on_axis
from desktop.gestures.gesture import HELD_NONE, Done, Gesture, Held, Scene, box_sizes, on_division
from desktop.gestures.preview import NOTHING, Preview
from geometry.edits.hand import with_hand_changes
from geometry.outlines.measured import joined, outline_box
from geometry.outlines.sides import Box, Point
from geometry.parts.moves import moved, resized
from geometry.parts.picking import parts_at, parts_within
from geometry.snapping.snap import Snap, SnapTargets, snapped_move, snapped_pull
from shared.drawing import Size
from shared.edits.drawn import with_changed_parts
from shared.edits.locking import WORDS, refuse_locked
from shared.errors import OutlineError
from shared.job import Job, Part, Unit
from shared.trade.kinds import Kind
from shared.typed.ways import names_ways, read_moves

EXAMPLES = {Unit.MM: "as in 35 right, 20 up", Unit.INCH: "as in 1 1/2 right, 3/4 up"}

MOST_SNAPPING = 200
"""The most corners of dragged parts that snap. If there are more, only the corners of their common box snap."""

CORNER_SHARE = 0.25
"""A corner is pulled from no farther than this share of its part, so that a small part can be moved by its middle."""


class _Doing(Enum):
    """What the hand does, or is about to do, while the button is down."""

    NOTHING = auto()
    MOVING = auto()
    PULLING = auto()
    BOXING = auto()


class Pick(Gesture):
    """Picks, moves and resizes parts.

    A wall is dragged only once it is picked: until then a drag over it picks what stands on it by a box. A locked part
    can be picked. It is neither dragged nor pulled, and no other part is dragged together with it.
    """

    def __init__(self, scene: Scene) -> None:
        super().__init__(scene)
        self._doing = _Doing.NOTHING
        self._dragged = False
        self._down: Point = (0.0, 0.0)
        self._at: Point = (0.0, 0.0)
        self._snap = Snap(0.0, 0.0)
        self._fixed: Point = (0.0, 0.0)
        self._moving: tuple[Part, ...] = ()
        self._changed: tuple[Part, ...] = ()
        self._targets: SnapTargets | None = None

    @property
    def wants(self) -> str:
        if self._is_moving:
            return "how far"
        return "how far to move" if self.scene.picked else ""

    @property
    def example(self) -> str:
        return EXAMPLES[self.scene.job.unit] if self.wants else ""

    @property
    def is_begun(self) -> bool:
        return self._dragged

    @property
    def moving(self) -> tuple[str, ...]:
        """The ids of the parts that are being dragged or pulled; none while nothing is."""
        return tuple(part.id for part in self._moving) if self._dragged else ()

    @property
    def tried(self) -> Job | None:
        return with_changed_parts(self.scene.job, self._changed) if self._changed else None

    @property
    def preview(self) -> Preview:
        if not self._dragged:
            return NOTHING
        if self._doing is _Doing.BOXING:
            return Preview(rubber=_box(self._down, self._at))
        outlines = tuple(part.outline for part in self._changed)
        spot = self._at if self._snap.words else None
        return Preview(outlines, sizes=self._sizes(), guides=self._snap.guides, spot=spot, words=self._snap.words)

    def press(self, at: Point, held: Held = HELD_NONE) -> Done | None:
        self.cancel()
        self._down = self._at = at
        corner = self._corner_under(at)
        if corner is not None and not held.shift:
            self._doing, self._fixed = _Doing.PULLING, corner
            self._moving = self._picked_parts()
            return None
        under = parts_at(self.scene.face.parts, *at)
        front = next((part for part in under if part.id in self.scene.picked), under[0] if under else None)
        if front is None or held.shift or (front.kind is Kind.WALL and front.id not in self.scene.picked):
            self._doing = _Doing.BOXING
        else:
            self._doing = _Doing.MOVING
            self._moving = self._picked_parts() if front.id in self.scene.picked else (front,)
        return None

    def point(self, at: Point, held: Held = HELD_NONE) -> None:
        if self._doing is _Doing.NOTHING:
            return
        self._at = at
        self._dragged = self._dragged or math.dist(self._down, at) > self.scene.reach_mm * DEAD_SHARE
        if self._dragged and any(part.locked for part in self._moving):
            self._snap = Snap(*at, words=WORDS)
        elif self._dragged and self._doing is _Doing.MOVING:
            self._drag(held)
        elif self._dragged and self._doing is _Doing.PULLING:
            self._pull(held)

    def release(self, at: Point, held: Held = HELD_NONE) -> Done | None:
        if self._doing is _Doing.NOTHING:
            return None
        self.point(at, held)
        if self._dragged:
            return self._dropped(held)
        done = self._clicked(held)
        self.cancel()
        return done

    def says(self, text: str) -> str:
        if not self._says_ways(text):
            return super().says(text)
        unit, decimal = self.scene.job.unit, self.scene.decimal
        moves = zip(read_moves(text, unit, decimal=decimal), (("right", "left"), ("up", "down")), strict=True)
        said = [f"{self.scene.writing.length(abs(by))} {ways[by < 0]}" for by, ways in moves if by]
        return f"{named(self._moved_by_words)} {', '.join(said) or 'stays'}"

    def type(self, text: str) -> Done | None:
        """A line with directions moves the dragged or picked parts. A length alone moves dragged parts only."""
        if not self._says_ways(text):
            return super().type(text)
        across, up = read_moves(text, self.scene.job.unit, decimal=self.scene.decimal)
        parts = self._moved_by_words
        job = with_hand_changes(self.scene.job, _all_moved(parts, across, up))
        self.cancel()
        return Done(f"Move {named(parts)}", job, tuple(part.id for part in parts))

    def read(self, length_mm: float) -> Done | None:
        """Move the dragged parts by this length towards the hand: across or up, whichever it went farther."""
        if not self._is_moving:
            return None
        refuse_locked(self._moving)
        dx, dy = self._at[0] - self._down[0], self._at[1] - self._down[1]
        across = abs(dx) >= abs(dy)
        by = math.copysign(length_mm, dx if across else dy)
        self._changed = _all_moved(self._moving, by if across else 0.0, 0.0 if across else by)
        done = self._moved()
        self.cancel()
        return done

    def back(self) -> None:
        self.cancel()

    def cancel(self) -> None:
        self._doing, self._dragged = _Doing.NOTHING, False
        self._moving = self._changed = ()
        self._targets = None

    @property
    def _is_moving(self) -> bool:
        return self._dragged and self._doing is _Doing.MOVING

    @property
    def _moved_by_words(self) -> tuple[Part, ...]:
        return self._moving if self._is_moving else self._picked_parts()

    def _says_ways(self, text: str) -> bool:
        """Whether a line is read as directions: always, unless a drag shows the direction and the line names none."""
        return bool(self.wants) and (not self._is_moving or names_ways(text))

    def _picked_parts(self) -> tuple[Part, ...]:
        return tuple(part for part in self.scene.face.parts if part.id in self.scene.picked)

    def _sizes(self) -> tuple[Size, ...]:
        if self._doing is not _Doing.PULLING or not self._changed:
            return ()
        left, bottom, right, top = outline_box(self._changed[0].outline)
        return box_sizes(left, bottom, right - left, top - bottom, self.scene)

    def _aimed(self) -> SnapTargets:
        """What the dragged parts can snap to; found only once something is dragged."""
        if self._targets is None:
            self._targets = aims(self.scene, self._moving)
        return self._targets

    def _went(self, held: Held) -> Point:
        """How far across and up the hand means to have gone."""
        went = (self._at[0] - self._down[0], self._at[1] - self._down[1])
        return went if held.free else kept_on_axis(went, self.scene.reach_mm)

    def _drag(self, held: Held) -> None:
        dx, dy = went = on_division(self._went(held), self.scene)
        self._snap = Snap(0.0, 0.0)
        if not held.free:
            left, bottom, right, top = joined([outline_box(part.outline) for part in self._moving])
            points = [(x + dx, y + dy) for x, y in _corners(self._moving)]
            box = (left + dx, bottom + dy, right + dx, top + dy)
            self._snap = snapped_move(points, self._aimed(), self.scene.reach_mm, box, went)
        self._changed = _all_moved(self._moving, dx + self._snap.x, dy + self._snap.y)

    def _pull(self, held: Held) -> None:
        """The corner opposite the pulled one stays. A shape that cannot follow stays as it was."""
        went, corner = self._went(held), self._pulled_corner()
        steps = on_division((corner[0] + went[0], corner[1] + went[1]), self.scene)
        place = (steps[0] if went[0] else corner[0], steps[1] if went[1] else corner[1])
        reach = self.scene.reach_mm
        self._snap = Snap(*place) if held.free else snapped_pull(place, self._aimed(), reach, went, self._fixed)
        box = _box(self._fixed, (self._snap.x, self._snap.y))
        try:
            self._changed = (resized(self._moving[0], box),)
        except OutlineError:
            self._snap = Snap(*self._at, words="the part cannot take this size")

    def _pulled_corner(self) -> Point:
        """Where the pulled corner was, opposite the one that stays."""
        left, bottom, right, top = outline_box(self._moving[0].outline)
        return left + right - self._fixed[0], bottom + top - self._fixed[1]

    def _corner_under(self, at: Point) -> Point | None:
        """The corner opposite the one under the hand; None unless one unlocked part alone is picked."""
        picked = self._picked_parts()
        if len(picked) != 1 or picked[0].locked:
            return None
        left, bottom, right, top = outline_box(picked[0].outline)
        reach = min(self.scene.reach_mm, (right - left) * CORNER_SHARE, (top - bottom) * CORNER_SHARE)
        for x, y in ((left, bottom), (right, bottom), (right, top), (left, top)):
            if math.dist((x, y), at) <= reach:
                return left + right - x, bottom + top - y
        return None

    def _dropped(self, held: Held) -> Done | None:
        """What a drag came to. JobError if a locked part was dragged."""
        moving = self._moving
        done = self._boxed(held) if self._doing is _Doing.BOXING else self._moved()
        self.cancel()
        refuse_locked(moving)
        return done

    def _moved(self) -> Done | None:
        if not self._changed:
            return None
        verb = "Resize" if self._doing is _Doing.PULLING else "Move"
        job = with_changed_parts(self.scene.job, self._changed)
        return Done(f"{verb} {named(self._changed)}", job, tuple(part.id for part in self._changed))

    def _boxed(self, held: Held) -> Done:
        inside = tuple(part.id for part in parts_within(self.scene.face.parts, _box(self._down, self._at)))
        before = self.scene.picked if held.shift else ()
        return self._picking(dict.fromkeys((*before, *inside)))

    def _clicked(self, held: Held) -> Done:
        """Pick the part in front, or the next one behind the only picked part. Shift adds a part or takes it away."""
        under = [part.id for part in parts_at(self.scene.face.parts, *self._down)]
        picked = self.scene.picked
        if not under:
            return self._picking(picked if held.shift else ())
        if held.shift:
            front = under[0]
            return self._picking(one for one in (*picked, front) if one != front or front not in picked)
        again = len(picked) == 1 and picked[0] in under
        return self._picking((under[(under.index(picked[0]) + 1) % len(under)] if again else under[0],))

    def _picking(self, picked: Iterable[str]) -> Done:
        return Done("", self.scene.job, tuple(picked))


def named(parts: tuple[Part, ...]) -> str:
    """The parts in a few words, for the label of an edit."""
    if len(parts) == 1:
        return parts[0].called
    return f"{len(parts)} parts"


def _all_moved(parts: tuple[Part, ...], dx: float, dy: float) -> tuple[Part, ...]:
    return tuple(moved(part, dx, dy) for part in parts)


def _corners(parts: tuple[Part, ...]) -> list[Point]:
    corners = [(vertex.x, vertex.y) for part in parts for vertex in part.outline]
    if len(corners) <= MOST_SNAPPING:
        return corners
    left, bottom, right, top = joined([outline_box(part.outline) for part in parts])
    return [(left, bottom), (right, bottom), (right, top), (left, top)]


def _box(one: Point, other: Point) -> Box:
    return min(one[0], other[0]), min(one[1], other[1]), max(one[0], other[0]), max(one[1], other[1])
