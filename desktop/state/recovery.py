"""Keeps a copy of a job that is not saved, so that a crash or an empty battery costs two seconds of work at most."""

from collections.abc import Callable
from functools import partial
from pathlib import Path

from PySide6.QtCore import QObject, QStandardPaths, QTimer, Signal

from desktop.state.background import Background
from desktop.state.copies import Found, KeptCopy, find_copies, new_copy, put_aside_words
from desktop.state.shown import Shown
from desktop.state.store import Store
from shared.errors import RecoatError
from shared.job import Job

UNKEPT_MS = 1200
"""How long the first edit that is in no copy waits for one. Later edits do not prolong it.

With the time to write the copy it stays below two seconds.
"""

LOOKS_MS = 500
"""How long a window holds a copy at most that it only looks at."""


class Recovery(QObject):
    """Keeps this window's copy in the folder of the program's own data. A saved job has no copy.

    `stamp` gives the stamp that is known of a job's own file. `told(words)` says, once, what went wrong.
    `found(offers)` says which copies of other windows nobody holds. Copies are written by a thread of their own, so
    that they wait for no other work.
    """

    told = Signal(str)
    found = Signal(object)

    def __init__(
        self,
        store: Store,
        stamp: Callable[[Path], str | None],
        folder: Path | None = None,
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self._stamp = stamp
        own = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.AppDataLocation)
        self.folder = folder or Path(own)
        self._store = store
        self._background = Background(self)
        self._copy: KeptCopy | None = None
        self._given_up: Job | None = None
        self._is_writing, self._is_due, self._has_failed = False, False, False
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(UNKEPT_MS)
        self._timer.timeout.connect(self._keep_soon)
        store.changed.connect(self._follow)
        store.left.connect(self._end)

    def holds(self, path: Path) -> bool:
        """Whether this path is that of a copy."""
        return path.parent == self.folder

    def look(self) -> None:
        """Look for copies that no window holds; `found` follows, and `told` for each that is damaged."""
        self._background.start("", partial(find_copies, self.folder), self._offer, self._not_kept)

    def keep_now(self) -> bool:
        """Write the copy at once and wait for it. False if there is nothing to keep. FileError where that fails."""
        shown = self._unsaved()
        if shown is None:
            return False
        copy = self._own_copy()
        self._background.run_now(partial(self._write, copy, shown))
        return True

    def give_up(self, job: Job | None) -> None:
        """The person does not want to save this job as it is; its copy goes when the job does. None takes that back."""
        self._given_up = job

    def has_given_up(self, job: Job) -> bool:
        """Whether the person does not want to save this job as it is."""
        return self._given_up is job

    def claim(self, copy: KeptCopy) -> bool:
        """Hold a copy, so that no other window takes it up. False if it is held or gone already."""
        if not copy.hold(LOOKS_MS):
            return False
        if copy.path.is_file():
            return True
        copy.let_go()
        return False

    def adopt(self, copy: KeptCopy) -> None:
        """The copy that was claimed is this window's from now on: the job in it is shown."""
        self._timer.stop()
        self._copy = copy
        self.look()

    def discard(self, copy: KeptCopy) -> None:
        """Take a copy away that the person does not want, unless another window has taken it up meanwhile."""

        def work() -> None:
            if copy.hold():
                copy.remove()

        self._background.start("", work, _settled, self._not_kept)
        self.look()

    def put_aside(self, copy: KeptCopy, trouble: RecoatError) -> None:
        """Put a copy aside whose job cannot be shown, and say so."""
        if not copy.path.is_file():
            self.told.emit("This copy is gone: it was recovered or discarded in another window.")
        elif copy.hold():
            self.told.emit(put_aside_words(copy, trouble))
        self.look()

    def stop(self) -> None:
        """Write no more copies: the window closes. What was neither saved nor given up keeps its copy."""
        self._store.changed.disconnect(self._follow)
        self._store.left.disconnect(self._end)
        if self._store.shown is not None:
            self._end(self._store.shown)
        self._background.join()

    def _follow(self, old: Shown | None, new: Shown | None) -> None:
        if new is None:
            self.look()
            return
        if old is not None and old.job is new.job and old.saved is new.saved and old.path == new.path:
            return
        if new.is_saved:
            self._drop()
        elif not self._timer.isActive():
            self._timer.start()

    def _end(self, old: Shown) -> None:
        """The copy goes with a job that was saved or given up; that of any other stays, for whoever takes it up."""
        if old.is_saved or self.has_given_up(old.job):
            self._drop()
        elif self._copy is not None:
            self._background.start("", self._copy.let_go, _settled, self._not_kept)
        self._timer.stop()
        self._copy = self._given_up = None

    def _drop(self) -> None:
        self._timer.stop()
        copy, self._copy = self._copy, None
        if copy is not None:
            self._background.start("", copy.remove, _settled, self._not_kept)

    def _unsaved(self) -> Shown | None:
        """What is shown, if it would be lost."""
        shown = self._store.shown
        return None if shown is None or shown.is_saved or self.has_given_up(shown.job) else shown

    def _own_copy(self) -> KeptCopy:
        self._copy = self._copy or new_copy(self.folder)
        return self._copy

    def _write(self, copy: KeptCopy, shown: Shown) -> None:
        copy.write(shown.file, shown.path, None if shown.path is None else self._stamp(shown.path))

    def _keep_soon(self) -> None:
        shown = self._unsaved()
        self._is_due = self._is_writing
        if shown is None or self._is_writing:
            return
        copy = self._own_copy()
        self._is_writing = True

        def work() -> None:
            try:
                self._write(copy, shown)
            finally:
                self._is_writing = False

        self._background.start("", work, self._go_on, self._go_on_without)

    def _go_on(self, _: None = None) -> None:
        """A copy stands, or could not be made: make the one that became due meanwhile."""
        if self._is_due:
            self._keep_soon()

    def _go_on_without(self, trouble: RecoatError) -> None:
        self._not_kept(trouble)
        self._go_on()

    def _offer(self, found: Found) -> None:
        for words in found.damaged:
            self.told.emit(words)
        self.found.emit(found.offers)

    def _not_kept(self, trouble: RecoatError) -> None:
        if not self._has_failed:
            self._has_failed = True
            self.told.emit(f"No copy of your unsaved work can be kept, so save it often. {trouble}")


def _settled(_: None) -> None:
    """Do nothing: nobody needs to hear of a copy."""
