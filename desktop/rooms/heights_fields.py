"""The usual heights of a room as fields, in the order in which they stand on its walls."""

from msgspec.structs import asdict
from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QLineEdit, QWidget

from desktop.fields.length import LengthField
from desktop.look.plain import Label
from desktop.look.roles import set_role
from desktop.look.wording import own_writing
from shared.errors import ReadingError
from shared.job import Heights, Unit, usual_heights

ON_THE_WALL = (
    ("ceiling_mm", "Ceiling"),
    ("wall_cabinet_mm", "Wall cabinet"),
    ("splashback_mm", "Splashback"),
    ("benchtop_mm", "Benchtop thickness"),
    ("cabinet_mm", "Cabinet"),
    ("kickboard_mm", "Kickboard"),
)
OTHERS = (
    ("benchtop_depth_mm", "Depth of a benchtop"),
    ("overhang_mm", "Overhang at open ends"),
    ("reveal_mm", "Reveal between fronts"),
)
FIELD_WIDTH = 84


class HeightsFields(QWidget):
    """Shows the usual heights in a unit; `told(words)` says what is wrong with a typed one, "" once nothing is."""

    told = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._heights = usual_heights()
        self._unit = Unit.MM
        self._names = dict((*ON_THE_WALL, *OTHERS))
        self.fields = {key: LengthField(name, self, zero=True) for key, name in self._names.items()}
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(8)
        grid.setVerticalSpacing(4)
        grid.setColumnMinimumWidth(2, 8)
        grid.setColumnStretch(2, 1)
        for column, rows in ((0, ON_THE_WALL), (3, OTHERS)):
            for line, (key, name) in enumerate(rows):
                label = Label(name, self)
                set_role(label, "quiet")
                label.setBuddy(self.fields[key])
                grid.addWidget(label, line, column)
                grid.addWidget(self.fields[key], line, column + 1, Qt.AlignmentFlag.AlignLeft)
        for field in self.fields.values():
            field.setFixedWidth(FIELD_WIDTH)
            field.told.connect(self._tell)

    @property
    def lines(self) -> tuple[QLineEdit, ...]:
        """The fields, in the order of the keys."""
        return tuple(self.fields.values())

    def show_heights(self, heights: Heights, unit: Unit) -> None:
        """Show these heights."""
        self._heights, self._unit = heights, unit
        for key, size in asdict(heights).items():
            self.fields[key].show_length(size, unit)

    def change_unit(self, unit: Unit) -> None:
        """Show another unit. A usual height becomes the one that is usual there; a typed height stays."""
        if unit is self._unit:
            return
        before, after = asdict(usual_heights(self._unit)), asdict(usual_heights(unit))
        typed = {key: self._typed(key) for key in self.fields}
        kept = {key: after[key] if size == before[key] else size for key, size in typed.items()}
        self.show_heights(Heights(**kept), unit)

    def heights(self) -> Heights:
        """The heights in the fields, mm. ReadingError with the field's name if a field holds no length."""
        return Heights(**{key: self._size(key) for key in self.fields})

    def _tell(self, words: str) -> None:
        field = self.sender()
        name = field.accessibleName() if isinstance(field, LengthField) else ""
        self.told.emit(f"{name}, {words}" if words else "")

    def _size(self, key: str) -> float:
        """The size in a field, mm. What is shown may be rounded, so if nothing was typed it is the size as given."""
        size: float = getattr(self._heights, key)
        if self.fields[key].text() == own_writing(self._unit).length(size):
            return size
        try:
            return self.fields[key].length_mm()
        except ReadingError as error:
            raise error.within(self._names[key]) from None

    def _typed(self, key: str) -> float:
        try:
            return self._size(key)
        except ReadingError:
            size: float = getattr(self._heights, key)
            return size
