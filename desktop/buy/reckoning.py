"""What a job needs and the basket for it, reckoned in the background whenever the job has changed."""

from PySide6.QtCore import QObject, QTimer

from desktop.state.background import Background
from desktop.state.shown import Shown
from desktop.state.store import Store
from shared.errors import RecoatError
from shared.job import Job
from takeoff.basket.instead import other_packs
from takeoff.bill import Bill, make_bill
from takeoff.figures.measured import Takeoff

SOON_MS = 60
"""Edits that follow each other faster than this are reckoned together."""


class Buying(QObject):
    """Keeps the bill up to date with the job. What is only being tried out is not reckoned."""

    def __init__(self, store: Store, background: Background, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._store = store
        self._background = background
        self._reckoning: Job | None = None
        self._soon = QTimer(self)
        self._soon.setSingleShot(True)
        self._soon.setInterval(SOON_MS)
        self._soon.timeout.connect(self._reckon)

    def follow(self, new: Shown | None) -> None:
        """Reckon soon if the bill is not that of the open job."""
        if new is not None and new.tried is None and not _is_of(new.bill, new.job) and self._reckoning is not new.job:
            self._soon.start()

    def stop(self) -> None:
        """Drop the reckoning that waits, and start no more."""
        self._soon.stop()

    def _reckon(self) -> None:
        shown = self._store.shown
        if shown is None or shown.tried is not None or _is_of(shown.bill, shown.job):
            return
        job, takeoff = shown.job, shown.takeoff
        self._reckoning = job
        self._background.start("", lambda: bill_with_others(job, takeoff), self._take, self._fail)

    def _take(self, reckoned: Bill) -> None:
        self._reckoning = None
        self._store.show_bill(reckoned)

    def _fail(self, error: RecoatError) -> None:
        self._reckoning = None
        self._store.refused.emit(str(error))


def bill_with_others(job: Job, takeoff: Takeoff) -> Bill:
    """The bill of a job, with the other packs that would do beside those that are bought."""
    bill = make_bill(job, takeoff)
    return bill._replace(instead=other_packs(job, bill.needs, bill.basket))


def _is_of(known: Bill | None, job: Job) -> bool:
    return known is not None and known.job is job
