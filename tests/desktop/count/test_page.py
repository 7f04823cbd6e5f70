"""Count: rows that light up their parts and unfold into their sum; what is decided about joints."""

import pytest
from msgspec.structs import replace
from PySide6.QtCore import QModelIndex, Qt

from desktop.canvas.face_view import options
from desktop.count.page import COUNT
from desktop.look.wording import MINUS, TIMES
from desktop.sums.row import SumRow
from desktop.sums.takeoff import count_rows
from shared.job import Vertex
from takeoff.figures.measured import Fronts
from tests.window import Keys, Person


@pytest.fixture
def counted(person: Person) -> Person:
    """A wall with splashback, benchtop and an outlet; the page is Count."""
    person.begin_wall("3600", "2400")
    person.draw_boxes("spl", ("0", "900", "3600", "600"))
    person.draw_boxes("ben", ("0", "862", "3600", "38"))
    person.draw_boxes("out", ("700", "1150", "115", "72"))
    person.press(Qt.Key.Key_3, Keys.ControlModifier)
    return person


def test_count_shows_the_fronts_off(counted: Person) -> None:
    assert counted.shown.page is COUNT
    assert counted.shown.fronts is Fronts.OFF


def test_the_cells_of_a_surface_are_its_areas(counted: Person) -> None:
    assert _row(counted, "splashback").cells == ("A  splashback", "2.16", "2.15", "2.15")


def test_a_row_unfolds_into_its_sum(counted: Person) -> None:
    words = [line.cells[0] for figure in _row(counted, "splashback").children for line in figure.children]

    assert any(f"3600 {TIMES} 600 = 2.160 m²" in line for line in words)
    assert any(line.startswith("less outlet") and f"{MINUS}0.008 m²" in line for line in words)


def test_the_terms_of_every_sum_name_parts_of_the_job(counted: Person) -> None:
    ids = {part.id for face in counted.shown.job.faces for part in face.parts}

    assert {part for row in _all(count_rows(counted.shown)) for part in row.parts} <= ids


def test_a_picked_row_lights_up_its_parts(counted: Person) -> None:
    row = _row(counted, "splashback")
    _pick(counted, row.key)

    assert counted.shown.lit == row.parts


def test_a_picked_joint_lights_up_its_own_line(counted: Person) -> None:
    _pick(counted, _row(counted, "benchtop to splashback").key)

    (line,) = options(counted.shown).lit_lines
    assert set(line) == {Vertex(0, 900), Vertex(3600, 900)}
    _pick(counted, _row(counted, "splashback").key)
    assert options(counted.shown).lit_lines == ()


def test_a_part_that_is_clicked_picks_its_row(counted: Person) -> None:
    counted.app.count.find_row((1800, 1400))

    picked = counted.app.count.model.row_at(counted.app.count.tree.currentIndex())
    assert picked is not None
    assert picked.cells[0] == "A  splashback"


def test_a_joint_is_switched_off_and_back_by_undo(counted: Person) -> None:
    bead = counted.shown.takeoff.totals.bead_mm
    _pick(counted, _row(counted, "benchtop to splashback").key)
    form = counted.app.count.joint
    assert form.isVisible()
    form.sealed.setFocus()
    counted.press(Qt.Key.Key_Space)

    assert counted.shown.takeoff.totals.bead_mm == pytest.approx(bead - 3600)
    counted.press(Qt.Key.Key_Z, Keys.ControlModifier)
    assert counted.shown.takeoff.totals.bead_mm == pytest.approx(bead)


def test_a_joint_gets_another_section(counted: Person) -> None:
    _pick(counted, _row(counted, "benchtop to splashback").key)
    form = counted.app.count.joint
    form.first.setFocus()
    form.first.selectAll()
    counted.read("8")

    assert _row(counted, "benchtop to splashback").cells[1] == "fillet 8"


def test_an_old_bead_is_left_alone_on_demand(counted: Person) -> None:
    old = counted.shown.takeoff.totals.old_bead_mm
    _pick(counted, _row(counted, "benchtop to splashback").key)
    form = counted.app.count.joint
    was = form.old_bead.isChecked()
    form.old_bead.setFocus()
    counted.press(Qt.Key.Key_Space)

    assert counted.shown.takeoff.totals.old_bead_mm == pytest.approx(old - 3600 if was else old + 3600)


def test_what_was_unfolded_stays_so_after_an_edit(counted: Person) -> None:
    page = counted.app.count
    page.tree.expand(page.model.index_of(_row(counted, "splashback").key))
    counted.press(Qt.Key.Key_Z, Keys.ControlModifier)

    assert page.tree.isExpanded(page.model.index_of(_row(counted, "splashback").key))


def test_a_finish_renamed_is_renamed_in_the_rows_though_nothing_is_counted_anew(counted: Person) -> None:
    takeoff, job = counted.shown.takeoff, counted.shown.job
    renamed = replace(job, finishes=tuple(replace(finish, name=f"New {finish.name}") for finish in job.finishes))
    counted.app.store.edit("Rename the finishes", renamed)

    assert counted.shown.takeoff is takeoff
    first = counted.app.count.model.row_at(counted.app.count.model.index(0, 0))
    assert first is not None
    assert first.cells[0].startswith("New ")


def test_every_cell_of_the_tree_says_what_its_row_says(counted: Person) -> None:
    model = counted.app.count.model

    def walk(rows: tuple[SumRow, ...], parent: QModelIndex) -> None:
        assert model.rowCount(parent) == len(rows)
        for place, row in enumerate(rows):
            cells = tuple(model.data(model.index(place, column, parent)) for column in range(4))
            assert cells == row.cells
            index = model.index(place, 0, parent)
            assert model.parent(index) == parent
            walk(row.children, index)

    walk(count_rows(counted.shown), QModelIndex())


def _all(rows: tuple[SumRow, ...]) -> tuple[SumRow, ...]:
    return tuple(one for row in rows for one in (row, *_all(row.children)))


def _row(person: Person, words: str) -> SumRow:
    rows = [row for group in count_rows(person.shown) for row in group.children]
    return next(row for row in rows if row.cells[0].endswith(words))


def _pick(person: Person, key: str) -> None:
    page = person.app.count
    page.tree.setCurrentIndex(page.model.index_of(key))


def test_the_last_row_names_the_measuring_rule(counted: Person) -> None:
    assert count_rows(counted.shown)[-1].cells[0] == "Measured by net: all openings deducted"
