"""Changes that would bring the basket under its budget: a button for each, to try it in What if."""

import textwrap
from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QPushButton, QSizePolicy, QVBoxLayout, QWidget

from desktop.look.plain import Label, button_words
from desktop.look.roles import set_role
from desktop.look.wording import own_writing
from takeoff.basket.savings import Saving
from takeoff.basket.words import cost_words

ENOUGH = "Each of these brings the cost under the budget:"
TOO_LITTLE = "None of the changes tried brings the cost under the budget. This one saves the most:"

LINE = 46
"""The most letters in a line of a button, so that the button fits the pane."""


class SavingsView(QWidget):
    """Buttons for savings. `asked(saving)` says that the person wants to see what a saving comes to."""

    asked = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.head = Label(self)
        self.head.setWordWrap(True)
        set_role(self.head, "quiet")
        self.buttons: list[QPushButton] = []
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.addWidget(self.head)
        self.hide()

    def show_savings(self, savings: tuple[Saving, ...]) -> None:
        """Offer these savings. The view is hidden if there are none."""
        for button in self.buttons:
            self._column.removeWidget(button)
            button.hide()
            button.deleteLater()
        self.buttons = [self._button(saving) for saving in savings]
        self.head.setText(ENOUGH if all(saving.enough for saving in savings) else TOO_LITTLE)
        self.setVisible(bool(savings))

    def _button(self, saving: Saving) -> QPushButton:
        cost, saves = own_writing().money(saving.basket.cost), own_writing().money(saving.saves)
        outcome = f"{cost_words(cost, saving.basket)}; saves {saves}"
        words = "\n".join(textwrap.fill(each, LINE) for each in (saving.what, outcome))
        button = QPushButton(button_words(words), self)
        button.setAutoDefault(True)
        button.setToolTip("Try this under What if")
        button.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        set_role(button, "offer")
        button.clicked.connect(partial(self.asked.emit, saving))
        self._column.addWidget(button)
        return button
