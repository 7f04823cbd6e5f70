"""Fields in which a value is typed. It is taken on Return or when the field is left, or it is refused in words."""

from PySide6.QtCore import QEvent, Signal
from PySide6.QtGui import QKeyEvent, QKeySequence
from PySide6.QtWidgets import QLineEdit, QWidget

from desktop.fields.words import FieldWords
from desktop.look.plain import tip_words
from desktop.look.roles import set_state
from shared.errors import ReadingError
from shared.job import Unit


class TextLine(QLineEdit):
    """A line of text. While nobody is typing in it, the keys for undo and redo go to the job."""

    def event(self, event: QEvent) -> bool:
        if event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent) and not self.isModified():
            keys = QKeySequence.StandardKey
            if event.matches(keys.Undo) or event.matches(keys.Redo):
                event.ignore()
                return False
        return super().event(event)


class TypedField(TextLine):
    """A field that shows a value and takes another.

    `taken(value)` gives what the person typed. `told(words)` says why that cannot be read; the text stays then.
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
            self.setText(words)
            self.setCursorPosition(0)
            self.setModified(False)
            if self._is_wrong:
                self._wrong("")

    def take_back(self) -> None:
        """Show again what was shown before the person typed."""
        self.setText(self._shown)
        self.setModified(False)
        self._wrong("")

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
