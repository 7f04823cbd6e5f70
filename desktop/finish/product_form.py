"""The products that are bought, and the fields and the packs of the chosen product."""

from functools import partial

from PySide6.QtWidgets import QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from desktop.fields.form_rows import TextRow
from desktop.fields.grid import Edit, RowGrid
from desktop.fields.item_list import Cells, ItemList
from desktop.fields.words import SizeWords
from desktop.finish.fields import MEANS, pack_lines, product_lines
from desktop.finish.section import Section
from desktop.look.plain import Label
from desktop.look.roles import set_role
from desktop.look.wording import own_writing
from desktop.state.shown import Shown
from desktop.state.store import Store
from shared.edits import finishes as finish_edits
from shared.findings import Place
from shared.trade.products import Measure, Pack, Product, Use

NEW = "New product"
NO_PRODUCTS = "There are no products yet. Press Add to begin."
LIST_WIDTH = 270
PACKS_HEIGHT = 92


class ProductForm(Section):
    """Shows the list at the left and the chosen product at its right. Each change is one edit for undo."""

    place = Place.PRODUCTS

    def __init__(self, store: Store, parent: QWidget | None = None) -> None:
        super().__init__(store, parent)
        self.products = ItemList("Products", ("Product", "Needed"), parent=self)
        self.name = TextRow[Product]("Name", "name")
        self.fields = RowGrid[Product](product_lines(self.name), self, means=MEANS)
        self.packs = ItemList("Packs", ("Pack", "Price"), parent=self)
        self.pack_fields = RowGrid[Pack](pack_lines(self._measure), self, means=MEANS)
        self.advice = Label(NO_PRODUCTS, self)
        self._place = 0
        self._pack = 0
        self._lay_out()
        self.products.chosen.connect(self._choose)
        self.products.added.connect(self._add_product)
        self.products.taken_away.connect(self._take_product_away)
        self.fields.edited.connect(self._edit_product)
        self.packs.chosen.connect(self._choose_pack)
        self.packs.added.connect(self._add_pack)
        self.packs.taken_away.connect(self._take_pack_away)
        self.pack_fields.edited.connect(self._edit_pack)

    @property
    def chosen(self) -> Product | None:
        """The product that is shown; None if the job has no products."""
        products = self._store.open.job.products
        return products[min(max(self._place, 0), len(products) - 1)] if products else None

    def follow(self, new: Shown) -> None:
        super().follow(new)
        self._place = min(self._place, max(len(new.job.products) - 1, 0))
        needed = _needed(new)
        rows = [(product.name, _amount(product, needed, new)) for product in new.job.products]
        self.products.show_rows(rows, self._place)
        self._show_product(new)

    def _show_product(self, shown: Shown) -> None:
        product = self.chosen
        for widget in (self.fields, self.packs, self.pack_fields):
            widget.setVisible(product is not None)
        self.advice.setVisible(product is None)
        if product is None:
            return
        self.fields.show_values((product,), shown)
        self._pack = min(self._pack, max(len(product.packs) - 1, 0))
        self.packs.show_rows([_pack_cells(pack, product, shown) for pack in product.packs], self._pack)
        self._show_pack(product, shown)

    def _show_pack(self, product: Product, shown: Shown) -> None:
        self.pack_fields.setVisible(bool(product.packs))
        if product.packs:
            self.pack_fields.show_values((product.packs[self._pack],), shown)

    def _measure(self) -> Measure:
        product = self.chosen
        return product.measure if product else Measure.LITRES

    def _lay_out(self) -> None:
        set_role(self.advice, "quiet")
        self.products.setFixedWidth(LIST_WIDTH)
        self.packs.tree.setFixedHeight(PACKS_HEIGHT)
        inside = QWidget(self)
        inside.setObjectName("panel")
        fields = QVBoxLayout(inside)
        fields.setContentsMargins(0, 0, 8, 0)
        fields.setSpacing(8)
        for widget in (self.advice, self.fields, self.packs, self.pack_fields, self.trouble, self.to_look_at):
            fields.addWidget(widget)
        fields.addStretch(1)
        area = QScrollArea(self)
        area.setWidgetResizable(True)
        area.setWidget(inside)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(12)
        row.addWidget(self.products)
        row.addWidget(area, 1)

    def _choose(self, place: int) -> None:
        self._place, self._pack = place, 0
        self.tell("")
        self._show_product(self._store.open)

    def _choose_pack(self, place: int) -> None:
        product = self.chosen
        if product is not None and 0 <= place < len(product.packs):
            self._pack = place
            self.tell("")
            self._show_pack(product, self._store.open)

    def _add_product(self, at: int) -> None:
        new = Product(finish_edits.fresh_product_id(self._store.open.job), NEW, Use.COLOUR)
        self._place, self._pack = at, 0
        self.take("New product", partial(finish_edits.with_product, product=new, at=at))
        self.name.setFocus()

    def _take_product_away(self, place: int) -> None:
        product = self._store.open.job.products[place]
        self.take("Remove product", partial(finish_edits.without_product, product_id=product.id))

    def _edit_product(self, label: str, edit: Edit[Product]) -> None:
        product = self.chosen
        if product is not None:
            self.take(label, partial(finish_edits.with_changed_product, product=edit(product)))

    def _add_pack(self, at: int) -> None:
        product = self.chosen
        if product is not None:
            self._pack = at
            pack = Pack(1.0)
            self.take("New pack", partial(finish_edits.with_pack, product_id=product.id, pack=pack, at=at))
            self.pack_fields.row("Pack size").setFocus()

    def _take_pack_away(self, at: int) -> None:
        product = self.chosen
        if product is not None:
            self.take("Remove pack", partial(finish_edits.without_pack, product_id=product.id, at=at))

    def _edit_pack(self, label: str, edit: Edit[Pack]) -> None:
        product, at = self.chosen, self._pack
        if product is not None and at < len(product.packs):
            pack = edit(product.packs[at])
            change = partial(finish_edits.with_changed_pack, product_id=product.id, at=at, pack=pack)
            self.take(label.replace("holds", "a pack's size"), change)


def _needed(shown: Shown) -> dict[str, float]:
    """How much of each product is needed, by id. Of interchangeable products it has the bought one, or the first."""
    bill = shown.bill
    needs = [bill.chosen(wanted) for wanted in bill.needs.wanted] if bill else []
    return {need.product: need.amount.amount for need in needs}


def _amount(product: Product, needed: dict[str, float], shown: Shown) -> str:
    amount = needed.get(product.id)
    return "" if amount is None else own_writing(shown.unit).amount(amount, product.measure)


def _pack_cells(pack: Pack, product: Product, shown: Shown) -> Cells:
    size = SizeWords(product.measure).show(pack.size, shown.unit)
    price = "" if pack.price is None else own_writing().money(pack.price, shown.job.money.currency)
    return f"{size} {pack.name}".rstrip(), price
