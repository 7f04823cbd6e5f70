"""Makes menus from tables of commands, and switches each command on while it can be used.

What the menus offer stands in `menu_table`.
"""

from collections.abc import Callable, Sequence
from typing import NamedTuple

from PySide6.QtCore import QObject
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMainWindow, QMenu

from desktop.look.plain import button_words
from desktop.state.shown import Shown

UNDO, REDO = "&Undo", "&Redo"

Key = QKeySequence.StandardKey | str | None


class Command(NamedTuple):
    """What a menu offers: its words, its key, what it does, and when it can be used."""

    words: str
    key: Key
    act: Callable[[], object]
    usable: Callable[[Shown | None], bool]


def always(_: Shown | None) -> bool:
    """True, whether a job is open or not."""
    return True


def with_job(shown: Shown | None) -> bool:
    """Whether a job is open."""
    return shown is not None


def with_room(shown: Shown | None) -> bool:
    """Whether the job has a room."""
    return shown is not None and bool(shown.job.rooms)


def with_face(shown: Shown | None) -> bool:
    """Whether a face is shown."""
    return shown is not None and bool(shown.face)


def with_picked(shown: Shown | None) -> bool:
    """Whether parts are picked."""
    return shown is not None and bool(shown.picked)


def with_several(shown: Shown | None) -> bool:
    """Whether more than one part is picked."""
    return shown is not None and len(shown.picked) > 1


def with_two(shown: Shown | None) -> bool:
    """Whether exactly two parts are picked."""
    return shown is not None and len(shown.picked) == 2


def with_findings(shown: Shown | None) -> bool:
    """Whether there is a thing to look at."""
    return shown is not None and bool(shown.findings)


def can_undo(shown: Shown | None) -> bool:
    """Whether there is an edit to undo."""
    return shown is not None and shown.history.can_undo


def can_redo(shown: Shown | None) -> bool:
    """Whether there is an undone edit to redo."""
    return shown is not None and shown.history.can_redo


class Choice(NamedTuple):
    """One of several values that a menu offers. It is marked while it `holds` and can be chosen while `usable`."""

    words: str
    key: Key
    act: Callable[[], object]
    holds: Callable[[Shown], bool]
    usable: Callable[[Shown | None], bool] = with_job


class Fold(NamedTuple):
    """Commands and choices that a menu keeps in a menu of their own, under these words."""

    words: str
    items: Sequence[Command | Choice]


class Menus(QObject):
    """Fills a window's menu bar from tables of commands, and keeps the menus up to date with what is shown."""

    def __init__(self, window: QMainWindow) -> None:
        super().__init__(window)
        self._window = window
        self._commands: list[tuple[QAction, Command]] = []
        self._choices: list[tuple[QAction, Choice]] = []

    def add(self, title: str, *groups: Sequence[Command | Choice | Fold]) -> QMenu:
        """Add a menu of groups, with a line between each two, and give it back."""
        menu = QMenu(title, self._window)
        self._window.menuBar().addMenu(menu)
        for number, group in enumerate(groups):
            if number:
                menu.addSeparator()
            for item in group:
                self._add(menu, item)
        return menu

    def follow(self, new: Shown | None) -> None:
        """Switch commands on and off, mark what is chosen, and say what would be undone."""
        for action, command in self._commands:
            action.setEnabled(command.usable(new))
        for action, choice in self._choices:
            action.setEnabled(choice.usable(new))
            action.setChecked(new is not None and choice.holds(new))
        if new is not None:
            self._name_edit(UNDO, new.history.undo_label)
            self._name_edit(REDO, new.history.redo_label)

    def action(self, words: str) -> QAction:
        """The action of the command with these words. KeyError if there is no such command."""
        named = {command.words: action for action, command in self._commands}
        return named[words]

    def _name_edit(self, words: str, label: str) -> None:
        self.action(words).setText(f"{words} {button_words(label[:1].lower() + label[1:])}".rstrip())

    def _add(self, menu: QMenu, item: Command | Choice | Fold) -> None:
        if isinstance(item, Fold):
            fold = menu.addMenu(item.words)
            for folded in item.items:
                self._add(fold, folded)
            return
        action = QAction(item.words, menu)
        if item.key is not None:
            action.setShortcut(QKeySequence(item.key))
        action.triggered.connect(item.act)
        menu.addAction(action)
        if isinstance(item, Choice):
            action.setCheckable(True)
            self._choices.append((action, item))
        else:
            self._commands.append((action, item))
