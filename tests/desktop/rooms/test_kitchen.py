"""A kitchen from its wall lengths and rows of cabinets, by keys only."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QLabel, QPushButton

from desktop.fields.card import Card
from desktop.measure.modes import KEYS, Mode
from desktop.rooms.kitchen_form import KitchenForm
from geometry.parts.extent import extent
from shared.job import Corner, Unit, View, usual_heights
from shared.trade.kinds import Kind
from tests.window import Keys, Person


@pytest.fixture
def form(person: Person) -> KitchenForm:
    """The form that the first door opens."""
    person.app.start.open_doors()
    person.press(Qt.Key.Key_Return)
    return person.app.frame.kitchen_form


@pytest.fixture
def kitchen(person: Person, form: KitchenForm) -> Person:
    """Three walls, 2400, 3000 and 1800 long, of a job just begun."""
    assert form.isVisible()
    person.read("2400,3000,1800")
    return person


def _walls(person: Person) -> list[tuple[str, float, Corner]]:
    return [(face.name, extent(face)[2], face.corner) for face in person.shown.job.faces]


def _kinds(person: Person) -> list[Kind]:
    face = person.shown.shown_face
    assert face is not None
    return [part.kind for part in face.parts[1:]]


def test_a_kitchen_stands_after_its_wall_lengths_and_return(kitchen: Person) -> None:
    assert _walls(kitchen) == [
        ("A", 2400, Corner.INSIDE),
        ("B", 3000, Corner.INSIDE),
        ("C", 1800, Corner.NONE),
    ]
    assert all(extent(face)[3] == usual_heights().ceiling_mm for face in kitchen.shown.job.faces)
    assert kitchen.app.hand.mode is Mode.RUN
    assert not kitchen.shown.history.can_undo


def test_the_walls_are_said_while_they_are_typed(person: Person, form: KitchenForm) -> None:
    person.type("2400 out, 3000 end, 1800")
    assert form.read.text() == "A 2400 · outside corner · B 3000 · no corner · C 1800"


def test_of_many_walls_the_last_are_said(person: Person, form: KitchenForm) -> None:
    person.type("2400,900,300,900,1200,600")
    assert form.read.text().startswith("… · inside corner · C 300")
    assert form.read.text().endswith("F 600")


def test_a_slip_in_the_walls_is_answered_and_the_form_stays(
    person: Person, form: KitchenForm, subtests: pytest.Subtests
) -> None:
    for walls, words in {"24x0 0": "“24x0 0”", "2400 wombat": "inside, outside", "": "no wall was typed"}.items():
        with subtests.test(walls):
            person.press(Qt.Key.Key_Escape)
            assert not form.isVisible()
            person.press(Qt.Key.Key_Return)
            assert form.isVisible()
            assert words not in form.trouble.text() + form.read.text()
            person.read(walls)
            assert words in form.trouble.text() or words in form.read.text()
            assert form.isVisible()
            assert person.app.store.shown is None


def test_what_is_usual_is_changed_before_the_walls_stand(person: Person, form: KitchenForm) -> None:
    person.type("2400")
    for size in ("2700", "900", "12x"):
        person.press(Qt.Key.Key_Tab)
        person.type(size)
    person.press(Qt.Key.Key_Return)
    assert "Splashback, “12x”" in form.trouble.text()

    form.heights.fields["splashback_mm"].clear()
    person.read("550")
    heights = person.shown.job.rooms[0].heights
    assert (heights.ceiling_mm, heights.wall_cabinet_mm, heights.splashback_mm) == (2700, 900, 550)
    assert heights.kickboard_mm == usual_heights().kickboard_mm


def test_a_height_that_no_room_has_is_answered_and_the_form_stays(person: Person, form: KitchenForm) -> None:
    person.type("2400")
    person.press(Qt.Key.Key_Tab)
    person.read("0")
    assert "the usual ceiling is 0 mm" in form.trouble.text()
    assert form.isVisible()


def test_in_inches_all_is_shown_and_read_in_inches(person: Person, form: KitchenForm) -> None:
    form.heights.fields["kickboard_mm"].setText("100")
    form.unit.setFocus()
    person.press(Qt.Key.Key_Down)
    assert form.heights.fields["ceiling_mm"].text() == '96"'
    assert form.heights.fields["kickboard_mm"].text() == '3 15/16"'
    form.walls.setFocus()
    person.type("94 1/2,120")
    assert form.read.text() == 'A 94 1/2" · inside corner · B 120"'
    person.press(Qt.Key.Key_Return)

    assert person.shown.unit is Unit.INCH
    heights = person.shown.job.rooms[0].heights
    assert heights.kickboard_mm == pytest.approx(100, abs=25.4 / 64)
    assert heights.cabinet_mm == usual_heights(Unit.INCH).cabinet_mm
    person.type("18 door, 24 1/2 pair")
    assert person.app.measure.line.answer.text() == '2 cabinets, 42 1/2" of 94 1/2", 52" left'


def test_escape_gives_the_keys_back_to_the_door(person: Person, form: KitchenForm) -> None:
    person.press(Qt.Key.Key_Escape)
    assert not form.isVisible()
    assert person.app.start.new.hasFocus()


def test_rows_are_typed_one_after_another_and_undone_to_bare_walls(kitchen: Person) -> None:
    bare = kitchen.shown.job
    kitchen.type("450 door, 600 drawers 3, 900 pair, splashback")
    assert kitchen.app.measure.line.answer.text() == "3 cabinets, 1950 of 2400 mm, 450 left"
    assert _kinds(kitchen).count(Kind.CABINET) == 3
    assert kitchen.shown.job is bare

    kitchen.press(Qt.Key.Key_Return)
    assert set(kitchen.shown.picked) == {part.id for part in kitchen.shown.job.faces[0].parts[1:]}
    assert kitchen.app.hand.mode is Mode.RUN
    kitchen.press(Qt.Key.Key_A, Keys.AltModifier)
    kitchen.read("600 pair, 450 door")
    kitchen.press(Qt.Key.Key_A, Keys.AltModifier)
    kitchen.read("rest door")
    assert _kinds(kitchen).count(Kind.CABINET) == 6
    assert "no room" in _answered(kitchen, "600 door")

    kitchen.press(Qt.Key.Key_Escape)
    for _ in range(3):
        kitchen.press(Qt.Key.Key_Z, Keys.ControlModifier)
    assert kitchen.shown.job is bare
    assert not kitchen.shown.history.can_undo


def test_a_whole_kitchen_goes_in_by_keys_and_is_undone_to_bare_walls(kitchen: Person) -> None:
    bare = kitchen.shown.job
    kitchen.read("rest pair", "above rest pair")
    kitchen.press(Qt.Key.Key_Right, Keys.AltModifier)
    kitchen.read("600", "900 pair, 600 door", "above 900 door")
    kitchen.press(Qt.Key.Key_B, Keys.ControlModifier)

    plan = kitchen.shown.shown_face
    assert plan is not None
    assert plan.view is View.PLAN
    assert [part.kind for part in plan.parts] == [Kind.BENCHTOP, Kind.BENCHTOP]
    # By hand: 600 deep, 2400 along A to the corner; along B from there to 600 + 900 + 600, and 20 beyond the open end.
    tops = [row for row in kitchen.shown.takeoff.parts if row.face == plan.id]
    assert sum(row.net_mm2.amount for row in tops) == pytest.approx(600 * 2400 + 600 * (2120 - 600))
    assert kitchen.shown.picked == ()
    kitchen.read("cut-out 780 by 440 at 1200, 80")
    tops = [row for row in kitchen.shown.takeoff.parts if row.face == plan.id]
    assert sum(row.net_mm2.amount for row in tops) == pytest.approx(600 * 2400 + 600 * (2120 - 600) - 780 * 440)

    for _ in range(6):
        kitchen.press(Qt.Key.Key_Z, Keys.ControlModifier)
    assert kitchen.shown.job is bare


@pytest.mark.parametrize("keys", [Keys.ControlModifier, Keys.ControlModifier | Keys.ShiftModifier])
def test_benchtops_are_refused_in_words_where_none_can_be_laid_out(kitchen: Person, keys: Keys) -> None:
    kitchen.press(Qt.Key.Key_B, keys)
    assert "no benchtop and no base cabinets" in kitchen.app.measure.line.answer.text()
    kitchen.read("600 door")
    kitchen.press(Qt.Key.Key_B, keys)
    done = kitchen.shown.job
    kitchen.press(Qt.Key.Key_B, keys)
    assert "every benchtop of the room has its plan" in kitchen.app.measure.line.answer.text()
    assert kitchen.shown.job is done


def test_on_a_plan_run_says_where_a_row_may_stand(kitchen: Person) -> None:
    kitchen.read("600 door")
    kitchen.press(Qt.Key.Key_B, Keys.ControlModifier)
    kitchen.press(Qt.Key.Key_U, Keys.AltModifier)
    assert "choose a wall" in kitchen.app.measure.line.edit.placeholderText()
    assert "stands on a wall" in _answered(kitchen, "600 door")


def test_keys_go_round_the_faces(kitchen: Person) -> None:
    names = []
    for key in (Qt.Key.Key_Right, Qt.Key.Key_Right, Qt.Key.Key_Right, Qt.Key.Key_Left):
        kitchen.press(key, Keys.AltModifier)
        face = kitchen.shown.shown_face
        assert face is not None
        names.append(face.name)
    assert names == ["B", "C", "A", "C"]


@pytest.mark.parametrize("by_keys", [True, False])
def test_an_offered_line_makes_a_row_fit(kitchen: Person, by_keys: bool) -> None:
    assert "300 mm longer" in _answered(kitchen, "900 pair, 600 door, 1200 drawers 3")
    if by_keys:
        for key in (Qt.Key.Key_Tab, Qt.Key.Key_Return):
            kitchen.press(key)
    else:
        kitchen.click(_offers(kitchen)[0])
    assert kitchen.app.measure.line.text == "600 pair, 600 door, 1200 drawers 3"
    assert kitchen.app.measure.line.answer.text() == "3 cabinets, 2400 of 2400 mm, 0 left"
    kitchen.press(Qt.Key.Key_Return)
    assert _kinds(kitchen).count(Kind.CABINET) == 3


def test_an_example_stands_in_the_empty_line_and_only_there(kitchen: Person) -> None:
    assert "450 drawers 3" in kitchen.app.measure.line.edit.placeholderText()
    kitchen.press(Qt.Key.Key_B, Keys.AltModifier)
    assert kitchen.app.measure.line.edit.placeholderText() == ""


def test_a_further_room_is_added_from_its_walls_and_taken_back(kitchen: Person) -> None:
    kitchen.app.cards.ask_for_room()
    form = kitchen.app.frame.kitchen_form
    assert not form.unit.isVisible()
    kitchen.type("1500, 900")
    assert form.read.text() == "D 1500 · inside corner · E 900"
    kitchen.press(Qt.Key.Key_Return)

    assert [room.name for room in kitchen.shown.job.rooms] == ["Kitchen", "Laundry"]
    assert kitchen.shown.shown_face is kitchen.shown.job.rooms[1].faces[0]
    kitchen.press(Qt.Key.Key_Z, Keys.ControlModifier)
    assert [room.name for room in kitchen.shown.job.rooms] == ["Kitchen"]


def test_usual_heights_hold_for_what_is_drawn_from_then_on(kitchen: Person) -> None:
    kitchen.read("600 door")
    stands = kitchen.shown.job.faces[0].parts
    kitchen.app.cards.ask_for_heights()
    form = kitchen.app.frame.heights_form
    assert form.heights.fields["kickboard_mm"].text() == "150"
    form.heights.fields["kickboard_mm"].setFocus()
    form.heights.fields["kickboard_mm"].selectAll()
    kitchen.read("100")

    assert kitchen.shown.job.rooms[0].heights.kickboard_mm == 100
    assert kitchen.shown.job.faces[0].parts == stands
    kitchen.press(Qt.Key.Key_Z, Keys.ControlModifier)
    assert kitchen.shown.job.rooms[0].heights == usual_heights()


def test_heights_are_set_for_the_room_they_were_asked_for(kitchen: Person) -> None:
    kitchen.app.cards.ask_for_room()
    kitchen.read("1500")
    kitchen.app.cards.ask_for_heights()
    kitchen.app.store.show_face("f1")
    kitchen.read("2700")
    assert [room.heights.ceiling_mm for room in kitchen.shown.job.rooms] == [2400, 2700]


def test_a_form_goes_with_its_job(kitchen: Person) -> None:
    kitchen.app.cards.ask_for_heights()
    kitchen.press(Qt.Key.Key_N, Keys.ControlModifier)
    kitchen.wait_until(lambda: kitchen.app.store.shown is None)
    assert not kitchen.app.frame.heights_form.isVisible()


def test_a_key_with_alt_reaches_one_thing_only(person: Person) -> None:
    """The doors are gone while a job is open, the modes switched off while none is."""
    window = person.app.window
    menus = [_key_of(action.text()) for action in window.menuBar().actions()]
    doors = [_key_of(button.text()) for button in window.start.findChildren(QPushButton)]
    fields = [_key_of(label.text()) for card in window.findChildren(Card) for label in card.findChildren(QLabel)]
    modes = [key.removeprefix("Alt+") for key in (*KEYS.values(), "Alt+A", "Alt+K")]
    for keys in (menus + doors, menus + modes + fields):
        given = [key for key in keys if key]
        assert len(set(given)) == len(given)


def _key_of(words: str) -> str:
    """The letter that Alt reaches a widget by; "" where it has none."""
    return QKeySequence.mnemonic(words).toString().removeprefix("Alt+")


def _answered(person: Person, line: str) -> str:
    """What is answered to a line that is refused, which then is taken out again only by the person."""
    person.read(line)
    return person.app.measure.line.answer.text()


def _offers(person: Person) -> list[QPushButton]:
    buttons = person.app.measure.line.offers.findChildren(QPushButton)
    return [button for button in buttons if button.isVisible()]
