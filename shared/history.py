"""Undo and redo: the present value, the ones before and after it, and what each edit was called.

The values themselves never change; the window keeps a history of jobs.
"""

from dataclasses import dataclass
from typing import Generic, NamedTuple, TypeVar

T = TypeVar("T")


class Edit(NamedTuple, Generic[T]):
    """A value one edit away from another, and what that edit was called."""

    value: T
    label: str


@dataclass(frozen=True, slots=True)
class History(Generic[T]):
    """A present value, the edits that led to it (latest last) and the edits that were undone (the next to redo last).

    There is no limit to either. With nothing to undo or redo, undoing or redoing gives the same history.
    """

    present: T
    past: tuple[Edit[T], ...] = ()
    future: tuple[Edit[T], ...] = ()

    def with_edit(self, value: T, label: str) -> "History[T]":
        """The history after one more edit, to `value`; what was undone is forgotten. The same value is no edit."""
        if value is self.present:
            return self
        return History(value, (*self.past, Edit(self.present, label)))

    def undone(self) -> "History[T]":
        """The history with its latest edit undone."""
        if not self.past:
            return self
        edit = self.past[-1]
        return History(edit.value, self.past[:-1], (*self.future, Edit(self.present, edit.label)))

    def redone(self) -> "History[T]":
        """The history with the edit that was undone last made again."""
        if not self.future:
            return self
        edit = self.future[-1]
        return History(edit.value, (*self.past, Edit(self.present, edit.label)), self.future[:-1])

    @property
    def can_undo(self) -> bool:
        """Whether there is an edit to undo."""
        return bool(self.past)

    @property
    def can_redo(self) -> bool:
        """Whether there is an edit to redo."""
        return bool(self.future)

    @property
    def undo_label(self) -> str:
        """The label of the edit that undo would take back; "" when there is nothing to undo."""
        return self.past[-1].label if self.past else ""

    @property
    def redo_label(self) -> str:
        """The label of the edit that redo would make again; "" when there is nothing to redo."""
        return self.future[-1].label if self.future else ""
