"""The reading line under the face: it says what it wants, shows what it understood, answers a slip in words."""

from collections.abc import Callable

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QLineEdit, QWidget

from desktop.roles import set_role, set_state
from desktop.wording import decimal_sign, length_words
from shared.errors import ReadingError
from shared.job import Unit
from shared.reading import read_length

KEPT_READINGS = 100
EDIT_WIDTH = 180


class ReadingLine(QFrame):
    """One line. Whoever owns it says what is wanted and hears what was read.

    `read(mm)` follows Return on a reading; on an empty line `finished` follows Return and `taken_back` Backspace.
    `escaped` follows Escape.
    """

    read = Signal(float)
    finished = Signal()
    taken_back = Signal()
    escaped = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("line")
        self._unit = Unit.MM
        self._any_sign = False
        self._history: tuple[str, ...] = ()
        self._back = 0
        self.wants = QLabel(self)
        self.edit = QLineEdit(self)
        self.answer = QLabel(self)
        self.hint = QLabel(self)
        self._lay_out()
        self._keys: dict[int, Callable[[], bool]] = {
            Qt.Key.Key_Return: self._enter,
            Qt.Key.Key_Enter: self._enter,
            Qt.Key.Key_Escape: self._escape,
            Qt.Key.Key_Backspace: self._take_back,
            Qt.Key.Key_Up: self._earlier,
            Qt.Key.Key_Down: self._later,
        }
        self.edit.installEventFilter(self)
        self.edit.textEdited.connect(self._understand)

    def ask(self, place: str, wants: str, hint: str = "", *, any_sign: bool = False) -> None:
        """Say what is wanted; `any_sign` where zero or less is an answer too."""
        self._any_sign = any_sign
        self.wants.setText(" · ".join(word for word in (place, wants) if word))
        self.hint.setText(hint)
        self.edit.setAccessibleName(f"Reading: {wants}")
        if self.edit.text():
            self._understand()

    def set_unit(self, unit: Unit) -> None:
        """The unit of a bare number."""
        self._unit = unit

    def take(self, text: str) -> None:
        """Take what was typed elsewhere, and the keys that follow."""
        self.edit.setFocus(Qt.FocusReason.OtherFocusReason)
        self.edit.insert(text)
        self._understand()

    def tell(self, words: str) -> None:
        """Say what went wrong, until the next key."""
        self._answer(words, "trouble")

    def clear(self) -> None:
        """Empty the line."""
        self.edit.clear()
        self._back = 0
        self._answer("", "quiet")

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() in (QEvent.Type.FocusIn, QEvent.Type.FocusOut):
            set_state(self, "active", event.type() == QEvent.Type.FocusIn)
        if isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress:
            return self._key(event)
        return super().eventFilter(watched, event)

    def _lay_out(self) -> None:
        row = QHBoxLayout(self)
        row.setContentsMargins(12, 6, 12, 6)
        row.setSpacing(12)
        for label, role in ((self.wants, "quiet"), (self.answer, "quiet"), (self.hint, "quiet")):
            set_role(label, role)
        self.edit.setFixedWidth(EDIT_WIDTH)
        self.answer.setTextFormat(Qt.TextFormat.PlainText)
        self.answer.setWordWrap(True)
        self.answer.setAccessibleName("Answer")
        row.addWidget(self.wants)
        row.addWidget(self.edit)
        row.addWidget(self.answer, 1)
        row.addWidget(self.hint)
        self.setMinimumHeight(44)

    def _key(self, event: QKeyEvent) -> bool:
        act = self._keys.get(event.key())
        return act is not None and act()

    def _enter(self) -> bool:
        text = self.edit.text()
        if not text.strip():
            self.finished.emit()
            return True
        length = self._understand()
        if length is not None:
            self._history = (*self._history, text)[-KEPT_READINGS:]
            self.clear()
            self.read.emit(length)
        return True

    def _escape(self) -> bool:
        self.clear()
        self.escaped.emit()
        return True

    def _take_back(self) -> bool:
        if self.edit.text():
            return False
        self.taken_back.emit()
        return True

    def _earlier(self) -> bool:
        return self._recall(self._back + 1)

    def _later(self) -> bool:
        return self._recall(self._back - 1)

    def _recall(self, back: int) -> bool:
        if 0 <= back <= len(self._history):
            self._back = back
            self.edit.setText(self._history[-back] if back else "")
            self._understand()
        return True

    def _understand(self) -> float | None:
        """The length that stands in the line, said beside it; None, and why, where it says none."""
        text = self.edit.text()
        if not text.strip():
            self._answer("", "quiet")
            return None
        try:
            length = read_length(
                text, self._unit, decimal=decimal_sign(), allow_zero=self._any_sign, allow_negative=self._any_sign
            )
        except ReadingError as error:
            self._answer(str(error), "trouble")
            return None
        unit = " mm" if self._unit is Unit.MM else ""
        self._answer(f"= {length_words(length, self._unit)}{unit}", "good")
        return length

    def _answer(self, words: str, role: str) -> None:
        set_role(self.answer, role)
        self.answer.setText(words)
