"""Mends what the list of things to look at offers: the change is shown before it happens, and is then one edit."""

from PySide6.QtCore import QObject, Qt

from desktop.measure.page import MEASURE
from desktop.state.store import Store
from desktop.window.findings_view import FindingsView
from shared.errors import RecoatError
from shared.findings import Finding
from shared.job import Job
from takeoff.findings.mending import all_mended, mended


class Mends(QObject):
    """Does what the buttons of the list ask for."""

    def __init__(self, store: Store, view: FindingsView, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._store = store
        self._view = view
        self._shows = False
        view.asked.connect(self._mend)
        # Queued: the list asks while it follows a change that the other views have not seen yet.
        view.tried.connect(self._try, Qt.ConnectionType.QueuedConnection)

    def _mend(self, finding: Finding, everything: bool) -> None:
        store = self._store
        try:
            job = _after(store.open.job, finding, everything)
        except RecoatError as error:
            self._view.tell(str(error))
            return
        self._shows = False
        store.edit(finding.mend, job, face=finding.face, picked=finding.parts)

    def _try(self, finding: Finding | None, everything: bool) -> None:
        """Show what a mend would change, on the face where the finding is; None ends that."""
        store = self._store
        if store.shown is None:
            return
        if finding is None:
            if self._shows:
                self._shows = False
                store.try_out(None)
            return
        try:
            job = _after(store.open.job, finding, everything)
        except RecoatError:
            return  # Said once it is asked for.
        store.show_face(finding.face, finding.parts)
        if store.open.page is MEASURE:  # On other pages whole tables would change to and fro.
            self._shows = True
            store.try_out(job)


def _after(job: Job, finding: Finding, everything: bool) -> Job:
    return all_mended(job, finding.code) if everything else mended(job, finding)
