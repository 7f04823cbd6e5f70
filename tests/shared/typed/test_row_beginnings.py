import pytest
from hypothesis import given
from hypothesis import strategies as st

from shared.errors import ReadingError
from shared.job import Unit
from shared.typed.row_beginnings import row_so_far
from shared.typed.rows import read_row


@pytest.mark.parametrize(
    ("text", "so_far"),
    [
        ("450 door, 600 drawers 3", "450 door, 600 drawers 3"),
        ("450 door, 600 dr", "450 door, 600 dr"),
        ("450 door, 600 d", "450 door"),
        ("450 door, 600", "450 door"),
        ("450 door 2 of 600 pa", "450 door"),
        ("above 450 door re", "above 450 door"),
        ("above 450 door r", "above 450 door"),
        ("450 d", ""),
        ("above", ""),
        ("", ""),
    ],
)
def test_the_last_item_is_left_out_while_it_is_only_begun(text: str, so_far: str) -> None:
    assert row_so_far(text, Unit.MM) == so_far


@pytest.mark.parametrize("text", ["450 door, 600 wombat", "450 door, 600, 900 pair", "wombat", "450 door, door"])
def test_a_line_that_cannot_become_a_row_is_left_as_it_is(text: str) -> None:
    assert row_so_far(text, Unit.MM) == text


@given(st.text(alphabet="0123456789 ,.'\"/abdoprst", max_size=40))
def test_what_is_so_far_is_a_row_or_nothing_or_the_line_itself(text: str) -> None:
    so_far = row_so_far(text, Unit.MM)
    if so_far and so_far != text:
        assert text.lstrip().startswith(so_far)
        assert read_row(so_far, Unit.MM).items


@given(st.integers(1, 40))
def test_the_beginnings_of_a_sound_line_are_no_slips(length: int) -> None:
    line = "450 door, 3 of 600 drawers 2, 900 pair, rest open, splashback"
    so_far = row_so_far(line[:length], Unit.MM)
    stand = [item.stands for item in read_row(so_far, Unit.MM).items] if so_far else []
    assert stand == [item.stands for item in read_row(line, Unit.MM).items][: len(stand)]
    assert bool(stand) is (length >= len("450 do"))


def test_a_line_without_end_is_refused() -> None:
    with pytest.raises(ReadingError, match="too long"):
        row_so_far("4" * 20_000, Unit.MM)
