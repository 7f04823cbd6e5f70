"""Surfaces: the finish that each kind of part gets, and how it is coated."""

from functools import partial

from msgspec.structs import replace
from PySide6.QtCore import QEvent, QObject, Signal
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from desktop.fields.chooser import Chooser
from desktop.fields.value_rows import swatch
from desktop.finish.section import Section
from desktop.look.plain import Label
from desktop.look.roles import set_role
from desktop.state.shown import Shown
from desktop.state.store import Store
from shared.edits.finishes import with_kind_choice
from shared.findings import Place
from shared.job import KindChoice
from shared.trade.finishes import Finish
from shared.trade.kinds import Kind, Treatment, usual

NO_FINISH = "no finish"
WAYS = tuple(treatment for treatment in Treatment if treatment is not Treatment.AS_KIND)


class KindRow(QObject):
    """The choosers of one kind: how it is coated, and with which finish.

    `decided(label, choice)` says what the person chose, and `entered(kind)` that the keys came to the row.
    """

    decided = Signal(str, object)
    entered = Signal(object)

    def __init__(self, kind: Kind, parent: QWidget) -> None:
        super().__init__(parent)
        self.kind = kind
        self._choice = KindChoice(kind, Treatment.LEFT)
        self._ids: tuple[str, ...] = ()
        self._offered: tuple[tuple[str, str, str], ...] = ()
        self.name = Label(kind.value, parent)
        self.way, self.finish = Chooser(parent), Chooser(parent)
        self.way.addItems([way.words for way in WAYS])
        self.way.setAccessibleName(f"{kind}: how it is coated")
        self.finish.setAccessibleName(f"{kind}: its finish")
        self.name.setBuddy(self.finish)
        self.way.activated.connect(self._set_way)
        self.finish.activated.connect(self._set_finish)
        for box in (self.way, self.finish):
            box.installEventFilter(self)

    def show_choice(self, choice: KindChoice, finishes: tuple[Finish, ...]) -> None:
        """Show what holds for the kind."""
        self._choice = choice
        self._offer(finishes)
        self.way.setCurrentIndex(WAYS.index(choice.treatment) if choice.treatment in WAYS else -1)
        self.finish.setCurrentIndex(self._ids.index(choice.finish) if choice.finish in self._ids else -1)
        self.finish.setEnabled(choice.treatment is not Treatment.LEFT)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() == QEvent.Type.FocusIn:
            self.entered.emit(self.kind)
        return super().eventFilter(watched, event)

    def _offer(self, finishes: tuple[Finish, ...]) -> None:
        offered = tuple((finish.id, finish.name, finish.shade) for finish in finishes)
        if offered != self._offered or not self.finish.count():
            self._offered = offered
            self._ids = ("", *(finish.id for finish in finishes))
            self.finish.clear()
            self.finish.addItem(NO_FINISH)
            for finish in finishes:
                self.finish.addItem(swatch(finish.shade), finish.name)

    def _set_way(self, place: int) -> None:
        self.decided.emit(f"Coating of {self.kind}", replace(self._choice, treatment=WAYS[place]))

    def _set_finish(self, place: int) -> None:
        self.decided.emit(f"Finish of {self.kind}", replace(self._choice, finish=self._ids[place]))


class SurfacesForm(Section):
    """A row for every kind that has a surface. When the keys come to a row, the parts of its kind light up."""

    place = Place.SURFACES

    def __init__(self, store: Store, parent: QWidget | None = None) -> None:
        super().__init__(store, parent)
        self.rows = {kind: KindRow(kind, self) for kind, row in usual().items() if not row.hole}
        grid = QGridLayout()
        grid.setHorizontalSpacing(12)
        grid.setVerticalSpacing(4)
        grid.setColumnStretch(2, 1)
        for place, words in enumerate(("Kind", "Coated", "Finish")):
            head = Label(words, self)
            set_role(head, "quiet")
            grid.addWidget(head, 0, place)
        for number, row in enumerate(self.rows.values(), 1):
            for place, widget in enumerate((row.name, row.way, row.finish)):
                grid.addWidget(widget, number, place)
            row.decided.connect(self._decide)
            row.entered.connect(self._light)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addLayout(grid)
        column.addWidget(self.trouble)
        column.addWidget(self.to_look_at)
        column.addStretch(1)

    def follow(self, new: Shown) -> None:
        super().follow(new)
        for choice in new.job.kind_choices:
            if choice.kind in self.rows:
                self.rows[choice.kind].show_choice(choice, new.job.finishes)

    def _decide(self, label: str, choice: KindChoice) -> None:
        self.take(label, partial(with_kind_choice, choice=choice))

    def _light(self, kind: Kind) -> None:
        takeoff = self._store.open.takeoff
        self._store.light(tuple(row.id for row in takeoff.parts if row.kind is kind))
