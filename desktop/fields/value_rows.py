"""Rows for the fields of finishes, products and prices: typed values, materials, a shade."""

from collections.abc import Callable, Sequence

from PySide6.QtCore import QSize
from PySide6.QtGui import QColor, QIcon, QPixmap
from PySide6.QtWidgets import QCheckBox, QGridLayout, QHBoxLayout, QPushButton

from desktop.fields.form_rows import SEVERAL, FormRow, Item
from desktop.fields.typed import ValueField
from desktop.fields.words import FieldWords, ShadeWords
from desktop.look.palette import shades
from desktop.look.plain import tip_words
from desktop.state.shown import Shown
from shared.job import Unit
from shared.trade.finishes import Finish, Material, Step

WordsOf = Callable[[Item, Shown], FieldWords]
HintOf = Callable[[Item, Shown], str]

MATERIALS_A_LINE = 3
SWATCH = 20


def no_hint(_item: object, _shown: Shown) -> str:
    """The hint for an empty field that shows none: ""."""
    return ""


def always(words: FieldWords) -> Callable[[object, Shown], FieldWords]:
    """What gives these words for every item."""

    def of(_item: object, _shown: Shown) -> FieldWords:
        return words

    return of


def every(_item: object) -> bool:
    """True: every item has such a field."""
    return True


class TypedRow(FormRow[Item]):
    """A row for a typed value. How it is read, and the hint in an empty field, may depend on the other fields."""

    def __init__(
        self,
        label: str,
        field: str,
        words: WordsOf[Item],
        hint: HintOf[Item] = no_hint,
        only: Callable[[Item], bool] = every,
    ) -> None:
        super().__init__(label, field)
        self._words, self._hint, self._only = words, hint, only
        self.edit = ValueField(label, self)
        self.edit.taken.connect(self.set)
        self.edit.told.connect(self.told)
        self.hold(self.edit)

    def concerns(self, items: Sequence[Item]) -> bool:
        return bool(items) and all(map(self._only, items))

    def show_values(self, items: Sequence[Item], shown: Shown) -> None:
        if items:
            words, hint = self._words(items[0], shown), self._hint(items[0], shown)
            differ = any(self._of(item) != self._of(items[0]) for item in items)
            self.edit.show_value(self.value(items), words, shown.unit, hint=SEVERAL if differ else hint)


class MaterialsRow(FormRow[Step]):
    """A row for the materials on which a step is done. If none is marked, it is done on all."""

    def __init__(self, label: str, field: str) -> None:
        super().__init__(label, field)
        self.boxes = {material: QCheckBox(material.value, self) for material in Material}
        grid = QGridLayout()
        grid.setVerticalSpacing(2)
        for place, (material, box) in enumerate(self.boxes.items()):
            box.setAccessibleName(f"only on {material.value}")
            box.clicked.connect(self._take)
            grid.addWidget(box, place // MATERIALS_A_LINE, place % MATERIALS_A_LINE)
        self._row.addLayout(grid)
        self.setFocusProxy(self.boxes[Material.TILE])

    def show_values(self, items: Sequence[Step], shown: Shown) -> None:
        marked = {material for step in items for material in step.on}
        for material, box in self.boxes.items():
            box.setChecked(material in marked)

    def _take(self) -> None:
        self.set(tuple(material for material, box in self.boxes.items() if box.isChecked()))


class ShadeRow(FormRow[Finish]):
    """A row for the colour in which a finish is shown: one of a few, or a typed one."""

    def __init__(self, label: str, field: str) -> None:
        super().__init__(label, field)
        self.swatches: dict[str, QPushButton] = {}
        swatches = QHBoxLayout()
        swatches.setSpacing(2)
        for name, colour in shades().items():
            swatches.addWidget(self._swatch(name, colour))
        self.edit = ValueField(label, self)
        self.edit.setFixedWidth(84)
        self.edit.taken.connect(self.set)
        self.edit.told.connect(self.told)
        swatches.addSpacing(4)
        swatches.addWidget(self.edit)
        swatches.addStretch(1)
        self._row.addLayout(swatches)
        self.setFocusProxy(self.edit)

    def show_values(self, items: Sequence[Finish], shown: Shown) -> None:
        shade = items[0].shade if items else ""
        self.edit.show_value(shade, ShadeWords(), Unit.MM, hint="#RRGGBB")
        for colour, button in self.swatches.items():
            button.setChecked(colour == shade)

    def _swatch(self, name: str, colour: str) -> QPushButton:
        button = QPushButton(swatch(colour), "", self)
        button.setIconSize(QSize(SWATCH, SWATCH))
        button.setCheckable(True)
        button.setAutoDefault(True)
        button.setFixedSize(SWATCH + 8, SWATCH + 8)
        button.setToolTip(tip_words(name))
        button.setAccessibleName(f"{self.label} {name}")
        button.clicked.connect(self._take)
        self.swatches[colour] = button
        return button

    def _take(self) -> None:
        sender = self.sender()
        self.set(next(colour for colour, button in self.swatches.items() if button is sender))


def swatch(colour: str) -> QIcon:
    """A square of a colour; an empty one for ""."""
    picture = QPixmap(SWATCH, SWATCH)
    picture.fill(QColor(colour) if colour else QColor(0, 0, 0, 0))
    return QIcon(picture)
