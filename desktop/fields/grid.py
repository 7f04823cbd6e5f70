"""The grid of a form: rows with their labels, two short rows side by side and every other over the whole width.

What is wrong with a typed value stands right under its field.
"""

from collections.abc import Callable, Mapping, Sequence
from typing import Generic

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QWidget

from desktop.fields.form_rows import FormRow, Item
from desktop.look.plain import Label, tip_words
from desktop.look.roles import set_role
from desktop.state.shown import Shown

Lines = Sequence[Sequence[FormRow[Item]]]

Edit = Callable[[Item], Item]


class RowGrid(QWidget, Generic[Item]):
    """Shows the same fields of one or several values; it passes on `edited` of its rows.

    `means` says what fields mean, by their labels; it is shown when the pointer rests on one.
    """

    edited = Signal(str, object)

    def __init__(
        self, lines: Lines[Item], parent: QWidget | None = None, *, means: Mapping[str, str] | None = None
    ) -> None:
        super().__init__(parent)
        self.rows: tuple[FormRow[Item], ...] = tuple(row for line in lines for row in line)
        self._labels = {row: Label(row.label, self) for row in self.rows}
        self._troubles: dict[FormRow[Item], Label] = {}
        for row in self.rows:
            if means and row.label in means:
                row.setToolTip(tip_words(means[row.label]))
        self._lay_out(lines)
        for row in self.rows:
            row.edited.connect(self.edited)
            row.told.connect(self._tell)

    def row(self, label: str) -> FormRow[Item]:
        """The row with this label. KeyError if there is no such row."""
        for row in self.rows:
            if row.label == label:
                return row
        raise KeyError(label)

    def show_values(self, items: Sequence[Item], shown: Shown) -> None:
        """Show the fields that these values have."""
        for row in self.rows:
            row.show_values(items, shown)
            row.setVisible(row.concerns(items))
            self._labels[row].setVisible(row.concerns(items))

    @property
    def trouble(self) -> str:
        """What is wrong with what was typed, one sentence a line; "" if nothing is."""
        return "\n".join(dict.fromkeys(label.text() for label in self._troubles.values() if label.text()))

    def call_rows(self, names: Mapping[str, str]) -> None:
        """Show other names for some rows, given by their labels; every other row shows its label."""
        for row, label in self._labels.items():
            label.setText(names.get(row.label, row.label))

    def _lay_out(self, lines: Lines[Item]) -> None:
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(8)
        grid.setVerticalSpacing(4)
        grid.setColumnStretch(1, 1)
        grid.setColumnStretch(3, 1)
        for number, line in enumerate(lines):
            trouble = self._trouble_label()
            grid.addWidget(trouble, 2 * number + 1, 0, 1, 4)
            for column, row in enumerate(line):
                self._troubles[row] = trouble
                label = self._labels[row]
                wide = 1 if len(line) > 1 else 3
                if row.label:
                    set_role(label, "quiet")
                    label.setBuddy(row)
                    label.setToolTip(row.toolTip())
                    grid.addWidget(label, 2 * number, 2 * column)
                    grid.addWidget(row, 2 * number, 2 * column + 1, 1, wide)
                else:
                    grid.addWidget(row, 2 * number, 2 * column, 1, wide + 1)

    def _trouble_label(self) -> Label:
        label = Label(self)
        set_role(label, "trouble")
        label.setWordWrap(True)
        label.hide()
        return label

    def _tell(self, words: str) -> None:
        label = next(label for row, label in self._troubles.items() if row is self.sender())
        label.setText(words)
        label.setVisible(bool(words))
