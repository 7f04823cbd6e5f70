"""Taking up, or declining, unsaved work that another window left behind."""

from functools import partial
from pathlib import Path

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QWidget

from desktop.files.hold import Hold
from desktop.files.job import Files
from desktop.look.plain import Question
from desktop.state.background import Background
from desktop.state.copies import Offer
from desktop.state.recovery import Recovery
from desktop.state.store import Opened, Store, counted_file
from shared.errors import RecoatError
from takeoff.opening import open_job


class Recovering(QObject):
    """Does what the person chose for a copy. `failed(words)` says why a copy cannot be taken up."""

    failed = Signal(str)

    def __init__(
        self, store: Store, background: Background, recovery: Recovery, hold: Hold, files: Files, window: QWidget
    ) -> None:
        super().__init__(window)
        self._store, self._background, self._recovery = store, background, recovery
        self._hold, self._files, self._window = hold, files, window

    def recover(self, offer: Offer) -> None:
        """Leave the job that is open, and take up the one in this copy. It knows its file, and is not saved."""
        self._files.leave(partial(self._open, offer))

    def discard(self, offer: Offer, words: str) -> None:
        """Take this copy away, once the person has confirmed it; `words` say what it holds."""
        box = Question(self._window, f"Discard {words}?", "This unsaved work will be lost.")
        box.setIcon(Question.Icon.Warning)
        box.setStandardButtons(Question.StandardButton.Discard | Question.StandardButton.Cancel)
        box.setDefaultButton(Question.StandardButton.Cancel)

        def discard() -> None:
            self._recovery.discard(offer.copy)

        box.button(Question.StandardButton.Discard).clicked.connect(discard)
        box.finished.connect(box.deleteLater)
        box.open()

    def _open(self, offer: Offer) -> None:
        def work() -> Opened:
            return counted_file(open_job(offer.copy.path))

        def done(opened: Opened) -> None:
            self._files.leave(partial(self._show, offer, opened))

        def failed(trouble: RecoatError) -> None:
            self._recovery.give_up(None)
            self._recovery.put_aside(offer.copy, trouble)

        self._background.start("Recovering unsaved work", work, done, failed)

    def _show(self, offer: Offer, opened: Opened) -> None:
        if self._recovery.claim(offer.copy):
            path = Path(offer.note.path) if offer.note.path else None
            if path is not None:
                self._hold.know(path, offer.note.stamp)
            self._store.show_job(opened, path, saved=False)
            self._recovery.adopt(offer.copy)
        else:
            self._recovery.give_up(None)
            self.failed.emit("This job was recovered or discarded in another window.")
            self._recovery.look()
