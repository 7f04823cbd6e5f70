"""A tree of rows that unfold into their sums. The picked row and the unfolded rows stay so when rows are shown anew."""

from PySide6.QtCore import QItemSelection, QModelIndex, Signal
from PySide6.QtWidgets import QHeaderView, QTreeView, QWidget

from desktop.sums.model import SumModel
from desktop.sums.row import Cells, SumRow


class RowsView(QTreeView):
    """A table of rows. Groups are unfolded from the start; a row unfolds into its whole sum at once.

    `picked(row)` says that the person picked a row. `widths` are those of all columns but the first, in pixels. The
    first column and those of width 0 share the space that is left.
    """

    picked = Signal(object)

    def __init__(self, name: str, heads: Cells, widths: tuple[int, ...], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.rows = SumModel(heads, self)
        self._rendering = False
        self.setModel(self.rows)
        self.setAccessibleName(name)
        self.setUniformRowHeights(True)
        self.setAllColumnsShowFocus(True)
        header = self.header()
        header.setStretchLastSection(False)
        header.setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        for column, width in enumerate(widths, 1):
            mode = QHeaderView.ResizeMode.Interactive if width else QHeaderView.ResizeMode.Stretch
            header.setSectionResizeMode(column, mode)
            header.resizeSection(column, width)
        self.selectionModel().selectionChanged.connect(self._pick)
        self.expanded.connect(self._unfold)

    @property
    def row(self) -> SumRow | None:
        """The picked row; None if no row is picked."""
        return self.rows.row_at(self.currentIndex())

    def show_rows(self, rows: tuple[SumRow, ...], heads: Cells) -> None:
        """Replace all rows. The row with the key of the picked one is picked again, without `picked`."""
        picked = self.row
        opened = {key for key, index in self.rows.unfolding() if self.isExpanded(index)}
        self._rendering = True
        self.rows.show_rows(rows, heads)
        for key, index in self.rows.unfolding():
            row = self.rows.row_at(index)
            if key in opened or (row is not None and row.head):
                self.setExpanded(index, True)
        if picked is not None:
            self.pick(picked.key)
        self._rendering = False

    def pick(self, key: str) -> bool:
        """Pick the row with this key. False if there is no such row."""
        index = self.rows.index_of(key)
        if index.isValid():
            self.setCurrentIndex(index)
        return index.isValid()

    def _pick(self, _picked: QItemSelection, _dropped: QItemSelection) -> None:
        if not self._rendering and self.row is not None:
            self.picked.emit(self.row)

    def _unfold(self, index: QModelIndex) -> None:
        """Unfold the figures of a sum together with its row, and let the words of the sum use the table's width."""
        row = self.rows.row_at(index)
        if row is None:
            return
        for place, child in enumerate(row.children):
            self.setFirstColumnSpanned(place, index, child.note or not row.head)
            if not (child.note or row.head):
                self.expand(self.rows.index(place, 0, index))
