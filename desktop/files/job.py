"""Opening, saving and leaving a job, so that nothing is lost."""

from collections.abc import Callable
from datetime import UTC, datetime
from functools import partial
from pathlib import Path
from threading import Event

from PySide6.QtCore import QObject, QSettings, Signal
from PySide6.QtWidgets import QFileDialog, QWidget

from desktop.files.hold import Hold
from desktop.files.questions import ask_about_changed, ask_about_held
from desktop.look.plain import Question, file_words
from desktop.state.background import Background
from desktop.state.recovery import Recovery
from desktop.state.store import Opened, Store, counted_file
from shared.errors import RecoatError
from shared.files.claim import HeldError
from shared.files.job import JobFile
from shared.files.stamp import ChangedError
from shared.written.moments import moment_words
from takeoff.opening import open_job

JOB_FILES = "Recoat jobs (*.recoat *.json)"
ENDING = "recoat"
MOST_RECENT = 10

Then = Callable[[], None]


class Files(QObject):
    """Brings jobs from disk to the store and back. `failed(words)` says why a file cannot be read or written.

    `saved(words)` says what was saved.
    """

    failed = Signal(str)
    saved = Signal(str)
    recent_changed = Signal()

    def __init__(self, store: Store, background: Background, recovery: Recovery, hold: Hold, window: QWidget) -> None:
        super().__init__(window)
        self._store = store
        self._background = background
        self._recovery = recovery
        self._hold = hold
        self._window = window
        self._then: Then | None = None  # what waits for a save that the person answered to a question
        self._jobs_left = 0
        store.left.connect(self._count_left)

    @property
    def recent(self) -> tuple[Path, ...]:
        """The files that were opened or saved last, latest first; those that are gone are left out."""
        kept = QSettings().value("recent", [])
        names = kept if isinstance(kept, list) else [kept]
        return tuple(path for path in map(Path, map(str, names)) if path.is_file())

    def open(self) -> None:
        """Ask for a file and open it."""
        self.leave(self._ask_for_file)

    def open_path(self, path: Path, *, own: bool = True) -> None:
        """Open this file. A file that is not the person's `own`, such as the example, is opened as a new job."""
        path = path.absolute()
        if self._recovery.holds(path):
            own = False

        stopped = Event()

        def read(path: Path) -> Opened:
            return counted_file(open_job(path), stopped)

        def work() -> Opened:
            return self._hold.read(path, read) if own else read(path)

        def show(opened: Opened) -> None:
            self._store.show_job(opened, path if own else None, saved=not self._recovery.holds(path))
            if own:
                self._remember(path)

        def done(opened: Opened) -> None:
            self.leave(partial(show, opened))  # the job that is open may have been edited while this one was read

        def failed(error: RecoatError) -> None:
            self._hold.settle()
            self._tell_unread(path, error)

        self._background.start(f"Opening {path.name}", work, done, failed, stopped)

    def open_copy(self, path: Path) -> None:
        """Open the job in this file as a new one that no file holds yet."""
        stopped = Event()

        def work() -> Opened:
            return counted_file(open_job(path), stopped)

        def done(opened: Opened) -> None:
            self.leave(partial(self._store.show_job, opened, None, saved=False))

        self._background.start(f"Opening a copy of {path.name}", work, done, self._fail, stopped)

    def leave_for(self, path: Path) -> None:
        """Leave the job that is open, and open this file."""

        def then() -> None:
            self.open_path(path)

        self.leave(then)

    def show_new(self, file: JobFile) -> None:
        """Show a job that was just begun."""
        self._store.show_job(counted_file(file), None, saved=True)

    def save(self) -> None:
        """Save to the job's file; ask for a file if it has none."""
        path = self._store.open.path
        if path is None:
            self.save_as()
        else:
            self.write_to(path)

    def save_as(self) -> None:
        """Ask for a file and save to it."""
        dialog = self._dialog("Save the job", QFileDialog.AcceptMode.AcceptSave)
        dialog.selectFile(f"{file_words(self._store.open.job.name)}.{ENDING}")
        dialog.fileSelected.connect(self._write_named)
        dialog.rejected.connect(self._stay)
        dialog.open()

    def write_to(self, path: Path, *, replacing_changes: bool = False) -> None:
        """Save to this file, which is the job's from then on; first ask if somebody else has changed it."""
        path = path.absolute()
        file, left, clock = self._store.open.file, self._jobs_left, _clock()
        then, self._then = self._then, None

        def work() -> None:
            self._hold.write(path, file, replacing_changes=replacing_changes)

        def done(_: None) -> None:
            self._remember(path)
            if left == self._jobs_left:
                self._store.mark_saved(file.job, path)
            else:
                self._hold.settle()  # another job is open by now
            self._tell_saved(path, clock)
            if then is not None:
                self.leave(then)  # asks again if the job was edited while it was saved

        def failed(error: RecoatError) -> None:
            self._then = then
            self._tell_unwritten(path, error)

        self._background.start(f"Saving {path.name}", work, done, failed)

    def leave(self, then: Then) -> None:
        """Do `then`, which the open job does not survive; first ask whether to save what is not saved."""
        shown = self._store.shown
        if shown is None or shown.is_saved or self._recovery.has_given_up(shown.job):
            then()
            return
        box = Question(self._window, f"Save the changes to {shown.job.name}?", "Unsaved changes will be lost.")
        box.setStandardButtons(
            Question.StandardButton.Save | Question.StandardButton.Discard | Question.StandardButton.Cancel
        )
        box.setDefaultButton(Question.StandardButton.Save)

        def answered() -> None:
            self._answer(box.standardButton(box.clickedButton()), then)

        box.buttonClicked.connect(answered)
        box.finished.connect(box.deleteLater)
        box.open()

    def _tell_saved(self, path: Path, clock: str) -> None:
        """Say what was saved, and that what was done while it was being saved is not in the file."""
        shown = self._store.shown
        later = shown is not None and shown.path == path and not shown.is_saved
        changes = " What you changed since then is not saved yet." if later else ""
        self.saved.emit(f"Saved {path.name}, {clock}{'.' if changes else ''}{changes}")

    def _count_left(self) -> None:
        self._jobs_left += 1

    def _answer(self, answer: Question.StandardButton, then: Then) -> None:
        if answer is Question.StandardButton.Save:
            self._then = then
            self.save()
        elif answer is Question.StandardButton.Discard:
            self._recovery.give_up(self._store.open.job)
            then()
        else:
            self._stay()

    def _stay(self) -> None:
        """The job that is open stays open, with its file, and is as worth keeping as before."""
        self._then = None
        self._recovery.give_up(None)
        self._hold.settle()

    def _ask_for_file(self) -> None:
        dialog = self._dialog("Open a job", QFileDialog.AcceptMode.AcceptOpen)
        dialog.setFileMode(QFileDialog.FileMode.ExistingFile)
        dialog.fileSelected.connect(self._open_named)
        dialog.rejected.connect(self._stay)
        dialog.open()

    def _dialog(self, title: str, mode: QFileDialog.AcceptMode) -> QFileDialog:
        dialog = QFileDialog(self._window, title, self._folder(), JOB_FILES)
        dialog.setAcceptMode(mode)
        dialog.setDefaultSuffix(ENDING)
        dialog.finished.connect(dialog.deleteLater)
        return dialog

    def _folder(self) -> str:
        path = self._store.shown.path if self._store.shown else None
        latest = path or next(iter(self.recent), None)
        return str(latest.parent if latest else Path.home())

    def _open_named(self, name: str) -> None:
        self.open_path(Path(name))

    def _write_named(self, name: str) -> None:
        self.write_to(Path(name))

    def _tell_unread(self, path: Path, error: RecoatError) -> None:
        """Offer a copy of a job that is open elsewhere; of anything else say what is wrong."""

        def open_copy() -> None:
            self.open_copy(path)

        if isinstance(error, HeldError):
            ask_about_held(self._window, path, error, open_copy)
        else:
            self._fail(error)

    def _tell_unwritten(self, path: Path, error: RecoatError) -> None:
        """Ask what to do about a file that has changed; of anything else say what is wrong."""

        def replace() -> None:
            self.write_to(path, replacing_changes=True)

        if isinstance(error, ChangedError):
            ask_about_changed(self._window, path, error, save_as=self.save_as, replace=replace, stay=self._stay)
        else:
            self._fail(error)

    def _fail(self, error: RecoatError) -> None:
        self._stay()
        self.failed.emit(str(error))

    def _remember(self, path: Path) -> None:
        names = [str(path), *(str(other) for other in self.recent if other != path)]
        QSettings().setValue("recent", names[:MOST_RECENT])
        self.recent_changed.emit()


def _clock() -> str:
    """The time of day, as a person says it."""
    now = datetime.now(UTC).astimezone()
    return moment_words(now, now)
