"""Count: the takeoff beside the face. A picked row lights up what it was measured from and unfolds into its sum."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QHBoxLayout, QSplitter, QVBoxLayout, QWidget

from desktop.canvas.face_view import FaceSource, FaceView
from desktop.count.front_form import FrontForm
from desktop.count.joint_form import JointForm
from desktop.count.overlay_bar import OverlayBar
from desktop.pages.view import PageView
from desktop.state.shown import Page, Shown
from desktop.state.store import Store
from desktop.sums.fronts import front_of
from desktop.sums.row import SumRow
from desktop.sums.takeoff import count_rows, headings
from desktop.sums.view import RowsView
from geometry.parts.picking import parts_at
from shared.trade.kinds import Treatment
from takeoff.figures.measured import Fronts

NUMBER_WIDTH = 84
FACE_SHARE, TABLE_SHARE = 600, 680

COUNT = Page("Count", fronts=Fronts.OFF)


class CountPage(PageView):
    """Shows the face at the left and the rows at the right; beneath the rows, the fields of a picked joint or front."""

    beside: QFrame

    def __init__(self, store: Store, faces: FaceSource, parent: QWidget | None = None) -> None:
        face = FaceView(faces)
        super().__init__(COUNT, face, parent)
        self._store = store
        self.overlays = OverlayBar()
        self.tree = RowsView("Takeoff", ("", "", "", ""), (NUMBER_WIDTH,) * 3, self)
        self.model = self.tree.rows
        self.joint = JointForm(store, self)
        self.front = FrontForm(store, self)
        self.beside = QFrame(self)
        self._lay_out(face.canvas)
        self.tree.picked.connect(self._light)
        self.overlays.hung.connect(store.hang_fronts)
        self.overlays.switched.connect(store.turn_overlay)
        face.canvas.pressed.connect(self.find_row)

    def focus_beside(self) -> None:
        """Give the keys to the rows."""
        self.tree.setFocus()

    def follow(self, old: Shown | None, new: Shown) -> None:
        """Show the rows of the takeoff. The picked row and the unfolded rows stay so."""
        self.overlays.follow(old, new)
        if old is None or _what_is_shown(old) != _what_is_shown(new):
            self.tree.show_rows(count_rows(new), headings(new.unit))
            self._show_forms(self.tree.row, new)

    def find_row(self, at: tuple[float, float]) -> None:
        """Pick the row of the foremost part at this point of the face (mm) that has a row, if there is one."""
        face = self._store.open.shown_face
        for part in parts_at(face.parts, *at) if face else ():
            if self.tree.pick(f"part {part.id}"):
                return

    def _show_forms(self, row: SumRow | None, shown: Shown) -> None:
        self.joint.show_joint(row.joint if row else None, shown.unit)
        self.front.show_front(front_of(row), shown)

    def _light(self, row: SumRow) -> None:
        self._show_forms(row, self._store.open)
        self._hang_what_is_off(row)
        self._store.light(row.parts, row.face, row.edges)

    def _hang_what_is_off(self, row: SumRow) -> None:
        """Hang the fronts if all parts of the row are taken off, since they are seen only when they hang."""
        shown = self._store.open
        off = {part.id for part in shown.takeoff.parts if part.treatment is Treatment.TAKEN_OFF}
        if shown.fronts is Fronts.OFF and row.parts and off.issuperset(row.parts):
            self._store.hang_fronts(Fronts.HUNG)

    def _lay_out(self, canvas: QWidget) -> None:
        face = QFrame(self)
        face.setObjectName("paper")
        left = QVBoxLayout(face)
        left.setContentsMargins(0, 0, 0, 0)
        left.addWidget(canvas, 1)
        left.addWidget(self.overlays)
        self.beside.setObjectName("panel")
        right = QVBoxLayout(self.beside)
        right.setContentsMargins(12, 8, 12, 8)
        right.addWidget(self.tree, 1)
        right.addWidget(self.joint)
        right.addWidget(self.front)
        halves = QSplitter(Qt.Orientation.Horizontal, self)
        halves.setChildrenCollapsible(False)
        halves.addWidget(face)
        halves.addWidget(self.beside)
        halves.setSizes([FACE_SHARE, TABLE_SHARE])
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(halves)


def _what_is_shown(shown: Shown) -> tuple[object, ...]:
    """What the rows depend on. The job is one of them: a name in it may change though nothing is counted anew."""
    return id(shown.job), id(shown.takeoff), id(shown.bill)
