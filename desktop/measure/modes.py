"""The column of drawing modes, and the chooser for the kind of new parts."""

from enum import StrEnum

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QAbstractButton,
    QButtonGroup,
    QComboBox,
    QFrame,
    QHBoxLayout,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from desktop.look.plain import Label, tip_words
from desktop.look.roles import set_role
from shared.trade.kinds import Kind

WIDTH = 144


class Mode(StrEnum):
    """The drawing modes, by what the hand does."""

    PICK = "Pick"
    BOX = "Box"
    TRACE = "Trace"
    ROUND = "Round"
    RUN = "Run"
    SET_OUT = "Set-out"
    CORNERS = "Corners"
    SPLIT = "Split"
    COPY_ALONG = "Copy along"
    SHIFT = "Shift"


KEYS = {
    Mode.PICK: "Alt+P",
    Mode.BOX: "Alt+B",
    Mode.TRACE: "Alt+T",
    Mode.ROUND: "Alt+R",
    Mode.RUN: "Alt+U",
    Mode.SET_OUT: "Alt+O",
    Mode.CORNERS: "Alt+C",
    Mode.SPLIT: "Alt+S",
    Mode.COPY_ALONG: "Alt+L",
    Mode.SHIFT: "Alt+I",
}

SAYS = {
    Mode.PICK: "Pick parts. Drag them, or move them with the arrow keys",
    Mode.BOX: "Draw a box: a corner, then width and height",
    Mode.TRACE: "Draw an outline corner by corner",
    Mode.ROUND: "Draw a circle or a rounded box",
    Mode.SET_OUT: "Type readings along the face. They make lines to draw to, and they check each other",
    Mode.RUN: "Type a row of cabinets, from left to right",
    Mode.CORNERS: "Move the corners and sides of a part",
    Mode.SPLIT: "Split a part into several",
    Mode.SHIFT: "Click a size and type what the tape says. All that follows moves along",
    Mode.COPY_ALONG: "Copy a part several times in a row",
}


class KindChooser(QComboBox):
    """The list of kinds, chosen from by letters or clicks.

    `left` says that the person is done with it, by Return, Escape or a click.
    """

    left = Signal()

    def hidePopup(self) -> None:
        super().hidePopup()
        self.left.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Escape):
            self.left.emit()
        else:
            super().keyPressEvent(event)


class Modes(QFrame):
    """The column of modes. `chosen(mode)` and `kind_chosen(kind)` say what the person chose.

    `left` says that the keys belong to the face again.
    """

    chosen = Signal(object)
    kind_chosen = Signal(object)
    left = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("panel")
        self.setFixedWidth(WIDTH)
        self._buttons = QButtonGroup(self)
        self.kinds = KindChooser(self)
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 12, 8, 12)
        column.setSpacing(4)
        for mode in Mode:
            column.addWidget(self._button(mode))
        column.addSpacing(16)
        label = Label("&Kind of new parts", self)
        set_role(label, "quiet")
        label.setBuddy(self.kinds)
        column.addWidget(label)
        column.addWidget(self.kinds)
        column.addStretch(1)
        self.kinds.setAccessibleName("Kind of new parts")
        self.kinds.addItems([kind.value for kind in Kind])
        self._buttons.buttonClicked.connect(self._choose)
        self.kinds.textActivated.connect(self._choose_kind)
        self.kinds.left.connect(self.left)

    def show_mode(self, mode: Mode) -> None:
        """Mark the mode that is at work."""
        self._buttons.button(list(Mode).index(mode)).setChecked(True)

    def show_kind(self, kind: Kind) -> None:
        """Show the kind of new parts."""
        self.kinds.setCurrentText(kind.value)

    def _button(self, mode: Mode) -> QPushButton:
        button = QPushButton(mode.value, self)
        key = Label(KEYS[mode].replace("+", " "), button)
        set_role(key, "key")
        key.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        row = QHBoxLayout(button)
        row.setContentsMargins(0, 0, 8, 0)
        row.addStretch(1)
        row.addWidget(key)
        button.setCheckable(True)
        button.setAutoDefault(True)
        button.setToolTip(tip_words(f"{SAYS[mode]} ({KEYS[mode]})"))
        button.setAccessibleName(f"{mode.value}: {SAYS[mode]}")
        button.setCursor(Qt.CursorShape.PointingHandCursor)
        set_role(button, "mode")
        self._buttons.addButton(button, list(Mode).index(mode))
        return button

    def _choose(self, button: QAbstractButton) -> None:
        self.chosen.emit(list(Mode)[self._buttons.id(button)])

    def _choose_kind(self, name: str) -> None:
        self.kind_chosen.emit(Kind(name))
