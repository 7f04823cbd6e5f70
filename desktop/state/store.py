"""The store holds the one thing in the window that changes: what is shown.

Every edit goes through `Store.edit`. What it holds is described in `shown`.
"""

from collections.abc import Sequence
from concurrent.futures import CancelledError
from dataclasses import replace
from pathlib import Path
from threading import Event
from typing import NamedTuple

from msgspec import structs
from PySide6.QtCore import QObject, QTimer, Signal

from desktop.state.shown import Overlay, Page, Shown, kept_face, kept_parts
from geometry.checking import check_outlines
from geometry.seen.arrange import arrange
from geometry.seen.arrangement import Arrangement
from shared.checks.job import check_job
from shared.edits.drawn import find_face
from shared.errors import RecoatError
from shared.files.job import JobFile, Photo
from shared.history import History
from shared.job import Job, Part
from takeoff.bill import Bill
from takeoff.figures.measured import EdgeRow, Fronts, Takeoff
from takeoff.memory import Arranging, Memory
from takeoff.surfaces.tags import with_tags_given
from takeoff.take_off import take_off

FIGURES_MS = 40
"""How long after a hand's first move the figures follow: at 25 times a second a person still sees them change."""


class Opened(NamedTuple):
    """A job from a file, its takeoff, and the memory of its faces, which the window uses from now on."""

    file: JobFile
    takeoff: Takeoff
    memory: Memory


def counted_file(file: JobFile, stopped: Event | None = None) -> Opened:
    """The job of a job file, counted for the first time. RecoatError if it cannot be measured.

    Fronts that were saved without a tag get the one that they had. CancelledError, before the next face, once this is
    `stopped`.
    """
    memory = Memory(_arranging_until(stopped) if stopped else arrange)
    tagged = file._replace(job=with_tags_given(file.job))
    return Opened(tagged, take_off(tagged.job, memory), memory)


def _arranging_until(stopped: Event) -> Arranging:
    def arranging(parts: Sequence[Part]) -> Arrangement:
        if stopped.is_set():
            raise CancelledError
        return arrange(parts)

    return arranging


