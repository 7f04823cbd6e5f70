import pytest
from hypothesis import given
from hypothesis import strategies as st

from shared.errors import ReadingError, RecoatError
from shared.job import Unit
from shared.typed.rows import Row, Stands, read_row, row_text


def read(text: str) -> list[tuple[int, float | None, str, int]]:
    return [(item.times, item.width_mm, str(item.stands), item.fronts) for item in read_row(text, Unit.MM).items]


def test_a_line_of_widths_and_words_is_read() -> None:
    assert read("450 door, 600 drawers 3, 900 pair, 600 oven, 50 filler") == [
        (1, 450, "door", 1),
        (1, 600, "drawers", 3),
        (1, 900, "pair", 2),
        (1, 600, "oven", 0),
        (1, 50, "filler", 0),
    ]


@pytest.mark.parametrize(
    "typed",
    [
        "450 door 600 drawers 3 900 pair",
        "450door,600dr 3,900pai",
        "450 Doors; 600 DRAWERS 3; 900 pair.",
        "450\tdoor\n600\tdrawers\t3\n900\tpair\n",
        "45 cm door, 24/40 m drawers 3, 2x450 mm pair",
        ", 450 do 600 drawers 3 900 pairs,,",
    ],
)
def test_people_write_the_same_row_in_many_ways(typed: str) -> None:
    assert read(typed) == read("450 door, 600 drawers 3, 900 pair")


@pytest.mark.parametrize(
    ("typed", "counts"),
    [
        ("600 drawers", [(600, 1)]),
        ("600 drawers 3", [(600, 3)]),
        ("600 drawers 450 drawers", [(600, 1), (450, 1)]),
        ("600 drawers 3 450 drawers 2", [(600, 3), (450, 2)]),
        ("600 drawers, 450 drawers", [(600, 1), (450, 1)]),
        ('600 mm drawers 3 23 5/8" drawers', [(600, 3), (600.075, 1)]),
    ],
)
def test_the_number_right_after_drawers_is_their_count(typed: str, counts: list[tuple[float, int]]) -> None:
    assert [(item.width_mm, item.fronts) for item in read_row(typed, Unit.MM).items] == counts


def test_alike_items_are_counted_before_of() -> None:
    assert read("3 of 450 door") == [(3, 450, "door", 1)]
    assert read("600 drawers 2 3 of 450 door") == [(1, 600, "drawers", 2), (3, 450, "door", 1)]
    assert read("600 drawers 3 of 450 door") == [(1, 600, "drawers", 1), (3, 450, "door", 1)]
    assert read_row("3 of 450 door, 100 filler", Unit.MM).fixed_mm == 1450


def test_rest_above_and_splashback_are_words_of_the_row() -> None:
    row = read_row("600 door, rest filler, splashback", Unit.MM)
    assert (row.items[1].width_mm, row.fixed_mm, row.above, row.splashback) == (None, 600, False, True)
    assert read_row("above 600 door", Unit.MM).above


def test_an_end_panel_may_be_called_by_its_whole_name() -> None:
    assert read("18 end panel, 600 door") == read("18 panel 600 door")


def test_a_row_is_read_in_inches() -> None:
    row = read_row("18 door, 24 drawers 3, 36 pair, 23 5/8 oven, 1' 6\" open", Unit.INCH)
    assert [item.width_mm for item in row.items] == pytest.approx([457.2, 609.6, 914.4, 600.075, 457.2])


def test_a_unit_typed_once_stays_for_the_line() -> None:
    assert read('18" door, 24 drawers 3, rest filler') == [
        (1, 457.2, "door", 1),
        (1, 609.6, "drawers", 3),
        (1, None, "filler", 0),
    ]
    assert [width for _, width, _, _ in read('24 drawers 3 18+6 door, 23 5/8" oven')] == [609.6, 609.6, 600.075]
    assert [width for _, width, _, _ in read('450 door, 18" drawers 3, 24" open')] == [450, 457.2, 609.6]


def test_a_row_is_read_with_a_decimal_comma() -> None:
    row = read_row("450,5 door,600 drawers 3, 900,5 pair", Unit.MM, decimal=",")
    assert [item.width_mm for item in row.items] == [450.5, 600, 900.5]


