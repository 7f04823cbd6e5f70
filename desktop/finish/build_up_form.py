"""The build-up of a finish: its name, its shade, and its steps in the order of work."""

from functools import partial

from msgspec.structs import replace
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from desktop.fields.chooser import Chooser
from desktop.fields.form_rows import ChoiceRow, TextRow
from desktop.fields.grid import Edit, RowGrid
from desktop.fields.item_list import Cells, ItemList
from desktop.fields.value_rows import ShadeRow, swatch
from desktop.fields.words import SpreadWords
from desktop.finish.fields import MEANS, USE_OF, product_of, spread_words, step_lines
from desktop.finish.section import Section
from desktop.look.plain import Label
from desktop.look.roles import set_role
from desktop.look.wording import own_writing
from desktop.state.shown import Shown
from desktop.state.store import Store
from shared.edits import finishes as finish_edits
from shared.findings import Place
from shared.trade.finishes import Finish, Material, Step, Work
from shared.trade.products import Product, Use
from takeoff.surfaces.by_finish import totals_by_finish

NOTHING = "nothing"
NEW = "New finish"
NO_STEPS = "It has no steps yet. Press Add to begin with cleaning."
STEPS_HEIGHT = 166
LAID_WITH = frozenset({Use.SLEEVE, Use.OTHER})
NOT_IN_STEPS = LAID_WITH | {Use.SEALANT, Use.TAPE}


class BuildUpForm(Section):
    """Shows one finish at a time. Choosing a finish lights up its parts; each change is one edit for undo."""

    place = Place.BUILD_UP

    def __init__(self, store: Store, parent: QWidget | None = None) -> None:
        super().__init__(store, parent)
        self.finish = Chooser(self)
        self.new, self.copy, self.away = (QPushButton(words, self) for words in ("New", "Copy", "Remove"))
        self.area = Label(self)
        self.name, self.shade = TextRow[Finish]("Name", "name"), ShadeRow("Shade", "shade")
        self.looks = RowGrid[Finish](((self.name,), (self.shade,)), self)
        self.steps = ItemList(
            "Steps", ("Step", "Product", "Coats", "Spread rate", "Recoat after"), ordered=True, parent=self
        )
        self.product, self.tool = ChoiceRow[Step]("Product", "product"), ChoiceRow[Step]("Applied with", "tool")
        self.fields = RowGrid[Step](step_lines(self.product, self.tool), self, means=MEANS)
        self.advice = Label(NO_STEPS, self)
        self._chosen = ""
        self._ids: tuple[str, ...] = ()
        self._step = 0
        self._lay_out()
        self._connect()

    @property
    def chosen(self) -> Finish | None:
        """The finish that is shown; None if the job has no finishes."""
        finishes = self._store.open.job.finishes
        return next((finish for finish in finishes if finish.id == self._chosen), finishes[0] if finishes else None)

    def choose(self, finish_id: str) -> None:
        """Show this finish."""
        self._chosen, self._step = finish_id, 0
        self.follow(self._store.open)

    def follow(self, new: Shown) -> None:
        super().follow(new)
        self._offer(new.job.finishes)
        finish = self.chosen
        for widget in (self.copy, self.away, self.looks, self.steps, self.fields):
            widget.setEnabled(finish is not None)
        if finish is None:
            self.steps.show_rows((), -1)
            self._show_step(None, new)
            return
        self.finish.setCurrentIndex(self._ids.index(finish.id))
        areas = {total.finish: total.coated_mm2 for total in totals_by_finish(new.takeoff)}
        coated = areas.get(finish.id)
        self.area.setText("" if coated is None else f"coats {own_writing(new.unit).area(coated)}")
        self.looks.show_values((finish,), new)
        self._step = max(min(self._step, len(finish.steps) - 1), 0)
        self.steps.show_rows([_cells(step, new) for step in finish.steps], self._step)
        self._show_step(finish.steps[self._step] if finish.steps else None, new)

    def _show_step(self, step: Step | None, shown: Shown) -> None:
        self.fields.setVisible(step is not None)
        self.advice.setVisible(step is None)
        if step is not None:
            self.product.offer(_offered(step.product, NOT_IN_STEPS, shown, but=True))
            self.tool.offer(_offered(step.tool, LAID_WITH, shown, but=False))
            self.fields.show_values((step,), shown)

    def _offer(self, finishes: tuple[Finish, ...]) -> None:
        self._ids = tuple(finish.id for finish in finishes)
        for place, finish in enumerate(finishes):
            if place >= self.finish.count():
                self.finish.addItem("")
            self.finish.setItemText(place, finish.name)
            self.finish.setItemIcon(place, swatch(finish.shade))
        while self.finish.count() > len(finishes):
            self.finish.removeItem(len(finishes))

    def _lay_out(self) -> None:
        set_role(self.area, "quiet")
        set_role(self.advice, "quiet")
        self.finish.setAccessibleName("Finish")
        head = QHBoxLayout()
        head.addWidget(self.finish, 1)
        head.addWidget(self.area)
        for button in (self.new, self.copy, self.away):
            button.setAutoDefault(True)
            head.addWidget(button)
        self.steps.tree.setFixedHeight(STEPS_HEIGHT)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addLayout(head)
        for widget in (self.looks, self.steps, self.advice, self.fields, self.trouble, self.to_look_at):
            column.addWidget(widget)
        column.addStretch(1)

    def _connect(self) -> None:
        self.finish.activated.connect(self._choose)
        self.new.clicked.connect(self._add_finish)
        self.copy.clicked.connect(self._copy_finish)
        self.away.clicked.connect(self._take_finish_away)
        self.looks.edited.connect(self._edit_finish)
        self.fields.edited.connect(self._edit_step)
        self.steps.chosen.connect(self._choose_step)
        self.steps.added.connect(self._add_step)
        self.steps.taken_away.connect(self._take_step_away)
        self.steps.moved.connect(self._move_step)

    def _choose(self, place: int) -> None:
        self.choose(self._ids[place])
        takeoff = self._store.open.takeoff
        self._store.light(tuple(row.id for row in takeoff.parts if row.finish == self._chosen))

    def _choose_step(self, place: int) -> None:
        finish = self.chosen
        self._step = place
        if finish is not None and 0 <= place < len(finish.steps):
            self.tell("")
            self._show_step(finish.steps[place], self._store.open)

    def _add_finish(self) -> None:
        new = Finish(finish_edits.fresh_finish_id(self._store.open.job), NEW)
        self._chosen, self._step = new.id, 0
        self.take("New finish", partial(finish_edits.with_finish, finish=new))
        self.name.setFocus()

    def _copy_finish(self) -> None:
        finish = self.chosen
        if finish is not None:
            self._chosen = finish_edits.fresh_finish_id(self._store.open.job)
            self.take("Copy of a finish", partial(finish_edits.copied_finish, finish_id=finish.id))

    def _take_finish_away(self) -> None:
        finish = self.chosen
        if finish is not None:
            self.take("Remove finish", partial(finish_edits.without_finish, finish_id=finish.id))

    def _edit_finish(self, label: str, edit: Edit[Finish]) -> None:
        finish = self.chosen
        if finish is not None:
            self.take(label, partial(finish_edits.with_changed_finish, finish=edit(finish)))

    def _edit_step(self, label: str, edit: Edit[Step]) -> None:
        finish, at = self.chosen, self._step
        if finish is not None and at < len(finish.steps):
            step = _with_fitting_product(edit(finish.steps[at]), finish.steps[at], self._store.open)
            self.take(label, partial(finish_edits.with_changed_step, finish_id=finish.id, at=at, step=step))

    def _add_step(self, at: int) -> None:
        finish = self.chosen
        if finish is not None:
            begin = Step(Work.CLEAN, _usual_product(Work.CLEAN, self._store.open))
            # The new step is the one before once more, until other work is chosen.
            step = replace(finish.steps[at - 1], coats=1) if at else begin
            self._step = at
            self.take("New step", partial(finish_edits.with_step, finish_id=finish.id, step=step, at=at))

    def _take_step_away(self, at: int) -> None:
        finish = self.chosen
        if finish is not None:
            self.take("Remove step", partial(finish_edits.without_step, finish_id=finish.id, at=at))

    def _move_step(self, at: int, to: int) -> None:
        finish = self.chosen
        if finish is not None:
            self._step = to
            self.take("Order of steps", partial(finish_edits.with_step_moved, finish_id=finish.id, at=at, to=to))


