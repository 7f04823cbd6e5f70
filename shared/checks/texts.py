"""Checks every text of a job, whatever field it stands in. Part of `shared.checks.job`.

Which fields hold text follows from their types, so that a field that is added to the job is checked too.
"""

import re
from collections.abc import Iterator
from functools import cache
from typing import Any, NamedTuple, get_args, get_type_hints

import msgspec

from shared import limits
from shared.errors import JobError
from shared.plain_text import steering

Path = tuple[str | int, ...]
"""The way to something inside a value: the names of fields, and places in lists, counted from 0."""


class Text(NamedTuple):
    """A text inside a value, and the way to it."""

    text: str
    path: Path


def check_texts(job: msgspec.Struct) -> None:
    """Refuse a text that is too long, or that does not stand in one line: JobError for the first, with its place."""
    words: set[str] = set()
    _collect(job, words)
    if all(map(_is_sound, words)):
        return
    text, path = next(each for each in texts_of(job) if not _is_sound(each.text))
    what, where = f"the {_field(path)} {quoted(text)}", _place(job, path)
    if len(text) > limits.LONGEST_TEXT:
        raise JobError(f"{what} is too long", where=where, do=f"use at most {limits.LONGEST_TEXT} characters")
    character = f"a control character (U+{ord(steering(text)):04X})"
    raise JobError(f"{what} contains {character}", where=where, do="write it in one line, without tabs")


def texts_of(value: object, path: Path = ()) -> Iterator[Text]:
    """Every text in a value of a job, however deep it lies. A word from a fixed list, such as a kind, is no text."""
    if type(value) is str:
        yield Text(value, path)
    elif isinstance(value, tuple):
        for place, item in enumerate(value):
            yield from texts_of(item, (*path, place))
    elif isinstance(value, msgspec.Struct):
        for name in _fields_with_text(type(value)):
            yield from texts_of(getattr(value, name), (*path, name))


def quoted(text: str) -> str:
    """A text out of a job, in quotes and shortened."""
    return f'"{text}"' if len(text) <= limits.LONGEST_QUOTED else f'"{text[: limits.LONGEST_QUOTED]} ..."'


def _is_sound(text: str) -> bool:
    return len(text) <= limits.LONGEST_TEXT and not steering(text)


def _collect(value: object, words: set[str]) -> None:
    """Add the texts of `texts_of`, without the way to them. Every edit asks for them, so that this has to be quick."""
    if isinstance(value, tuple):
        for item in value:
            _collect(item, words)
    elif isinstance(value, msgspec.Struct):
        texts, deeper = _split(type(value))
        words.update([getattr(value, name) for name in texts])
        for name in deeper:
            _collect(getattr(value, name), words)
    elif type(value) is str:
        words.add(value)


@cache
def _split(kind: type[msgspec.Struct]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The fields of a kind of value that are a text, and those in which texts lie deeper."""
    annotated = get_type_hints(kind)
    texts = tuple(name for name in annotated if annotated[name] is str)
    return texts, tuple(name for name in _fields_with_text(kind) if name not in texts)


@cache
def _fields_with_text(kind: type[msgspec.Struct]) -> tuple[str, ...]:
    """The fields of a kind of value that hold text, or values that do."""
    return tuple(name for name, annotated in get_type_hints(kind).items() if _holds_text(annotated))


def _holds_text(annotated: Any) -> bool:
    if isinstance(annotated, type) and issubclass(annotated, msgspec.Struct):
        return bool(_fields_with_text(annotated))
    return annotated is str or any(map(_holds_text, get_args(annotated)))


def _field(path: Path) -> str:
    """The field at the end of a way, in words: "made of" for `made_of`."""
    return next(step for step in reversed(path) if isinstance(step, str)).replace("_", " ")


def _place(value: object, path: Path) -> str:
    """The values on the way to a text, in words: "room 1 (Kitchen), face 2"."""
    places = []
    for step in path:
        value = value[step] if isinstance(value, tuple) and isinstance(step, int) else getattr(value, str(step))
        if isinstance(value, msgspec.Struct):
            number = f" {step + 1}" if isinstance(step, int) else ""
            places.append(f"{_kind_of(value)}{number}{_name(value)}")
    return ", ".join(places)


def _kind_of(value: msgspec.Struct) -> str:
    """What a value is, in words: "joint choice" for a `JointChoice`."""
    return re.sub(r"(?<!^)(?=[A-Z])", " ", type(value).__name__).lower()


def _name(value: msgspec.Struct) -> str:
    """The name of a value in brackets, if it has one that can be said."""
    name = getattr(value, "name", "")
    return f" ({name[: limits.LONGEST_QUOTED]})" if name and not steering(name) else ""