@pytest.mark.parametrize(
    ("typed", "words"),
    [
        ("", "no cabinet was typed"),
        ("splashback", "no cabinet was typed"),
        ("450", "“450”: this does not say what stands here"),
        ("450, door", "“450”: this does not say what stands here"),
        ("1,800 door", "“1”: this does not say what stands here"),
        ("600 door 450", "“450”: this does not say what stands here"),
        ("door", "“door”: how wide is the door"),
        ("600 drawers 3 of", "a width is missing at the end"),
        ("450 wardrobe", "“wardrobe”: this word is not known here; use door, pair, drawers"),
        ("450 d", "“d”: this word is not known here"),
        ("450 pa", "“pa”: this could be meant in two ways; type pair or panel"),
        ("450 kg door", "“kg”: this word is not known here"),
        ("Width\tFront\n450\tdoor", "“width”: this word is not known here"),
        ("450 door mm", "“mm”: this does not say what stands here"),
        ("450 door mm door", "“mm”: a number is missing"),
        ("450 rest", "“450”: “rest” does not fit here"),
        ("450 door above", "“above”: how wide is the above"),
        ("0 of 450 door", "“0” is not a number of cabinets; use a whole number from 1 to 50"),
        ("51 of 450 door", "“51” is not a number of cabinets"),
        ("2.5 of 450 door", "“2.5” is not a number of cabinets"),
        ("600 drawers 0", "“0” is not a number of drawer fronts"),
        ("600 drawers 51", "“51” is not a number of drawer fronts"),
        ("600 drawers " + "9" * 5000, "is not a number of drawer fronts"),
        ("600 drawers 3 1/2 filler", "“3 1/2 ?”: this could be a count or a width"),
        ('600 drawers 3 1/2" filler', "this could be a count or a width"),
        ("rest door, rest filler", "rest can be used only once"),
        ("600 gap", "this row has nothing in it"),
        ("-450 door", "“-450”: a length cannot be negative"),
        ("0.5 filler", "“0.5”: a filler cannot be as narrow as this"),
        ("50 of 450 door " * 5, "at most 200 items"),
        ("450 door, " * 2000, "too long to be one line"),
        ("above 600 door splashback", "a splashback stands under wall cabinets"),
        ("600 door splashback splashback", "the splashback is there twice"),
    ],
)
def test_what_says_no_row_is_answered_in_words(typed: str, words: str) -> None:
    with pytest.raises(ReadingError, match=words.replace('"', ".")) as caught:
        read_row(typed, Unit.MM)
    assert "\n" not in str(caught.value)


def test_a_decimal_comma_after_drawers_is_not_guessed_at() -> None:
    with pytest.raises(ReadingError, match="“3,900”: this could be a count or a width"):
        read_row("600 drawers 3,900 pair", Unit.MM, decimal=",")


ITEMS = st.tuples(
    st.integers(1, 3),
    st.one_of(
        st.integers(1, 9000).map(str), st.sampled_from(["rest", "600+450", '23 5/8"', "1' 6\"", "2x300", "1/2 m"])
    ),
    st.sampled_from(list(Stands)),
    st.integers(1, 50),
)


def line(items: list[tuple[int, str, Stands, int]], comma: str) -> str:
    words = (
        (f"{times} of " if times > 1 else "") + f"{width} {word}" + (f" {fronts}" if word is Stands.DRAWERS else "")
        for times, width, word, fronts in items
    )
    return comma.join(words)


@given(st.lists(ITEMS, min_size=1, max_size=8), st.booleans())
def test_what_a_row_says_can_be_typed_back(items: list[tuple[int, str, Stands, int]], above: bool) -> None:
    try:
        row = read_row(("above " if above else "") + line(items, ", "), Unit.MM)
    except ReadingError:
        return
    assert read_row(row_text(row), Unit.MM) == row


@given(st.lists(ITEMS, min_size=1, max_size=8))
def test_commas_may_be_left_out_after_words_that_take_no_count(items: list[tuple[int, str, Stands, int]]) -> None:
    clear = [each for each in items if each[1] != "1/2 m"]
    assert _read_or_words(line(clear, " ")) == _read_or_words(line(clear, ", "))


def _read_or_words(text: str) -> Row | str:
    try:
        return read_row(text, Unit.MM)
    except RecoatError as error:
        return error.what


@given(st.text(max_size=60) | st.text("0123456789 .,;/x+-'\"\n\tdoorpairestf½", max_size=60), st.sampled_from(".,"))
def test_any_text_is_a_row_or_is_answered_in_words(text: str, decimal: str) -> None:
    try:
        row = read_row(text, Unit.MM, decimal=decimal)
    except ReadingError:
        return
    assert read_row(row_text(row), Unit.MM, decimal=decimal) == row


def test_a_fridge_stands_by_itself() -> None:
    assert read_row("600 fridge, 450 door", Unit.MM) == read_row("600 gap, 450 door", Unit.MM)
