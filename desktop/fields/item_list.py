"""A list in which a person adds things, takes them away, puts them in order, and chooses one."""

from collections.abc import Callable, Sequence

from PySide6.QtCore import QKeyCombination, Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QHBoxLayout, QHeaderView, QPushButton, QTreeWidget, QTreeWidgetItem, QVBoxLayout, QWidget

from desktop.look.plain import tip_words

Cells = tuple[str, ...]

Keys = Qt.KeyboardModifier


class ItemList(QWidget):
    """A list with its buttons. Its signals say what the person wants, by places in the list.

    They are `chosen(place)`, `added(place)` for a new thing at that place, `taken_away(place)` and `moved(place, to)`.
    In the list Insert adds, Delete takes away, and Ctrl with an arrow moves.
    """

    chosen = Signal(int)
    added = Signal(int)
    taken_away = Signal(int)
    moved = Signal(int, int)

    def __init__(self, name: str, headings: Cells, *, ordered: bool = False, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.tree = QTreeWidget(self)
        self._buttons = QHBoxLayout()
        self._rendering = False
        self._set_up(name, headings)
        self.button("Add", self._add)
        self.away = self.button("Remove", self._take_away)
        self._bind(Qt.Key.Key_Insert, Keys.NoModifier, self._add)
        self._bind(Qt.Key.Key_Delete, Keys.NoModifier, self._take_away)
        self._for_chosen = [self.away]
        if ordered:
            self._for_chosen += [self.button("Earlier", self._move_up), self.button("Later", self._move_down)]
            self._bind(Qt.Key.Key_Up, Keys.ControlModifier, self._move_up)
            self._bind(Qt.Key.Key_Down, Keys.ControlModifier, self._move_down)
        self._buttons.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        column.addWidget(self.tree, 1)
        column.addLayout(self._buttons)
        self.tree.currentItemChanged.connect(self._choose)

    @property
    def place(self) -> int:
        """The place of the chosen thing, from 0; -1 if none is chosen."""
        item = self.tree.currentItem()
        return -1 if item is None else self.tree.indexOfTopLevelItem(item)

    def button(self, words: str, act: Callable[[], None]) -> QPushButton:
        """Add a further button under the list, and give it back."""
        button = QPushButton(words, self)
        button.setAutoDefault(True)
        button.clicked.connect(act)
        self._buttons.addWidget(button)
        return button

    def show_rows(self, rows: Sequence[Cells], place: int) -> None:
        """Show these rows and choose the one at `place`; -1 chooses none, a place beyond the last chooses the last."""
        self._rendering = True
        while self.tree.topLevelItemCount() > len(rows):
            self.tree.takeTopLevelItem(len(rows))
        while self.tree.topLevelItemCount() < len(rows):
            self.tree.addTopLevelItem(QTreeWidgetItem())
        for number, cells in enumerate(rows):
            item = self.tree.topLevelItem(number)
            for column, words in enumerate(cells):
                if item is not None and item.text(column) != words:
                    item.setText(column, words)
                    item.setToolTip(column, tip_words(words))
        chosen = self.tree.topLevelItem(min(place, len(rows) - 1))
        if chosen is not self.tree.currentItem() and chosen is not None:
            self.tree.setCurrentItem(chosen)
        self._rendering = False
        for button in self._for_chosen:
            button.setEnabled(bool(rows))

    def _set_up(self, name: str, headings: Cells) -> None:
        self.tree.setHeaderLabels(list(headings))
        self.tree.setHeaderHidden(not any(headings))
        self.tree.setRootIsDecorated(False)
        self.tree.setUniformRowHeights(True)
        self.tree.setAllColumnsShowFocus(True)
        self.tree.setAccessibleName(name)
        header = self.tree.header()
        header.setStretchLastSection(False)
        for column in range(len(headings)):
            fits = QHeaderView.ResizeMode.ResizeToContents
            header.setSectionResizeMode(column, fits if column else QHeaderView.ResizeMode.Stretch)

    def _bind(self, key: Qt.Key, held: Keys, act: Callable[[], None]) -> None:
        keys = QKeySequence(QKeyCombination(held, key))
        shortcut = QShortcut(keys, self.tree, context=Qt.ShortcutContext.WidgetShortcut)
        shortcut.activated.connect(act)

    def _choose(self) -> None:
        if not self._rendering:
            self.chosen.emit(self.place)

    def _add(self) -> None:
        self.added.emit(self.place + 1)

    def _take_away(self) -> None:
        if self.place >= 0:
            self.taken_away.emit(self.place)

    def _move_up(self) -> None:
        if self.place > 0:
            self.moved.emit(self.place, self.place - 1)

    def _move_down(self) -> None:
        if 0 <= self.place < self.tree.topLevelItemCount() - 1:
            self.moved.emit(self.place, self.place + 1)
