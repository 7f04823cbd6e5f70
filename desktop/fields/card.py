"""A card is a small form over the window: its fields, what is wrong with them, a button to do it and one to cancel."""

from PySide6.QtCore import QPoint, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLineEdit, QPushButton, QWidget

from desktop.look.plain import Label
from desktop.look.roles import set_role
from shared.errors import RecoatError

EDGE = 12
MARGIN = 14
TROUBLE_LINES = 3


class Card(QFrame):
    """A small form. Return in a field, or the first button, does what the card is for; Escape puts it away.

    A class of cards says in `fill` what that is, and lays its fields out above `trouble` and `buttons`. `put_away` says
    that the card went without having done anything.
    """

    put_away = Signal()

    def __init__(self, does: str, width: int, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        set_role(self, "card")
        self.hide()
        self._width = width
        self.trouble = Label(self)
        self.do = QPushButton(does, self)
        self.cancel = QPushButton("Cancel", self)
        self.buttons = QHBoxLayout()
        self.buttons.addStretch(1)
        for button in (self.do, self.cancel):
            button.setAutoDefault(True)
            self.buttons.addWidget(button)
        set_role(self.trouble, "trouble")
        self.trouble.setWordWrap(True)
        self.trouble.setMinimumHeight(TROUBLE_LINES * self.fontMetrics().height())
        self.trouble.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.do.clicked.connect(self._fill)
        self.cancel.clicked.connect(self._cancel)

    def fill(self) -> None:
        """Do what the card is for. RecoatError, in words for the card, if a field makes no sense."""

    def take_return_in(self, *fields: QLineEdit) -> None:
        """Let Return in these fields do what the card is for. After the last field, Tab goes to the buttons."""
        for field in fields:
            field.returnPressed.connect(self._fill)
        QWidget.setTabOrder(fields[-1], self.do)
        QWidget.setTabOrder(self.do, self.cancel)

    def open_at(self, place: QPoint, first: QWidget) -> None:
        """Open here, or as near as the window has space, with the keys in the field `first`."""
        self.trouble.clear()
        self.resize(self._width, self.sizeHint().height())
        window = self.parentWidget()
        lowest = window.height() - self.height() - EDGE if window else place.y() + EDGE
        self.move(place.x() + EDGE, max(0, min(place.y() + EDGE, lowest)))
        self.show()
        self.raise_()
        first.setFocus(Qt.FocusReason.PopupFocusReason)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self._cancel()
        else:
            super().keyPressEvent(event)

    def _fill(self) -> None:
        try:
            self.fill()
        except RecoatError as error:
            self.trouble.setText(str(error))
        else:
            self.hide()

    def _cancel(self) -> None:
        self.hide()
        self.put_away.emit()
