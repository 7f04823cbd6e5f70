"""The strip under the bar: the faces of each room to one scale, in their order round the room and with their corners.

The plans of a room come after its walls.
"""

from collections.abc import Iterator

from PySide6.QtCore import QPoint, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QPushButton, QScrollArea, QWidget

from desktop.look.palette import Look
from desktop.look.plain import Label
from desktop.look.roles import set_role
from desktop.painting.drawing import PaintOptions
from desktop.painting.finish_colours import colours_by_face
from desktop.painting.kept import Drawings
from desktop.state.shown import Shown
from desktop.window.strip_parts import CornerMark, FaceButton
from shared.job import Corner, Face, Job, Room, View

HEIGHT = 92
PICTURE_HEIGHT = 52.0
"""The height of the tallest face in the strip, in pixels."""

LEAST_TALLEST_MM = 2400.0
"""If all faces are lower, the strip is scaled as for this height (a usual ceiling; common practice, no source)."""

ALONG = {Qt.Key.Key_Left: -1, Qt.Key.Key_Up: -1, Qt.Key.Key_Right: 1, Qt.Key.Key_Down: 1}


class Strip(QFrame):
    """Shows the faces. `chosen(face id)` says that the person clicked a face or went to it by the arrow keys."""

    chosen = Signal(str)
    asked_for_face = Signal()
    asked_for_menu = Signal(QPoint)

    def __init__(self, drawings: Drawings, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("paper")
        self.setFixedHeight(HEIGHT)
        self._drawings = drawings
        self._look = look
        self._buttons: dict[str, FaceButton] = {}
        self._shown: Shown | None = None
        self._add: QPushButton | None = None
        self._area = QScrollArea(self)
        self._area.setWidgetResizable(True)
        self._area.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._area.viewport().setAutoFillBackground(False)
        row = QHBoxLayout(self)
        row.setContentsMargins(8, 0, 8, 0)
        row.addWidget(self._area)

    def follow(self, old: Shown | None, new: Shown) -> None:
        """Show the rooms; only what differs is drawn again."""
        self._shown = new
        if old is None or old.job is not new.job or _shows_finishes(old) != _shows_finishes(new):
            if old is None or _outline(old.job) != _outline(new.job):
                self._fill(new)
            self._draw(new)
        for face_id, button in self._buttons.items():
            button.setChecked(face_id == new.face)
        if old is None or old.face != new.face:
            self._reveal(new.face)

    def focus_face(self) -> None:
        """Give the keys to the face that is shown, or to the button that adds one if the job has no face."""
        shown = self._buttons.get(self._shown.face) if self._shown else None
        button = shown or self._add
        if button is not None:
            button.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if not self._go(event.key()):
            super().keyPressEvent(event)

    def _go(self, key: int) -> bool:
        """Go along the faces if the key is an arrow. False if the key leads nowhere."""
        by = next((by for arrow, by in ALONG.items() if arrow == key), 0)
        ids = tuple(self._buttons)
        if not by or self._shown is None or self._shown.face not in ids:
            return False
        place = min(max(ids.index(self._shown.face) + by, 0), len(ids) - 1)
        self._buttons[ids[place]].setFocus(Qt.FocusReason.OtherFocusReason)
        self.chosen.emit(ids[place])
        return True

    def _fill(self, shown: Shown) -> None:
        self._buttons = {}
        inside = QWidget()
        inside.setObjectName("paper")
        row = QHBoxLayout(inside)
        row.setContentsMargins(4, 4, 4, 4)
        row.setSpacing(0)
        for room in shown.job.rooms:
            for widget in self._of_room(room, many=len(shown.job.rooms) > 1):
                row.addWidget(widget, 0, Qt.AlignmentFlag.AlignBottom)
        add = QPushButton("+ face", inside)
        add.setToolTip("Add a wall or a plan (Ctrl+Shift+N)")
        add.setAutoDefault(True)
        add.clicked.connect(self.asked_for_face)
        self._add = add
        row.addSpacing(12)
        row.addWidget(add)
        row.addStretch(1)
        self._area.setWidget(inside)

    def _of_room(self, room: Room, *, many: bool) -> Iterator[QWidget]:
        if many:
            name = Label(room.name)
            set_role(name, "quiet")
            name.setContentsMargins(8, 0, 8, 24)
            yield name
        walls = [face for face in room.faces if face.view is View.ELEVATION]
        for face in room.faces:
            yield self._button(face)
            if face in walls:
                meets = walls[(walls.index(face) + 1) % len(walls)]
                yield CornerMark(face, meets, self._look)

    def _button(self, face: Face) -> FaceButton:
        button = FaceButton(face, self._look)
        button.arrow_pressed.connect(self._go)
        button.chosen.connect(self.chosen)
        button.asked_for_menu.connect(self._open_menu)
        self._buttons[face.id] = button
        return button

    def _draw(self, shown: Shown) -> None:
        drawings = {face.id: self._drawings.small(shown, face) for face in shown.job.faces}
        tallest = max((height for drawing in drawings.values() for height in [_height(drawing.box)]), default=1.0)
        scale = PICTURE_HEIGHT / max(tallest, LEAST_TALLEST_MM)
        colours = colours_by_face(shown.job, shown.takeoff) if _shows_finishes(shown) else {}
        for face_id, button in self._buttons.items():
            finishes = colours.get(face_id, ()) if _shows_finishes(shown) else None
            button.show_drawing(drawings[face_id], scale, PaintOptions.small()._replace(finishes=finishes))

    def _reveal(self, face: str) -> None:
        button = self._buttons.get(face)
        if button is not None:
            self._area.ensureWidgetVisible(button)

    def _open_menu(self, face: str, place: QPoint) -> None:
        self.chosen.emit(face)
        self.asked_for_menu.emit(place)


def _shows_finishes(shown: Shown) -> bool:
    return shown.page.in_finish_colours


def _height(box: tuple[float, float, float, float]) -> float:
    return box[3] - box[1]


def _outline(job: Job) -> tuple[tuple[str, tuple[tuple[str, str, str, Corner], ...]], ...]:
    """The part of a job that decides which faces are in the strip and in which order."""
    return tuple(
        (room.name, tuple((face.id, face.name, face.tag_letter, face.corner) for face in room.faces))
        for room in job.rooms
    )
