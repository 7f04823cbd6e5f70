"""What the hand can snap to while it draws or drags.

It snaps to parts and set-out lines, and to gaps and sizes that are even with those of parts of the same kind.
"""

import math
from collections.abc import Sequence

from desktop.gestures.gesture import Held, Scene, on_division
from geometry.outlines.measured import outline_box
from geometry.outlines.sides import Point
from geometry.set_out.lines import set_out
from geometry.snapping.even import Peers, peers
from geometry.snapping.snap import SetOut as SetOutAim
from geometry.snapping.snap import Snap, SnapTargets, snap, snap_targets
from shared.job import Part
from shared.trade.kinds import Kind
from takeoff.surfaces.tags import tags

ASLANT_DEGREES = 20.0
"""A drag that goes farther aslant than this is not meant across or up alone (own choice)."""

DEAD_SHARE = 0.5
"""A hand that moves less than this share of its reach has not begun to drag, or to leave the way that it drags."""


def aimed(scene: Scene, own: Sequence[Point] = ()) -> SnapTargets:
    """What a new outline can snap to while it is drawn. `own` are its corners so far."""
    return snap_targets(scene.face, own=own, lines=lines_said(scene))


def lines_said(scene: Scene) -> tuple[SetOutAim, ...]:
    """The set-out lines of the face, each with the words that are shown when a point snaps to it."""
    face, unit = scene.face, scene.job.unit
    if not face.readings:
        return ()
    found = set_out(face, scene.job.tape, unit).lines
    return tuple((line.way, line.at_mm, f"on the set-out line at {scene.writing.length(line.at_mm)}") for line in found)


def aims(scene: Scene, moving: Sequence[Part]) -> SnapTargets:
    """What these parts can snap to while they move. Gaps and sizes are compared with parts of the largest's kind."""
    gone = {part.id for part in moving}
    largest = max(moving, key=_box_mm2)
    among = like(scene, largest.kind, moving)
    return snap_targets(scene.face, gone, lines=lines_said(scene), among=among)


def like(scene: Scene, kind: Kind, moving: Sequence[Part] = ()) -> Peers:
    """The parts of a kind on the face, without those that move. A front without a name goes by its tag: "door A2"."""
    gone = {part.id for part in moving}
    tagged = tags(scene.face)
    names = {part.id: f"{part.kind.value} {tagged[part.id]}" for part in scene.face.parts if part.id in tagged}
    named = {part.id: part.name for part in scene.face.parts if part.name}
    return peers(scene.face, kind, gone, names | named, scene.job.unit)


def snapped_size(at: Point, opposite: Point, targets: SnapTargets, scene: Scene, held: Held) -> Snap:
    """Where a pulled corner of a box goes while the opposite one stays; without snapping, to the nearest division."""
    place = on_division(at, scene)
    return Snap(*place) if held.free else snap(*place, targets, scene.reach_mm, opposite)


def kept_on_axis(went: Point, reach_mm: float) -> Point:
    """How far a drag is meant across and up: one of them is 0 unless the hand clearly leaves the other."""
    across, up = map(abs, went)
    aside, along = min(across, up), max(across, up)
    if aside > min(along * math.tan(math.radians(ASLANT_DEGREES)), DEAD_SHARE * reach_mm):
        return went
    return (went[0], 0.0) if across >= up else (0.0, went[1])


def _box_mm2(part: Part) -> float:
    left, bottom, right, top = outline_box(part.outline)
    return (right - left) * (top - bottom)
