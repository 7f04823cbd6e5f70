"""Locked parts: the hand neither moves, changes nor deletes them."""

from collections.abc import Iterable

from shared.errors import JobError
from shared.job import Part

WORDS = "it is locked"


def refuse_locked(parts: Iterable[Part]) -> None:
    """Refuse locked parts: JobError, which names the first of these parts that is locked."""
    for part in parts:
        if part.locked:
            raise JobError(WORDS, where=part.called, do="unlock it, or leave it out")
