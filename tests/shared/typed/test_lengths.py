import pytest
from hypothesis import given
from hypothesis import strategies as st

from shared.errors import ReadingError
from shared.job import Unit
from shared.typed.lengths import read_length, read_lengths
from shared.written.units import show_length

SAID = {
    "2400": 2400,
    "  2400  ": 2400,
    "2.4 m": 2400,
    ".5m": 500,
    "240cm": 2400,
    "600.5": 600.5,
    '94 1/2"': 2400.3,
    "94 1/2 in": 2400.3,
    "94\N{VULGAR FRACTION ONE HALF}\N{DOUBLE PRIME}": 2400.3,
    "7' 10 1/2\"": 2400.3,
    "7'10 1/2": 2400.3,
    "7 ft 10 1/2 inches": 2400.3,
    "7\N{PRIME} 10\N{VULGAR FRACTION ONE HALF}\N{DOUBLE PRIME}": 2400.3,
    "7\N{RIGHT SINGLE QUOTATION MARK} 10\N{RIGHT DOUBLE QUOTATION MARK}": 2387.6,
    "7' 10''": 2387.6,
    "1 in.": 25.4,
    "8 feet": 2438.4,
    '1/2"': 12.7,
    "600+450+900": 1950,
    "2400-38": 2362,
    "-38+2400": 2362,
    "3x450": 1350,
    "3 X 450": 1350,
    "3*450": 1350,
    "3\N{MULTIPLICATION SIGN}450": 1350,
    "3 x 1' 6\"": 1371.6,
    "2400/4": 600,
    "8'/3": 812.8,
    "7' 10\"/2": 1193.8,
    "600+3x450-18": 1932,
    "1/3+1/3+1/3": 1,
    "600+450+900 cm": 19500,
    "3+7' 10\"": 2390.6,
    "600 mm + 2 in": 650.8,
}


@pytest.mark.parametrize("text", SAID)
def test_what_people_write_is_read(text: str) -> None:
    assert read_length(text, Unit.MM) == SAID[text]


def test_a_bare_number_is_in_the_unit_of_the_job() -> None:
    assert read_length("94 1/2", Unit.INCH) == 2400.3
    assert read_length("600 mm", Unit.INCH) == 600


def test_a_decimal_comma_is_read_where_the_system_writes_one() -> None:
    assert read_length("2,4 m", Unit.MM, decimal=",") == 2400
    assert read_lengths("2,4 m, 3 m; 900,5", Unit.MM, decimal=",") == (2400, 3000, 900.5)


@pytest.mark.parametrize(
    ("text", "lengths"),
    [
        ("240 cm, 300, 180", (2400, 3000, 1800)),
        ("240, 300, 180 cm", (2400, 3000, 1800)),
        ("240 cm, 3000 mm, 1800", (2400, 3000, 1800)),
        ("600, 24 in, 24", (15240, 609.6, 609.6)),
        ("7' 6\", 500", (2286, 500)),
        ("600\t450\t900", (600, 450, 900)),
    ],
)
def test_a_unit_typed_once_stays_for_the_line(text: str, lengths: tuple[float, ...]) -> None:
    assert read_lengths(text, Unit.MM) == lengths


def test_places_in_a_list_may_be_nothing_or_less() -> None:
    assert read_lengths("0, -38", Unit.MM, allow_zero=True, allow_negative=True) == (0, -38)
    with pytest.raises(ReadingError, match="cannot be negative"):
        read_lengths("600, -38", Unit.MM)


@pytest.mark.parametrize("text", ["2400, 3000, 1800", "2400,3000,1800", "2400; 3000\n1800", " 2400,\n3000,1800,"])
def test_a_list_is_parted_by_commas_semicolons_and_lines(text: str) -> None:
    assert read_lengths(text, Unit.MM) == (2400, 3000, 1800)


