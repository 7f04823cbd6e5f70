"""The page Measure: the modes, the face with the reading line under it, and the details of the picked parts."""

from PySide6.QtWidgets import QFrame, QHBoxLayout, QVBoxLayout, QWidget

from desktop.canvas.face_view import FaceSource, FaceView
from desktop.measure.details import Details
from desktop.measure.hand import Hand
from desktop.measure.modes import Modes
from desktop.measure.reading_line import ReadingLine
from desktop.pages.view import PageView
from desktop.state.shown import Page, Shown
from desktop.state.store import Store

MEASURE = Page("Measure")


class MeasurePage(PageView):
    """Lays out the views of the page; `Hand` does what happens in them."""

    def __init__(self, store: Store, faces: FaceSource, parent: QWidget | None = None) -> None:
        face = FaceView(faces)
        super().__init__(MEASURE, face, parent)
        self.canvas, self.modes, self.line = face.canvas, Modes(), ReadingLine()
        self.beside = self.details = Details(store, faces.look)
        self.hand = Hand(store, MEASURE, self.canvas, self.line, self)
        self._lay_out()
        self._connect()
        self._show_mode()

    @property
    def first_places(self) -> tuple[QWidget, ...]:
        return (self.canvas, self.line.edit)

    def focus_beside(self) -> None:
        """Give the keys to the first field."""
        self.details.focus_first()

    def follow(self, old: Shown | None, new: Shown) -> None:
        """Show what is picked; then the hand begins anew where its gesture knows another job, face or picked part."""
        self.details.follow(old, new)
        self.hand.follow(old, new)
        if old is None or old.job is not new.job:
            self._show_mode()

    def leave(self) -> None:
        """Drop the gesture that was begun."""
        self.hand.leave()

    def tell(self, words: str) -> bool:
        """Say what is refused in the reading line, under the face."""
        self.line.tell(words)
        return True

    def _connect(self) -> None:
        self.modes.chosen.connect(self.hand.choose_mode)
        self.modes.kind_chosen.connect(self.hand.choose_kind)
        self.modes.left.connect(self.canvas.setFocus)
        self.details.readings.left.connect(self.canvas.setFocus)
        self.hand.mode_changed.connect(self._show_mode)

    def _show_mode(self) -> None:
        self.modes.show_mode(self.hand.mode)
        self.modes.show_kind(self.hand.kind)

    def _lay_out(self) -> None:
        middle = QFrame(self)
        middle.setObjectName("paper")
        column = QVBoxLayout(middle)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.canvas, 1)
        column.addWidget(self.line)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        row.addWidget(self.modes)
        row.addWidget(middle, 1)
        row.addWidget(self.details)
