"""Count: the takeoff beside the face. A picked row lights up what it was measured from and unfolds into its sum."""

from PySide6.QtCore import QItemSelection, QModelIndex, Qt
from PySide6.QtWidgets import QFrame, QHBoxLayout, QHeaderView, QSplitter, QTreeView, QVBoxLayout, QWidget

from desktop.canvas import Canvas
from desktop.count_model import CountModel
from desktop.count_rows import CountRow, count_rows, headings
from desktop.joint_form import JointForm
from desktop.overlay_bar import OverlayBar
from desktop.shown import Page, Shown
from desktop.store import Store
from geometry.picking import parts_at
from takeoff.figures import Takeoff

NUMBER_WIDTH = 84
FACE_SHARE, TABLE_SHARE = 600, 680
GROUPS = ("joints", "masking", "tiles", "sure")


class CountPage(QWidget):
    """The face at the left, the rows at the right, what can be decided about a joint beneath them."""

    def __init__(self, store: Store, canvas: Canvas, overlays: OverlayBar, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._store = store
        self.model = CountModel(self)
        self.tree = QTreeView(self)
        self.joint = JointForm(store, self)
        self._rendering = False
        self._takeoff: Takeoff | None = None
        self._lay_out(canvas, overlays)
        self.tree.selectionModel().selectionChanged.connect(self._light)
        self.tree.expanded.connect(self._unfold)

    def follow(self, old: Shown | None, new: Shown) -> None:
        """Show the rows of the takeoff; what was picked and unfolded stays so."""
        if new.page is not Page.COUNT or new.takeoff is self._takeoff:
            return
        self._takeoff = new.takeoff
        picked = self.model.row_at(self.tree.currentIndex())
        open_keys = {key for key, index in self.model.unfolding() if self.tree.isExpanded(index)}
        self._rendering = True
        self.model.show_rows(count_rows(new), headings(new.unit))
        for key, index in self.model.unfolding():
            if key in open_keys or _is_group(key):
                self.tree.setExpanded(index, True)
        row = self._pick_again(picked.key if picked else "")
        self._rendering = False
        self.joint.show_joint(row.joint if row else None, new.unit)

    def find_row(self, at: tuple[float, float]) -> None:
        """Pick the row of the part in front at this point of the face."""
        face = self._store.open.shown_face
        for part in parts_at(face.parts, *at) if face else ():
            index = self.model.index_of(f"part {part.id}")
            if index.isValid():
                self.tree.setCurrentIndex(index)
                return

    def _unfold(self, index: QModelIndex) -> None:
        """Unfold a figure's sum as a whole, its words over the width of the table."""
        row = self.model.row_at(index)
        if row is None or row.head:
            return
        for place in range(self.model.rowCount(index)):
            self.tree.setFirstColumnSpanned(place, index, True)
            self.tree.expand(self.model.index(place, 0, index))

    def _pick_again(self, key: str) -> CountRow | None:
        index = self.model.index_of(key)
        if index.isValid():
            self.tree.setCurrentIndex(index)
        return self.model.row_at(index)

    def _light(self, picked: QItemSelection, _dropped: QItemSelection) -> None:
        if self._rendering:
            return
        row = self.model.row_at(self.tree.currentIndex())
        if row is None:
            return
        self.joint.show_joint(row.joint, self._store.open.unit)
        self._store.light(row.parts, row.face, row.edges)

    def _lay_out(self, canvas: Canvas, overlays: OverlayBar) -> None:
        face = QFrame(self)
        face.setObjectName("paper")
        left = QVBoxLayout(face)
        left.setContentsMargins(0, 0, 0, 0)
        left.addWidget(canvas, 1)
        left.addWidget(overlays)
        self.table = QFrame(self)
        self.table.setObjectName("panel")
        right = QVBoxLayout(self.table)
        right.setContentsMargins(12, 8, 12, 8)
        right.addWidget(self.tree, 1)
        right.addWidget(self.joint)
        self._set_up_tree()
        halves = QSplitter(Qt.Orientation.Horizontal, self)
        halves.setChildrenCollapsible(False)
        halves.addWidget(face)
        halves.addWidget(self.table)
        halves.setSizes([FACE_SHARE, TABLE_SHARE])
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(halves)

    def _set_up_tree(self) -> None:
        self.tree.setModel(self.model)
        self.tree.setAccessibleName("Takeoff")
        self.tree.setUniformRowHeights(True)
        self.tree.setAllColumnsShowFocus(True)
        header = self.tree.header()
        header.setStretchLastSection(False)
        header.setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        for column in range(1, self.model.columnCount()):
            header.setSectionResizeMode(column, QHeaderView.ResizeMode.Interactive)
            header.resizeSection(column, NUMBER_WIDTH)


def _is_group(key: str) -> bool:
    return key in GROUPS or key.startswith("finish ")
