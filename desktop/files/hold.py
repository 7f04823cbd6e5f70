"""What is held of the file of the open job, from opening it until the job or the window closes."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QObject, QTimer

from desktop.state.background import Background
from desktop.state.shown import Shown
from desktop.state.store import Store
from shared.errors import RecoatError
from shared.files.claim import REFRESH_S
from shared.files.held import Held, Read, read_held, write_held
from shared.files.job import JobFile


class Hold(QObject):
    """Keeps the claim on the file of the open job, and gives it up when another job or file is shown.

    `read` and `write` are work for the background. What they hold they keep at once, so that a save that was asked for
    before another had ended builds on what that one wrote.
    """

    def __init__(self, store: Store, background: Background, parent: QObject) -> None:
        super().__init__(parent)
        self._background = background
        self._path: Path | None = None
        self._held = Held()
        self._timer = QTimer(self)
        self._timer.setInterval(REFRESH_S * 1000)
        self._timer.timeout.connect(self._refresh_soon)
        store.changed.connect(self._follow)

    def read(self, path: Path, read: Callable[[Path], Read]) -> Read:
        """What `read` gives of the job in this file, which is held from now on. See `shared.files.held`."""
        given, held = read_held(path, self._of(path), read)
        self._keep(path, held)
        return given

    def write(self, path: Path, file: JobFile, *, replacing_changes: bool) -> None:
        """Write the job to this file, which is held from now on. See `shared.files.held`."""
        held = self._of(path)
        self._keep(path, write_held(path, file, Held(held.claim) if replacing_changes else held))

    def give_up(self) -> None:
        """Hold nothing any more: the job or the window closes."""
        self._timer.stop()
        self._keep(None, Held())

    def _of(self, path: Path) -> Held:
        return self._held if path == self._path else Held()

    def _keep(self, path: Path | None, held: Held) -> None:
        before = self._held.claim
        self._path, self._held = path, held
        if before is not None and before is not held.claim:
            before.give_up()

    def _follow(self, old: Shown | None, new: Shown | None) -> None:
        path, path_before = new and new.path, old and old.path
        if path is not None and path == self._path:
            if not self._timer.isActive():
                self._timer.start()
        elif path != path_before:
            self.give_up()

    def _refresh_soon(self) -> None:
        if self._held.claim is not None:
            self._background.start("", self._held.claim.refresh, _settled, _not_refreshed)


def _settled(_: None) -> None:
    """Do nothing: nobody needs to hear of a claim."""


def _not_refreshed(_: RecoatError) -> None:
    """Do nothing: without its claim the job is unharmed, and saving it looks at the file once more."""
