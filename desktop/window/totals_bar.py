"""The bar of totals along the bottom of the window."""

from PySide6.QtWidgets import QFrame, QHBoxLayout, QWidget

from desktop.look.plain import Label, tip_words
from desktop.look.roles import set_role
from desktop.look.wording import counted, own_writing
from desktop.state.shown import Shown
from shared.job import Unit
from takeoff.basket.words import cost_words, has_prices
from takeoff.bill import Bill
from takeoff.figures.measured import Sureness, Totals


class TotalsBar(QFrame):
    """Says how much there is to coat, mask and seal; at the right what is being done, or the unit of lengths."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("bar")
        self._labels = tuple(Label(self) for _ in range(6))
        self._unit = Label(self)
        self._busy = ""
        self._unit_name = ""
        set_role(self._unit, "quiet")
        row = QHBoxLayout(self)
        row.setContentsMargins(14, 6, 14, 6)
        row.setSpacing(20)
        for label in self._labels:
            row.addWidget(label)
        row.addStretch(1)
        row.addWidget(self._unit)

    def follow(self, old: Shown | None, new: Shown) -> None:
        """Show the totals of the job that is shown, even if that is only tried out."""
        if old is not None and old.bill is not new.bill:
            self._show_bill(new)
        if old is not None and old.takeoff is new.takeoff and old.unit is new.unit:
            return
        self._show_bill(new)
        for label, words in zip(self._labels, total_words(new.takeoff.totals, new.unit), strict=False):
            label.setText(words)
        for label, words in zip(self._labels, sure_words(new.takeoff.sure, new.unit), strict=False):
            label.setToolTip(tip_words(words))
        self._unit_name = new.unit.value
        self.say(self._busy)

    def _show_bill(self, new: Shown) -> None:
        """Show what the basket costs against the budget; nothing until that has been counted."""
        label = self._labels[-1]
        label.setText(basket_words(new.bill) if new.bill else "")
        set_role(label, "trouble" if new.bill and new.bill.basket.over else "")

    def say(self, busy: str) -> None:
        """Say what is being done in the background; "" when nothing is."""
        self._busy = busy
        self._unit.setText(busy or self._unit_name)


def sure_words(sure: Sureness | None, unit: Unit) -> tuple[str, ...]:
    """How far the area and the lengths in the bar could be off, four texts; each is "" if that was not counted."""
    if sure is None:
        return ("",) * 4
    writing = own_writing(unit)
    lengths = tuple(f"{name} {writing.off_length(length_mm)}" for name, length_mm in sure.lengths[:3])
    words = (f"coated {writing.off_area(sure.coated_mm2)}", *lengths)
    return tuple(f"Tolerance of the tape: {each}" for each in words)


def total_words(totals: Totals, unit: Unit) -> tuple[str, ...]:
    """The totals, each as a word and a figure."""
    writing = own_writing(unit)
    return (
        f"Coated {writing.area(totals.coated_mm2)}",
        f"Masked {writing.total_length(totals.masking_mm)}",
        f"Bead {writing.total_length(totals.bead_mm)}",
        f"Old bead {writing.total_length(totals.old_bead_mm)}",
        f"Fronts {totals.fronts}",
    )


def basket_words(bill: Bill) -> str:
    """What the basket costs against the budget, and what that cost leaves out; "" if nothing is bought."""
    basket = bill.basket
    if not basket.rows:
        return ""
    if not has_prices(basket):
        return f"Basket {counted(len(basket.rows), 'product', 'products')}, no prices yet"
    budget = f" (budget {own_writing().money(basket.budget)})" if basket.budget else ""
    return f"Basket {cost_words(own_writing().money(basket.cost), basket, bill.left_out)}{budget}"
