"""Opens the forms that lie over the window, and hands on what they say."""

from PySide6.QtCore import QObject, QPoint, Signal

from desktop.files.job import Files
from desktop.rooms.face_commands import Faces
from desktop.rooms.face_form import NewFace
from desktop.rooms.kitchen_form import NewRoom, with_new_room
from desktop.rooms.new_faces import next_name
from desktop.rooms.room_commands import Rooms
from desktop.state.shown import room_shown
from desktop.state.store import Store
from desktop.window.frame import Frame
from desktop.window.main_window import Window
from shared.files.job import JobFile
from shared.job import Heights

OVER_DOORS = QPoint(-24, -12)
"""Where the first door's form opens, from that door's corner: it reaches beyond the door by as much on both sides."""


class Cards(QObject):
    """Opens a form for a face, a room or a room's usual heights, under the strip or over the doors of the start page.

    `gone` says that a form was put away, whatever came of it; `room_stands` that walls were added that are still bare.
    """

    gone = Signal()
    room_stands = Signal()

    def __init__(self, window: Window, frame: Frame, store: Store, files: Files, faces: Faces, rooms: Rooms) -> None:
        super().__init__(window)
        self._window, self._frame, self._store = window, frame, store
        self._files, self._faces, self._rooms = files, faces, rooms
        frame.face_form.filled.connect(self._add_face)
        frame.kitchen_form.filled.connect(self._add_room)
        frame.heights_form.filled.connect(self._set_heights)
        for card in (frame.face_form, frame.kitchen_form, frame.heights_form):
            card.put_away.connect(self.gone)

    def ask_for_face(self) -> None:
        """Open the form for a new face."""
        job = self._store.open.job
        self._frame.face_form.open_for(next_name(job), job.unit, self._frame.below_strip)

    def ask_for_room(self) -> None:
        """Open the form for a room from its wall lengths: a further one, or the first of a new job."""
        shown, door = self._store.shown, self._window.start.new
        place = self._frame.below_strip if shown else door.mapTo(self._window, OVER_DOORS)
        self._frame.kitchen_form.open_for(shown.job if shown else None, place)

    def ask_for_heights(self) -> None:
        """Open the form for the usual heights of the room that is shown."""
        shown = self._store.open
        self._frame.heights_form.open_for(room_shown(shown), shown.unit, self._frame.below_strip)

    def _add_face(self, new: NewFace) -> None:
        self._faces.add(new)
        self.gone.emit()

    def _add_room(self, new: NewRoom) -> None:
        if self._store.shown is None:
            self._files.show_new(JobFile(with_new_room(None, new)))
        else:
            self._rooms.add(new)
        self.gone.emit()
        self.room_stands.emit()

    def _set_heights(self, room: str, heights: Heights) -> None:
        self._rooms.set_heights(room, heights)
        self.gone.emit()
