"""The rows of Count or of the basket, as Qt's tree asks for them."""

from typing import NamedTuple, overload

from PySide6.QtCore import QAbstractItemModel, QModelIndex, QObject, QPersistentModelIndex, Qt
from PySide6.QtGui import QFont, QGuiApplication

from desktop.look.plain import tip_words
from desktop.sums.row import Cells, SumRow

Index = QModelIndex | QPersistentModelIndex


class _Node(NamedTuple):
    """A row, the number of its parent's node (-1 for a row at the top), and its place among the rows of that parent."""

    row: SumRow
    parent: int
    place: int
    children: tuple[int, ...]


class SumModel(QAbstractItemModel):
    """Holds rows for a tree. New rows replace all rows at once."""

    def __init__(self, heads: Cells, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._nodes: list[_Node] = []
        self._roots: tuple[int, ...] = ()
        self._heads = heads

    def show_rows(self, rows: tuple[SumRow, ...], heads: Cells) -> None:
        """Replace all rows and the heads of the columns."""
        self.beginResetModel()
        self._heads = heads
        self._nodes = []
        self._roots = self._add(rows, -1)
        self.endResetModel()

    def row_at(self, index: Index) -> SumRow | None:
        """The row at an index; None for an invalid index."""
        return self._nodes[index.internalId()].row if index.isValid() else None

    def index_of(self, key: str) -> QModelIndex:
        """The index of the row with this key; an invalid index if there is no such row."""
        for number, node in enumerate(self._nodes):
            if node.row.key == key:
                return self.createIndex(node.place, 0, number)
        return QModelIndex()

    def unfolding(self) -> tuple[tuple[str, QModelIndex], ...]:
        """The key and the index of every row that has rows beneath it."""
        return tuple(
            (node.row.key, self.createIndex(node.place, 0, number))
            for number, node in enumerate(self._nodes)
            if node.children
        )

    def index(self, row: int, column: int, parent: Index | None = None) -> QModelIndex:
        numbers = self._children(parent)
        if 0 <= row < len(numbers) and 0 <= column < len(self._heads):
            return self.createIndex(row, column, numbers[row])
        return QModelIndex()

    @overload
    def parent(self) -> QObject | None: ...

    @overload
    def parent(self, child: Index, /) -> QModelIndex: ...

    def parent(self, child: Index | None = None) -> QModelIndex | QObject | None:
        """The index of the row above `child` in the tree. Without `child`, Qt's parent of the model."""
        if child is None:
            return super().parent()
        if not child.isValid():
            return QModelIndex()
        number = self._nodes[child.internalId()].parent
        return QModelIndex() if number < 0 else self.createIndex(self._nodes[number].place, 0, number)

    def rowCount(self, parent: Index | None = None) -> int:
        return 0 if parent is not None and parent.column() > 0 else len(self._children(parent))

    def columnCount(self, parent: Index | None = None) -> int:
        return len(self._heads)

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        if role == Qt.ItemDataRole.DisplayRole:
            return self._heads[section]
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _alignment(section)
        return None

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        row = self.row_at(index)
        if row is None:
            return None
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.ToolTipRole):
            words = row.cells[index.column()]
            return words if role == Qt.ItemDataRole.DisplayRole else tip_words(words)
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _alignment(index.column())
        if role == Qt.ItemDataRole.FontRole and row.head:
            font = QFont()
            font.setBold(True)
            return font
        if role == Qt.ItemDataRole.ForegroundRole and row.note:
            return QGuiApplication.palette().placeholderText()
        return None

    def _children(self, parent: Index | None) -> tuple[int, ...]:
        return self._nodes[parent.internalId()].children if parent is not None and parent.isValid() else self._roots

    def _add(self, rows: tuple[SumRow, ...], parent: int) -> tuple[int, ...]:
        numbers = []
        for place, row in enumerate(rows):
            number = len(self._nodes)
            numbers.append(number)
            self._nodes.append(_Node(row, parent, place, ()))
            self._nodes[number] = _Node(row, parent, place, self._add(row.children, number))
        return tuple(numbers)


def _alignment(column: int) -> Qt.AlignmentFlag:
    side = Qt.AlignmentFlag.AlignRight if column else Qt.AlignmentFlag.AlignLeft
    return side | Qt.AlignmentFlag.AlignVCenter
