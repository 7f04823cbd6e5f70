"""What can be done to the faces and rooms of a job, as commands."""

from collections.abc import Callable

from msgspec.structs import replace
from PySide6.QtCore import QObject
from PySide6.QtWidgets import QInputDialog, QWidget

from desktop.face_form import NewFace
from desktop.kitchen_form import NewRoom, with_new_room
from desktop.new_faces import new_job, with_new_face
from desktop.shown import Shown
from desktop.store import Store
from geometry.kitchens import with_heights
from shared.edits import (
    copied_face,
    find_face,
    with_changed_face,
    with_changed_room,
    with_face_moved,
    without_face,
    without_room,
)
from shared.job import Corner, Heights, Job, Room, Unit


class Faces(QObject):
    """Each command is one step of history on the face that is shown, or its room."""

    def __init__(self, store: Store, window: QWidget) -> None:
        super().__init__(window)
        self._store = store
        self._window = window

    def add(self, new: NewFace) -> None:
        """A face more: in a room that has none yet, else in the room that is shown, or in a new one."""
        shown = self._store.open
        roomy = shown.job if shown.job.rooms else replace(shown.job, rooms=new_job().rooms)
        empty = next((room for room in roomy.rooms if not room.faces), None)
        job, face = with_new_face(roomy, (empty or room_shown(shown)).id, new)
        self._store.edit(f"Add face {new.name}", job, face=face)

    def copy(self) -> None:
        """A copy of the face, right after it, and shown."""
        shown = self._store.open
        job = copied_face(shown.job, shown.face)
        before = {face.id for face in shown.job.faces}
        fresh = next(face.id for face in job.faces if face.id not in before)
        self._store.edit("Copy face", job, face=fresh)

    def delete(self) -> None:
        """The job without the face."""
        shown = self._store.open
        self._store.edit("Delete face", without_face(shown.job, shown.face))

    def move_left(self) -> None:
        """One place to the left round the room."""
        self._move(-1)

    def move_right(self) -> None:
        """One place to the right."""
        self._move(1)

    def set_corner(self, corner: Corner) -> None:
        """How the face meets the next."""
        job = self._store.open.job
        face = find_face(job, self._store.open.face)
        self._store.edit(f"Corner: {corner.value}", with_changed_face(job, replace(face, corner=corner)))

    def rename(self) -> None:
        """Ask for another name of the face."""
        self._ask("Name of the face", find_face(self._store.open.job, self._store.open.face).name, self._rename)

    def rename_room(self) -> None:
        """Ask for another name of the room."""
        self._ask("Name of the room", room_shown(self._store.open).name, self._rename_room)

    def rename_job(self) -> None:
        """Ask for another name of the job."""
        self._ask("Name of the job", self._store.open.job.name, self._rename_job)

    def add_room(self, new: NewRoom) -> None:
        """A room more, with its walls; the first of them is shown."""
        job = self._store.open.job
        larger = with_new_room(job, new)
        self._store.edit(f"Add room {new.name}", larger, face=larger.rooms[-1].faces[0].id)

    def set_heights(self, heights: Heights) -> None:
        """What is usual in the room that is shown."""
        shown = self._store.open
        job = with_heights(shown.job, room_shown(shown).id, heights)
        if job is not shown.job:
            self._store.edit("Usual heights", job)

    def delete_room(self) -> None:
        """The job without the room that is shown."""
        shown = self._store.open
        self._store.edit("Delete room", without_room(shown.job, room_shown(shown).id))

    def set_unit(self, unit: Unit) -> None:
        """Show and read lengths in this unit."""
        job = self._store.open.job
        if job.unit is not unit:
            self._store.edit(f"Lengths in {unit.value}", replace(job, unit=unit))

    def _move(self, by: int) -> None:
        shown = self._store.open
        faces = room_shown(shown).faces
        place = next(number for number, face in enumerate(faces) if face.id == shown.face)
        job = with_face_moved(shown.job, shown.face, place + by)
        if job != shown.job:
            self._store.edit("Move face", job)

    def _ask(self, words: str, text: str, then: Callable[[str], None]) -> None:
        dialog = QInputDialog(self._window)
        dialog.setWindowTitle(words)
        dialog.setLabelText(words)
        dialog.setTextValue(text)
        dialog.textValueSelected.connect(then)
        dialog.finished.connect(dialog.deleteLater)
        dialog.open()

    def _rename(self, name: str) -> None:
        job = self._store.open.job
        face = find_face(job, self._store.open.face)
        self._edit_name("Rename face", name, with_changed_face(job, replace(face, name=name.strip())))

    def _rename_room(self, name: str) -> None:
        shown = self._store.open
        self._edit_name(
            "Rename room", name, with_changed_room(shown.job, replace(room_shown(shown), name=name.strip()))
        )

    def _rename_job(self, name: str) -> None:
        self._edit_name("Rename job", name, replace(self._store.open.job, name=name.strip()))

    def _edit_name(self, label: str, name: str, job: Job) -> None:
        if name.strip():
            self._store.edit(label, job)


def room_shown(shown: Shown) -> Room:
    """The room of the face that is shown; the last room where none is. IndexError in a job without rooms."""
    for room in shown.job.rooms:
        if any(face.id == shown.face for face in room.faces):
            return room
    return shown.job.rooms[-1]
