"""Ways as people say them."""

import math
from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shared.errors import ReadingError
from shared.job import Unit
from shared.limits import LONGEST_MM
from shared.typed.ways import By, To, TracedSide, names_ways, read_moves, read_sides, way_at

RIGHT, UP, LEFT, DOWN = (1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0)


@pytest.mark.parametrize(
    ("text", "steps"),
    [
        ("600 right, 400 up, 600 left", [By(600, RIGHT), By(400, UP), By(600, LEFT)]),
        ("600r, 400 U; 600L\t2400 d", [By(600, RIGHT), By(400, UP), By(600, LEFT), By(2400, DOWN)]),
        ("600", [By(600)]),
        ("600+450-3 right", [By(1047, RIGHT)]),
        ("3x450 up", [By(1350, UP)]),
        ("600 at 90, 5 at -90°, 7 at 180 degrees", [By(600, UP), By(5, DOWN), By(7, LEFT)]),
        ("to 600, 870", [To(600, 870)]),
        ("To 0, 0, 600 right, to -20, 30", [To(0, 0), By(600, RIGHT), To(-20, 30)]),
        ("60 cm right, 400 up", [By(600, RIGHT), By(4000, UP)]),
    ],
)
def test_steps_are_read(text: str, steps: list[By | To]) -> None:
    assert read_sides(text, Unit.MM) == tuple(map(TracedSide, steps))
    assert names_ways(text) == (text != "600")


def test_an_angle_is_in_degrees_from_level() -> None:
    ((go, _),) = read_sides("100 at 30", Unit.MM)
    assert isinstance(go, By)
    assert go.way == pytest.approx((math.sqrt(3) / 2, 0.5))


def test_a_rise_makes_an_arc() -> None:
    assert read_sides("900 right rise 120 up, to 0, 0 rise 50", Unit.MM) == (
        TracedSide(By(900, RIGHT), By(120, UP)),
        TracedSide(To(0, 0), By(50)),
    )


def test_inches_and_a_decimal_comma() -> None:
    assert read_sides('24" right, 12 up', Unit.MM) == (TracedSide(By(609.6, RIGHT)), TracedSide(By(304.8, UP)))
    assert read_sides("600,5 right, 2,5 at 22,5", Unit.MM, decimal=",")[0] == TracedSide(By(600.5, RIGHT))
    assert read_sides("to 406,31, 1259,97", Unit.MM, decimal=",") == (TracedSide(To(406.31, 1259.97)),)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("right", "a length is missing"),
        ("to 600", "a length is missing"),
        ("to , 870", "a length is missing"),
        ("to 600, 870 up", "two lengths"),
        ("600 at north", "not an angle"),
        ("600 at", "not an angle"),
        ("600 sideways", "not a unit of length"),
        ("", "no length"),
    ],
)
def test_what_says_no_way_is_refused_in_words(text: str, words: str) -> None:
    with pytest.raises(ReadingError, match=words):
        read_sides(text, Unit.MM)


def test_moves_add_up() -> None:
    assert read_moves("35 right, 20 up, 5 left", Unit.MM) == (30, 20)
    assert read_moves("-35 right", Unit.MM) == (-35, 0)


@pytest.mark.parametrize("text", ["35", "35 right, 20", "to 3, 4", "35 right rise 3"])
def test_a_move_says_which_way(text: str) -> None:
    with pytest.raises(ReadingError, match="which way"):
        read_moves(text, Unit.MM)


@given(st.integers(-1000, 1000))
def test_quarter_turns_are_exact(quarters: int) -> None:
    assert way_at(90.0 * quarters) == (RIGHT, UP, LEFT, DOWN)[quarters % 4]


@given(st.text(max_size=30))
def test_any_text_is_read_or_refused(text: str) -> None:
    with suppress(ReadingError):
        steps = read_sides(text, Unit.MM)
        lengths = [go.length_mm for go, _ in steps if isinstance(go, By)]
        assert steps
        assert all(abs(length) <= LONGEST_MM for length in lengths)
