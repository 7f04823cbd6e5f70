"""What msgspec says of a wrong value, against what people read instead."""

import msgspec
import pytest

from shared.files.wrong_values import MESSAGES, wrong_value
from shared.job import Job

BEAD = '{"name": "a", "joints": [{"face": "f", "parts": ["p", "q"], "section": %s}]}'
OUTLINE = (
    '{"name": "a", "rooms": [{"id": "r", "name": "Kitchen", "faces": [{"id": "f", "name": "B", "parts": '
    '[{"id": "p", "kind": "door", "outline": %s}]}]}]}'
)

WRONG = {
    '{"name": 5}': "this should be text, not a whole number",
    '{"name": null}': "this should be text, not empty",
    '{"name": "a", "handle_centres_mm": "96"}': "this should be a number or empty, not text",
    BEAD % '{"type": 5}': "this should be text",
    "{}": 'the field "name" is missing',
    '{"name": "a", "colour": 1}': 'there is no field "colour" here',
    '{"name": "a", "unit": "ell"}': '"ell" is not one of the words known here',
    BEAD % '{"type": "cove"}': '"cove" is not one of the words known here',
    OUTLINE % "[[0, 1, 2, 3]]": "a corner of an outline has more than 3 numbers",
    OUTLINE % "[[0]]": "this list has fewer than 2 items",
    '{"name": "a", "joints": [{"face": "f", "parts": ["p"]}]}': "this list should have 2 items",
    '{"name": 1e999}': "this number is too large",
    '{"name": "a", "version": ' + "9" * 5000 + "}": "this number is too large",
}
"""Documents that are JSON but no job, and the sentence that each is refused with."""


def said(document: str) -> str:
    """What the library says of a document, without the place."""
    with pytest.raises(msgspec.ValidationError) as caught:
        msgspec.json.decode(document, type=Job)
    return str(caught.value).partition(" - at `$")[0]


@pytest.mark.parametrize("document", WRONG, ids=lambda document: document[:60])
def test_what_the_library_says_is_put_in_plain_words(document: str) -> None:
    error = wrong_value(said(document), document.encode(), "kitchen.json")
    assert error.what == WRONG[document]


def test_the_library_says_each_of_the_known_messages() -> None:
    messages = list(map(said, WRONG))
    unsaid = [pattern.pattern for pattern, _ in MESSAGES if not any(map(pattern.fullmatch, messages))]
    assert unsaid == []


def test_each_message_is_read_by_one_pattern_only() -> None:
    for message in map(said, WRONG):
        assert len([words for pattern, words in MESSAGES if pattern.fullmatch(message)]) == 1
