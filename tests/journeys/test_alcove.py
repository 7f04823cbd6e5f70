"""An out-of-square alcove entered from its readings, by mouse and keys: told how it is out, and counted as by hand."""

import math
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QCheckBox, QComboBox

from desktop.measure.ties_form import TieRow
from geometry.outlines.measured import area_mm2
from geometry.set_out.lines import set_out
from shared.job import Face
from tests.journeys.by_hand import Page, assert_as_by_hand
from tests.takeoff.hand_calculation import names_on, rows_under
from tests.window import Keys, Person

PAGE = Page(Path(__file__).parent / "alcove-by-hand.md")
TILES = "splashback 0, 908, 620, 600"
BACK = "floor 2400, left 2390, top 2398, right 2396, diagonal 3397"
BENCHTOP = "back 2400, left 600, front 2387, right 602, diagonal 2466"
SAID = ("out-of-square", "out-of-plumb")


def draw_with_corners(person: Person) -> None:
    """Take the offer to draw the face as its readings have it."""
    draw = person.app.measure.details.readings.draw
    person.wait_until(lambda: draw.height() > 0)
    person.click(draw)


def draw_on_back(person: Person) -> None:
    """Tiles between the sides that lean, corner by corner with Shift held, as they are not square; and the cabinet."""
    person.read("up 908, 1508")
    person.press(Qt.Key.Key_K, Keys.AltModifier)
    person.type("spl")
    person.press(Qt.Key.Key_Return)
    person.press(Qt.Key.Key_T, Keys.AltModifier)
    for near in ((5, 912), (2402, 905), (2404, 1511), (8, 1505)):
        person.click_at(*near, Keys.ShiftModifier)
    person.press(Qt.Key.Key_Return)
    person.press(Qt.Key.Key_B, Keys.AltModifier)
    person.read("cabinet 600, 150, 900, 720")


def add_plan(person: Person) -> None:
    """A plan of a benchtop, 2400 x 600, and its readings."""
    person.press(Qt.Key.Key_N, Keys.ControlModifier | Keys.ShiftModifier)
    form = person.app.frame.face_form
    form.view.setFocus()
    person.press(Qt.Key.Key_Down)
    form.width_field.setFocus()
    person.type("2400")
    person.press(Qt.Key.Key_Tab)
    person.read("600")
    person.press(Qt.Key.Key_O, Keys.AltModifier)
    person.read(BENCHTOP)


def tie(person: Person, side: int, wall: str, start: str) -> None:
    """Say of a side of the benchtop, which is picked, along which wall it runs and from where."""
    row = _row(person, side)
    _choose(row.wall, wall)
    person.wait_until(row.start.isVisible)
    row.start.setFocus()
    row.start.selectAll()
    person.read(start)


def coat_front(person: Person) -> None:
    """Say that the front edge of the benchtop is coated."""
    boxes = person.app.measure.details.row("Edges").findChildren(QCheckBox)
    front = next(box for box in boxes if box.text() == "front")
    front.setFocus()
    person.press(Qt.Key.Key_Space)


@pytest.fixture
def walls(person: Person) -> Person:
    """The three walls, tiles on the sides, and the readings of the back just taken."""
    person.app.start.open_doors()
    person.press(Qt.Key.Key_Return)
    person.type("620, 2400, 620 end")
    person.press(Qt.Key.Key_Tab)
    person.read("2400")
    person.press(Qt.Key.Key_B, Keys.AltModifier)
    person.read(TILES)
    for _ in range(2):
        person.press(Qt.Key.Key_Right, Keys.AltModifier)
    person.read(TILES)
    person.press(Qt.Key.Key_Left, Keys.AltModifier)
    person.press(Qt.Key.Key_O, Keys.AltModifier)
    person.read(BACK)
    return person


@pytest.fixture
def alcove(walls: Person) -> Person:
    """The alcove, all drawn, with the benchtop's plan shown."""
    draw_with_corners(walls)
    draw_on_back(walls)
    add_plan(walls)
    draw_with_corners(walls)
    walls.press(Qt.Key.Key_A, Keys.ControlModifier)
    for side, wall, start in ((0, "B", "3"), (1, "C", "0"), (3, "A", "20")):
        tie(walls, side, wall, start)
    coat_front(walls)
    return walls


