"""Reads the kind of a part from the word at the head of a typed line: `outlet 300, 1100, 120, 80`."""

import re
from typing import NamedTuple

from shared.errors import ReadingError
from shared.trade.kinds import Kind, usual
from shared.typed.length_words import quoted

FEWEST_LETTERS = 2
"""A word may be cut short to this many letters where no other kind's word begins with them."""

_HEAD = re.compile(r"\s*(?P<word>[^\W\d_]+(?:[ -][^\W\d_]+)?)")


class Named(NamedTuple):
    """The kind that a line begins with, the name that the word gives the part, and the rest of the line.

    The name is "sink" for the word "sink", and "" for a word that is the kind's own.
    """

    kind: Kind
    name: str
    rest: str

    @property
    def called(self) -> str:
        """The name that the word gives; the kind where it gives none."""
        return self.name or self.kind.value


def read_kind(text: str) -> Named | None:
    """The kind at the head of a line; None for a line that begins with no word. ReadingError where the word is no kind.

    The first of two words is enough: "drawer" for "drawer front". A word may be cut short where no other kind's word
    begins in the same way.
    """
    head = _HEAD.match(text)
    if head is None or not head["word"][0].isalpha():  # a fraction in one sign is a number
        return None
    word = " ".join(head["word"].lower().split())
    first = re.split("[ -]", word)[0]
    for said in (word, first):
        found = _found(said)
        if found:
            kind, name = found
            end = head.start("word") + len(said)
            return Named(kind, name, text[end:])
    words = ", ".join(sorted(_spoken()))
    raise ReadingError(f"{quoted(first)} is not a kind of part", where=quoted(text), do=f"use one of {words}")


def _found(said: str) -> tuple[Kind, str] | None:
    """The kind and name for a word: the word itself, or the only one that begins with it."""
    spoken = _spoken()
    if said in spoken:
        return spoken[said]
    begun = {spoken[word] for word in spoken if word.startswith(said)} if len(said) >= FEWEST_LETTERS else set()
    return begun.pop() if len(begun) == 1 else None


def _spoken() -> dict[str, tuple[Kind, str]]:
    """Each word with its kind and the name that it gives the part: only the words in `said` give one."""
    words: dict[str, tuple[Kind, str]] = {}
    for kind, row in usual().items():
        words[kind.value] = kind, ""
        words.setdefault(re.split("[ -]", kind.value)[0], (kind, ""))
        for word in row.said:
            words[word] = kind, word
    return words
