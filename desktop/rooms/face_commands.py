"""The commands that change the faces of a job, and the job's own name, unit and tape."""

from msgspec.structs import replace
from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

from desktop.fields.asking import ask_for_name
from desktop.rooms.face_form import NewFace
from desktop.rooms.new_faces import LONGEST_LETTER, new_job, with_new_face
from desktop.state.shown import room_shown
from desktop.state.store import Store
from shared.edits.drawn import (
    copied_face,
    find_face,
    with_changed_face,
    with_face_moved,
    without_face,
)
from shared.job import Corner, Unit
from shared.trade.tape import TapeClass
from takeoff.surfaces.tags import renumbered


class Faces(QObject):
    """Commands on the face that is shown and on the job. Each that changes something is one edit for undo."""

    def __init__(self, store: Store, window: QWidget) -> None:
        super().__init__(window)
        self._store = store
        self._window = window

    def add(self, new: NewFace) -> None:
        """Add a face: to a room that has none yet, else to the room that is shown, or to a new room."""
        shown = self._store.open
        roomy = shown.job if shown.job.rooms else replace(shown.job, rooms=new_job().rooms)
        empty = next((room for room in roomy.rooms if not room.faces), None)
        job, face = with_new_face(roomy, (empty or room_shown(shown)).id, new)
        self._store.edit(f"Add face {new.name}", job, face=face)

    def copy(self) -> None:
        """Put a copy of the face right after it, and show the copy."""
        shown = self._store.open
        job = copied_face(shown.job, shown.face)
        before = {face.id for face in shown.job.faces}
        fresh = next(face.id for face in job.faces if face.id not in before)
        self._store.edit("Copy face", job, face=fresh)

    def delete(self) -> None:
        """Delete the face from the job."""
        shown = self._store.open
        self._store.edit("Delete face", without_face(shown.job, shown.face))

    def show_next(self) -> None:
        """Show the face to the right; after the last comes the first."""
        self._go(1)

    def show_before(self) -> None:
        """Show the face to the left; before the first comes the last."""
        self._go(-1)

    def move_left(self) -> None:
        """Move the face one place to the left in its room."""
        self._move(-1)

    def move_right(self) -> None:
        """Move the face one place to the right in its room."""
        self._move(1)

    def set_corner(self, corner: Corner) -> None:
        """Say how the face meets the next one."""
        job = self._store.open.job
        face = find_face(job, self._store.open.face)
        self._store.edit(f"Corner: {corner.value}", with_changed_face(job, replace(face, corner=corner)))

    def rename(self) -> None:
        """Ask for another name of the face. The tags of its fronts stay as they are."""
        name = find_face(self._store.open.job, self._store.open.face).name
        ask_for_name(self._window, "Name of the face", name, self._rename)

    def change_letter(self) -> None:
        """Ask for another letter for the tags of the face, which change with it."""
        letter = find_face(self._store.open.job, self._store.open.face).tag_letter
        ask_for_name(self._window, "Letter of the face's tags", letter, self._change_letter)

    def renumber(self) -> None:
        """Number the tags of the face anew."""
        shown = self._store.open
        job = renumbered(shown.job, shown.face)
        if job is not shown.job:
            self._store.edit(f"Renumber the tags of {find_face(job, shown.face).called}", job)

    def rename_job(self) -> None:
        """Ask for another name of the job."""
        ask_for_name(self._window, "Name of the job", self._store.open.job.name, self._rename_job)

    def set_unit(self, unit: Unit) -> None:
        """Show and read lengths in this unit."""
        job = self._store.open.job
        if job.unit is not unit:
            self._store.edit(f"Lengths in {unit.value}", replace(job, unit=unit))

    def set_tape(self, tape: TapeClass) -> None:
        """Say the accuracy class that is printed on the tape."""
        job = self._store.open.job
        if job.tape is not tape:
            self._store.edit(f"Tape of class {tape}", replace(job, tape=tape))

    def _go(self, by: int) -> None:
        ids = [face.id for face in self._store.open.job.faces]
        self._store.show_face(ids[(ids.index(self._store.open.face) + by) % len(ids)])

    def _move(self, by: int) -> None:
        shown = self._store.open
        faces = room_shown(shown).faces
        place = next(number for number, face in enumerate(faces) if face.id == shown.face)
        job = with_face_moved(shown.job, shown.face, place + by)
        if job != shown.job:
            self._store.edit("Move face", job)

    def _rename(self, name: str) -> None:
        job = self._store.open.job
        face = find_face(job, self._store.open.face)
        self._store.edit("Rename face", with_changed_face(job, replace(face, name=name, letter=face.tag_letter)))

    def _change_letter(self, letter: str) -> None:
        if len(letter) > LONGEST_LETTER:
            self._store.refused.emit(f"A tag begins with at most {LONGEST_LETTER} characters; type a letter such as K.")
            return
        job = self._store.open.job
        face = find_face(job, self._store.open.face)
        self._store.edit(f"Tags begin with {letter}", with_changed_face(job, replace(face, letter=letter)))

    def _rename_job(self, name: str) -> None:
        self._store.edit("Rename job", replace(self._store.open.job, name=name))
