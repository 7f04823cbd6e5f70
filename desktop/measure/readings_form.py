"""The form for the readings of a face: which of them disagree, and what the person decides about them."""

from collections.abc import Callable

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QBrush, QColor
from PySide6.QtWidgets import (
    QFormLayout,
    QFrame,
    QGridLayout,
    QHeaderView,
    QPushButton,
    QTreeWidget,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)

from desktop.fields.length import LengthField
from desktop.look.palette import Look
from desktop.look.plain import Label, tip_words
from desktop.look.roles import set_role
from desktop.look.wording import MINUS, own_writing
from desktop.state.shown import Shown
from desktop.state.store import Store
from geometry.edits.setting_out import accepted, has_corners, replaced, spread, with_corners, without_readings
from geometry.set_out.lines import DRAWN, set_out
from shared.errors import ReadingError, RecoatError
from shared.findings import Place
from shared.job import END, START, Face, Job, Reading, View, Way
from takeoff.findings.readings import as_read

HEADINGS = ("From, to", "Read", "Off")

SHORT_MARKS = {
    (Way.ACROSS, START): "left end",
    (Way.ACROSS, END): "right end",
    (Way.UP, START): "floor",
    (Way.UP, END): "top",
}
ROWS_SHOWN = 9


class ReadingsForm(QFrame):
    """Shows the readings of a face. Each decision of the person is one edit for undo.

    What a reading typed again would move is shown before it is taken. `left` says that the corners were drawn: then
    nothing remains to decide, and the keys go back to the face.
    """

    left = Signal()

    def __init__(self, store: Store, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._store = store
        self._look = look
        self._face: Face | None = None
        self._doubted: frozenset[int] = frozenset()
        self.head = Label(self)
        self.sentences = Label(self)
        self.trouble = Label(self)
        self.table = QTreeWidget(self)
        self.again = LengthField("Read again", self)
        self.stands = self._button(
            "Keep this reading", self._accept, "Keep this reading, even though others disagree with it"
        )
        self.take_away = self._button("Re&move this reading", self._take_away, "Remove this reading from the face")
        self.spread = self._button(
            "Share out the differe&nce", self._spread, "Change all readings a little, so that they agree"
        )
        self.draw = self._button(
            "&Draw the face with these corners", self._draw, "Give the wall or benchtop the measured corners"
        )
        self._lay_out()
        self.table.currentItemChanged.connect(self._choose)
        self.again.taken.connect(self._type_again)
        self.again.told.connect(self.trouble.setText)
        self.again.textEdited.connect(self._try_again)

    def show_readings(self, shown: Shown) -> None:
        """Show the readings of the face; hide if it has none or parts are picked."""
        face = shown.shown_face
        self.setVisible(face is not None and bool(face.readings) and not shown.picked)
        if face is None or not face.readings or shown.tried is not None:
            return
        before = self._doubted if self._face is not None and self._face.id == face.id else frozenset()
        self._face = face
        chosen = self._place
        self.head.setText(f"Readings of {face.name}")
        self._say(shown, face)
        self._fill(shown, face)
        if self._doubted - before and chosen not in self._doubted:
            chosen = min(self._doubted)  # the reading to take again, so that no other is typed over
        item = self.table.topLevelItem(max(min(chosen, len(face.readings) - 1), 0))
        if item is not None:
            self.table.setCurrentItem(item)

    @property
    def _place(self) -> int:
        """The place of the chosen reading among the face's readings, from 0; -1 if none is chosen."""
        item = self.table.currentItem()
        return -1 if item is None else self.table.indexOfTopLevelItem(item)

    def _button(self, words: str, act: Callable[[], None], means: str) -> QPushButton:
        button = QPushButton(words, self)
        button.setToolTip(tip_words(means))
        button.setAutoDefault(True)
        button.clicked.connect(act)
        return button

    def _lay_out(self) -> None:
        set_role(self.head, "head")
        set_role(self.sentences, "trouble")
        set_role(self.trouble, "trouble")
        for label in (self.sentences, self.trouble):
            label.setWordWrap(True)
        self.table.setHeaderLabels(HEADINGS)
        self.table.setRootIsDecorated(False)
        self.table.setUniformRowHeights(True)
        self.table.setAccessibleName("Readings")
        header = self.table.header()
        header.setStretchLastSection(False)
        header.setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        for column in (1, 2):
            header.setSectionResizeMode(column, QHeaderView.ResizeMode.ResizeToContents)
        form = QFormLayout()
        form.addRow("Read a&gain", self.again)
        grid = QGridLayout()
        grid.setSpacing(4)
        for place, button in enumerate((self.stands, self.take_away, self.spread, self.draw)):
            wide = place > 1
            grid.addWidget(button, place if wide else 0, 0 if wide else place, 1, 2 if wide else 1)
        column_of_all = QVBoxLayout(self)
        column_of_all.setContentsMargins(0, 8, 0, 0)
        for widget in (self.head, self.sentences, self.table):
            column_of_all.addWidget(widget)
        column_of_all.addLayout(form)
        column_of_all.addWidget(self.trouble)
        column_of_all.addLayout(grid)

    def _say(self, shown: Shown, face: Face) -> None:
        """Say in words how the readings disagree."""
        found = [each for each in shown.takeoff.findings if each.face == face.id]
        said = [own_writing().sentence(each.message) for each in found if each.code.is_said_in(Place.READINGS)]
        self.sentences.setText("\n".join(said))
        self.sentences.setVisible(bool(said))

    def _fill(self, shown: Shown, face: Face) -> None:
        found = set_out(face, shown.now.tape, shown.unit)
        doubted = frozenset(place for doubt in found.doubts for place in doubt.readings if place != DRAWN)
        self._doubted = doubted
        self.table.blockSignals(True)
        self.table.clear()
        for place, reading in enumerate(face.readings):
            off = _off_words(found.residuals_mm[place], shown)
            words = "kept" if reading.accepted else off
            length = own_writing(shown.unit).length(reading.length_mm)
            item = QTreeWidgetItem([_marks(face, reading, shown), length, words])
            for column in (1, 2):
                item.setTextAlignment(column, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
            if place in doubted:
                for column in range(len(HEADINGS)):
                    item.setForeground(column, QBrush(QColor(self._look.warning)))
                item.setText(2, f"{off} ?")
            self.table.addTopLevelItem(item)
        self.table.blockSignals(False)
        rows = min(len(face.readings), ROWS_SHOWN) + 1.5
        self.table.setFixedHeight(round(rows * (self.table.fontMetrics().height() + 6)))
        self.stands.setEnabled(bool(doubted) or any(reading.accepted for reading in face.readings))
        self.spread.setEnabled(any(_off_words(residual, shown) != "" for residual in found.residuals_mm))
        self.draw.setVisible(found.corners is not None and not has_corners(face, found.corners))

    def _choose(self) -> None:
        face, place = self._face, self._place
        if face is None or not 0 <= place < len(face.readings):
            return
        self.trouble.clear()
        self.again.show_length(face.readings[place].length_mm, self._store.open.unit)
        self.again.take_back()

    def _try_again(self) -> None:
        """Show how parts that stand on the set-out lines would move with the reading that is being typed."""
        face, place = self._face, self._place
        if face is None or place < 0:
            return
        try:
            job = replaced(self._store.open.job, face.id, place, self.again.length_mm())
        except (ReadingError, RecoatError):
            self._store.try_out(None)
            return
        self._store.try_out(job)

    def _type_again(self, length_mm: float) -> None:
        self._decide("Read again", lambda job, face: replaced(job, face, self._place, length_mm))

    def _accept(self) -> None:
        self._decide("Keep a reading", lambda job, face: accepted(job, face, (self._place,)))

    def _take_away(self) -> None:
        self._decide("Remove a reading", lambda job, face: without_readings(job, face, (self._place,)))

    def _spread(self) -> None:
        self._decide("Share out the difference", spread)

    def _draw(self) -> None:
        self._decide("Draw the measured corners", with_corners)
        self.left.emit()

    def _decide(self, label: str, change: Callable[[Job, str], Job]) -> None:
        if self._face is None or self._place < 0:
            return
        try:
            job = change(self._store.open.job, self._face.id)
        except RecoatError as error:
            self.trouble.setText(str(error))
            return
        self._store.edit(label, job)


def _off_words(residual_mm: float, shown: Shown) -> str:
    """How much longer or shorter a reading is after adjustment; "" if it stays as it was read."""
    writing = own_writing(shown.unit)
    words = writing.length(abs(residual_mm))
    if words == writing.length(0.0):
        return ""
    return f"{'+' if residual_mm > 0 else MINUS}{words}"


def _marks(face: Face, reading: Reading, shown: Shown) -> str:
    """From where to where a reading was taken: "left end, 600"."""
    at = as_read(face, reading.way)

    def mark(name: str) -> str:
        if reading.way is Way.STRAIGHT:
            return name
        if face.view is View.PLAN and reading.way is Way.UP and name in (START, END):
            return "wall" if name == START else "front"
        line = own_writing(shown.unit).length(at[name]) if name in at else "a line"
        return SHORT_MARKS.get((reading.way, name)) or line

    return f"{mark(reading.start)}, {mark(reading.end)}"
