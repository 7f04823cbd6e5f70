"""A field for one length. It is typed as on the reading line, and taken on Return or when the field is left."""

from PySide6.QtWidgets import QWidget

from desktop.fields.typed import TypedField
from desktop.look.wording import decimal_sign, own_writing
from shared.job import Unit
from shared.typed.lengths import read_length


class LengthField(TypedField):
    """Shows a length. `taken(mm)` gives another one that was typed; `told(words)` says why it cannot be read."""

    def __init__(self, name: str, parent: QWidget | None = None, *, any_sign: bool = False, zero: bool = False) -> None:
        super().__init__(name, parent)
        self._any_sign = any_sign
        self._zero = zero or any_sign
        self._unit = Unit.MM

    def show_length(self, length_mm: float | None, unit: Unit) -> None:
        """Show a length; None shows that several parts differ."""
        self._unit = unit
        if length_mm is None:
            self.show_words("", hint="several")
        else:
            self.show_words(own_writing(unit).length(length_mm))

    def ask(self, placeholder: str, unit: Unit) -> None:
        """Wait for a length; the empty field shows what is wanted."""
        self.show_length(None, unit)
        self.setPlaceholderText(placeholder)

    def length_mm(self) -> float:
        """The length in the field, in mm. ReadingError if the field holds none."""
        return read_length(
            self.text(), self._unit, decimal=decimal_sign(), allow_zero=self._zero, allow_negative=self._any_sign
        )

    def value(self) -> float:
        return self.length_mm()
