"""What can be done to the picked parts, as commands."""

from collections.abc import Callable

from PySide6.QtCore import QObject

from desktop.gestures.acts import deleted, duplicated, nudged, pasted, picked_parts
from desktop.gestures.gesture import Done, Scene
from desktop.store import Store
from shared.edits import raised
from shared.errors import RecoatError
from shared.job import Part


class Parts(QObject):
    """Each command is one step of history. What was copied can be pasted on any face."""

    def __init__(self, store: Store, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._store = store
        self._copied: tuple[Part, ...] = ()

    @property
    def can_paste(self) -> bool:
        """Whether anything was copied."""
        return bool(self._copied)

    def delete(self) -> None:
        """The face without the picked parts."""
        self._do(deleted)

    def duplicate(self) -> None:
        """The picked parts once more, beside themselves."""
        self._do(duplicated)

    def nudge(self, dx_mm: float, dy_mm: float) -> None:
        """The picked parts a little aside."""
        self._do(lambda scene: nudged(scene, dx_mm, dy_mm))

    def copy(self) -> None:
        """Keep the picked parts for pasting."""
        self._copied = picked_parts(self._scene())

    def cut(self) -> None:
        """Keep the picked parts for pasting, and take them off the face."""
        self.copy()
        self.delete()

    def paste(self) -> None:
        """What was copied, on the face that is shown."""
        self._do(lambda scene: pasted(scene, self._copied))

    def pick_all(self) -> None:
        """Pick every part of the face."""
        face = self._store.open.shown_face
        if face is not None:
            self._store.pick(tuple(part.id for part in face.parts))

    def raise_level(self) -> None:
        """The picked parts in front of those of other kinds."""
        self._raise("Raise", 1)

    def lower_level(self) -> None:
        """The picked parts behind those of other kinds."""
        self._raise("Lower", -1)

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
