"""Copies a finish between jobs: it is written to a small file of its own, and taken from such a file or a job's."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QFileDialog, QWidget

from desktop.files.job import JOB_FILES
from desktop.look.plain import Asking, file_words
from desktop.state.background import Background
from desktop.state.shown import Shown
from desktop.state.store import Store
from shared.edits.finishes import find_finish
from shared.errors import RecoatError
from shared.files.finish import ENDING, read_finish_file, with_finish_from, write_finish_file
from shared.job import Job

FINISH_FILES = f"Finishes (*{ENDING})"
WHICH = "Which finish do you want?"


class FinishFiles(QObject):
    """The commands that take a finish from a file and write one to a file.

    `taken(finish id)` says that the job has got a finish, `written(words)` that a file is written, `failed(words)` what
    went wrong.
    """

    taken = Signal(str)
    written = Signal(str)
    failed = Signal(str)

    def __init__(self, store: Store, background: Background, chosen: Callable[[], str], window: QWidget) -> None:
        super().__init__(window)
        self._store = store
        self._background = background
        self._chosen = chosen
        self._window = window

    def take(self) -> None:
        """Ask for a file and take a finish from it."""
        dialog = self._dialog("Finish from a file", f"{FINISH_FILES};;{JOB_FILES}")
        dialog.setFileMode(QFileDialog.FileMode.ExistingFile)
        dialog.fileSelected.connect(self._read)
        dialog.open()

    def write(self) -> None:
        """Ask for a file and write to it the finish that is chosen on the page Finish."""
        finish = find_finish(self._store.open.job, self._chosen())
        dialog = self._dialog("Write the finish", FINISH_FILES)
        dialog.setAcceptMode(QFileDialog.AcceptMode.AcceptSave)
        dialog.setDefaultSuffix(ENDING.removeprefix("."))
        dialog.selectFile(f"{file_words(finish.name)}{ENDING}")
        dialog.fileSelected.connect(self._write)
        dialog.open()

    def _dialog(self, title: str, kinds: str) -> QFileDialog:
        path = self._store.open.path
        dialog = QFileDialog(self._window, title, str(path.parent if path else Path.home()), kinds)
        dialog.finished.connect(dialog.deleteLater)
        return dialog

    def _write(self, name: str) -> None:
        path, job, finish_id = Path(name), self._store.open.job, self._chosen()

        def work() -> None:
            write_finish_file(path, job, finish_id)

        def done(_: None) -> None:
            self.written.emit(f"{path.name} is saved.")

        self._background.start(f"Writing {path.name}", work, done, self._fail)

    def _read(self, name: str) -> None:
        path = Path(name)

        def work() -> Job:
            return read_finish_file(path)

        self._background.start(f"Reading {path.name}", work, self._choose, self._fail)

    def _choose(self, source: Job) -> None:
        """Take the only finish of the file; if there are more, ask which."""
        if len(source.finishes) == 1:
            self._add(source, source.finishes[0].id)
            return
        names = [f"{number}  {finish.name}" for number, finish in enumerate(source.finishes, 1)]
        dialog = Asking(self._window, WHICH)
        dialog.setComboBoxItems(names)

        def take(name: str) -> None:
            self._add(source, source.finishes[names.index(name)].id)

        dialog.textValueSelected.connect(take)
        dialog.finished.connect(dialog.deleteLater)
        dialog.open()

    def _add(self, source: Job, finish_id: str) -> None:
        if self._store.shown is None:
            return
        try:
            job = with_finish_from(self._store.open.job, source, finish_id)
        except RecoatError as error:
            self._fail(error)
            return
        if self._store.edit("Finish from a file", job):
            self.taken.emit(job.finishes[-1].id)

    def _fail(self, error: RecoatError) -> None:
        self.failed.emit(str(error))


def with_finishes(shown: Shown | None) -> bool:
    """Whether the job has a finish."""
    return shown is not None and bool(shown.job.finishes)