class Store(QObject):
    """Holds what is shown; every view redraws what differs between the two values of `changed(old, new)`.

    `old` or `new` is None where no job is open. A job opens on the page `first`. An edit that makes no sense is not
    taken: `refused` says why, in words. `left(old)` comes before another job, or none, takes the place of this one.
    """

    changed = Signal(object, object)
    left = Signal(object)
    refused = Signal(str)

    def __init__(self, first: Page, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._first = first
        self.memory = Memory()
        self._count_soon = QTimer(self)
        self._count_soon.setSingleShot(True)
        self._count_soon.setInterval(FIGURES_MS)
        self._count_soon.timeout.connect(self._count_tried)
        self._shown: Shown | None = None
        self._counted: Takeoff | None = None  # the takeoff of the job itself, while another job is tried out

    @property
    def shown(self) -> Shown | None:
        """What is shown; None if no job is open."""
        return self._shown

    @property
    def open(self) -> Shown:
        """What is shown. RuntimeError if no job is open: commands that need one are switched off then."""
        if self._shown is None:
            raise RuntimeError("no job is open")
        return self._shown

    def show_job(self, opened: Opened, path: Path | None, *, saved: bool) -> None:
        """Show a job that was opened or begun, with nothing to undo."""
        file, takeoff, self.memory = opened
        start = Shown(
            history=History(file.job),
            takeoff=takeoff,
            page=self._first,
            photos=file.photos,
            path=path,
            saved=file.job if saved else None,
            face=kept_face(file.job, ""),
        )
        self._leave()
        self._show(start)

    def close_job(self) -> None:
        """Show no job."""
        self._leave()
        self._show(None)

    def edit(self, label: str, job: Job, *, face: str = "", picked: tuple[str, ...] | None = None) -> bool:
        """Take one edit into the history, then show this face and pick these parts. False if the edit is refused.

        New fronts get their tags, which stay with them from then on.
        Without `face` and `picked` the face and the picked parts stay as they are.
        """
        shown = self.open
        try:
            check_job(job)
            check_outlines(_changed_part(job, shown.job))
            job = with_tags_given(job, shown.job)
            takeoff = take_off(job, self.memory)
        except RecoatError as error:
            self._show(self._without_trial(shown))
            self.refused.emit(str(error))
            return False
        edited = replace(shown, history=shown.history.with_edit(job, label), takeoff=takeoff, tried=None)
        self._show(self._kept(edited, face or shown.face, shown.picked if picked is None else picked))
        return True

    def keep_photo(self, photo: Photo) -> None:
        """Keep a photo for a face to name."""
        if photo not in self.open.photos:
            self._show(replace(self.open, photos=(*self.open.photos, photo)))

    def try_out(self, job: Job | None) -> None:
        """Show a job that is no edit yet, and soon its figures; None ends that."""
        shown = self.open
        if job is None:
            self._show(self._without_trial(shown))
            return
        try:
            self.memory.arrangement(job, find_face(job, shown.face), shown.fronts)
        except RecoatError:
            return  # The shape cannot be measured, but is on the way to one that can.
        self._show(replace(shown, tried=job))
        if not self._count_soon.isActive():
            self._count_soon.start()

    def undo(self) -> None:
        """Take back the latest edit."""
        self._go_to(self.open.history.undone())

    def redo(self) -> None:
        """Make the edit again that was taken back last."""
        self._go_to(self.open.history.redone())

    def mark_saved(self, job: Job, path: Path) -> None:
        """Say that the file at this path holds this job now."""
        self._show(replace(self.open, saved=job, path=path))

    def show_face(self, face: str, picked: tuple[str, ...] = ()) -> None:
        """Show a face with these parts picked."""
        self._show(self._kept(self.open, face, picked))

    def pick(self, parts: tuple[str, ...]) -> None:
        """Pick these parts of the face that is shown, and no others."""
        if parts != self.open.picked:
            self._show(self._kept(self.open, self.open.face, parts))

    def light(self, parts: tuple[str, ...], face: str = "", edges: tuple[EdgeRow, ...] = ()) -> None:
        """Light up what a row of the page Count was measured from, on the face where that is."""
        self._show(replace(self._kept(self.open, face or self.open.face, ()), lit=parts, lit_edges=edges))

    def show_bill(self, bill: Bill) -> None:
        """Show what the job needs and costs, if the bill is of the job that is still open."""
        if self._shown is not None and self._shown.job is bill.job:
            self._show(replace(self._shown, bill=bill))

    def turn_to(self, page: Page) -> None:
        """Turn to a page; what was tried out on another is dropped."""
        shown = self.open if page is self.open.page else self._without_trial(self.open)
        self._show(replace(shown, page=page, fronts=page.fronts, lit=(), lit_edges=()))

    def hang_fronts(self, fronts: Fronts) -> None:
        """Show the face with its fronts hung or off."""
        self._show(replace(self.open, fronts=fronts))

    def turn_overlay(self, overlay: Overlay) -> None:
        """Show an overlay on the face, or leave it out if it is shown."""
        self._show(replace(self.open, overlays=self.open.overlays ^ {overlay}))

    def _leave(self) -> None:
        if self._shown is not None:
            self.left.emit(self._shown)

    def _count_tried(self) -> None:
        shown = self._shown
        if shown is not None and shown.tried is not None:
            self._show(replace(shown, takeoff=take_off(shown.tried, self.memory, sure=False)))

    def _go_to(self, history: History[Job]) -> None:
        shown = replace(self.open, history=history, takeoff=take_off(history.present, self.memory), tried=None)
        self._show(self._kept(shown, shown.face, shown.picked))

    def _without_trial(self, shown: Shown) -> Shown:
        """What is shown, without the job that is tried out and with the figures counted before it."""
        if shown.tried is None or self._counted is None:
            return shown
        # A picked part that was only tried out is gone.
        picked = kept_parts(shown.job, shown.face, shown.picked)
        return replace(shown, tried=None, takeoff=self._counted, picked=picked)

    def _kept(self, shown: Shown, face: str, picked: tuple[str, ...]) -> Shown:
        kept = kept_face(shown.now, face)
        return replace(shown, face=kept, picked=kept_parts(shown.now, kept, picked), lit=(), lit_edges=())

    def _show(self, new: Shown | None) -> None:
        old = self._shown
        if new is None or new.tried is None:
            self._count_soon.stop()
            self._counted = new.takeoff if new else None
        if new is not old:
            self._shown = new
            self.changed.emit(old, new)


def _changed_part(job: Job, before: Job) -> Job:
    """The job with only the faces that an edit touched: the others are known to be measurable."""
    known = frozenset(map(id, before.faces))
    rooms = (
        structs.replace(room, faces=tuple(face for face in room.faces if id(face) not in known)) for room in job.rooms
    )
    return structs.replace(job, rooms=tuple(rooms))
