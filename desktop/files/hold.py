"""What is held of the file of the open job, from opening it until the job or the window closes."""

from collections.abc import Callable
from functools import partial
from pathlib import Path

from PySide6.QtCore import QObject, QTimer

from desktop.state.background import Background
from desktop.state.shown import Shown
from desktop.state.store import Store
from shared.errors import RecoatError
from shared.files.claim import REFRESH_S, claim, file_of_claim
from shared.files.held import Held, Read, read_held, write_held
from shared.files.job import JobFile


class Hold(QObject):
    """Keeps the claim on the file of the open job, and gives it up when another job or file is shown.

    Opening and saving claim a file before it is shown, and `settle` follows them: it gives up every claim but the one
    on the file that is shown by then. What was in a file stays known when its claim is given up. `read` and `write` are
    work for the background, which alone changes what is held, one piece of work after another.
    """

    def __init__(self, store: Store, background: Background, parent: QObject) -> None:
        super().__init__(parent)
        self._store, self._background = store, background
        self._held: dict[Path, Held] = {}  # by the file of the claim, the same one for a link and what it leads to
        self._timer = QTimer(self)
        self._timer.setInterval(REFRESH_S * 1000)
        self._timer.timeout.connect(self._refresh_soon)
        self._timer.start()
        store.changed.connect(self._follow)

    def read(self, path: Path, read: Callable[[Path], Read]) -> Read:
        """What `read` gives of the job in this file, which is held from now on. See `shared.files.held`."""
        file = file_of_claim(path)
        given, self._held[file] = read_held(path, self._of(file), read)
        return given

    def write(self, path: Path, job_file: JobFile, *, replacing_changes: bool) -> None:
        """Write the job to this file, which is held from now on. See `shared.files.held`."""
        file = file_of_claim(path)
        held = self._of(file)
        self._held[file] = write_held(path, job_file, Held(held.claim) if replacing_changes else held)

    def stamp(self, path: Path) -> str | None:
        """The stamp of what this file held when it was read or written last; None if it was neither."""
        return self._of(file_of_claim(path)).stamp

    def know(self, path: Path, stamp: str | None) -> None:
        """Take this for the stamp of what the file held when its job was read: a copy of unsaved work remembers it."""

        def work() -> None:
            file = file_of_claim(path)
            self._held[file] = Held(self._of(file).claim, stamp)

        self._background.start("", work, _settled, _settled)

    def settle(self) -> None:
        """Hold soon the file of the job that is shown by now, and no other."""
        shown = self._store.shown
        path = shown.path if shown is not None else None
        self._background.start("", partial(self._hold_only, path), _settled, _settled)

    def give_up(self) -> None:
        """Hold nothing any more: the window closes, and nothing is done in the background."""
        self._timer.stop()
        self._hold_only(None)

    def _of(self, file: Path) -> Held:
        return self._held.get(file, Held())

    def _hold_only(self, path: Path | None) -> None:
        kept = path and file_of_claim(path)
        for file, held in self._held.items():
            if file != kept and held.claim is not None:
                held.claim.give_up()
                self._held[file] = Held(None, held.stamp)
        if path is not None and kept is not None:
            held = self._of(kept)
            self._held[kept] = Held(claim(path, held.claim), held.stamp)

    def _follow(self, old: Shown | None, new: Shown | None) -> None:
        if (new and new.path) != (old and old.path):
            self.settle()

    def _refresh_soon(self) -> None:
        self._background.start("", self._refresh, _settled, _settled)

    def _refresh(self) -> None:
        for held in self._held.values():
            if held.claim is not None:
                held.claim.refresh()


def _settled(_: RecoatError | None) -> None:
    """Do nothing: without its claim the job is unharmed, and saving it claims the file once more or says who has it."""