def _cells(step: Step, shown: Shown) -> Cells:
    """The cells of a step in the list."""
    product = product_of(step.product, shown)
    after = f"{own_writing().number(step.next_h)} h" if step.next_h else ""
    work = f"{step.work}{_only_on(step)}"
    return work, _called(step.product, shown), f"{step.coats}", _spread_of(step, product, shown), after


def _only_on(step: Step) -> str:
    """The materials that a step is done on, or those that it is not done on if they are fewer; "" for all materials."""
    rest = [material for material in Material if material not in step.on]
    if not step.on or not rest:
        return ""
    return f", not on {', '.join(rest)}" if len(rest) < len(step.on) else f", on {', '.join(step.on)}"


def _spread_of(step: Step, product: Product | None, shown: Shown) -> str:
    if product is None:
        return ""
    if step.covers_m2 is None:
        return spread_words(product, shown)
    return SpreadWords(product.measure).show(step.covers_m2, shown.unit)


def _offered(product_id: str, uses: frozenset[Use], shown: Shown, *, but: bool) -> list[tuple[str, object]]:
    """The choices: products of these uses, or of all others with `but`. The named product is one, even if missing."""
    found = [(product.name, product.id) for product in shown.job.products if (product.use in uses) is not but]
    ids = {name for _, name in found}
    named = [(_called(product_id, shown), product_id)] if product_id and product_id not in ids else []
    return [(NOTHING, ""), *found, *named]


def _called(product_id: str, shown: Shown) -> str:
    product = product_of(product_id, shown)
    return product.name if product else f'"{product_id}" is missing' if product_id else ""


def _usual_product(work: Work, shown: Shown) -> str:
    """The id of the first product that is for this work; "" if the job has no such product."""
    return next((product.id for product in shown.job.products if product.use is USE_OF.get(work)), "")


def _with_fitting_product(step: Step, before: Step, shown: Shown) -> Step:
    """The step; if its work was changed and its product does not fit that, with the first product that does."""
    product = product_of(step.product, shown)
    if step.work is before.work or (product is not None and product.use is USE_OF.get(step.work)):
        return step
    return replace(step, product=_usual_product(step.work, shown), covers_m2=None)
