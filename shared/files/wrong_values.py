"""Says in words which value of a job file is wrong: "room 1 (Kitchen), face 2 (B)" for `$.rooms[0].faces[1]`."""

import re
from typing import Any

import msgspec

from shared.errors import FileError

_TYPES = {
    "str": "text",
    "int": "a whole number",
    "float": "a number",
    "bool": "true or false",
    "array": "a list",
    "object": "a group of fields",
    "null": "empty",
}

_STEP = re.compile(r"\.(?P<field>\w+)|\[(?P<index>\d+)\]")

_ONE_OF = {
    "rooms": "room",
    "faces": "face",
    "parts": "part",
    "outline": "corner",
    "ties": "tie",
    "kinds": "kind",
    "finishes": "finish",
    "joints": "joint choice",
    "coated_sides": "coated side",
}

_LONGEST_NAME = 40

LARGEST_NAMED = 2 * 2**20
"""Bytes of a document up to which places in it are named: as plain values it takes some 25 times as much memory."""


def wrong_value(message: str, document: bytes, where: str) -> FileError:
    """The FileError for a document that is JSON but no job. `message` is what the JSON library said of it."""
    what, _, path = message.partition(" - at `$")
    place = _place(path.rstrip("`"), _read(document))
    return FileError(
        _in_words(what), where=f"{where}: {place}" if place else where, do="correct the file, or use another copy"
    )


def _in_words(what: str) -> str:
    for pattern, words in MESSAGES:
        found = pattern.fullmatch(what)
        if found:
            return words.format(*(_TYPES.get(group, group) for group in found.groups()))
    return what.replace("`", '"')


MESSAGES = tuple(
    (re.compile(pattern), words)
    for pattern, words in (
        (r"Expected `(\w+)`, got `(\w+)`", "this should be {0}, not {1}"),
        (r"Expected `(\w+) \| null`, got `(\w+)`", "this should be {0} or empty, not {1}"),
        (r"Expected `(\w+)`", "this should be {0}"),
        (r"Object missing required field `(.*)`", 'the field "{0}" is missing'),
        (r"Object contains unknown field `(.*)`", 'there is no field "{0}" here'),
        (r"Invalid enum value '?(.*?)'?", '"{0}" is not one of the words known here'),
        (r"Invalid value '?(.*?)'?", '"{0}" is not one of the words known here'),
        (
            r"Expected `array` of at most length (\d+)(?:, got (\d+))?",
            "a corner of an outline has more than {0} numbers",
        ),
        (r"Expected `array` of at least length (\d+)(?:, got (\d+))?", "this list has fewer than {0} items"),
        (r"Expected `array` of length (\d+)(?:, got (\d+))?", "this list should have {0} items"),
        (r"(?:Number|Integer value) out of range", "this number is too large"),
    )
)
"""What the library says of a value, and what a person reads instead. The library may reword in any release, so that the
tests hold each of these against what it really says."""


def _read(document: bytes) -> Any:
    """The document as plain values, to name places in it; None where even that fails, or where it is too large."""
    if len(document) > LARGEST_NAMED:
        return None
    try:
        return msgspec.json.decode(document)
    except (msgspec.DecodeError, UnicodeDecodeError, RecursionError):
        return None


def _place(path: str, value: Any) -> str:
    """The path in words. Items of a list are counted from 1 and followed by the name found there."""
    places: list[str] = []
    for step in _STEP.finditer(path):
        field, index = step["field"], step["index"]
        value = _inside(value, field, index)
        if field:
            places.append(f'"{field}"')
        elif index:
            one = _ONE_OF.get(places[-1].strip('"'), "") if places else ""
            place = f"{one or 'item'} {int(index) + 1}{_name(value)}"
            places = [*(places[:-1] if one else places), place]
    return ", ".join(places)


def _inside(value: Any, field: str | None, index: str | None) -> Any:
    if isinstance(value, dict) and field:
        return value.get(field)
    if isinstance(value, list) and index and int(index) < len(value):
        return value[int(index)]
    return None


def _name(value: Any) -> str:
    """The name of what was found, or else its id, in brackets; "" for a value with neither."""
    named = (value.get("name") or value.get("id")) if isinstance(value, dict) else None
    if not isinstance(named, str) or not named.isprintable():
        return ""
    return f" ({named[:_LONGEST_NAME]})"
