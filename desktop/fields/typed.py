"""Fields in which a value is typed. It is taken on Return or when the field is left, or it is refused in words.

What is typed into a field that one has just come to replaces the whole text: "4" typed over "1 L" is 4, never 41 L.
"""

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QKeySequence, QMouseEvent
from PySide6.QtWidgets import QLineEdit, QWidget

from desktop.fields.words import FieldWords
from desktop.look.plain import tip_words
from desktop.look.roles import set_state
from shared.errors import ReadingError
from shared.job import Unit

AWAY_FOR_A_MOMENT = frozenset(
    {
        Qt.FocusReason.ActiveWindowFocusReason,
        Qt.FocusReason.PopupFocusReason,
        Qt.FocusReason.MenuBarFocusReason,
    }
)
"""Why a field loses the keys only to get them back: to another window or to a menu. The person goes on in it then."""


class TextLine(QLineEdit):
    """A line of text, all of it selected when one comes to it, however one comes.

    A first click selects all, unless it is drawn over a few letters; the next click puts the cursor. While nobody is
    typing in it, the keys for undo and redo go to the job.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._is_left_for_a_moment = False
        self._is_clicked_into = False

    def event(self, event: QEvent) -> bool:
        if event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent) and not self.isModified():
            keys = QKeySequence.StandardKey
            if event.matches(keys.Undo) or event.matches(keys.Redo):
                event.ignore()
                return False
        return super().event(event)

    def put(self, words: str) -> None:
        """Show words that nobody has typed; while the keys are here, new words are selected."""
        if words != self.text():
            self.setText(words)
            if self.hasFocus():
                self.selectAll()
        if not self.hasFocus():
            self.setCursorPosition(0)
        self.setModified(False)

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        if not (self._is_left_for_a_moment and event.reason() in AWAY_FOR_A_MOMENT):
            self.selectAll()
            self._is_clicked_into = event.reason() is Qt.FocusReason.MouseFocusReason
        self._is_left_for_a_moment = False

    def focusOutEvent(self, event: QFocusEvent) -> None:
        self._is_left_for_a_moment = event.reason() in AWAY_FOR_A_MOMENT
        super().focusOutEvent(event)
        if not self._is_left_for_a_moment:
            self.setCursorPosition(0)  # a long text is seen from its start

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        super().mouseReleaseEvent(event)
        if self._is_clicked_into and not self.hasSelectedText():
            self.selectAll()
        self._is_clicked_into = False


class TypedField(TextLine):
    """A field that shows a value and takes another.

    `taken(value)` gives what the person typed. `told(words)` says why that cannot be read; the text stays then. A
    double click selects the whole value, so that no fragment of "94 1/2" is left standing.
    """

    taken = Signal(object)
    told = Signal(str)

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self._shown = ""
        self._is_wrong = False
        self.textEdited.connect(self._tell)
        self.editingFinished.connect(self._take)

    def value(self) -> object:
        """The value in the field. ReadingError if it cannot be read."""
        raise NotImplementedError

    def show_words(self, words: str, *, hint: str = "") -> None:
        """Show a value, unless the person is typing another. An empty field shows the hint."""
        self.setPlaceholderText(hint)
        if words != self._shown or not self.hasFocus() or not self.isModified():
            self._shown = words
            self.put(words)
            if self._is_wrong:
                self._wrong("")

    def take_back(self) -> None:
        """Show again what was shown before the person typed."""
        self.put(self._shown)
        self._wrong("")

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        super().mouseDoubleClickEvent(event)
        self.selectAll()

    def _tell(self) -> None:
        try:
            self.value()
        except ReadingError as error:
            self._wrong(str(error) if self.text().strip() else "")
        else:
            self._wrong("")

    def _wrong(self, words: str) -> None:
        self._is_wrong = bool(words)
        set_state(self, "wrong", on=self._is_wrong)
        self.setToolTip(tip_words(words))
        self.told.emit(words)

    def _take(self) -> None:
        if not self.isModified() or self.text() == self._shown:
            return
        try:
            value = self.value()
        except ReadingError as error:
            self._wrong(str(error))
            return
        self.setModified(False)
        self.taken.emit(value)


class ValueField(TypedField):
    """A field that is read and shown by `FieldWords`; each value that it shows may bring others."""

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(name, parent)
        self._words: FieldWords | None = None
        self._unit = Unit.MM

    def show_value(self, value: object, words: FieldWords, unit: Unit, *, hint: str = "") -> None:
        """Show a value by these words, and read what is typed by them from now on."""
        self._words, self._unit = words, unit
        self.show_words(words.show(value, unit), hint=hint)

    def value(self) -> object:
        return None if self._words is None else self._words.read(self.text(), self._unit)
