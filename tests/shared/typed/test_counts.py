"""How many, and how."""

from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shared.errors import ReadingError
from shared.job import Unit
from shared.typed.counts import Copies, Division, read_copies, read_pieces

RIGHT, UP, LEFT = (1.0, 0.0), (0.0, 1.0), (-1.0, 0.0)


@pytest.mark.parametrize(
    ("text", "pieces"),
    [
        ("3", Division(3)),
        (" 3 up ", Division(3, up=True)),
        ("3 Across", Division(3, up=False)),
        ("3 reveal 4", Division(3, reveal_mm=4)),
        ("3 up reveal 4", Division(3, up=True, reveal_mm=4)),
        ("3 reveal 0 up", Division(3, up=True, reveal_mm=0)),
        ("600, 450, 900", Division((600, 450, 900))),
        ("600, 450, rest up reveal 3", Division((600, 450), up=True, reveal_mm=3)),
        ("600 mm", Division((600,))),
        ("60, 45 cm", Division((600, 450))),
        ("10000", Division(10_000)),
        ("0", Division(0)),
    ],
)
def test_how_to_split(text: str, pieces: Division) -> None:
    assert read_pieces(text, Unit.MM) == pieces


@pytest.mark.parametrize(
    "text", ["", "up", "1.5", "reveal 3", "3 up across", "3 reveal 4 reveal 5", "rest", "three", "600, -4"]
)
def test_what_says_no_way_to_split_is_refused(text: str) -> None:
    with pytest.raises(ReadingError):
        read_pieces(text, Unit.MM)


@pytest.mark.parametrize(
    ("text", "copies"),
    [
        ("4", Copies(4)),
        ("4 at 450", Copies(4, 450)),
        ("4 at 450 up", Copies(4, 450, UP)),
        ("4 at 45 cm l", Copies(4, 450, LEFT)),
        ("4 at -450", Copies(4, -450)),
        ("4 at 450r", Copies(4, 450, RIGHT)),
        ("4 up", Copies(4, None, UP)),
        ("4 at 600+3", Copies(4, 603)),
    ],
)
def test_how_to_copy_along(text: str, copies: Copies) -> None:
    assert read_copies(text, Unit.MM) == copies


@pytest.mark.parametrize("text", ["", "at 450", "4 at", "4 450", "-4", "four", "4 at up"])
def test_what_does_not_say_how_many_is_refused(text: str) -> None:
    with pytest.raises(ReadingError):
        read_copies(text, Unit.MM)


@given(st.text(max_size=30))
def test_any_text_is_read_or_refused(text: str) -> None:
    with suppress(ReadingError):
        into = read_pieces(text, Unit.MM).into
        assert into >= 0 if isinstance(into, int) else into and all(size > 0 for size in into)
    with suppress(ReadingError):
        assert read_copies(text, Unit.MM).many >= 0
