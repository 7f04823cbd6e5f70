"""What if: changes tried on a copy of the job, outside its history, until they are applied or discarded."""

from collections.abc import Callable
from typing import NamedTuple

from PySide6.QtCore import QObject, Signal

from desktop.state.background import Background
from desktop.state.shown import Shown
from desktop.state.store import Store
from shared.checks.job import check_job
from shared.errors import RecoatError
from shared.job import Job
from takeoff.basket.compared import Compared, compare
from takeoff.basket.savings import Saving, under_budget
from takeoff.bill import Bill, make_bill
from takeoff.memory import Memory, counts_alike
from takeoff.take_off import take_off

LONGEST_LABEL = 60
"""The most letters in the name of an edit, which is shown in the menu."""

SEVERAL = "Changes tried in What if"


class Outcome(NamedTuple):
    """What was changed, in words, with the bill before and after, and how their baskets differ."""

    said: tuple[str, ...]
    before: Bill
    after: Bill
    compared: Compared


class WhatIf(QObject):
    """Reckons in the background, one after the other, what changes would come to.

    `shown(outcome)` says that an outcome is reckoned, and `shown(None)` that no change is being tried.
    `refused(words)` says why a change makes no sense. `found(savings)` gives the savings that would bring the basket
    under its budget; there are none if it is not over.
    """

    shown = Signal(object)
    refused = Signal(str)
    found = Signal(object)

    def __init__(self, store: Store, background: Background, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._store, self._background = store, background
        self._memory = Memory()  # of the background alone
        self._job: Job | None = None
        self._said: tuple[str, ...] = ()
        self._outcome: Outcome | None = None
        self._bill: Bill | None = None

    @property
    def outcome(self) -> Outcome | None:
        """What was reckoned last; None if no change is being tried."""
        return self._outcome

    def follow(self, old: Shown | None, new: Shown) -> None:
        """Drop the changes if the job is another, and look for savings if the bill is."""
        if old is None or old.job is not new.job:
            self.drop()
        bill = new.bill
        if bill is not None and bill is not self._bill and bill.job is new.job:
            self._bill = bill
            self._look_for_savings(bill, new)
            if self._outcome is None:
                self._reckon()

    def ask(self, said: str, change: Callable[[Job], Job]) -> None:
        """Change one thing more, and reckon the outcome. `said` is the change in words. `refused` says why it fails."""
        try:
            job = change(self._job or self._store.open.job)
            check_job(job)
        except RecoatError as error:
            self.refused.emit(str(error))
            return
        self._job, self._said = job, (*self._said, said)
        self._reckon()

    def ask_for(self, saving: Saving) -> None:
        """Try a saving, in place of the changes tried before."""
        self.drop()
        self.ask(saving.what, lambda _: saving.job)

    def take(self) -> None:
        """Apply the changes that were tried, as one edit for undo."""
        job, said = self._job, self._said
        if job is not None:
            self.drop()
            self._store.edit(said[0] if len(said) == 1 and len(said[0]) <= LONGEST_LABEL else SEVERAL, job)

    def drop(self) -> None:
        """Discard the changes that were tried."""
        if self._job is not None:
            self._job, self._said, self._outcome = None, (), None
            self.shown.emit(None)

    def _reckon(self) -> None:
        """Reckon the outcome. While the job's own bill is not known this waits: `follow` reckons once it is."""
        shown, job, said, memory = self._store.open, self._job, self._said, self._memory
        before = shown.bill
        if job is None or before is None or before.job is not shown.job:
            return

        def work() -> Outcome:
            takeoff = shown.takeoff if counts_alike(job, before.job) else take_off(job, memory)
            after = make_bill(job, takeoff)
            return Outcome(said, before, after, compare(before.basket, after.basket))

        self._background.start("Working it out", work, self._show, self._fail)

    def _show(self, outcome: Outcome) -> None:
        if outcome.after.job is self._job:
            self._outcome = outcome
            self.shown.emit(outcome)

    def _fail(self, error: RecoatError) -> None:
        self.drop()
        self.refused.emit(str(error))

    def _look_for_savings(self, bill: Bill, shown: Shown) -> None:
        if not bill.basket.over:
            self.found.emit(())
            return
        takeoff = shown.takeoff

        def take(savings: tuple[Saving, ...]) -> None:
            if bill is self._bill:
                self.found.emit(savings)

        self._background.start("", lambda: under_budget(bill.job, takeoff, bill.basket), take, self._fail)
