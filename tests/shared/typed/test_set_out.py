"""Readings that set out a face, as people say them."""

from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shared.errors import ReadingError
from shared.job import Unit, Way
from shared.typed.set_out import Group, How, read_set_out


@pytest.mark.parametrize(
    ("text", "groups"),
    [
        ("600, 1050, 1950", (Group((600, 1050, 1950)),)),
        ("chain 600, 450", (Group((600, 450), How.CHAIN),)),
        ("chain up 150, 720", (Group((150, 720), How.CHAIN, Way.UP),)),
        ("up150,870", (Group((150, 870), way=Way.UP),)),
        ("from 600, 450, 300", (Group((450, 300), How.CHAIN, from_mm=600),)),
        ("new 1040", (Group((1040,), fresh=True),)),
        ("wall 3.6 m", (Group((3600,), How.WALL),)),
        ("600, 1050 up 150", (Group((600, 1050)), Group((150,), way=Way.UP))),
        (
            "left 2400, right 2395, floor 3600, diagonal 4326, 4310",
            (
                Group((2400,), How.SIDE, side="left"),
                Group((2395,), How.SIDE, side="right"),
                Group((3600,), How.SIDE, side="floor"),
                Group((4326, 4310), How.DIAGONAL),
            ),
        ),
        ("60 cm, 105", (Group((600, 1050)),)),
        ("diag 900", (Group((900,), How.DIAGONAL),)),
    ],
)
def test_groups_of_readings_are_read(text: str, groups: tuple[Group, ...]) -> None:
    assert read_set_out(text, Unit.MM) == groups


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "no length after"),
        ("chain", "no length after"),
        ("from 600", "no length after"),
        ("wall 2400, 3600", "2 readings for wall"),
        ("left 2400, 2395", "2 readings for left"),
        ("diagonal 1, 2, 3", "3 readings for diagonal"),
        ("wombat 600", "not known here"),
        ("600 kg", "not known here"),
        ("600 450", "does not fit"),
    ],
)
def test_what_makes_no_sense_is_refused_in_words(text: str, words: str) -> None:
    with pytest.raises(ReadingError, match=words):
        read_set_out(text, Unit.MM)


@given(st.text(max_size=40))
def test_any_text_is_groups_or_refused_in_words(text: str) -> None:
    with suppress(ReadingError):
        assert all(group.lengths for group in read_set_out(text, Unit.MM))
