"""Count: fronts with their hinges, holes and handles; what is needed of products, with its sum."""

from collections.abc import Iterator

import pytest
from PySide6.QtCore import Qt

from desktop.count.page import COUNT
from desktop.fields.front_rows import CentresWords
from desktop.sums.fronts import FRONT
from desktop.sums.row import SumRow
from desktop.sums.takeoff import count_rows
from shared.edits.drawn import find_part
from shared.errors import ReadingError
from shared.job import Unit
from takeoff.figures.measured import Fronts
from tests.window import Keys, Person

DOOR = "a-base2-left"


@pytest.fixture
def counted(person: Person) -> Person:
    """The example, its basket reckoned; the page is Count."""
    person.app.open_example()
    person.wait_until(lambda: person.app.store.shown is not None)
    person.turn_to(COUNT)
    person.wait_until(lambda: person.shown.bill is not None)
    return person


def group(person: Person, name: str) -> SumRow:
    return next(row for row in count_rows(person.shown) if row.cells[0] == name)


def words_of(row: SumRow) -> Iterator[str]:
    for child in row.children:
        yield child.cells[0]
        yield from words_of(child)


def pick_door(person: Person) -> None:
    assert person.app.count.tree.pick(f"{FRONT} {DOOR}")


def test_all_fronts_are_counted_with_their_sums(counted: Person) -> None:
    everything = group(counted, "Fronts").children[0]

    assert everything.cells == ("all, 26 handles", "33", "", "39")
    assert "15 fronts with 2 = 30" in tuple(words_of(everything))
    assert "1 knob, 1 hole each = 1" in tuple(words_of(everything))


def test_every_front_is_a_row_with_its_tag(counted: Person) -> None:
    rows = group(counted, "Fronts").children[1:]

    assert len(rows) == 26
    assert all(row.cells[0].split("  ")[0] for row in rows)


def test_hinges_and_old_holes_of_a_front_are_typed_where_it_is_counted(counted: Person) -> None:
    before = counted.shown.job
    pick_door(counted)
    form = counted.app.count.front
    assert form.isVisible()
    assert counted.shown.lit == (DOOR,)
    assert counted.shown.fronts is Fronts.HUNG

    form.fields.row("Hinges").setFocus()
    counted.read("3")
    form.fields.row("Hole centres").setFocus()
    counted.press(Qt.Key.Key_A, Keys.ControlModifier)
    counted.read("knob")
    part = find_part(counted.shown.job, DOOR)[1]
    assert (part.hinges, part.hole_centres_mm) == (3, 0.0)
    assert group(counted, "Fronts").children[0].cells[1] == "34"
    assert form.isVisible()

    counted.press(Qt.Key.Key_Z, Keys.ControlModifier)
    counted.press(Qt.Key.Key_Z, Keys.ControlModifier)
    assert counted.shown.job is before


def test_where_the_old_handles_go_back_on_no_hole_is_filled(counted: Person) -> None:
    counted.app.count.tree.pick("fronts all")
    form = counted.app.count.front
    form.new_handles.setFocus()
    form.new_handles.selectAll()
    counted.press(Qt.Key.Key_Delete)
    counted.press(Qt.Key.Key_Return)

    assert counted.shown.job.handle_centres_mm is None
    assert group(counted, "Fronts").children[0].cells[3] == "0"


def test_details_have_the_fields_of_fronts_for_fronts_only(counted: Person) -> None:
    counted.press(Qt.Key.Key_1, Keys.ControlModifier)
    details = counted.app.measure.details
    counted.app.store.pick((DOOR,))
    assert details.row("Hole centres").isVisible()

    other = next(part.id for part in counted.shown.job.faces[0].parts if part.kind.value == "splashback")
    counted.app.store.pick((other,))
    assert not details.row("Hole centres").isVisible()


def test_what_is_needed_of_a_product_unfolds_into_its_sum(counted: Person) -> None:
    row = next(row for row in group(counted, "Needed of products").children if row.cells[0] == "Ebbstone satin, sage")

    assert row.cells[-1] == "2.71 L"
    assert any("2.240 L" in words for words in words_of(row))


@pytest.mark.parametrize(("text", "centres_mm"), [("", None), ("knob", 0.0), ("0", 0.0), ("128", 128.0)])
def test_hole_centres_are_read(text: str, centres_mm: float | None) -> None:
    assert CentresWords().read(text, Unit.MM) == centres_mm


def test_hole_centres_that_are_no_length_are_refused() -> None:
    with pytest.raises(ReadingError):
        CentresWords().read("wide", Unit.MM)
