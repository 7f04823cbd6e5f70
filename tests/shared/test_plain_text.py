import sys
from unicodedata import category

from hypothesis import given
from hypothesis import strategies as st

from shared.plain_text import one_line, steering

EVERY_CHARACTER = [chr(code) for code in range(sys.maxunicode + 1)]


def test_what_steers_is_what_unicode_calls_controls_and_ends_of_lines_and_turns_of_the_writing() -> None:
    found = {character for character in EVERY_CHARACTER if steering(character)}
    controls = {each for each in EVERY_CHARACTER if category(each) in {"Cc", "Cs", "Zl", "Zp"}}
    turns = {*map(chr, range(0x202A, 0x202F)), *map(chr, range(0x2066, 0x206A))}
    ends_of_planes = {chr(plane << 16 | end) for plane in range(17) for end in (0xFFFE, 0xFFFF)}
    assert found == controls | turns | ends_of_planes
    assert len([each for each in found if category(each) == "Cc"]) == 65


def test_the_first_of_several_is_named() -> None:
    assert steering("a\u202eb\n") == "\u202e"
    assert steering("plain") == ""


@given(st.text())
def test_any_words_become_one_line_that_steers_nothing(words: str) -> None:
    shown = one_line(words)
    assert not steering(shown)
    assert len(shown) == len(words)
    assert all(each.isprintable() or each in "\u200c\u200d" for each in shown)


def test_what_is_read_stays_and_a_sign_stands_for_the_rest() -> None:
    assert one_line("\x1b[31mred\n\u202eder\u200f") == "?[31mred??der?"
    assert one_line("12\u00a0m\u2003\N{WOMAN}\u200d\N{PERSONAL COMPUTER}\ufe0f") == (
        "12 m \N{WOMAN}\u200d\N{PERSONAL COMPUTER}\ufe0f"
    )
