"""The commands that change or pick parts of the face that is shown."""

from collections.abc import Callable

from PySide6.QtCore import QObject

from desktop.gestures.gesture import Done, Scene
from desktop.measure.acts import deleted, duplicated, nudged, pasted, picked_parts
from desktop.state.shown import Overlay
from desktop.state.store import Store
from geometry.edits.copying import mirrored_parts
from geometry.edits.hand import locked
from geometry.edits.lining_up import Alignment, aligned, evened_out
from geometry.parts.alike import in_reading_order, same_kind, same_size
from shared.edits.drawn import raised
from shared.errors import RecoatError
from shared.job import Face, Job, Part, Way
from takeoff.edges.joints import with_joint_by_hand
from takeoff.take_off import take_off


class Parts(QObject):
    """Commands on the picked parts; each that changes something is one edit for undo.

    What was copied can be pasted on any face.
    """

    def __init__(self, store: Store, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._store = store
        self._copied: tuple[Part, ...] = ()

    def delete(self) -> None:
        """Delete the picked parts."""
        self._do(deleted)

    def duplicate(self) -> None:
        """Put a copy of each picked part beside it."""
        self._do(duplicated)

    def nudge(self, dx_mm: float, dy_mm: float) -> None:
        """Move the picked parts by these millimetres."""
        self._do(lambda scene: nudged(scene, dx_mm, dy_mm))

    def copy(self) -> None:
        """Keep the picked parts for pasting."""
        self._copied = picked_parts(self._scene())

    def cut(self) -> None:
        """Keep the picked parts for pasting, and take them off the face."""
        self.copy()
        self.delete()

    def paste(self) -> None:
        """Put what was copied on the face that is shown."""
        self._do(lambda scene: pasted(scene, self._copied))

    def pick_all(self) -> None:
        """Pick every part of the face."""
        face = self._store.open.shown_face
        if face is not None:
            self._store.pick(tuple(part.id for part in face.parts))

    def pick_kind(self) -> None:
        """Pick every part of the face whose kind is that of a picked one."""
        self._pick(same_kind)

    def pick_size(self) -> None:
        """Pick every part of the face that is as wide and as high as a picked one."""
        self._pick(same_size)

    def pick_next(self) -> None:
        """Pick the part after the picked one, from left to right and upwards; the first if none is picked."""
        self._go(1)

    def pick_before(self) -> None:
        """Pick the part before the picked one; the last if none is picked."""
        self._go(-1)

    def line_up(self, alignment: Alignment) -> None:
        """Bring the edges or middles of the picked parts into one line."""
        self._change(f"Line up {alignment.value}", lambda job, picked: aligned(job, picked, alignment))

    def even_out(self, way: Way) -> None:
        """Make the gaps between the picked parts equal."""
        self._change("Even out the gaps", lambda job, picked: evened_out(job, picked, way))

    def mirror(self, way: Way) -> None:
        """Mirror the picked parts about their middle."""
        self._change("Mirror", lambda job, picked: mirrored_parts(job, picked, None, way)[0])

    def lock(self, *, on: bool) -> None:
        """Lock the picked parts, so that the hand cannot change them, or unlock them."""
        self._change("Lock" if on else "Unlock", lambda job, picked: locked(job, picked, on))

    def seal(self) -> None:
        """Seal the joint where the two picked parts meet, though no rule asks for it."""
        shown = self._store.open
        first, second = shown.picked
        if any(row.sealed and set(row.parts) == {first, second} for row in shown.takeoff.joints):
            self._store.refused.emit("The joint between these two is sealed already. See it in Count.")
            return
        job = with_joint_by_hand(shown.job, shown.face, (first, second))
        if not any(set(row.parts) == {first, second} for row in take_off(job, self._store.memory).joints):
            self._store.refused.emit("These two parts do not touch when the fronts are off. Pick two parts that touch.")
        elif self._store.edit("Seal a joint", job) and Overlay.JOINTS not in shown.overlays:
            self._store.turn_overlay(Overlay.JOINTS)

    def raise_level(self) -> None:
        """Raise the picked parts by one level, in front of parts of other kinds."""
        self._raise("Raise", 1)

    def lower_level(self) -> None:
        """Lower the picked parts by one level, behind parts of other kinds."""
        self._raise("Lower", -1)

    def _pick(self, alike: Callable[[Face, tuple[str, ...]], tuple[str, ...]]) -> None:
        shown = self._store.open
        if shown.shown_face is not None:
            self._store.pick(alike(shown.shown_face, shown.picked))

    def _go(self, by: int) -> None:
        shown = self._store.open
        ids = in_reading_order(shown.shown_face.parts) if shown.shown_face else ()
        if ids:
            at = ids.index(shown.picked[-1]) + by if shown.picked else min(by, 0)
            self._store.pick((ids[at % len(ids)],))

    def _change(self, label: str, change: Callable[[Job, tuple[str, ...]], Job]) -> None:
        """Make one edit to the picked parts. If it is refused, the store says why in words."""
        shown = self._store.open
        try:
            job = change(shown.job, shown.picked)
        except RecoatError as error:
            self._store.refused.emit(str(error))
            return
        if job != shown.job:
            self._store.edit(label, job)

    def _raise(self, label: str, by: int) -> None:
        shown = self._store.open
        if shown.picked:
            self._store.edit(label, raised(shown.job, shown.picked, by))

    def _scene(self) -> Scene:
        shown = self._store.open
        return Scene(shown.job, shown.face, shown.picked)

    def _do(self, act: Callable[[Scene], Done | None]) -> None:
        shown = self._store.shown
        if shown is None or not shown.face:
            return
        try:
            done = act(self._scene())
        except RecoatError as error:
            self._store.refused.emit(str(error))
            return
        if done is not None:
            self._store.edit(done.label, done.job, picked=done.picked)
