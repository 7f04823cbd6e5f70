from hypothesis import given
from hypothesis import strategies as st

from shared.history import History

steps = st.lists(st.tuples(st.integers(), st.text(max_size=5)), max_size=30)


def history_of(taken: list[tuple[int, str]]) -> History[object]:
    history: History[object] = History(object())
    for value, label in taken:
        history = history.with_edit((value,), label)
    return history


def test_a_new_history_has_nothing_to_undo_or_redo() -> None:
    history = History("a")
    assert (history.can_undo, history.can_redo, history.undo_label, history.redo_label) == (False, False, "", "")
    assert history.undone() is history
    assert history.redone() is history


def test_a_step_is_named_on_the_way_back_and_on_the_way_forth() -> None:
    history = History("a").with_edit("b", "Draw a door").with_edit("c", "Move it")
    assert history.undo_label == "Move it"
    back = history.undone()
    assert (back.present, back.undo_label, back.redo_label) == ("b", "Draw a door", "Move it")
    assert back.undone().redo_label == "Draw a door"


def test_a_new_step_forgets_what_was_taken_back() -> None:
    history = History("a").with_edit("b", "one").undone().with_edit("c", "two")
    assert (history.present, history.can_redo) == ("c", False)
    assert history.undone().present == "a"


def test_a_step_to_the_same_value_is_no_step() -> None:
    history = History("a").with_edit("b", "one").undone()
    assert history.with_edit("a", "nothing") is history


@given(steps)
def test_redo_after_undo_is_the_same_history(taken: list[tuple[int, str]]) -> None:
    history = history_of(taken)
    assert history.undone().redone() == history


@given(steps)
def test_undoing_everything_gives_the_first_value_itself_and_redoing_it_the_last(taken: list[tuple[int, str]]) -> None:
    history = history_of(taken)
    first = history.past[0].value if history.past else history.present
    back = history
    while back.can_undo:
        back = back.undone()
    assert back.present is first
    while back.can_redo:
        back = back.redone()
    assert back == history
