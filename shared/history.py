"""Undo and redo of values that do not change: past, present, future, and what each edit was called."""

from dataclasses import dataclass
from typing import Generic, NamedTuple, TypeVar

T = TypeVar("T")


class Edit(NamedTuple, Generic[T]):
    """A value one edit away from another, and what that edit was called."""

    value: T
    label: str


@dataclass(frozen=True, slots=True)
class History(Generic[T]):
    """A present value, the edits that led to it (latest last) and those that were taken back (nearest last).

    There is no limit to either. Undoing or redoing where there is nothing to undo or redo gives the same history.
    """

    present: T
    past: tuple[Edit[T], ...] = ()
    future: tuple[Edit[T], ...] = ()

    def with_edit(self, value: T, label: str) -> "History[T]":
        """The history after one more edit, to `value`; what was taken back is forgotten. The same value is no edit."""
        if value is self.present:
            return self
        return History(value, (*self.past, Edit(self.present, label)))

    def undone(self) -> "History[T]":
        """The history with its latest edit taken back."""
        if not self.past:
            return self
        edit = self.past[-1]
        return History(edit.value, self.past[:-1], (*self.future, Edit(self.present, edit.label)))

    def redone(self) -> "History[T]":
        """The history with the edit taken back last taken again."""
        if not self.future:
            return self
        edit = self.future[-1]
        return History(edit.value, (*self.past, Edit(self.present, edit.label)), self.future[:-1])

    @property
    def can_undo(self) -> bool:
        """Whether there is an edit to take back."""
        return bool(self.past)

    @property
    def can_redo(self) -> bool:
        """Whether there is an edit to take again."""
        return bool(self.future)

    @property
    def undo_label(self) -> str:
        """What the edit to take back was called; "" where there is none."""
        return self.past[-1].label if self.past else ""

    @property
    def redo_label(self) -> str:
        """What the edit to take again was called; "" where there is none."""
        return self.future[-1].label if self.future else ""
