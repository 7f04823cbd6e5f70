"""What the hand compares with while it draws or drags: the parts of the same kind, by their names or tags."""

from collections.abc import Sequence

from desktop.gestures.gesture import Held, Scene, stepped
from desktop.gestures.preview import Point
from geometry.outlines.measured import outline_box
from geometry.set_out.lines import set_out
from geometry.snapping.even import Peers, peers
from geometry.snapping.snap import SetOut as SetOutAim
from geometry.snapping.snap import Snap, SnapTargets, snap, snap_targets
from shared.job import Part
from shared.trade.kinds import Kind
from takeoff.surfaces.tags import tags


def aimed(scene: Scene, own: Sequence[Point] = ()) -> SnapTargets:
    """What can be snapped to while something new is drawn, whose corners so far are `own`."""
    return snap_targets(scene.face, own=own, lines=lines_said(scene))


def lines_said(scene: Scene) -> tuple[SetOutAim, ...]:
    """The set-out lines of the face, each with the words that say it."""
    face, unit = scene.face, scene.job.unit
    if not face.readings:
        return ()
    found = set_out(face, scene.job.tape, unit).lines
    return tuple((line.way, line.at_mm, f"on the set-out line at {scene.writing.length(line.at_mm)}") for line in found)


def aims(scene: Scene, moving: Sequence[Part]) -> SnapTargets:
    """What can be snapped to while these parts move; what is compared with is of the largest one's kind."""
    gone = {part.id for part in moving}
    largest = max(moving, key=_box_mm2)
    among = like(scene, largest.kind, moving)
    return snap_targets(scene.face, gone, lines=lines_said(scene), among=among)


def like(scene: Scene, kind: Kind, moving: Sequence[Part] = ()) -> Peers:
    """The parts of a kind that stand on the face; fronts without a name are known by their tags: "door A2"."""
    gone = {part.id for part in moving}
    tagged = tags(scene.face)
    names = {part.id: f"{part.kind.value} {tagged[part.id]}" for part in scene.face.parts if part.id in tagged}
    named = {part.id: part.name for part in scene.face.parts if part.name}
    return peers(scene.face, kind, gone, names | named, scene.job.unit)


def snapped_size(at: Point, opposite: Point, targets: SnapTargets, scene: Scene, held: Held) -> Snap:
    """Where the corner of a box goes whose opposite corner stays; held off, only to the nearest division."""
    place = stepped(at, scene)
    return Snap(*place) if held.free else snap(*place, targets, scene.reach_mm, opposite)


def _box_mm2(part: Part) -> float:
    left, bottom, right, top = outline_box(part.outline)
    return (right - left) * (top - bottom)
