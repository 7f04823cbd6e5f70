"""What a line begins with says what is drawn."""

from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shared.errors import ReadingError
from shared.trade.kinds import Kind
from shared.typed.kinds import Named, read_kind


@pytest.mark.parametrize(
    ("text", "named"),
    [
        ("outlet 300, 1100", Named(Kind.OUTLET, "", " 300, 1100")),
        ("outlet300", Named(Kind.OUTLET, "", "300")),
        ("  Wall", Named(Kind.WALL, "", "")),
        ("out 5", Named(Kind.OUTLET, "", " 5")),
        ("sink 900 by 440", Named(Kind.FIXTURE, "sink", " 900 by 440")),
        ("drawer front 5", Named(Kind.DRAWER_FRONT, "", " 5")),
        ("drawer 5", Named(Kind.DRAWER_FRONT, "", " 5")),
        ("end panel 5", Named(Kind.END_PANEL, "", " 5")),
        ("cut-out 5", Named(Kind.CUT_OUT, "", " 5")),
        ("fixture at 5", Named(Kind.FIXTURE, "", " at 5")),
    ],
)
def test_the_head_of_a_line_names_a_kind(text: str, named: Named) -> None:
    assert read_kind(text) == named


@pytest.mark.parametrize("text", ["", "  ", "300, 1100", "-38", "1/2"])
def test_a_line_without_a_word_names_none(text: str) -> None:
    assert read_kind(text) is None


@pytest.mark.parametrize("text", ["s 5", "wombat 5", "b"])
def test_a_word_that_is_no_kind_or_several_is_refused(text: str) -> None:
    with pytest.raises(ReadingError, match="is not a kind of part"):
        read_kind(text)


@given(st.text(max_size=30))
def test_any_text_is_named_or_refused_in_words(text: str) -> None:
    with suppress(ReadingError):
        named = read_kind(text)
        assert named is None or text.endswith(named.rest)