TROUBLE = {
    "": "no length was typed",
    "   ": "no length was typed",
    "12x": "nothing follows “x”",
    "600+": "nothing follows “+”",
    "1/": "nothing follows “/”",
    "x450": "a number is missing before “x”",
    "m": "a number is missing before “m”",
    "--5": "a number is missing before “-”",
    "-5": "cannot be negative",
    "38-2400": "cannot be negative",
    "0": "cannot be 0",
    "600-600": "cannot be 0",
    "1e999": "“e” is not a unit of length",
    "5 kg": "“kg” is not a unit of length",
    "nan": "“nan” is not a unit of length",
    "1/0": "divided by 0",
    "94 1/0": "divided by 0",
    "600/(1-1)": "“(” does not belong in a length",
    "((((": "“(” does not belong in a length",
    "2_400": "“_” does not belong in a length",
    "10 km": "“km” is not a unit of length",
    "10000 m": "longer than 100.00 m",
    "9" * 150: "longer than 100.00 m",
    "9" * 201: "too long to be a length",
    "(" * 100_000: "too long to be a length",
    "2,4": "a comma separates two lengths",
    "2 400": "“400” does not fit",
    "5 m2": "“2” does not fit",
    "94.5 1/2": "a whole number and a fraction below 1",
    "94 3/2": "a whole number and a fraction below 1",
    "2'x2'": "only be multiplied or divided by a plain number",
    "6'/2'": "only be multiplied or divided by a plain number",
    "7' 10/2": "meant in two ways",
    "7' 10 mm": "only inches can follow feet",
    "2400\x00": "does not belong in a length",
    "=1+2": "“=” does not belong in a length",
}


@pytest.mark.parametrize("text", TROUBLE)
def test_a_wrong_reading_is_answered_in_one_sentence(text: str) -> None:
    with pytest.raises(ReadingError) as caught:
        read_length(text, Unit.MM)
    assert TROUBLE[text] in str(caught.value)
    assert caught.value.do
    assert len(str(caught.value)) < 220


def test_a_point_is_refused_where_the_comma_is_the_decimal_sign() -> None:
    with pytest.raises(ReadingError, match="a point is not the decimal sign here"):
        read_length("2.400", Unit.MM, decimal=",")


@pytest.mark.parametrize("text", ["", " , ;\n"])
def test_an_empty_list_is_refused(text: str) -> None:
    with pytest.raises(ReadingError, match="no length was typed"):
        read_lengths(text, Unit.MM)


def test_a_line_of_very_many_readings_is_refused_by_their_number() -> None:
    with pytest.raises(ReadingError, match="these are 2500 readings"):
        read_lengths("600," * 2500, Unit.MM)


def test_moves_may_be_nothing_or_less() -> None:
    assert read_length("-38", Unit.MM, allow_negative=True) == -38
    assert read_length("0", Unit.MM, allow_zero=True) == 0
    with pytest.raises(ReadingError, match="longer than"):
        read_length("-200 m", Unit.MM, allow_negative=True)


@given(st.floats(-100_000, 100_000), st.sampled_from(Unit), st.sampled_from([".", ","]))
def test_what_is_shown_can_be_typed_back(length_mm: float, unit: Unit, decimal: str) -> None:
    shown = show_length(length_mm, unit, decimal=decimal)
    read = read_length(shown, unit, decimal=decimal, allow_negative=True, allow_zero=True)
    assert show_length(read, unit, decimal=decimal) == shown
    assert abs(read - length_mm) <= (0.0501 if unit is Unit.MM else 25.4 / 64 + 1e-9)


@given(st.text(max_size=60) | st.text(alphabet="0123456789./x+-*'\" mftinc,½", max_size=30))
def test_any_text_is_read_or_refused_in_words(text: str) -> None:
    assert said_by(text).isprintable()


def said_by(text: str) -> str:
    """The error for a text, or "" where it is read as a length that a job can have."""
    try:
        length = read_length(text, Unit.MM)
    except ReadingError as trouble:
        return str(trouble)
    assert 0 < length <= 100_000
    return ""
