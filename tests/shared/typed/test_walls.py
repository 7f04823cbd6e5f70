import pytest
from hypothesis import given
from hypothesis import strategies as st

from shared.errors import ReadingError
from shared.job import Corner, Unit
from shared.typed.walls import read_walls

INSIDE, OUTSIDE, NONE = Corner.INSIDE, Corner.OUTSIDE, Corner.NONE


@pytest.mark.parametrize(
    ("typed", "walls"),
    [
        ("2400, 3000, 1800", [(2400, INSIDE), (3000, INSIDE), (1800, NONE)]),
        ("2400 out; 3000 end; 1800 inside", [(2400, OUTSIDE), (3000, NONE), (1800, INSIDE)]),
        ("2400 outside 3000 none 1800", [(2400, OUTSIDE), (3000, NONE), (1800, NONE)]),
        ("2.4 m in, 3 m", [(2400, INSIDE), (3000, NONE)]),
        ("7' 10 1/2\", 8' out, 94 in in", [(2400.3, INSIDE), (2438.4, OUTSIDE), (2387.6, INSIDE)]),
        ("7 ft 10 1/2 in, 8 ft", [(2400.3, INSIDE), (2438.4, NONE)]),
        ("2400\t3000 out\t1800", [(2400, INSIDE), (3000, OUTSIDE), (1800, NONE)]),
        ("2x1200\n3000\t\n", [(2400, INSIDE), (3000, NONE)]),
    ],
)
def test_walls_are_read_with_their_corners(typed: str, walls: list[tuple[float, Corner]]) -> None:
    assert list(read_walls(typed, Unit.MM)) == walls


def test_in_a_job_in_inches_in_is_inches() -> None:
    assert list(read_walls("94 1/2 in, 96 out, 48", Unit.INCH)) == [(2400.3, INSIDE), (2438.4, OUTSIDE), (1219.2, NONE)]


def test_a_unit_typed_once_stays_for_the_line() -> None:
    assert list(read_walls('94 1/2", 96, 48 out', Unit.MM)) == [(2400.3, INSIDE), (2438.4, INSIDE), (1219.2, OUTSIDE)]
    assert [wall.length_mm for wall in read_walls("2.4, 3, 1.8 m", Unit.MM)] == [2400, 3000, 1800]


def test_a_decimal_comma_does_not_part_two_walls() -> None:
    assert list(read_walls("2,4 m, 3 m", Unit.MM, decimal=",")) == [(2400, INSIDE), (3000, NONE)]


@pytest.mark.parametrize(
    ("typed", "words"),
    [
        ("", "no wall was typed"),
        ("2400 in, 3000", "“2400 in”: this could be inches or an inside corner; type 2400 inside or 2400"),
        ("2400 left", "“left”: this word is not known here; use inside, outside, end, none"),
        ("out 2400", "“out”: type a corner after the length of its wall"),
        ("2400, out", "type a corner after"),
        ("2400 out out", "type a corner after"),
        ("2400 3000", "“3000” does not fit there"),
        ("0.5, 2400", "“0.5”: a wall cannot be as short as this"),
        ("200 m", "longer than 100.00 m"),
        ("2400," * 101, "101 walls are too many"),
    ],
)
def test_what_says_no_walls_is_answered_in_words(typed: str, words: str) -> None:
    with pytest.raises(ReadingError, match=words):
        read_walls(typed, Unit.MM)


@given(st.text("0123456789 .,;/x+-'\"\noutinsdem½", max_size=40), st.sampled_from(".,"), st.sampled_from(Unit))
def test_any_text_is_walls_or_is_answered_in_words(text: str, decimal: str, unit: Unit) -> None:
    try:
        walls = read_walls(text, unit, decimal=decimal)
    except ReadingError:
        return
    assert all(wall.length_mm >= 1 for wall in walls)
