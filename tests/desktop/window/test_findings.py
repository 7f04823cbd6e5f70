"""Things to look at."""

import pytest
from msgspec.structs import replace
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QListWidget, QWidget

from desktop.look.wording import own_writing
from desktop.state.store import counted_file
from geometry.outlines.measured import outline_box
from shared.edits.drawn import with_changed_parts, without_parts
from shared.files.job import JobFile
from shared.findings import Code
from shared.trade.finishes import Step, Work
from tests.takeoff.odd_jobs import FOUND_IN, SATIN, TAPE, coated
from tests.window import Keys, Person


@pytest.fixture
def gap(person: Person, monkeypatch: pytest.MonkeyPatch) -> Person:
    """Two cabinets that miss each other by 3 mm; the page is Count.

    No basket is reckoned: what it lacks would be told too, on a busy machine sooner than a key is pressed.
    """
    monkeypatch.setattr(person.app.buying, "follow", lambda _: None)
    person.begin_wall("3600", "2400")
    person.draw_boxes("cab", ("0", "150", "600", "720"), ("603", "150", "600", "720"))
    person.app.store.pick(())
    person.press(Qt.Key.Key_3, Keys.ControlModifier)
    return person


def start_of(person: Person, part: int) -> float:
    """How far from the left end a part of the first face begins, as it is shown."""
    return outline_box(person.shown.now.faces[0].parts[part].outline)[0]


@pytest.fixture
def row(gap: Person) -> Person:
    """Three cabinets with a gap of 3 mm after each; the page is Measure and the list is open, the keys in it."""
    gap.press(Qt.Key.Key_1, Keys.ControlModifier)
    gap.draw_boxes("cab", ("1206", "150", "600", "720"))
    gap.press(Qt.Key.Key_F8)
    return gap


def test_the_bar_says_how_many_things_there_are(gap: Person) -> None:
    number = len(gap.shown.takeoff.findings)

    assert number > 0
    assert gap.app.bar.findings.text().startswith(str(number))


def test_a_thing_to_look_at_leads_to_its_parts(gap: Person) -> None:
    gap.press(Qt.Key.Key_F8)
    gap.press(Qt.Key.Key_Return)

    finding = gap.shown.takeoff.findings[0]
    assert gap.shown.page.name == "Measure"
    assert set(gap.shown.picked) == set(finding.parts)
    assert gap.app.frame.findings.isVisible()


def test_escape_puts_the_list_away(gap: Person) -> None:
    gap.press(Qt.Key.Key_F8)
    gap.press(Qt.Key.Key_Escape)

    assert not gap.app.frame.findings.isVisible()


def test_no_empty_list_opens_where_there_is_nothing_to_look_at(person: Person) -> None:
    person.click(person.app.start.new)
    person.read("3600")
    person.press(Qt.Key.Key_F8)

    assert person.shown.takeoff.findings == ()
    assert not person.app.frame.findings.isVisible()


def test_a_finding_that_is_mended_leaves_the_list(gap: Person) -> None:
    words = gap.app.frame.findings.findChild(QListWidget)
    assert isinstance(words, QListWidget)
    before = words.count()
    gap.press(Qt.Key.Key_Z, Keys.ControlModifier)

    assert words.count() < before


def test_what_is_marked_is_highlighted_from_the_start_and_after_a_mend(row: Person) -> None:
    words = row.app.frame.findings.findChild(QListWidget)
    assert isinstance(words, QListWidget)
    for _ in range(2):
        assert words.selectedItems() == [words.currentItem()]
        row.press(Qt.Key.Key_Return, Keys.ControlModifier)
        row.press(Qt.Key.Key_Tab)


def test_what_is_marked_offers_its_mend_in_words(row: Person) -> None:
    view = row.app.frame.findings
    assert view.mend.isVisible()
    assert (view.mend.text(), view.mend_all.text()) == ("Close the gap", "Mend all 2 like this")


def test_control_and_return_mend_what_is_marked_in_one_step_and_the_list_goes_on(row: Person) -> None:
    view = row.app.frame.findings
    before, first = row.shown.job, view.marked
    row.press(Qt.Key.Key_Return, Keys.ControlModifier)

    assert start_of(row, 2) == 600
    assert view.isVisible()
    assert view.marked in row.shown.takeoff.findings
    assert view.marked != first
    assert not view.mend_all.isVisible()
    row.app.store.undo()
    assert row.shown.job is before
    assert row.app.frame.findings.marked is not None


def test_a_mend_is_seen_before_it_happens_while_the_keys_are_on_its_button(row: Person) -> None:
    before = row.shown.job
    row.press(Qt.Key.Key_Tab)
    assert row.app.frame.findings.mend.hasFocus()
    row.wait_until(lambda: row.shown.tried is not None)
    assert start_of(row, 2) == 600
    assert row.shown.job is before

    row.press(Qt.Key.Key_Backtab, Keys.ShiftModifier)
    row.wait_until(lambda: row.shown.tried is None)
    assert start_of(row, 2) == 603


