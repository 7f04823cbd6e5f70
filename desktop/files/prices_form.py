"""The card that reports what a price list says, before its prices are taken."""

from collections.abc import Callable

from PySide6.QtCore import QPoint
from PySide6.QtWidgets import QCheckBox, QFrame, QPlainTextEdit, QVBoxLayout, QWidget

from desktop.fields.card import MARGIN, Card
from desktop.look.plain import Label
from desktop.look.roles import set_role
from desktop.look.wording import counted
from takeoff.prices.listed import PriceList
from takeoff.prices.pricing import Priced

WIDTH = 620
REPORT_HEIGHT = 240

Pricing = Callable[[PriceList, bool], Priced]
"""Gives the job with the prices of a list; for True, also with the products and packs that it does not have."""


class PricesForm(Card):
    """Shows the report of a price list. `take` is called with the priced job once the person wants the prices."""

    def __init__(self, pricing: Pricing, take: Callable[[Priced, str], None], parent: QWidget | None = None) -> None:
        super().__init__("Apply the prices", WIDTH, parent)
        self._pricing, self._take = pricing, take
        self._prices: PriceList | None = None
        self.head = Label(self)
        self.report = QPlainTextEdit(self)
        self.adds = QCheckBox("also add products and packs that the job does not have", self)
        self._lay_out()
        self.adds.toggled.connect(self._show_report)

    def open_for(self, prices: PriceList, place: QPoint) -> None:
        """Open here with the report of a list. JobError if the list is in another currency than the job."""
        self._prices = prices
        self.adds.setChecked(False)
        self._show_report()
        self.open_at(place, self.do if self.do.isEnabled() else self.adds)

    def fill(self) -> None:
        prices = self._prices
        if prices is not None:
            self._take(self._pricing(prices, self.adds.isChecked()), prices.name)

    def _show_report(self) -> None:
        prices = self._prices
        if prices is None:
            return
        priced = self._pricing(prices, self.adds.isChecked())
        left_out = f", {counted(priced.left_out, 'line', 'lines')} left out" if priced.left_out else ""
        self.head.setText(f"{counted(priced.packs, 'pack gets', 'packs get')} a price{left_out}.")
        self.report.setPlainText("\n".join(prices.report(priced.said)))
        self.do.setEnabled(priced.packs > 0)

    def _lay_out(self) -> None:
        set_role(self.head, "head")
        self.report.setReadOnly(True)
        self.report.setTabChangesFocus(True)
        self.report.setFrameShape(QFrame.Shape.NoFrame)
        self.report.setFixedHeight(REPORT_HEIGHT)
        self.report.setAccessibleName("What the list says")
        self.trouble.setMinimumHeight(0)
        column = QVBoxLayout(self)
        column.setContentsMargins(MARGIN, MARGIN, MARGIN, MARGIN)
        for widget in (self.head, self.report, self.adds, self.trouble):
            column.addWidget(widget)
        column.addLayout(self.buttons)
