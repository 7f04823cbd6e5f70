"""The commands that change the rooms of a job."""

from msgspec.structs import replace
from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QWidget

from desktop.fields.asking import ask_for_name
from desktop.rooms.kitchen_form import NewRoom, with_new_room
from desktop.state.shown import room_shown
from desktop.state.store import Store
from geometry.kitchens.walls import with_heights
from shared.edits.drawn import with_changed_room, without_room
from shared.errors import RecoatError
from shared.job import Heights
from takeoff.faces.benchtop_plans import with_benchtop_plans


class Rooms(QObject):
    """Commands on the room that is shown; each is one edit for undo. `laid_out` says that benchtops got their plans."""

    laid_out = Signal()

    def __init__(self, store: Store, window: QWidget) -> None:
        super().__init__(window)
        self._store = store
        self._window = window

    def add(self, new: NewRoom) -> None:
        """Add a room with its walls, and show the first wall."""
        larger = with_new_room(self._store.open.job, new)
        self._store.edit(f"Add room {new.name}", larger, face=larger.rooms[-1].faces[0].id)

    def rename(self) -> None:
        """Ask for another name of the room."""
        ask_for_name(self._window, "Name of the room", room_shown(self._store.open).name, self._rename)

    def delete(self) -> None:
        """Delete the room from the job."""
        shown = self._store.open
        self._store.edit("Delete room", without_room(shown.job, room_shown(shown).id))

    def set_heights(self, room: str, heights: Heights) -> None:
        """Set the usual heights of a room, which by now may be another than the one that is shown."""
        shown = self._store.open
        try:
            job = with_heights(shown.job, room, heights)
        except RecoatError as error:
            self._store.refused.emit(str(error))
            return
        if job is not shown.job:
            self._store.edit("Usual heights", job)

    def lay_out_benchtops(self, *, mitred: bool) -> None:
        """Make a plan for each benchtop that has none, butted or mitred at its corners, and show the first plan."""
        shown = self._store.open
        try:
            job, plans = with_benchtop_plans(shown.job, room_shown(shown).id, mitred=mitred)
        except RecoatError as error:
            self._store.refused.emit(str(error))
            return
        if self._store.edit("Lay out the benchtops", job, face=plans[0], picked=()):
            self.laid_out.emit()

    def _rename(self, name: str) -> None:
        shown = self._store.open
        self._store.edit("Rename room", with_changed_room(shown.job, replace(room_shown(shown), name=name)))
