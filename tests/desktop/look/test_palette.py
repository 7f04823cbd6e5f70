"""Contrasts: Web Content Accessibility Guidelines 2.1 (4.5:1 for text, 3:1 for marks); the set of Okabe and Ito."""

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from desktop.look.palette import Look, contrast, dark, light, mixed, shades, text_on
from shared.trade.kinds import Kind

LOOKS = [pytest.param(light(), id="light"), pytest.param(dark(), id="dark")]


@pytest.mark.parametrize(
    ("colour", "ratio"),
    [
        ("#0072B2", 5.19),
        ("#D55E00", 3.87),
        ("#009E73", 3.42),
        ("#CC79A7", 3.06),
        ("#56B4E9", 2.31),
        ("#E69F00", 2.25),
        ("#F0E442", 1.32),
    ],
)
def test_contrast_on_white_is_as_published_for_the_colour_blind_safe_set(colour: str, ratio: float) -> None:
    # The design's table of checks, "Files"; 4.5 and 3 are the guidelines' (memory).
    assert contrast(colour, "#FFFFFF") == pytest.approx(ratio, abs=0.005)


def test_black_on_white_is_the_greatest_contrast() -> None:
    assert contrast("#000000", "#FFFFFF") == pytest.approx(21)  # exact, by the guidelines' definition
    assert contrast("#123456", "#123456") == 1


@pytest.mark.parametrize("look", LOOKS)
@pytest.mark.parametrize("text", ["ink", "quiet", "warning", "good"])
def test_texts_are_read_on_all_that_they_stand_on(look: Look, text: str) -> None:
    grounds = (look.paper, look.ground, look.bar, look.field, look.warning_ground)
    assert min(contrast(getattr(look, text), ground) for ground in grounds) >= 4.5


@pytest.mark.parametrize("look", LOOKS)
def test_names_and_tags_are_read_on_every_part_also_on_one_lit_up(look: Look) -> None:
    fills = [kind.fill for kind in look.kinds.values()]
    assert min(contrast(look.ink, fill) for fill in (*fills, look.lit)) >= 4.5


@pytest.mark.parametrize("look", LOOKS)
def test_sizes_and_buttons_are_read(look: Look) -> None:
    assert contrast(look.accent, look.paper) >= 4.5
    assert contrast(look.on_accent, look.accent) >= 4.5


@pytest.mark.parametrize("look", LOOKS)
@pytest.mark.parametrize("mark", ["outline", "joint", "masking", "set_out", "accent"])
def test_marks_are_seen_on_paper_and_on_every_kind(look: Look, mark: str) -> None:
    fills = (look.paper, *(kind.fill for kind in look.kinds.values()))
    assert min(contrast(getattr(look, mark), fill) for fill in fills) >= 3


@pytest.mark.parametrize("look", LOOKS)
def test_the_lines_of_a_pattern_are_seen_on_their_fill(look: Look) -> None:
    assert min(contrast(kind.pattern, kind.fill) for kind in look.kinds.values()) >= 3


def test_every_kind_has_a_pattern_of_its_own() -> None:
    ways = {kind.value: light().kinds[kind].families for kind in Kind}
    alike = [f"{one} and {two}" for one, two in combinations(ways, 2) if ways[one] == ways[two]]
    assert alike == []


def test_a_mix_lies_between_its_colours() -> None:
    assert mixed("#000000", "#FFFFFF", 0.5) == "#808080"
    assert mixed("#102030", "#FFFFFF", 0.0) == "#102030"


@given(st.from_regex(r"#[0-9A-F]{6}", fullmatch=True))
def test_a_name_is_read_on_any_shade(shade: str) -> None:
    assert contrast(text_on(shade), shade) >= 4.5


def test_no_two_shades_are_the_same() -> None:
    assert len(set(shades().values())) == len(shades())