def test_the_alcove_all_drawn(alcove: Person, subtests: pytest.Subtests) -> None:
    with subtests.test("is counted as by hand"):
        assert_as_by_hand(alcove.shown.job, alcove.shown.takeoff, PAGE)
    with subtests.test("has nothing to be looked at"):
        assert alcove.shown.takeoff.findings == ()
    with subtests.test("has the areas of Bretschneider's formula"):
        _assert_areas_by_formula(alcove)
    with subtests.test("is not changed by a diagonal more that agrees"):
        _assert_nothing_changes_by_agreeing_diagonals(alcove)


def _assert_areas_by_formula(alcove: Person) -> None:
    names = names_on(PAGE.path)
    quadrilaterals = {
        "B": (2400, 2396, 2398, 2390, 3397, names["b_other"]),
        "D": (2400, 602, 2387, 600, 2466, names["d_other"]),
    }
    for face in alcove.shown.job.faces:
        if face.name in quadrilaterals:
            assert area_mm2(face.parts[0].outline) == pytest.approx(_bretschneider(*quadrilaterals[face.name]))


def _assert_nothing_changes_by_agreeing_diagonals(alcove: Person) -> None:
    before = alcove.shown.takeoff
    for diagonal in ("diagonal 2470", "diagonal 3380"):
        alcove.press(Qt.Key.Key_O, Keys.AltModifier)
        alcove.click(alcove.app.measure.canvas)
        alcove.read(diagonal)
        off = set_out(_face(alcove), alcove.shown.job.tape).residuals_mm
        assert 0 < max(map(abs, off)) < 0.5
        for _ in range(2):
            alcove.press(Qt.Key.Key_Left, Keys.AltModifier)
    after = alcove.shown.takeoff
    assert after.findings == ()
    assert (after.parts, after.joints, after.masking) == (before.parts, before.joints, before.masking)


def test_it_is_told_how_far_wall_and_benchtop_are_out_of_true(walls: Person) -> None:
    by_hand = {(row.words[0], row.words[1]) for row in rows_under("Out of true", PAGE.path)}
    told = _out_of_true(walls, "B")
    draw_with_corners(walls)
    assert _out_of_true(walls, "B") == set()
    walls.press(Qt.Key.Key_Right, Keys.AltModifier)
    add_plan(walls)
    assert told | _out_of_true(walls, "D") == by_hand


def test_a_diagonal_more_that_does_not_agree_is_told(walls: Person) -> None:
    walls.read("diagonal 3391")
    assert "do not fit together by 11.1 mm" in walls.app.measure.details.readings.sentences.text()


@pytest.mark.parametrize(
    ("heading", "unit", "near"),
    [
        ("Worked out first", 1, 0.051),
        ("Out of true", 1, 0.5),
        ("Areas", 1e6, 5.1e-5),
        ("Joints", 1e3, 5.1e-4),
        ("Masking", 1e3, 5.1e-4),
    ],
)
def test_every_sum_on_the_page_comes_to_what_is_printed(heading: str, unit: float, near: float) -> None:
    rows = list(rows_under(heading, PAGE.path))
    assert rows
    assert [row for row in rows if abs(row.amounts[-1] / unit - row.printed) > near] == []


def _out_of_true(person: Person, name: str) -> set[tuple[str, str]]:
    """The clauses of what is told of a face, with its name."""
    face = next(face for face in person.shown.job.faces if face.name == name)
    told = [each.message for each in person.shown.takeoff.findings if each.face == face.id and each.code in SAID]
    clauses = [
        clause
        for message in told
        for clause in message.removesuffix(".")
        .removesuffix(", if its lower side is level")
        .removeprefix(f"On face {name} ")
        .replace(" and the ", ", the ")
        .split(", ")
    ]
    return {(name, clause) for clause in clauses}


def _bretschneider(a: float, b: float, c: float, d: float, one: float, other: float) -> float:
    """The area of a quadrilateral by its sides in order and its diagonals (from memory)."""
    return math.sqrt(4 * one**2 * other**2 - (a**2 - b**2 + c**2 - d**2) ** 2) / 4


def _face(person: Person) -> Face:
    face = person.shown.shown_face
    assert face is not None
    return face


def _row(person: Person, side: int) -> TieRow:
    return person.app.measure.details.ties.rows[side]


def _choose(box: QComboBox, words: str) -> None:
    box.setFocus()
    box.setCurrentText(words)
    box.activated.emit(box.currentIndex())
