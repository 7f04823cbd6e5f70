"""Asking for a name."""

from collections.abc import Callable

from PySide6.QtWidgets import QInputDialog, QWidget


def ask_for_name(window: QWidget, words: str, name: str, then: Callable[[str], None]) -> None:
    """Ask for another name than this, in these words; then go on with what was typed, unless it is nothing."""
    dialog = QInputDialog(window)
    dialog.setWindowTitle(words)
    dialog.setLabelText(words)
    dialog.setTextValue(name)

    def take(typed: str) -> None:
        if typed.strip():
            then(typed.strip())

    dialog.textValueSelected.connect(take)
    dialog.finished.connect(dialog.deleteLater)
    dialog.open()
