"""What the sections of the page Finish have in common: edits that may be refused, and things to look at."""

from collections.abc import Callable

from PySide6.QtWidgets import QWidget

from desktop.fields.to_look_at import ToLookAt
from desktop.look.plain import Label
from desktop.look.roles import set_role
from desktop.state.shown import Shown
from desktop.state.store import Store
from shared.errors import RecoatError
from shared.findings import Finding, Place
from shared.job import Job


class Section(QWidget):
    """Shows one side of the job and edits it. `trouble` says why an edit is refused, and the job stays as it was.

    `to_look_at` says the findings that are put right here: those that belong to `place`, or none if that is None.
    """

    place: Place | None = None

    def __init__(self, store: Store, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._store = store
        self._followed: Job | None = None
        self.trouble = Label(self)
        self.to_look_at = ToLookAt(self)
        set_role(self.trouble, "trouble")
        self.trouble.setWordWrap(True)
        self.trouble.hide()

    def follow(self, new: Shown) -> None:
        """Show the job anew."""
        if new.job is not self._followed:
            self.tell("")
        self._followed = new.job
        self.to_look_at.say(each for each in findings_of(new) if self.place and each.code.is_said_in(self.place))

    def tell(self, words: str) -> None:
        """Say what is wrong with what was typed. "" says nothing."""
        self.trouble.setText(words)
        self.trouble.setVisible(bool(words))

    def take(self, label: str, change: Callable[[Job], Job]) -> bool:
        """Make one edit to the job. False if it is refused or changes nothing."""
        job = self._store.open.job
        try:
            changed = change(job)
        except RecoatError as error:
            self.tell(str(error))
            return False
        return changed != job and self._store.edit(label, changed)


def findings_of(shown: Shown) -> tuple[Finding, ...]:
    """The findings of the needs and the basket; empty until those of this job are reckoned."""
    bill = shown.bill
    return (*bill.needs.findings, *bill.basket.findings) if bill is not None and bill.job is shown.job else ()
