"""A person who has never seen the program draws a kitchen wall, reads what there is to do, and hands it on."""

from pathlib import Path

import openpyxl
import pytest
from ezdxf.filemanagement import readfile
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QPushButton

from desktop.shown import Page
from shared.job_file import read_job_file
from takeoff.take_off import take_off
from tests.window import Keys, Person

WALL = ("3600", "2400")


@pytest.fixture
def wall(person: Person) -> Person:
    """The wall as a person draws it: splashback, benchtop, four cabinets with doors, two outlets."""
    person.click(person.app.start.new)
    person.type("3600")
    person.press(Qt.Key.Key_Tab)
    person.read("2400")
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


def test_what_was_drawn_is_saved_opened_and_handed_on_with_the_same_figures(wall: Person, tmp_path: Path) -> None:
    wall.click(_button(wall, "+ face"))
    form = wall.app.window.face_form
    form.view.setFocus()
    wall.press(Qt.Key.Key_Down)
    form.width_field.setFocus()
    wall.type("3600")
    wall.press(Qt.Key.Key_Tab)
    wall.read("600")
    wall.draw_boxes("cut", ("1200", "80", "780", "440"))
    totals = wall.shown.takeoff.totals
    top = next(row for row in wall.shown.takeoff.parts if row.face == wall.shown.face and row.kind.value == "benchtop")
    assert top.net_mm2.amount == pytest.approx(3600 * 600 - 780 * 440)

    wall.press(Qt.Key.Key_2, Keys.ControlModifier)
    assert wall.shown.page is Page.COUNT

    saved = tmp_path / "first wall.recoat"
    wall.press(Qt.Key.Key_S, Keys.ControlModifier)
    wall.fill_file_dialog(saved)
    wall.wait_until(lambda: wall.shown.is_saved)
    assert take_off(read_job_file(saved).job).totals == totals

    wall.app.begin()
    wall.app.open_recent(saved)
    wall.wait_until(lambda: wall.app.store.shown is not None)
    assert wall.shown.takeoff.totals == totals

    table = tmp_path / "takeoff.xlsx"
    wall.press(Qt.Key.Key_T, Keys.ControlModifier)
    wall.fill_file_dialog(table)
    wall.wait_until(table.exists)
    cells = [cell for sheet in openpyxl.load_workbook(table, data_only=True) for row in sheet for cell in row]
    amounts = [cell.value for cell in cells if isinstance(cell.value, float)]
    assert any(amount == pytest.approx(totals.coated_mm2 / 1e6) for amount in amounts)
    assert any(amount == pytest.approx(totals.masking_mm / 1e3) for amount in amounts)

    drawing = tmp_path / "faces.dxf"
    wall.press(Qt.Key.Key_D, Keys.ControlModifier)
    wall.fill_file_dialog(drawing)
    wall.wait_until(drawing.exists)
    wall.wait_until(lambda: wall.app.window.notice.text().startswith("faces.dxf"))
    auditor = readfile(drawing).audit()
    assert not auditor.errors


def _button(person: Person, words: str) -> QPushButton:
    return next(button for button in person.app.window.findChildren(QPushButton) if button.text() == words)
