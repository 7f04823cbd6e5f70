"""A person who has never seen the program draws a kitchen wall, reads what there is to do, and hands it on."""

import math
from collections.abc import Iterable
from itertools import pairwise
from pathlib import Path

import openpyxl
import pytest
from ezdxf.entities.lwpolyline import LWPolyline
from ezdxf.filemanagement import readfile
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QPushButton

from shared.files.job import read_job_file
from shared.trade.kinds import Kind
from takeoff.take_off import take_off
from tests.window import Keys, Person

WALL = ("3600", "2400")


@pytest.fixture
def wall(person: Person) -> Person:
    """The wall as a person draws it: splashback, benchtop, four cabinets with doors, two outlets."""
    person.begin_wall("3600", "2400")
    person.draw_boxes("spl", ("0", "900", "3600", "600"))
    person.draw_boxes("ben", ("0", "862", "3600", "38"))
    person.draw_boxes("cab", *((f"{900 * place}", "150", "900", "712") for place in range(4)))
    person.draw_boxes("doo", *((f"{900 * place}+2", "152", "896", "708") for place in range(4)))
    person.draw_boxes("out", ("700", "1150", "115", "72"), ("2700", "1150", "115", "72"))
    return person


def test_figures_of_the_first_wall(wall: Person) -> None:
    """By hand: splashback 3600 x 600 less two outlets of 115 x 72; doors with 18 mm edges."""
    rows = {row.id: row for row in wall.shown.takeoff.parts}
    by_kind = {row.kind.value: row for row in rows.values()}

    assert by_kind["splashback"].net_mm2.amount == pytest.approx(3600 * 600 - 2 * 115 * 72)
    assert by_kind["door"].coated_mm2.amount == pytest.approx(896 * 708 + 2 * (896 + 708) * 18)
    assert wall.shown.takeoff.totals.fronts == 4
    joints = {frozenset(joint.parts): joint for joint in wall.shown.takeoff.joints}
    names = {row.id: row.kind.value for row in rows.values()}
    along = next(j for parts, j in joints.items() if {names[part] for part in parts} == {"benchtop", "splashback"})
    assert along.length_mm.amount == pytest.approx(3600)


@pytest.fixture
def kitchen(wall: Person) -> Person:
    """The wall, and the plan of its benchtop with a cut-out for the sink."""
    wall.click(_button(wall, "+ face"))
    form = wall.app.frame.face_form
    form.view.setFocus()
    wall.press(Qt.Key.Key_Down)
    form.width_field.setFocus()
    wall.type("3600")
    wall.press(Qt.Key.Key_Tab)
    wall.read("600")
    wall.draw_boxes("cut", ("1200", "80", "780", "440"))
    return wall


def test_the_wall_and_its_benchtop_are_handed_on(kitchen: Person, tmp_path: Path, subtests: pytest.Subtests) -> None:
    # None of these changes the job.
    drawn = kitchen.shown.job
    with subtests.test("the cut-out is taken off the benchtop on its plan"):
        _assert_cut_out(kitchen)
    with subtests.test("the spreadsheet has the figures of the window"):
        _assert_spreadsheet(kitchen, tmp_path)
    with subtests.test("the drawing has the metres of the window"):
        _assert_drawing(kitchen, tmp_path)
    assert kitchen.shown.job is drawn
    with subtests.test("what was drawn is saved and opened again with the same figures"):
        _assert_saved(kitchen, tmp_path)


def _assert_cut_out(kitchen: Person) -> None:
    rows = kitchen.shown.takeoff.parts
    top = next(row for row in rows if row.face == kitchen.shown.face and row.kind is Kind.BENCHTOP)

    assert top.net_mm2.amount == pytest.approx(3600 * 600 - 780 * 440)


def _assert_saved(kitchen: Person, tmp_path: Path) -> None:
    totals = kitchen.shown.takeoff.totals
    saved = tmp_path / "first wall.recoat"
    kitchen.press(Qt.Key.Key_S, Keys.ControlModifier)
    kitchen.fill_file_dialog(saved)
    kitchen.wait_until(lambda: kitchen.shown.is_saved)
    assert take_off(read_job_file(saved).job).totals == totals

    kitchen.press(Qt.Key.Key_N, Keys.ControlModifier)
    kitchen.click(_button(kitchen, f"{saved.name}   in {tmp_path.name}"))
    kitchen.wait_until(lambda: kitchen.app.store.shown is not None)
    assert kitchen.shown.takeoff.totals == totals


def _assert_spreadsheet(kitchen: Person, tmp_path: Path) -> None:
    totals = kitchen.shown.takeoff.totals
    table = tmp_path / "takeoff.xlsx"
    kitchen.press(Qt.Key.Key_3, Keys.ControlModifier)
    kitchen.press(Qt.Key.Key_T, Keys.ControlModifier)
    kitchen.fill_file_dialog(table)
    kitchen.wait_until(lambda: kitchen.app.window.notice.text() == "takeoff.xlsx is saved.")

    cells = [cell.value for sheet in openpyxl.load_workbook(table, data_only=True) for row in sheet for cell in row]
    amounts = [value for value in cells if isinstance(value, float)]
    for total in (totals.coated_mm2 / 1e6, totals.masking_mm / 1e3, totals.bead_mm / 1e3, totals.old_bead_mm / 1e3):
        assert any(amount == pytest.approx(total) for amount in amounts)


def _assert_drawing(kitchen: Person, tmp_path: Path) -> None:
    totals = kitchen.shown.takeoff.totals
    drawing = tmp_path / "faces.dxf"
    kitchen.press(Qt.Key.Key_D, Keys.ControlModifier)
    kitchen.fill_file_dialog(drawing)
    kitchen.wait_until(lambda: kitchen.app.window.notice.text() == "faces.dxf is saved.")

    document = readfile(drawing)
    assert not document.audit().errors
    lines = [line for line in document.modelspace() if isinstance(line, LWPolyline)]
    assert _length_mm(line for line in lines if "JOINT" in line.dxf.layer) == pytest.approx(totals.bead_mm)
    assert _length_mm(line for line in lines if "MASKING" in line.dxf.layer) == pytest.approx(totals.masking_mm)


def _length_mm(lines: Iterable[LWPolyline]) -> float:
    """All sides of these lines are straight here."""
    paths = ([(x, y) for x, y, *_ in line.get_points()] for line in lines)
    return sum(math.dist(start, end) for path in paths for start, end in pairwise(path))


def _button(person: Person, words: str) -> QPushButton:
    return next(button for button in person.app.window.findChildren(QPushButton) if button.text() == words)
