from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shared.errors import ReadingError
from shared.typed.numbers import possible_signs, read_number, says_one_number


@pytest.mark.parametrize(
    ("text", "signs"),
    [
        ("24", ".,"),
        ("24.90", "."),
        ("24,90", ","),
        ("1,234", ".,"),
        ("0,375", ","),
        ("1,234.50", "."),
        ("1.234,50", ","),
        ("1 234,50", ","),
        ("1'234.50", "."),
        ("1.234.567", ","),
        ("1,23,456", ""),
        ("12a", ""),
        ("", ""),
        ("-", ""),
        ("1" * 31, ""),
        ("٣", ""),
    ],
)
def test_a_number_says_which_decimal_signs_it_can_have(text: str, signs: str) -> None:
    assert possible_signs(text) == set(signs)


def test_thousands_are_left_out_by_the_decimal_sign() -> None:
    assert read_number("1,234.50", ".") == Fraction("1234.5")
    assert read_number("1.234,50", ",") == Fraction("1234.5")
    assert read_number("1,234", ".") == 1234
    assert read_number("1,234", ",") == Fraction("1.234")
    assert read_number("-5", ".") == -5


def test_only_some_numbers_say_by_themselves_what_they_come_to() -> None:
    assert says_one_number("24")
    assert says_one_number("24.90")
    assert not says_one_number("1,234")
    assert not says_one_number("none")


def test_what_is_no_number_is_told_in_words() -> None:
    with pytest.raises(ReadingError, match="is not a number; write it like"):
        read_number("24,90", ".")


@given(st.text(max_size=40), st.sampled_from((".", ",")))
def test_any_text_is_a_number_or_is_refused_in_words(text: str, sign: str) -> None:
    if sign in possible_signs(text):
        assert read_number(text, sign).denominator > 0
    else:
        with pytest.raises(ReadingError):
            read_number(text, sign)