def test_a_mend_is_seen_while_the_hand_is_over_its_button(row: Person) -> None:
    view = row.app.frame.findings
    QTest.mouseMove(view.mend)
    row.wait_until(lambda: row.shown.tried is not None)
    QTest.mouseMove(view, QPoint(2, 2))
    row.wait_until(lambda: row.shown.tried is None)


def test_beside_tables_of_figures_a_mend_is_not_tried(gap: Person) -> None:
    gap.press(Qt.Key.Key_F8)
    gap.press(Qt.Key.Key_Tab)
    assert gap.app.frame.findings.mend.hasFocus()
    gap.wait_until(lambda: gap.shown.picked == gap.shown.takeoff.findings[0].parts)
    assert gap.shown.tried is None
    gap.press(Qt.Key.Key_Return)
    assert start_of(gap, 2) == 600


def test_return_after_return_on_the_button_mends_one_after_the_other(row: Person) -> None:
    row.press(Qt.Key.Key_Tab)
    row.press(Qt.Key.Key_Return)
    assert start_of(row, 2) == 600
    assert row.app.frame.findings.mend.hasFocus()
    row.wait_until(lambda: row.shown.tried is not None)
    row.press(Qt.Key.Key_Return)

    assert row.shown.takeoff.findings == ()
    assert not row.app.frame.findings.isVisible()
    assert row.shown.tried is None


def test_all_of_a_sort_are_mended_in_one_step(row: Person) -> None:
    before = row.shown.job
    row.click(row.app.frame.findings.mend_all)

    assert row.shown.takeoff.findings == ()
    row.app.store.undo()
    assert row.shown.job is before


def test_escape_ends_what_was_only_seen(row: Person) -> None:
    row.press(Qt.Key.Key_Tab)
    row.wait_until(lambda: row.shown.tried is not None)
    row.press(Qt.Key.Key_Escape)
    row.wait_until(lambda: row.shown.tried is None)
    assert start_of(row, 2) == 603


def test_what_cannot_be_mended_is_said_in_the_list(row: Person) -> None:
    store = row.app.store
    locked = (replace(part, locked=True) for part in store.open.job.faces[0].parts)
    store.edit("Lock", with_changed_parts(store.open.job, locked))
    before = row.shown.job
    row.press(Qt.Key.Key_Return, Keys.ControlModifier)

    assert row.shown.job is before
    assert row.app.frame.findings.trouble.text() == "cabinet: it is locked; unlock it, or leave it out."
    assert row.app.frame.findings.trouble.isVisible()


def test_what_no_step_mends_has_no_button(gap: Person) -> None:
    gap.press(Qt.Key.Key_1, Keys.ControlModifier)
    gap.draw_boxes("kick", ("0", "0", "600", "50"))
    gap.press(Qt.Key.Key_F8)
    view = gap.app.frame.findings
    gap.press(Qt.Key.Key_End)

    assert view.marked is not None
    assert view.marked.code == "unusual-size"
    assert not view.mend.isVisible()


def test_every_finding_leads_to_a_page_that_says_it(person: Person) -> None:
    app = person.app
    for code, job in FOUND_IN.items():
        app.store.show_job(counted_file(JobFile(job)), None, saved=True)
        person.wait_until(lambda: person.shown.bill is not None)
        finding = next(each for each in person.shown.findings if each.code is code)
        app.frame.findings.chosen.emit(finding)

        assert person.shown.page.name == code.place.page, code
        assert finding.face in ("", person.shown.face), code
        assert own_writing().sentence(finding.message) in said_on(app.window.stack.currentWidget()), code


def said_on(page: QWidget | None) -> str:
    """All that the labels of a page say that a person sees, once scrolled to."""
    assert page is not None
    return "\n".join(label.text() for label in page.findChildren(QLabel) if label.isVisible())


def test_a_finding_that_a_person_comes_for_is_said_before_all_others_of_its_section(person: Person) -> None:
    app = person.app
    steps = tuple(Step(Work.COLOUR, f"gone {number}") for number in range(9))
    app.store.show_job(counted_file(JobFile(coated(SATIN, TAPE, steps=steps))), None, saved=True)
    person.wait_until(lambda: person.shown.bill is not None)
    last = [each for each in person.shown.findings if each.code is Code.NO_PRODUCT][-1]
    app.frame.findings.chosen.emit(last)

    assert app.finish.build_up.to_look_at.text().splitlines()[0] == last.message
    assert app.finish.build_up.to_look_at.text().splitlines()[-1] == "and 5 more"


def test_what_is_odd_in_the_picked_parts_is_said_beside_them(gap: Person) -> None:
    gap.press(Qt.Key.Key_1, Keys.ControlModifier)
    said = gap.app.measure.details.to_look_at
    first, second = (part.id for part in gap.shown.now.faces[0].parts[1:])
    assert not said.isVisible()
    gap.app.store.pick((second,))
    assert said.isVisible()
    assert "are 3 mm apart" in said.text()
    gap.app.store.edit("Delete", without_parts(gap.shown.job, (first,)), picked=(second,))
    assert gap.shown.picked == (second,)
    assert not said.isVisible()
