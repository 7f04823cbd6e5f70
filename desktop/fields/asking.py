"""Asks the person for a name, in a small dialog."""

from collections.abc import Callable

from PySide6.QtWidgets import QWidget

from desktop.look.plain import Asking


def ask_for_name(window: QWidget, words: str, name: str, then: Callable[[str], None]) -> None:
    """Ask in these words for another name; then call `then` with what was typed, unless the person typed nothing."""
    dialog = Asking(window, words)
    dialog.setTextValue(name)

    def take(typed: str) -> None:
        if typed.strip():
            then(typed.strip())

    dialog.textValueSelected.connect(take)
    dialog.finished.connect(dialog.deleteLater)
    dialog.open()
