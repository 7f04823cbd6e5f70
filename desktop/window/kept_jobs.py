"""The bar at the top of the window that offers unsaved work of a window that ended, whatever job is open."""

from collections.abc import Callable, Sequence
from datetime import UTC, date, datetime
from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from desktop.look.plain import Label
from desktop.look.roles import set_role
from desktop.look.wording import counted
from desktop.state.copies import Note, Offer

MOST_SHOWN = 3
MOST_ROOMS = 4


class KeptJobs(QFrame):
    """Has a line for each copy with "Recover" and "Discard", and one for each trouble with copies. Empty, it is hidden.

    `asked_to_recover(offer)` and `asked_to_discard(offer, words)` say what the person chose. Nothing is taken away by
    the bar itself; "Later" hides it until there is no job open, or the next start.
    """

    asked_to_recover = Signal(object)
    asked_to_discard = Signal(object, str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("bar")
        self._offers: tuple[Offer, ...] = ()
        self._troubles: tuple[str, ...] = ()
        self._lines: list[str] = []
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(14, 6, 14, 6)
        self._column.setSpacing(4)
        self.hide()

    @property
    def lines(self) -> tuple[str, ...]:
        """What the bar says, line by line."""
        return tuple(self._lines)

    def offer(self, offers: Sequence[Offer]) -> None:
        """Offer these copies, and no others."""
        self._offers = tuple(offers)
        self._fill()

    def tell(self, words: str) -> None:
        """Say what is wrong with copies, until the person has read it."""
        self._troubles = (*self._troubles, words)
        self._fill()

    def _fill(self) -> None:
        self._clear()
        for words in self._troubles:
            self._add_line(words, "trouble", _button("OK", partial(self._take_back, words)))
        today = datetime.now(UTC).astimezone().date()
        for offer in self._offers[:MOST_SHOWN]:
            words = kept_words(offer.note, today)
            recover = _button("Recover", partial(self.asked_to_recover.emit, offer))
            discard = _button("Discard", partial(self.asked_to_discard.emit, offer, words))
            self._add_line(f"Not saved: {words}", "", recover, discard)
        self._add_rest(len(self._offers) - MOST_SHOWN)
        self.setVisible(bool(self._troubles or self._offers))

    def _add_rest(self, more: int) -> None:
        if self._offers:
            words = f"and {more} more" if more > 0 else "They are kept until you recover or discard them."
            self._add_line(words, "quiet", _button("Later", self.hide))

    def _add_line(self, words: str, role: str, *buttons: QPushButton) -> None:
        line = QWidget(self)
        row = QHBoxLayout(line)
        row.setContentsMargins(0, 0, 0, 0)
        label = Label(words, line)
        label.setWordWrap(True)
        set_role(label, role)
        self._lines.append(words)
        row.addWidget(label, 1)
        for button in buttons:
            row.addWidget(button)
        self._column.addWidget(line)

    def _clear(self) -> None:
        self._lines.clear()
        while (item := self._column.takeAt(0)) is not None:
            line = item.widget()
            if line is not None:
                line.hide()
                line.deleteLater()

    def _take_back(self, words: str) -> None:
        self._troubles = tuple(other for other in self._troubles if other != words)
        self._fill()


def kept_words(note: Note, today: date) -> str:
    """What a copy holds and when it was made: "harbour-row: kitchen, 3 faces, 41 parts, 14:32"."""
    made = datetime.fromtimestamp(note.kept_at, UTC).astimezone()
    when = f"{made:%H:%M}" if made.date() == today else f"{made.day} {made:%B %Y, %H:%M}"
    more = len(note.rooms) - MOST_ROOMS
    rooms = (*note.rooms[:MOST_ROOMS], *((counted(more, "more room", "more rooms"),) if more > 0 else ()))
    held = (*rooms, counted(note.faces, "face", "faces"), counted(note.parts, "part", "parts"), when)
    name = note.path.replace("\\", "/").rpartition("/")[2].rpartition(".")[0] or note.name
    return f"{name}: {', '.join(held)}"


def _button(words: str, act: Callable[[], object]) -> QPushButton:
    button = QPushButton(words)

    def clicked() -> None:
        act()

    button.clicked.connect(clicked)
    return button
