"""The budget, and how much of it is spent."""

from PySide6.QtWidgets import QFormLayout, QProgressBar, QVBoxLayout, QWidget

from desktop.buy.what_if_changes import with_budget
from desktop.fields.typed import ValueField
from desktop.fields.words import MoneyWords
from desktop.look.plain import Label
from desktop.look.roles import set_role, set_state
from desktop.look.wording import own_writing
from desktop.state.shown import Shown
from desktop.state.store import Store
from takeoff.basket.words import has_prices, open_points
from takeoff.bill import Bill

WHOLE = 1000
"""The value at which the bar is full."""

BAR_HEIGHT = 10


class BudgetForm(QWidget):
    """The field for the budget, over a bar and words that show how much is spent. A change is one edit for undo."""

    def __init__(self, store: Store, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._store = store
        self.field = ValueField("Budget", self)
        self.bar = QProgressBar(self)
        self.words = Label(self)
        self.trouble = Label(self)
        self._lay_out()
        self.field.taken.connect(self._take)
        self.field.told.connect(self._tell)

    def follow(self, new: Shown) -> None:
        """Show the budget, and how much of it is spent once the basket is reckoned."""
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
        for label in (self.words, self.trouble):
            label.setWordWrap(True)
        head = Label("Budget", self)
        set_role(head, "head")
        head.setBuddy(self.field)
        row = QFormLayout()
        row.addRow(head, self.field)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addLayout(row)
        for widget in (self.bar, self.words, self.trouble):
            column.addWidget(widget)


def spent_words(bill: Bill) -> str:
    """What is spent, and what is left of the budget or how far it is over. "" while nothing has a price.

    What has no price yet is not spent: the words say that it has to come out of what is left.
    """
    basket, money = bill.basket, bill.job.money
    if not has_prices(basket):
        return ""
    tax = f", including {own_writing().money(basket.tax)} tax" if money.tax else ""
    lacking = open_points(basket, bill.left_out)
    spent = f"{own_writing().money(basket.cost)} spent{' so far' if lacking else ''}{tax}"
    if basket.over:
        return f"{spent}; {own_writing().money(basket.over)} over the budget{f', {lacking}' if lacking else ''}."
    left = f"; {own_writing().money(basket.budget - basket.cost)} left" if basket.budget else ""
    return f"{spent}{left}{f' for {lacking}' if left and lacking else ''}."
