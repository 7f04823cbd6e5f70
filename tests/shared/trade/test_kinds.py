"""The table of kinds says of each what it is, and contradicts itself nowhere."""

from collections import Counter

from shared.trade.kinds import Kind, Treatment, usual


def test_every_kind_has_its_row() -> None:
    assert tuple(usual()) == tuple(Kind)


def test_a_word_is_said_for_one_kind_only() -> None:
    words = Counter(word for kind, row in usual().items() for word in {kind.value, *row.said})
    assert [word for word, many in words.items() if many > 1] == []


def test_a_hole_has_nothing_that_could_be_coated() -> None:
    holes = [row for row in usual().values() if row.hole]
    assert {(row.treatment, row.material, row.finish) for row in holes} == {(Treatment.LEFT, None, "")}


def test_what_is_coated_has_a_finish() -> None:
    assert [kind for kind, row in usual().items() if (row.treatment is Treatment.LEFT) == bool(row.finish)] == []


def test_only_a_front_has_hinges_and_only_what_stands_in_a_row_holds_fronts() -> None:
    assert [kind for kind, row in usual().items() if row.hinged and not row.front] == []
    assert [kind for kind, row in usual().items() if row.holds_fronts and not row.in_row] == []


def test_what_comes_in_its_size_is_not_cut_nor_made_to_fit() -> None:
    assert [kind for kind, row in usual().items() if row.one_piece and (row.cut_on_site or row.made_to_fit)] == []
