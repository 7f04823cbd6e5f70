"""Undo and redo of values that do not change: past, present, future, and what each step was called."""

from dataclasses import dataclass
from typing import Generic, NamedTuple, TypeVar

T = TypeVar("T")


class Step(NamedTuple, Generic[T]):
    """A value one step away from another, and the label of the step between them."""

    value: T
    label: str


@dataclass(frozen=True, slots=True)
class History(Generic[T]):
    """A present value, the steps that led to it (latest last) and those that were taken back (nearest last).

    There is no limit to either. Undoing or redoing where there is nothing to undo or redo gives the same history.
    """

    present: T
    past: tuple[Step[T], ...] = ()
    future: tuple[Step[T], ...] = ()

    def with_step(self, value: T, label: str) -> "History[T]":
        """The history after one more step, to `value`; what was taken back is forgotten. The same value is no step."""
        if value is self.present:
            return self
        return History(value, (*self.past, Step(self.present, label)))

    def undone(self) -> "History[T]":
        """The history with its latest step taken back."""
        if not self.past:
            return self
        step = self.past[-1]
        return History(step.value, self.past[:-1], (*self.future, Step(self.present, step.label)))

    def redone(self) -> "History[T]":
        """The history with the step taken back last taken again."""
        if not self.future:
            return self
        step = self.future[-1]
        return History(step.value, (*self.past, Step(self.present, step.label)), self.future[:-1])

    @property
    def can_undo(self) -> bool:
        """Whether there is a step to take back."""
        return bool(self.past)

    @property
    def can_redo(self) -> bool:
        """Whether there is a step to take again."""
        return bool(self.future)

    @property
    def undo_label(self) -> str:
        """What the step to take back was called; "" where there is none."""
        return self.past[-1].label if self.past else ""

    @property
    def redo_label(self) -> str:
        """What the step to take again was called; "" where there is none."""
        return self.future[-1].label if self.future else ""
