"""The reading line under the face: it says what to type, what it understood, and in words what was wrong."""

from collections.abc import Callable, Sequence

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLineEdit, QPushButton, QVBoxLayout, QWidget

from desktop.gestures.gesture import WayOut
from desktop.look.plain import Label, button_words
from desktop.look.roles import set_role, set_state

KEPT_LINES = 100
EDIT_WIDTH = 180
"""The width of a short line. A longer one takes what it needs, and its answer stands beside it."""
EDIT_MARGIN = 24
ANSWER_WIDTH = 260
"""What is left for an answer beside a long line."""
MOST_OFFERS = 6


class ReadingLine(QFrame):
    """A line to type in. Its owner, the `Hand`, says what to type, hears what is typed, and answers.

    `heard(text)` follows every change, and `entered(text)` Return. On an empty line `finished` follows Return and
    `taken_back` follows Backspace. `escaped` follows Escape. The text stays in the line until its owner takes it in.
    """

    heard = Signal(str)
    entered = Signal(str)
    finished = Signal()
    taken_back = Signal()
    escaped = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("line")
        self._history: tuple[str, ...] = ()
        self._back = 0
        self.wants = Label(self)
        self.edit = QLineEdit(self)
        self.answer = Label(self)
        self.hint = Label(self)
        self.offers = QWidget(self)
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
        self.edit.textEdited.connect(self.heard)
        self.edit.textChanged.connect(self._fit)

    @property
    def text(self) -> str:
        """The text in the line."""
        return self.edit.text()

    def ask(self, place: str, wants: str, hint: str = "", *, example: str = "") -> None:
        """Say what is asked for, and while the line is empty what could be typed."""
        self.wants.setText(" · ".join(word for word in (place, wants) if word))
        self.hint.setText(hint)
        self.edit.setPlaceholderText(example)
        self._fit()
        self.edit.setAccessibleName(f"Reading: {wants}")

    def take(self, text: str) -> None:
        """Take in text that was typed elsewhere, and the keys that follow."""
        self.edit.setFocus(Qt.FocusReason.OtherFocusReason)
        self.edit.insert(text)  # `textEdited` tells of it, as of any key.

    def take_in(self) -> None:
        """Empty the line after its text was done, and keep the text to be called up again."""
        if self.text.strip():
            self._history = (*self._history, self.text)[-KEPT_LINES:]
        self.clear()

    def say(self, words: str) -> None:
        """Say what was understood."""
        self._answer(words, "good")

    def tell(self, words: str, offers: Sequence[WayOut] = ()) -> None:
        """Say what went wrong, and offer ways out of it, until something else is typed or said."""
        self._answer(words, "trouble")
        self._offer(offers)

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
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 6, 12, 6)
        column.setSpacing(2)
        for label in (self.wants, self.answer, self.hint):
            set_role(label, "quiet")
        self.answer.setWordWrap(True)
        self.answer.setAccessibleName("Answer")
        above, below = QHBoxLayout(), QHBoxLayout()
        above.addWidget(self.wants, 1)
        above.addWidget(self.hint)
        below.setSpacing(12)
        below.addWidget(self.edit)
        below.addWidget(self.answer, 1)
        offers = QHBoxLayout(self.offers)
        offers.setContentsMargins(0, 0, 0, 0)
        offers.setAlignment(Qt.AlignmentFlag.AlignLeft)
        self.offers.hide()
        column.addWidget(self.offers)
        column.addLayout(above)
        column.addLayout(below)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        """Make the line as wide as its text, with space for the answer beside it."""
        words = self.text or self.edit.placeholderText()
        wide = max(EDIT_WIDTH, self.edit.fontMetrics().horizontalAdvance(words) + EDIT_MARGIN)
        room = self.contentsRect().width() - 2 * EDIT_MARGIN
        self.edit.setFixedWidth(max(EDIT_WIDTH, min(wide, room - ANSWER_WIDTH if self.text else room)))

    def _offer(self, offers: Sequence[WayOut]) -> None:
        row = self.offers.layout()
        while row is not None and (item := row.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        before: QWidget = self.edit
        for offer in offers[:MOST_OFFERS]:
            button = QPushButton(button_words(offer.words), self.offers)
            button.setProperty("text_offered", offer.text)
            button.setAutoDefault(True)
            button.clicked.connect(self._take_offer)
            if row is not None:
                row.addWidget(button)
            self.setTabOrder(before, button)
            before = button
        self.offers.setVisible(bool(offers))

    def _take_offer(self) -> None:
        sender = self.sender()
        if sender is not None:
            self.edit.setText(str(sender.property("text_offered")))
            self.edit.setFocus(Qt.FocusReason.OtherFocusReason)
            self.heard.emit(self.text)

    def _key(self, event: QKeyEvent) -> bool:
        act = self._keys.get(event.key())
        return act is not None and act()

    def _enter(self) -> bool:
        if self.text.strip():
            self.entered.emit(self.text)
        else:
            self.clear()
            self.finished.emit()
        return True

    def _escape(self) -> bool:
        self.clear()
        self.escaped.emit()
        return True

    def _take_back(self) -> bool:
        if self.text:
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
            self.heard.emit(self.text)
        return True

    def _answer(self, words: str, role: str) -> None:
        self._offer(())
        set_role(self.answer, role)
        self.answer.setText(words)
