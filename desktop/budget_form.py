"""The budget: set once, how much of it is spent, and what would bring the basket under it."""

from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFormLayout, QLabel, QProgressBar, QPushButton, QVBoxLayout, QWidget

from desktop.field_words import MoneyWords
from desktop.roles import set_role, set_state
from desktop.shown import Shown
from desktop.store import Store
from desktop.typed_field import ValueField
from desktop.what_if_changes import with_budget
from desktop.wording import money_words
from takeoff.bill import Bill
from takeoff.savings import Saving

WHOLE = 1000
"""Steps of the bar."""

BAR_HEIGHT = 10


class BudgetForm(QWidget):
    """`asked(saving)` when the person wants to see what a saving would come to."""

    asked = Signal(object)

    def __init__(self, store: Store, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._store = store
        self.field = ValueField("Budget", self)
        self.bar = QProgressBar(self)
        self.words = QLabel(self)
        self.trouble = QLabel(self)
        self.advice = QLabel("This would bring it under:", self)
        self.savings: list[QPushButton] = []
        self._lay_out()
        self.field.taken.connect(self._take)
        self.field.told.connect(self._tell)

    def follow(self, new: Shown) -> None:
        """Show the budget and what of it is spent."""
        money = new.job.money
        self.field.show_value(money.budget, MoneyWords("budget", nothing=0.0), new.unit, hint="none set")
        self._tell("")
        bill = new.bill
        basket = bill.basket if bill else None
        self.bar.setVisible(bool(money.budget))
        if basket is not None and money.budget:
            self.bar.setValue(min(WHOLE, round(WHOLE * basket.cost / money.budget)))
            set_state(self.bar, "over", on=bool(basket.over))
        self.words.setText(spent_words(bill) if bill else "")
        set_role(self.words, "trouble" if basket is not None and basket.over else "quiet")

    def show_savings(self, savings: tuple[Saving, ...]) -> None:
        """Offer what would bring the basket under the budget; nothing where it is not over."""
        for button in self.savings:
            self._column.removeWidget(button)
            button.deleteLater()
        self.savings = [self._button(saving) for saving in savings]
        self.advice.setVisible(bool(savings))
        if savings and not any(saving.enough for saving in savings):
            self.advice.setText("Nothing computed here brings it under; this saves most:")
        else:
            self.advice.setText("Each of these would bring it under:")

    def _button(self, saving: Saving) -> QPushButton:
        cost, saves = money_words(saving.basket.cost), money_words(saving.saves)
        button = QPushButton(f"{saving.what}\n{cost}, saves {saves}", self)
        button.setAutoDefault(True)
        button.setToolTip("See in What if what this comes to")
        set_role(button, "offer")
        button.clicked.connect(partial(self.asked.emit, saving))
        self._column.addWidget(button)
        return button

    def _take(self, budget: object) -> None:
        self._store.edit("Budget", with_budget(self._store.open.job, budget))

    def _tell(self, words: str) -> None:
        self.trouble.setText(words)
        self.trouble.setVisible(bool(words))

    def _lay_out(self) -> None:
        self.bar.setRange(0, WHOLE)
        self.bar.setTextVisible(False)
        self.bar.setFixedHeight(BAR_HEIGHT)
        self.bar.setAccessibleName("Share of the budget that is spent")
        set_role(self.trouble, "trouble")
        set_role(self.advice, "quiet")
        for label in (self.words, self.trouble, self.advice):
            label.setWordWrap(True)
            label.setTextFormat(Qt.TextFormat.PlainText)
        head = QLabel("Budget", self)
        set_role(head, "head")
        head.setBuddy(self.field)
        line = QFormLayout()
        line.addRow(head, self.field)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.addLayout(line)
        for widget in (self.bar, self.words, self.trouble, self.advice):
            self._column.addWidget(widget)
        self.advice.hide()


def spent_words(bill: Bill) -> str:
    """What is spent and what is left of the budget, or how far it is over; the tax that is in it."""
    basket, money = bill.basket, bill.job.money
    if not basket.rows:
        return ""
    tax = f", {money_words(basket.tax)} of it tax" if money.tax else ""
    spent = f"{money_words(basket.cost)} spent{tax}"
    if basket.over:
        return f"{spent}; {money_words(basket.over)} over the budget."
    return f"{spent}; {money_words(basket.budget - basket.cost)} left." if basket.budget else f"{spent}."
