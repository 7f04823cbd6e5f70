"""A field for one length: typed as on the reading line, taken when it is left or Return is pressed."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLineEdit, QWidget

from desktop.roles import set_state
from desktop.wording import decimal_sign, length_words
from shared.errors import ReadingError
from shared.job import Unit
from shared.reading import read_length


class LengthField(QLineEdit):
    """Shows a length; `taken(mm)` when the person typed another, `told(words)` when it cannot be read."""

    taken = Signal(float)
    told = Signal(str)

    def __init__(self, name: str, parent: QWidget | None = None, *, any_sign: bool = False, zero: bool = False) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self._any_sign = any_sign
        self._zero = zero or any_sign
        self._unit = Unit.MM
        self._shown = ""
        self.textEdited.connect(self._tell)
        self.editingFinished.connect(self._take)

    def show_length(self, length_mm: float | None, unit: Unit) -> None:
        """Show a length; None where several parts differ."""
        self._unit = unit
        words = "" if length_mm is None else length_words(length_mm, unit)
        self.setPlaceholderText("several" if length_mm is None else "")
        if words != self._shown or not self.hasFocus() or not self.isModified():
            self._shown = words
            self.setText(words)
            self.setCursorPosition(0)
            self.setModified(False)
            set_state(self, "wrong", on=False)

    def ask(self, placeholder: str, unit: Unit) -> None:
        """Wait for a length, with a word of what is wanted."""
        self.show_length(None, unit)
        self.setPlaceholderText(placeholder)

    def length_mm(self) -> float:
        """The length that stands in the field. ReadingError where there is none."""
        return read_length(
            self.text(), self._unit, decimal=decimal_sign(), allow_zero=self._zero, allow_negative=self._any_sign
        )

    def _tell(self) -> None:
        try:
            self.length_mm()
        except ReadingError as error:
            self._wrong(str(error) if self.text().strip() else "")
        else:
            self._wrong("")

    def _wrong(self, words: str) -> None:
        set_state(self, "wrong", on=bool(words))
        self.setToolTip(words)
        self.told.emit(words)

    def _take(self) -> None:
        if not self.isModified() or self.text() == self._shown:
            return
        try:
            length = self.length_mm()
        except ReadingError as error:
            self._wrong(str(error))
            return
        self.setModified(False)
        self.taken.emit(length)

    def take_back(self) -> None:
        """Show again what was shown before the person typed."""
        self.setText(self._shown)
        self.setModified(False)
        self._wrong("")
