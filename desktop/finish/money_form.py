"""Prices and waste: how prices are meant, what may be spent, and what is used beyond the sum."""

from msgspec.structs import replace
from PySide6.QtWidgets import QVBoxLayout, QWidget

from desktop.fields.grid import Edit, RowGrid
from desktop.finish.fields import MEANS, allowance_lines, money_lines
from desktop.finish.section import Section
from desktop.look.plain import Label
from desktop.look.roles import set_role
from desktop.state.shown import Shown
from desktop.state.store import Store
from shared.trade.products import Allowances, Money

GREATEST_WIDTH = 480


class MoneyForm(Section):
    """The fields of money and of allowances. Each change is one edit for undo."""

    def __init__(self, store: Store, parent: QWidget | None = None) -> None:
        super().__init__(store, parent)
        self.money = RowGrid[Money](money_lines(), self, means=MEANS)
        self.allowances = RowGrid[Allowances](allowance_lines(), self, means=MEANS)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        for words, grid in (("Prices", self.money), ("Waste and losses", self.allowances)):
            head = Label(words, self)
            set_role(head, "head")
            grid.setMaximumWidth(GREATEST_WIDTH)
            column.addWidget(head)
            column.addWidget(grid)
            column.addSpacing(8)
        column.addWidget(self.trouble)
        column.addWidget(self.to_look_at)
        column.addStretch(1)
        self.money.edited.connect(self._edit_money)
        self.allowances.edited.connect(self._edit_allowances)

    def follow(self, new: Shown) -> None:
        super().follow(new)
        self.money.show_values((new.job.money,), new)
        self.allowances.show_values((new.job.allowances,), new)

    def _edit_money(self, label: str, edit: Edit[Money]) -> None:
        self.take(label, lambda job: replace(job, money=edit(job.money)))

    def _edit_allowances(self, label: str, edit: Edit[Allowances]) -> None:
        self.take(label, lambda job: replace(job, allowances=edit(job.allowances)))
