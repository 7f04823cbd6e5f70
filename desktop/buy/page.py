"""Buy: the basket, with the sum behind each row; beside it the budget and What if; files for the shop."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QHBoxLayout, QPushButton, QScrollArea, QVBoxLayout, QWidget

from desktop.buy.budget_form import BudgetForm
from desktop.buy.savings_view import SavingsView
from desktop.buy.what_if import WhatIf
from desktop.buy.what_if_form import WhatIfForm
from desktop.canvas.face_view import FaceSource, FaceView
from desktop.fields.to_look_at import ToLookAt
from desktop.look.plain import Label
from desktop.look.roles import set_role
from desktop.pages.view import PageView
from desktop.state.background import Background
from desktop.state.shown import Page, Shown
from desktop.state.store import Store
from desktop.sums.basket import HEADS, buy_rows, headline, product_of
from desktop.sums.row import SumRow
from desktop.sums.view import RowsView
from shared.findings import Place
from takeoff.bill import Bill
from takeoff.needs.cautions import caution_of_hardeners

WIDTHS = (72, 0, 72, 68, 64)
BESIDE_WIDTH = 360
FACE_HEIGHT = 160
FACE_MARGIN_PX = 10
"""The margin round the face, which here is only looked at."""

BUY = Page("Buy", has_strip=False)


class BuyPage(PageView):
    """Shows the rows at the left. What can be decided about them, and the face, are at the right."""

    beside: QFrame

    def __init__(self, store: Store, faces: FaceSource, background: Background, parent: QWidget | None = None) -> None:
        face = FaceView(faces, margin_px=FACE_MARGIN_PX)
        super().__init__(BUY, face, parent)
        self._store = store
        self._what_if = what_if = WhatIf(store, background, self)
        self.head = Label(self)
        self.to_look_at = ToLookAt(self)
        self.tree = RowsView("Basket", HEADS, WIDTHS, self)
        self.budget = BudgetForm(store, self)
        self.what_if = WhatIfForm(store, what_if, self)
        self.savings = SavingsView(self)
        self.prices = QPushButton("Prices from a file...", self)
        self.shopping_list = QPushButton("Shopping list...", self)
        self.table = QPushButton("Spreadsheet...", self)
        self.hardeners = Label(caution_of_hardeners(), self)
        self.beside = QFrame(self)
        self._area = QScrollArea(self)
        self._bill: Bill | None = None
        self._lay_out(face.canvas)
        self.tree.picked.connect(self._pick)
        self.savings.asked.connect(what_if.ask_for)
        what_if.found.connect(self.savings.show_savings)
        what_if.shown.connect(self._reveal)

    @property
    def first_places(self) -> tuple[QWidget, ...]:
        return (self.tree,)

    def follow(self, old: Shown | None, new: Shown) -> None:
        """Show the basket as soon as it is reckoned. Until then the rows before stay."""
        self._what_if.follow(old, new)
        self.head.setText(headline(new))
        self.budget.follow(new)
        bill = new.bill
        if bill is None or bill is self._bill or bill.job is not new.job:
            return
        self._bill = bill
        self.to_look_at.say(each for each in bill.findings if each.code.is_said_in(Place.BASKET))
        self.tree.show_rows(buy_rows(bill, new.takeoff), HEADS)
        self.what_if.follow(new)
        self.hardeners.setVisible(_holds_hardener(bill))

    def _pick(self, row: SumRow) -> None:
        self.what_if.suggest(product_of(row))
        self._store.light(row.parts, _face_of(row, self._store.open))

    def _reveal(self) -> None:
        """Scroll to the answer of What if: the question may have come from further below."""
        self._area.ensureWidgetVisible(self.what_if.outcome)

    def focus_beside(self) -> None:
        """Give the keys to What if."""
        self.what_if.what.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def _lay_out(self, canvas: QWidget) -> None:
        set_role(self.head, "head")
        self.hardeners.setWordWrap(True)
        self.hardeners.hide()
        set_role(self.hardeners, "warning")
        paper = QFrame(self)
        paper.setObjectName("paper")
        left = QVBoxLayout(paper)
        left.setContentsMargins(16, 12, 12, 8)
        left.setSpacing(8)
        left.addWidget(self.head)
        left.addWidget(self.to_look_at)
        left.addWidget(self.tree, 1)
        left.addLayout(self._buttons())
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        row.addWidget(paper, 1)
        self._lay_out_beside(canvas)
        row.addWidget(self.beside)

    def _buttons(self) -> QHBoxLayout:
        row = QHBoxLayout()
        for button in (self.prices, self.shopping_list, self.table):
            button.setAutoDefault(True)
            row.addWidget(button)
        row.addStretch(1)
        return row

    def _lay_out_beside(self, canvas: QWidget) -> None:
        inside = QWidget()
        inside.setObjectName("panel")
        column = QVBoxLayout(inside)
        column.setContentsMargins(14, 12, 14, 8)
        column.setSpacing(16)
        for widget in (self.budget, self.what_if, self.savings, self.hardeners):
            column.addWidget(widget)
        column.addStretch(1)
        area = self._area
        area.setWidgetResizable(True)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        area.setWidget(inside)
        canvas.setFixedHeight(FACE_HEIGHT)
        self.beside.setObjectName("panel")
        self.beside.setFixedWidth(BESIDE_WIDTH)
        outer = QVBoxLayout(self.beside)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.addWidget(area, 1)
        outer.addWidget(canvas)


def _holds_hardener(bill: Bill) -> bool:
    bought = {row.product for row in bill.basket.rows}
    return any(product.ratio is not None for product in bill.job.products if product.id in bought)


def _face_of(row: SumRow, shown: Shown) -> str:
    """The id of the face on which a row's parts are seen: the row's own, else the shown face, else the first with some.

    The shown face serves if it has parts of the row, or if no face has.
    """
    faces = [face.id for face in shown.job.faces if any(part.id in row.parts for part in face.parts)]
    return row.face or (shown.face if shown.face in faces or not faces else faces[0])
