"""The list of things to look at. It stays over the page while the person goes through it and mends what can be.

`mends` does what its buttons ask for.
"""

from PySide6.QtCore import QEvent, QKeyCombination, QObject, Qt, Signal
from PySide6.QtGui import QHideEvent, QKeyEvent, QKeySequence, QShortcut
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QListWidget,
    QListWidgetItem,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from desktop.look.plain import Label, button_words
from desktop.look.roles import set_role
from desktop.look.wording import own_writing
from desktop.state.shown import Shown
from shared.edits.drawn import find_face
from shared.findings import Finding

WIDTH = 420
HEIGHT = 360

BEGINS = (QEvent.Type.FocusIn, QEvent.Type.Enter)
ENDS = (QEvent.Type.FocusOut, QEvent.Type.Leave)


class FindingsView(QFrame):
    """Lists the findings. `chosen(finding)` follows a click on one, or Return; Escape puts the list away.

    The marked finding has a button with its mend. `asked(finding, all)` says that the mend is to be done (Ctrl+Return
    asks too); `all` says that it is to be done to everything of the sort. While the pointer or the keys are on such a
    button, `tried(finding, all)` asks to show what it would change; `finding` is None to end that.
    """

    chosen = Signal(object)
    asked = Signal(object, bool)
    tried = Signal(object, bool)
    put_away = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        set_role(self, "card")
        self.hide()
        self._findings: tuple[Finding, ...] = ()
        self._lines: tuple[str, ...] = ()
        self._list = QListWidget(self)
        self.mend, self.mend_all = QPushButton(self), QPushButton(self)
        self.trouble = Label(self)
        self._make_list()
        self._make_buttons()
        hint = Label("Return goes to it. Ctrl+Return mends it. Esc closes the list.", self)
        hint.setWordWrap(True)
        set_role(hint, "quiet")
        row = QHBoxLayout()
        row.addWidget(self.mend)
        row.addWidget(self.mend_all)
        row.addStretch(1)
        column = QVBoxLayout(self)
        column.addWidget(self._list)
        column.addWidget(self.trouble)
        column.addLayout(row)
        column.addWidget(hint)
        self._offer()

    @property
    def marked(self) -> Finding | None:
        """The finding that is marked in the list; None if none is."""
        row = self._list.currentRow()
        return self._findings[row] if 0 <= row < len(self._findings) else None

    def follow(self, old: Shown | None, new: Shown) -> None:
        """List what there is to look at. A job that is only tried out changes nothing here."""
        if new.tried is not None:
            return
        findings = new.findings
        lines = tuple(f"{_place(finding, new)}   {own_writing().sentence(finding.message)}" for finding in findings)
        if (findings, lines) == (self._findings, self._lines):
            return
        marked, row = self.marked, self._list.currentRow()
        self._findings, self._lines = findings, lines
        self._list.blockSignals(True)  # nobody chose the rows that are current meanwhile
        self._list.clear()
        self._list.addItems(lines)
        self._list.setCurrentRow(findings.index(marked) if marked in findings else min(row, len(findings) - 1))
        self._list.blockSignals(False)
        self.trouble.hide()
        self._offer()
        if not findings:
            self.hide()

    def open_at(self, right: int, top: int, height: int) -> None:
        """Open with the keys, the upper right corner at this place, and no higher than `height`; pixels."""
        self.setGeometry(right - WIDTH, top, WIDTH, min(HEIGHT, height))
        self.show()
        self.raise_()
        self._list.setCurrentRow(max(0, self._list.currentRow()))  # before the keys come: else it is not highlighted
        self._list.setFocus(Qt.FocusReason.PopupFocusReason)

    def tell(self, words: str) -> None:
        """Say why something could not be mended."""
        self.trouble.setText(words)
        self.trouble.show()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.hide()
            self.put_away.emit()
        else:
            super().keyPressEvent(event)

    def hideEvent(self, event: QHideEvent) -> None:
        self.tried.emit(None, False)
        super().hideEvent(event)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() in BEGINS:
            self._try(everything=watched is self.mend_all)
        elif event.type() in ENDS:
            self.tried.emit(None, False)
        return super().eventFilter(watched, event)

    def _make_list(self) -> None:
        self._list.setWordWrap(True)
        self._list.setSpacing(4)
        self._list.setFrameShape(QFrame.Shape.NoFrame)
        self._list.setAccessibleName("Things to look at")
        self._list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._list.itemClicked.connect(self._choose)
        self._list.itemActivated.connect(self._choose)
        self._list.currentRowChanged.connect(self._mark)

    def _make_buttons(self) -> None:
        for button in (self.mend, self.mend_all):
            button.setAutoDefault(True)
            button.installEventFilter(self)
        self.mend.clicked.connect(self._ask)
        self.mend_all.clicked.connect(self._ask_all)
        for key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            keys = QKeySequence(QKeyCombination(Qt.KeyboardModifier.ControlModifier, key))
            shortcut = QShortcut(keys, self, context=Qt.ShortcutContext.WidgetWithChildrenShortcut)
            shortcut.activated.connect(self._ask)
        set_role(self.trouble, "trouble")
        self.trouble.setWordWrap(True)
        self.trouble.hide()

    def _choose(self, item: QListWidgetItem) -> None:
        self.chosen.emit(self._findings[self._list.row(item)])

    def _mark(self, _row: int) -> None:
        self.trouble.hide()
        self._offer()

    def _offer(self) -> None:
        """Show the buttons of the marked finding. If the keys were on a button that goes, they move on.

        They go to the mend's button if there is one, else back to the list.
        """
        marked = self.marked
        mend = marked.mend if marked else ""
        alike = sum(finding.code is marked.code and bool(finding.mend) for finding in self._findings) if marked else 0
        held = self.mend.hasFocus() or self.mend_all.hasFocus()
        self.mend.setText(button_words(mend))
        self.mend_all.setText(f"Mend all {alike} like this")
        self.mend.setVisible(bool(mend))
        self.mend_all.setVisible(bool(mend) and alike > 1)
        if held and not (self.mend.hasFocus() or self.mend_all.hasFocus()):
            (self.mend if mend else self._list).setFocus(Qt.FocusReason.OtherFocusReason)
        elif held:
            self._try(everything=self.mend_all.hasFocus())

    def _try(self, *, everything: bool) -> None:
        marked = self.marked
        self.tried.emit(marked if marked and marked.mend else None, everything)

    def _ask(self) -> None:
        if self.marked is not None:
            self.asked.emit(self.marked, False)

    def _ask_all(self) -> None:
        if self.marked is not None:
            self.asked.emit(self.marked, True)


def _place(finding: Finding, shown: Shown) -> str:
    """Where a finding is: the name of its face; what it is about if it is on no face."""
    return find_face(shown.now, finding.face).name if finding.face else finding.code.place.about
