"""Mirror a copy: the picked parts once more, on the other side of a line that is pointed at or typed."""

from desktop.gestures.aiming import aimed
from desktop.gestures.gesture import HELD_NONE, Done, Gesture, Held, Scene, snapped
from desktop.gestures.on_parts import OnceOnParts
from desktop.gestures.pick import Pick, named
from desktop.gestures.preview import NOTHING, Preview
from geometry.edits.copying import mirrored_parts
from geometry.outlines.sides import Point
from geometry.parts.extent import extent
from geometry.snapping.snap import Snap, SnapTargets
from shared.edits.drawn import find_part
from shared.job import View, Way


class MirrorCopy(OnceOnParts):
    """Mirrors a copy of the picked parts about an upright line; in the other variant about a level one.

    Once the copy stands, the hand picks.
    """

    title = "Mirror a copy"
    first_advice = "click the part to mirror"

    def __init__(self, scene: Scene, way: Way = Way.ACROSS) -> None:
        super().__init__(scene)
        self._way = way
        self._here: Snap | None = None
        self._targets: SnapTargets | None = None

    @property
    def wants(self) -> str:
        if not self.parts:
            return ""
        if self._way is Way.ACROSS:
            return "where the line stands, from the left end"
        return "how high the line is" if self.scene.face.view is View.ELEVATION else "how far from the wall the line is"

    @property
    def other_way(self) -> str:
        return "about a level line" if self._way is Way.ACROSS else "about an upright line"

    @property
    def preview(self) -> Preview:
        here, done = self._here, self.pointed
        if here is None or done is None:
            return NOTHING
        spot = (here.x, here.y) if here.words else None
        return done.preview._replace(guides=(*done.preview.guides, *here.guides), spot=spot, words=here.words)

    def point(self, at: Point, held: Held = HELD_NONE) -> None:
        if self._targets is None:
            self._targets = aimed(self.scene)
        self._here = snapped(at, self._targets, self.scene, held)

    def read(self, length_mm: float) -> Done | None:
        return self._mirrored(length_mm)

    def cancel(self) -> None:
        self._here = None

    def turned(self) -> Gesture:
        return type(self)(self.scene, Way.UP if self._way is Way.ACROSS else Way.ACROSS)

    def again(self, scene: Scene) -> Gesture:
        return type(self)(scene, self._way) if self.is_of(scene) else Pick(scene)

    def act(self) -> Done | None:
        here = self._here
        return self._mirrored(here.x if self._way is Way.ACROSS else here.y) if here else None

    def _mirrored(self, about_mm: float) -> Done:
        job, ids = mirrored_parts(self.scene.job, self.scene.picked, about_mm, self._way, copy=True)
        outlines = tuple(find_part(job, part_id)[1].outline for part_id in ids)
        left, bottom, right, top = extent(self.scene.face)
        line = (
            ((about_mm, bottom), (about_mm, top)) if self._way is Way.ACROSS else ((left, about_mm), (right, about_mm))
        )
        return Done(f"Mirror {named(self.parts)}", job, ids, Preview(outlines, guides=(line,)))
