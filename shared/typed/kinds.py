"""Kinds of parts by the words that people say for them, at the head of a typed line: `outlet 300, 1100, 120, 80`."""

import re
from typing import NamedTuple

from shared.errors import ReadingError
from shared.trade.kinds import Kind, usual
from shared.typed.length_words import quoted

FEWEST_LETTERS = 2
"""A word may be cut short to as few letters, where no other begins so."""

_HEAD = re.compile(r"\s*(?P<word>[^\W\d_]+(?:[ -][^\W\d_]+)?)")


class Named(NamedTuple):
    """The kind that a line begins with, the part's name ("sink"; "" where the word is the kind's), and what follows."""

    kind: Kind
    name: str
    rest: str


def read_kind(text: str) -> Named | None:
    """The kind at the head of a line; None where it begins with no word. ReadingError where the word is no kind.

    Of two words ("drawer front", "end panel") the first is enough. A word that stands for no one else may be cut short.
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
    """Each word with its kind and the name that it gives: words that are `said` for a kind name the part."""
    words: dict[str, tuple[Kind, str]] = {}
    for kind, row in usual().items():
        words[kind.value] = kind, ""
        words.setdefault(re.split("[ -]", kind.value)[0], (kind, ""))
        for word in row.said:
            words[word] = kind, word
    return words
