"""What if: one thing at a time is changed on a copy of the job, and the outcome is shown before it is applied."""

from PySide6.QtWidgets import QComboBox, QFrame, QGridLayout, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from desktop.buy.what_if import Outcome, WhatIf
from desktop.buy.what_if_changes import CHANGES, Change
from desktop.fields.typed import ValueField
from desktop.look.plain import Label
from desktop.look.roles import set_role
from desktop.look.wording import own_writing
from desktop.state.shown import Shown
from desktop.state.store import Store
from takeoff.basket.compared import Difference
from takeoff.basket.words import cost_words
from takeoff.bill import Bill
from takeoff.figures.to_buy import BasketRow

TOGETHER = "\N{NO-BREAK SPACE}"
"""The space within a pack's words, so that no line breaks there."""

SHORTEST_CHOICE = 12
"""The fewest letters that a closed chooser shows. Longer names are cut there, but never in its open list."""


class WhatIfForm(QWidget):
    """Three fields: what is changed, which one, and to what. Return or another choice in the last field asks."""

    def __init__(self, store: Store, what_if: WhatIf, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._store, self._what_if = store, what_if
        self.what, self.which, self.option = QComboBox(self), QComboBox(self), QComboBox(self)
        self.field = ValueField("What to change it to", self)
        self.trouble = Label(self)
        self.outcome = QFrame(self)
        self.said, self.cost, self.rows = Label(self), Label(self), Label(self)
        self.take, self.drop = QPushButton("Apply", self), QPushButton("Discard", self)
        self._changes: tuple[Change, ...] = ()
        self._bill: Bill | None = None
        self._lay_out()
        self._connect()

    @property
    def change(self) -> Change | None:
        """The change that is chosen; None if the job has nothing of that sort to change."""
        place = self.which.currentIndex()
        return self._changes[place] if 0 <= place < len(self._changes) else None

    def follow(self, new: Shown) -> None:
        """Offer what can be changed in the open job, once its bill is reckoned."""
        if new.bill is not None and new.bill is not self._bill and new.bill.job is new.job:
            self._bill = new.bill
            self._offer()

    def choose(self, what: str, which: str = "") -> None:
        """Choose the sort of change by its words, and the one to change by its; "" leaves the latter as it is."""
        self.what.setCurrentText(what)
        self._offer()
        if which:
            self.which.setCurrentText(which)
            self._show_change()

    def suggest(self, product: str) -> None:
        """Choose the change of the chosen sort that is about this product, if there is one."""
        place = next((place for place, change in enumerate(self._changes) if change.product == product), None)
        if place is not None:
            self.which.setCurrentIndex(place)
            self._show_change()

    def show_outcome(self, outcome: Outcome | None) -> None:
        """Show what the changes come to. None hides it."""
        self.outcome.setVisible(outcome is not None)
        self._tell("")
        if outcome is None:
            self._show_change()
            return
        self.said.setText("\n".join(outcome.said))
        self.cost.setText(_cost_words(outcome))
        self.rows.setText("\n".join(_difference_words(row, outcome) for row in outcome.compared.rows))
        self.rows.setVisible(bool(outcome.compared.rows))

    def _offer(self) -> None:
        bill = self._bill
        if bill is None:
            return
        which = self.which.currentText()
        self._changes = tuple(CHANGES[self.what.currentText()](bill, self._store.open.takeoff))
        self.which.clear()
        self.which.addItems([change.which for change in self._changes])
        self.which.setCurrentIndex(max(0, self.which.findText(which)))
        self._show_change()

    def _show_change(self) -> None:
        change = self.change
        typed = change is not None and change.words is not None
        self.field.setVisible(typed)
        self.option.setVisible(change is not None and not typed)
        self.which.setEnabled(change is not None)
        if change is None:
            return
        if change.words is not None:
            self.field.show_value(change.now, change.words, self._store.open.unit, hint="none")
            return
        self.option.clear()
        for words, value in change.options:
            self.option.addItem(words, value)
        self.option.setCurrentIndex(self.option.findData(change.now))

    def _ask(self, value: object) -> None:
        change = self.change
        if change is not None and value != change.now:
            self._tell("")
            self._what_if.ask(change.said(value, self._store.open.unit), lambda job: change.made(job, value))

    def _ask_option(self, place: int) -> None:
        self._ask(self.option.itemData(place))

    def _tell(self, words: str) -> None:
        self.trouble.setText(words)
        self.trouble.setVisible(bool(words))

    def _connect(self) -> None:
        self.what.activated.connect(self._offer)
        self.which.activated.connect(self._show_change)
        self.option.activated.connect(self._ask_option)
        self.field.taken.connect(self._ask)
        self.field.told.connect(self._tell)
        self.take.clicked.connect(self._what_if.take)
        self.drop.clicked.connect(self._what_if.drop)
        self._what_if.shown.connect(self.show_outcome)
        self._what_if.refused.connect(self._tell)

    def _lay_out(self) -> None:
        self.what.addItems(list(CHANGES))
        self.what.setAccessibleName("What to change")
        self.which.setAccessibleName("Which one to change")
        self.option.setAccessibleName("What to change it to")
        head = Label("What if", self)
        head.setBuddy(self.what)
        set_role(head, "head")
        grid = QGridLayout()
        grid.setColumnStretch(1, 1)
        for place, words in enumerate(("Change", "of", "to")):
            label = Label(words, self)
            set_role(label, "quiet")
            grid.addWidget(label, place, 0)
        for place, box in enumerate((self.what, self.which, self.option)):
            box.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
            box.setMinimumContentsLength(SHORTEST_CHOICE)
            grid.addWidget(box, place, 1)
        grid.addWidget(self.field, 2, 1)
        self._lay_out_outcome()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(head)
        column.addLayout(grid)
        column.addWidget(self.trouble)
        column.addWidget(self.outcome)

    def _lay_out_outcome(self) -> None:
        set_role(self.outcome, "card")
        set_role(self.cost, "head")
        set_role(self.rows, "quiet")
        set_role(self.trouble, "trouble")
        for label in (self.said, self.cost, self.rows, self.trouble):
            label.setWordWrap(True)
        buttons = QHBoxLayout()
        for button in (self.take, self.drop):
            button.setAutoDefault(True)
            buttons.addWidget(button)
        buttons.addStretch(1)
        inner = QVBoxLayout(self.outcome)
        inner.setContentsMargins(12, 10, 12, 10)
        for label in (self.said, self.cost, self.rows):
            inner.addWidget(label)
        inner.addLayout(buttons)
        self.outcome.hide()
        self.trouble.hide()


def _cost_words(outcome: Outcome) -> str:
    """What the whole basket would cost, how much that is more or less than now, and how far over the budget."""
    after = outcome.after.basket
    cost = cost_words(own_writing().money(after.cost), after, outcome.after.left_out)
    over = f", {own_writing().money(after.over)} over the budget" if after.over else ""
    return f"{cost}; {_more(outcome.compared.cost)}{over}"


def _difference_words(row: Difference, outcome: Outcome) -> str:
    """What becomes of one row of the basket: its packs, the difference in cost, what is left over."""
    if row.after is None:
        return f"{row.wanted}: no longer bought, {_more(row.cost)}"
    packs = _row_words(row.after, outcome.after)
    if row.before is None:
        return f"{row.wanted}: {packs}, {_more(row.cost)}"
    same = (row.before.product, row.before.packs) == (row.after.product, row.after.packs)
    instead = "" if same else f" instead of {_row_words(row.before, outcome.before)}"
    return f"{row.wanted}: {packs}{instead}, {_more(row.cost)}; {_left_words(row.after, outcome.after)}"


def _row_words(row: BasketRow, bill: Bill) -> str:
    product = next(product for product in bill.job.products if product.id == row.product)
    name = f"{product.name}, " if product.name != row.wanted else ""
    packs = own_writing(bill.job.unit).packs(row.packs, product.measure)
    return f"{name}{packs.replace(' ', TOGETHER).replace(f',{TOGETHER}', ', ')}"


def _left_words(row: BasketRow, bill: Bill) -> str:
    product = next(product for product in bill.job.products if product.id == row.product)
    return f"{own_writing(bill.job.unit).amount(row.left_over, product.measure)} left over"


def _more(cost: float | None) -> str:
    """A difference in money, as in "20.00 more"; "no price" for None."""
    if cost is None:
        return "no price"
    if not cost:
        return "the same cost"
    return f"{own_writing().money(abs(cost))} {'more' if cost > 0 else 'less'}"
