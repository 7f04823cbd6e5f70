"""Cautions: where the work can hurt someone, what the finishes of the job call for, and who decides."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget

from desktop.finish.section import Section
from desktop.look.plain import Label
from desktop.look.roles import set_role
from desktop.state.shown import Shown
from desktop.state.store import Store
from takeoff.needs.cautions import Caution, cautions

HEAD = "This page never says that anything is safe. The data sheets, the local code and licensed trades decide."
NOTHING = "No surface gets a finish yet."


class CautionsView(Section):
    """Shows each caution with the finishes that call for it and its source."""

    def __init__(self, store: Store, parent: QWidget | None = None) -> None:
        super().__init__(store, parent)
        self._shown: tuple[Caution, ...] | None = None
        self._texts: tuple[Label, ...] = ()
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(12)
        self.head = _label(HEAD, "quiet", self)
        self._column.addWidget(self.head)
        self._column.addStretch(1)

    @property
    def words(self) -> tuple[str, ...]:
        """What the view says: a text for each caution, or one that says that no surface gets a finish."""
        return tuple(label.text() for label in self._texts)

    def follow(self, new: Shown) -> None:
        super().follow(new)
        found = cautions(new.job, new.takeoff)
        if found == self._shown:
            return
        self._shown = found
        for label in self._texts:
            label.hide()
            label.deleteLater()
        names = {finish.id: finish.called for finish in new.job.finishes}
        said = [_words(caution, names) for caution in found] or [NOTHING]
        self._texts = tuple(_label(words, "plain", self) for words in said)
        for place, label in enumerate(self._texts, 1):
            self._column.insertWidget(place, label)


def _words(caution: Caution, names: dict[str, str]) -> str:
    whom = ", ".join(names.get(finish, finish) for finish in caution.finishes)
    return f"{caution.text}\n{whom}. Source: {caution.source}."


def _label(words: str, role: str, parent: QWidget) -> Label:
    label = Label(words, parent)
    set_role(label, role)
    label.setWordWrap(True)
    label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
    return label
