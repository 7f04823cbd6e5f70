"""Tiles in the details, in the count and on the face."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox, QLineEdit

from desktop.painting.kept import Drawings
from desktop.sums.row import SumRow
from shared.drawing import Role
from shared.job import Part, Tiles, Unit
from tests.window import Keys, Person


@pytest.fixture
def splashback(person: Person) -> Person:
    """A wall with a splashback of 606 x 454, which is picked: four tiles of 150 x 150 by three."""
    person.begin_wall("3600", "2400")
    person.draw_boxes("spl", ("0", "900", "606", "454"))
    person.press(Qt.Key.Key_P, Keys.AltModifier)
    return person


def line(person: Person, label: str) -> QLineEdit:
    field = person.app.measure.details.row(label).focusProxy()
    assert isinstance(field, QLineEdit)
    return field


def fill(person: Person, label: str, text: str) -> None:
    field = line(person, label)
    field.setFocus()
    field.selectAll()
    person.press(Qt.Key.Key_Delete)
    person.type(text)
    person.press(Qt.Key.Key_Return)


def picked(person: Person) -> Part:
    (part,) = person.shown.picked_parts
    return part


def test_a_width_makes_a_part_tiled_with_square_tiles_and_the_usual_grout(splashback: Person) -> None:
    assert line(splashback, "Tile width").placeholderText() == "none"
    assert not splashback.app.measure.details.row("Grout").isVisible()
    steps = len(splashback.shown.history.past)
    fill(splashback, "Tile width", "150")

    assert picked(splashback).tiles == Tiles(150, 150, 2)
    assert len(splashback.shown.history.past) == steps + 1
    assert line(splashback, "Tile height").text() == "150"
    assert splashback.app.measure.details.row("Grout").isVisible()
    (row,) = splashback.shown.takeoff.tiles
    assert (row.whole, row.cut) == (12, 0)


def test_every_field_of_the_tiles_is_set(splashback: Person) -> None:
    fill(splashback, "Tile width", "200")
    fill(splashback, "Tile height", "100")
    fill(splashback, "Grout", "3")
    fill(splashback, "Start across", "-50")
    fill(splashback, "Start up", "20")
    shift = splashback.app.measure.details.row("Shift").focusProxy()
    assert isinstance(shift, QComboBox)
    shift.setFocus()
    splashback.type("half")

    assert picked(splashback).tiles == Tiles(200, 100, 3, -50, 20, 0.5)


def test_an_emptied_width_takes_the_tiles_away(splashback: Person) -> None:
    fill(splashback, "Tile width", "150")
    fill(splashback, "Tile width", "")

    assert picked(splashback).tiles is None
    assert splashback.shown.takeoff.tiles == ()
    assert not splashback.app.measure.details.row("Start up").isVisible()


def test_a_tile_of_no_sense_is_refused_in_words_and_changes_nothing(splashback: Person) -> None:
    fill(splashback, "Tile width", "150")
    before = splashback.shown.job
    fill(splashback, "Grout", "400")

    assert splashback.shown.job is before


def test_an_inch_job_begins_with_grout_in_inches(splashback: Person) -> None:
    splashback.app.faces.set_unit(Unit.INCH)
    fill(splashback, "Tile width", "6")

    assert picked(splashback).tiles == Tiles(152.4, 152.4, 3.175)
    assert line(splashback, "Grout").text() == '1/8"'


def test_a_door_has_no_fields_for_tiles(splashback: Person) -> None:
    splashback.draw_boxes("doo", ("1000", "150", "450", "720"))
    splashback.press(Qt.Key.Key_P, Keys.AltModifier)

    assert not splashback.app.measure.details.row("Tile width").isVisible()


def test_the_face_shows_the_tiles(splashback: Person) -> None:
    fill(splashback, "Tile width", "150")
    face = splashback.shown.shown_face
    assert face is not None
    drawing = Drawings(splashback.app.store).of_face(splashback.shown, face)

    assert len([line for line in drawing.lines if line.role is Role.GROUT]) == 3 + 2


def test_the_count_has_a_row_of_tiles_that_lights_up_its_part(splashback: Person) -> None:
    fill(splashback, "Tile width", "150")
    splashback.press(Qt.Key.Key_3, Keys.ControlModifier)
    model, tree = splashback.app.count.model, splashback.app.count.tree
    index = model.index_of(f"tiles {splashback.shown.takeoff.tiles[0].part}")
    tree.setCurrentIndex(index)

    row = model.row_at(index)
    assert row is not None
    assert row.cells[1:] == ("12", "0", "2.57 m")  # 2 level lines of 606 and 3 upright ones of 454
    assert splashback.shown.lit == row.parts
    assert [words(child) for child in row.children[0].children[:2]] == ["level grout lines", "upright grout lines"]
    assert tree.isExpanded(model.parent(index))


def words(row: SumRow) -> str:
    return row.cells[0].split(": ")[0]
