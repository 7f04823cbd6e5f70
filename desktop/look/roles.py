"""Names for the style sheet: what a widget is for, and the states that it can be in."""

from PySide6.QtWidgets import QWidget


def set_role(widget: QWidget, role: str) -> None:
    """Say what a widget is for; the style sheet knows how that looks."""
    _set(widget, "role", role)


def set_state(widget: QWidget, state: str, on: bool) -> None:  # a state is on or off
    """Say that a widget is in a state, or no longer."""
    _set(widget, state, "true" if on else "false")


def _set(widget: QWidget, name: str, value: str) -> None:
    """Set a property. The change shows only after the style has looked at the widget again."""
    if widget.property(name) != value:
        widget.setProperty(name, value)
        style = widget.style()
        style.unpolish(widget)
        style.polish(widget)
        widget.update()
