"""The bar with a button for each page, in the order of the job, and one for the things to look at."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QAbstractButton, QButtonGroup, QFrame, QHBoxLayout, QPushButton, QWidget

from desktop.fields.page_button import hold_width
from desktop.look.plain import button_words, tip_words
from desktop.look.roles import set_role
from desktop.look.wording import counted
from desktop.state.shown import Page, Shown


class PageBar(QFrame):
    """The bar. `turned(page)` says that a page was chosen, `asked_for_findings` that the things to look at were."""

    turned = Signal(object)
    asked_for_findings = Signal()

    def __init__(self, pages: Sequence[Page], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("panel")
        self._pages = tuple(pages)
        self._buttons = QButtonGroup(self)
        self.findings = QPushButton(self)
        set_role(self.findings, "findings")
        self.findings.setAutoDefault(True)
        self.findings.clicked.connect(self.asked_for_findings)
        row = QHBoxLayout(self)
        row.setContentsMargins(12, 4, 12, 4)
        row.setSpacing(8)
        for number, page in enumerate(self._pages, 1):
            row.addWidget(self._button(number, page))
        row.addStretch(1)
        row.addWidget(self.findings)
        self._buttons.buttonClicked.connect(self._turn)

    def follow(self, old: Shown | None, new: Shown) -> None:
        """Mark the page that is open, and say how many things there are to look at."""
        button = self._buttons.button(self._pages.index(new.page))
        button.setChecked(True)
        if old is None or old.takeoff.findings is not new.takeoff.findings or old.bill is not new.bill:
            number = len(new.findings)
            words = counted(number, "thing to look at", "things to look at") if number else "Nothing to look at"
            self.findings.setText(words)
            self.findings.setEnabled(number > 0)

    def _button(self, number: int, page: Page) -> QPushButton:
        button = QPushButton(button_words(f"{number}  {page.name}"), self)
        button.setCheckable(True)
        button.setAutoDefault(True)
        button.setToolTip(tip_words(f"Ctrl+{number}"))
        button.setAccessibleName(f"Page {page.name}")
        button.setCursor(Qt.CursorShape.PointingHandCursor)
        set_role(button, "page")
        hold_width(button)
        self._buttons.addButton(button, number - 1)
        return button

    def _turn(self, button: QAbstractButton) -> None:
        self.turned.emit(self._pages[self._buttons.id(button)])
