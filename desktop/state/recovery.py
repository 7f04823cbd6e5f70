"""Keeps a copy of a job that is not saved, so that a crash or an empty battery costs a few seconds of work."""

import contextlib
from pathlib import Path

from PySide6.QtCore import QObject, QStandardPaths, QTimer

from desktop.state.background import Background
from desktop.state.shown import Shown
from desktop.state.store import Store
from shared.errors import RecoatError
from shared.files.job import JobFile, write_job_file

SETTLED_MS = 2000
"""How long after an edit the copy is written. While one edit follows another, it waits."""


class Recovery(QObject):
    """Keeps the copy in the folder of the program's own data. A saved job has no copy."""

    def __init__(self, store: Store, background: Background, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._store = store
        self._background = background
        folder = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.AppDataLocation)
        self.path = Path(folder) / "not-saved.recoat"
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(SETTLED_MS)
        self._timer.timeout.connect(self._keep_soon)
        store.changed.connect(self._follow)

    @property
    def has_copy(self) -> bool:
        """Whether there is a job that was not saved."""
        return self.path.is_file()

    def holds(self, path: Path) -> bool:
        """Whether this path is that of the copy."""
        return path == self.path

    def keep_now(self) -> bool:
        """Write the copy at once, as something went wrong. False if there was nothing to keep."""
        shown = self._store.shown
        if shown is None or shown.is_saved:
            return False
        self._write(shown.file)
        return True

    def forget(self) -> None:
        """Take the copy away: the job is saved, or not wanted."""
        self._timer.stop()
        with contextlib.suppress(OSError):  # A copy that stays is offered at the next start, and does no harm.
            self.path.unlink(missing_ok=True)

    def stop(self) -> None:
        """Write no more copies: the window closes."""
        self._timer.stop()

    def _follow(self, old: Shown | None, new: Shown | None) -> None:
        if new is not None and old is not None and old.job is not new.job and not new.is_saved:
            self._timer.start()

    def _keep_soon(self) -> None:
        shown = self._store.shown
        if shown is None or shown.is_saved:
            return
        file = shown.file

        def work() -> None:
            self._write(file)

        self._background.start("", work, _settled, _not_kept)

    def _write(self, file: JobFile) -> None:
        self.path.parent.mkdir(parents=True, exist_ok=True)
        write_job_file(self.path, file)


def _settled(_: None) -> None:
    """Do nothing: nobody needs to hear of a copy."""


def _not_kept(_: RecoatError) -> None:
    """Do nothing: without a copy the job itself is unharmed, and saving it says what is wrong with the disk."""
