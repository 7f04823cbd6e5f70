"""Finish: what each kind gets, how a finish is built up, of what products; litres and basket follow every edit."""

from pathlib import Path

import pytest
from msgspec.structs import replace
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox, QInputDialog, QWidget

from desktop.face_view import options
from desktop.finish_colours import finish_colours
from desktop.finish_page import Heading
from desktop.look import shades
from desktop.shown import Page
from shared.build_ups import ready_made, start_job
from shared.finish_edits import find_finish, find_product
from shared.job_file import JobFile, job_to_json
from shared.kinds import Kind, Treatment
from takeoff.needed import Basket, Needs
from tests.window import Keys, Person


@pytest.fixture
def example(person: Person) -> Person:
    """The example, on the page Finish, its basket reckoned."""
    person.app.open_example()
    person.wait_until(lambda: person.app.store.shown is not None)
    person.press(Qt.Key.Key_2, Keys.ControlModifier)
    _bill(person)
    return person


@pytest.fixture
def wall(person: Person) -> Person:
    """A job begun from nothing, with a row of doors and a splashback, on the page Finish."""
    person.app.start.open_doors()
    person.press(Qt.Key.Key_Return)
    person.read("3000")
    person.press(Qt.Key.Key_U, Keys.AltModifier)
    person.read("600 door, 900 pair, splashback")
    person.press(Qt.Key.Key_2, Keys.ControlModifier)
    _bill(person)
    return person


def test_ctrl_2_opens_the_page_in_finish_colours(example: Person) -> None:
    shown = example.shown
    assert shown.page is Page.FINISH
    shades_seen = {shade for _, shade in finish_colours(shown.job, shown.takeoff, shown.face)}
    assert shades_seen == {finish.shade for finish in shown.job.finishes if finish.id != "benchtop"}


def test_a_kind_gets_another_finish_by_keys_and_undo_gives_it_back(wall: Person) -> None:
    before = wall.shown.job
    row = wall.app.finish.surfaces.rows[Kind.SPLASHBACK]
    row.finish.setFocus()
    wall.press(Qt.Key.Key_Down)

    (choice,) = (choice for choice in wall.shown.job.kinds if choice.kind is Kind.SPLASHBACK)
    assert choice.finish == wall.shown.job.finishes[1].id
    splashback = next(row for row in wall.shown.takeoff.parts if row.kind is Kind.SPLASHBACK)
    assert splashback.finish == choice.finish
    wall.press(Qt.Key.Key_Z, Keys.ControlModifier)
    assert wall.shown.job == before


def test_a_kind_that_is_left_is_coated_no_more(wall: Person) -> None:
    row = wall.app.finish.surfaces.rows[Kind.DOOR]
    row.way.setFocus()
    coated = wall.shown.takeoff.totals.coated_mm2
    wall.type(Treatment.LEFT.value[0])

    assert wall.shown.takeoff.totals.coated_mm2 < coated
    assert not row.finish.isEnabled()


def test_the_keys_in_a_row_light_up_its_kind(wall: Person) -> None:
    wall.app.finish.surfaces.rows[Kind.DOOR].finish.setFocus()

    doors = {row.id for row in wall.shown.takeoff.parts if row.kind is Kind.DOOR}
    assert set(wall.shown.lit) == doors
    assert options(wall.shown).lit == doors


def test_more_coats_take_more_litres(example: Person) -> None:
    _open(example, Heading.BUILD_UP)
    before = _needed(example, "tile-colour")
    _choose_step(example, 4)
    _type_into(example, example.app.finish.build_up.fields.row("Coats"), "3")

    assert find_finish(example.shown.job, "tiles").steps[4].coats == 3
    assert _needed(example, "tile-colour") > before
    example.press(Qt.Key.Key_Z, Keys.ControlModifier)
    assert _needed(example, "tile-colour") == before


def test_a_step_is_added_moved_and_taken_away_by_keys(example: Person) -> None:
    _open(example, Heading.BUILD_UP)
    before = example.shown.job
    _choose_step(example, 5)
    example.press(Qt.Key.Key_Insert)
    steps = find_finish(example.shown.job, "tiles").steps
    assert (len(steps), steps[6].work, steps[6].product) == (7, steps[5].work, "clear")

    example.press(Qt.Key.Key_Up, Keys.ControlModifier)
    assert find_finish(example.shown.job, "tiles").steps[5] == steps[6]
    assert example.app.finish.build_up.steps.place == 5
    example.press(Qt.Key.Key_Delete)
    assert example.shown.job == before


def test_other_work_asks_for_a_product_that_is_for_it(wall: Person) -> None:
    _open(wall, Heading.BUILD_UP)
    _choose_step(wall, 0)
    wall.app.finish.build_up.fields.row("Work").setFocus()
    wall.type("p")

    step = wall.shown.job.finishes[0].steps[0]
    assert (step.work, step.product) == ("prime", "primer")


def test_a_spread_rate_of_nothing_is_refused_in_words_and_nothing_is_lost(example: Person) -> None:
    _open(example, Heading.PRODUCTS)
    job = example.shown.job
    place = [product.id for product in job.products].index("tile-colour")
    _choose_product(example, place)
    row = example.app.finish.products.fields.row("Covers")
    _type_into(example, row, "0")

    form = example.app.finish.products
    assert "the spread rate is more than 0" in form.fields.trouble
    assert example.shown.job is job
    _type_into(example, row, "8")
    assert find_product(example.shown.job, "tile-colour").covers_m2 == 8
    assert form.fields.trouble == ""


@pytest.mark.parametrize(
    ("label", "text", "words"),
    [
        ("Mixed", "0:1", "both parts of a mixing ratio are above 0"),
        ("Mixed", "four", "this is no mixing ratio"),
        ("Solids", "120", "the share of solids is more than 0 %"),
        ("Usable for", "0", "the usable life is more than 0 h"),
        ("Keeps", "-1", "the keeping time is from 0 days"),
    ],
)
def test_what_makes_no_sense_of_a_product_is_refused_in_words(
    example: Person, label: str, text: str, words: str
) -> None:
    _open(example, Heading.PRODUCTS)
    job = example.shown.job
    _choose_product(example, [product.id for product in job.products].index("clear"))
    _type_into(example, example.app.finish.products.fields.row(label), text)

    assert words in example.app.finish.products.fields.trouble
    assert example.shown.job is job


def test_a_pack_is_added_with_its_size_and_price(example: Person) -> None:
    _open(example, Heading.PRODUCTS)
    _choose_product(example, 0)
    form = example.app.finish.products
    many = len(find_product(example.shown.job, form.chosen.id if form.chosen else "").packs)
    form.packs.tree.setFocus()
    example.press(Qt.Key.Key_Insert)
    _type_into(example, form.pack_fields.row("Holds"), "750 mL")
    _type_into(example, form.pack_fields.row("Price"), "3.25")

    assert form.chosen is not None
    packs = form.chosen.packs
    assert len(packs) == many + 1
    assert (packs[1].size, packs[1].price) == (0.75, 3.25)
    _type_into(example, form.pack_fields.row("Holds"), "0 L")
    assert "there is nothing in such a pack" in form.pack_fields.trouble


def test_a_price_changes_the_basket_and_a_budget_is_gone_over(example: Person) -> None:
    cost = _bill(example)[1].cost
    _open(example, Heading.PRODUCTS)
    for place in range(len(example.shown.job.products)):
        _choose_product(example, place)
        for pack in range(len(example.shown.job.products[place].packs)):
            _go_to(example, example.app.finish.products.packs.tree, pack)
            _type_into(example, example.app.finish.products.pack_fields.row("Price"), "99")
    assert _bill(example)[1].cost > cost

    _open(example, Heading.MONEY)
    _type_into(example, example.app.finish.money.money.row("Budget"), "100")
    assert _bill(example)[1].over > 0


def test_picked_parts_get_a_finish_of_their_own(wall: Person) -> None:
    part = next(part for part in wall.shown.job.faces[0].parts if part.kind is Kind.DOOR)
    xs, ys = [vertex.x for vertex in part.outline], [vertex.y for vertex in part.outline]
    canvas = wall.app.finish_canvas
    pixel = canvas.glass.to_device.map(QPointF(sum(xs) / len(xs), sum(ys) / len(ys))).toPoint()
    QTest.mouseClick(canvas, Qt.MouseButton.LeftButton, Keys.NoModifier, pixel)
    assert wall.shown.picked == (part.id,)

    wall.app.finish.picked.finish.setFocus()
    wall.press(Qt.Key.Key_Down)
    row = next(row for row in wall.shown.takeoff.parts if row.id == part.id)
    assert row.finish == wall.shown.job.finishes[0].id


def test_a_finish_is_made_named_shaded_and_taken_away(wall: Person) -> None:
    before = wall.shown.job
    _open(wall, Heading.BUILD_UP)
    form = wall.app.finish.build_up
    wall.click(form.new)
    wall.type("Bath")
    wall.press(Qt.Key.Key_Return)
    wall.click(form.shade.swatches[shades()["white"]])
    finish = wall.shown.job.finishes[-1]
    assert (finish.name, finish.shade) == ("Bath", shades()["white"])
    wall.click(form.away)
    assert wall.shown.job == before


def test_undoing_all_gives_the_first_job(example: Person) -> None:
    before = example.shown.job
    _open(example, Heading.MONEY)
    _type_into(example, example.app.finish.money.allowances.row("Loss"), "20 %")
    _type_into(example, example.app.finish.money.money.row("Tax"), "12.5")
    assert (example.shown.job.allowances.loss, example.shown.job.money.tax) == (0.2, 0.125)
    while example.shown.history.can_undo:
        example.app.store.undo()
    assert example.shown.job is before


def test_the_ready_made_build_ups_are_shown_in_shades_that_can_be_chosen() -> None:
    assert {finish.shade for finish in ready_made().finishes} <= set(shades().values())


def test_the_keys_go_round_face_section_and_strip(example: Person) -> None:
    example.app.finish_canvas.setFocus()
    example.press(Qt.Key.Key_F6)
    assert QApplication.focusWidget() is example.app.finish.heading(Heading.SURFACES)
    example.press(Qt.Key.Key_F6)
    example.press(Qt.Key.Key_F6)
    assert QApplication.focusWidget() is example.app.finish_canvas


def test_a_finish_goes_from_one_job_to_another_by_a_file(example: Person, tmp_path: Path) -> None:
    path = tmp_path / "tiles.buildup"
    tiles = find_finish(example.shown.job, "tiles")
    example.app.menus.action("&Write the finish to a file...").trigger()
    example.fill_file_dialog(path)
    example.wait_until(path.exists)

    example.app.files.show_new(JobFile(start_job("Other")))
    example.app.menus.action("Ta&ke a finish from a file...").trigger()
    example.fill_file_dialog(path)
    example.wait_until(lambda: len(example.shown.job.finishes) == 4)
    taken = example.shown.job.finishes[-1]
    assert (taken.shade, [step.work for step in taken.steps]) == (tiles.shade, [step.work for step in tiles.steps])
    assert example.shown.page is Page.FINISH
    assert example.app.finish.build_up.isVisible()
    assert example.app.finish.build_up.chosen == taken
    example.app.store.undo()
    assert len(example.shown.job.finishes) == 3


def test_of_several_finishes_in_a_file_one_is_asked_for(wall: Person, tmp_path: Path) -> None:
    path = tmp_path / "job.json"
    path.write_bytes(job_to_json(start_job("Other")))
    wall.app.menus.action("Ta&ke a finish from a file...").trigger()
    wall.fill_file_dialog(path)
    wall.wait_until(lambda: wall.app.window.findChild(QInputDialog) is not None)
    dialog = wall.app.window.findChild(QInputDialog)
    assert dialog is not None
    dialog.setTextValue("2  Benchtop")
    dialog.accept()
    assert wall.shown.job.finishes[-1].name == "Benchtop 2"


def test_a_file_without_a_finish_is_refused_in_words(wall: Person, tmp_path: Path) -> None:
    path = tmp_path / "note.buildup"
    path.write_text("milk, bread", "utf-8")
    job = wall.shown.job
    wall.app.menus.action("Ta&ke a finish from a file...").trigger()
    wall.fill_file_dialog(path)
    wall.wait_until(wall.app.window.notice.isVisible)
    assert "note.buildup" in wall.app.window.notice.text()
    assert wall.shown.job is job


def test_what_cannot_be_reckoned_with_is_said_in_its_section_and_led_to(example: Person) -> None:
    job = example.shown.job
    products = tuple(
        replace(product, covers_m2=0.0) if product.id == "tile-colour" else product for product in job.products
    )
    example.app.store.edit("As from an odd file", replace(job, products=products))
    needs, _ = _bill(example)
    (finding,) = (finding for finding in needs.findings if finding.code == "spread-rate")

    example.app.frame.findings.chosen.emit(finding)
    assert example.app.finish.products.isVisible()
    assert example.app.finish.products.to_look_at.text() == finding.message


def test_a_pick_leaves_the_face_where_it_is(wall: Person) -> None:
    before = wall.app.finish_canvas.size()
    wall.app.store.pick((wall.shown.job.faces[0].parts[0].id,))
    QApplication.processEvents()
    assert wall.app.finish.picked.fields.isVisible()
    assert wall.app.finish_canvas.size() == before


def test_finish_coats_steps_and_spread_rate_are_changed_by_keys_and_undone_step_by_step(wall: Person) -> None:
    first, needs = wall.shown.job, _bill(wall)[0]
    wall.app.finish.surfaces.rows[Kind.SPLASHBACK].finish.setFocus()
    wall.press(Qt.Key.Key_Down)  # as the benchtop, which has a primer too
    _open(wall, Heading.BUILD_UP)
    _choose(wall, wall.app.finish.build_up.finish, 1)
    _choose_step(wall, 4)
    benchtop_l = _needed(wall, "bench-colour")
    _type_into(wall, wall.app.finish.build_up.fields.row("Coats"), "3")
    assert _needed(wall, "bench-colour") == pytest.approx(benchtop_l * 1.5)
    wall.app.finish.build_up.steps.tree.setFocus()
    wall.press(Qt.Key.Key_Insert)
    assert _needed(wall, "bench-colour") == pytest.approx(benchtop_l * 2)
    _open(wall, Heading.PRODUCTS)
    _choose_product(wall, [product.id for product in wall.shown.job.products].index("bench-colour"))
    _type_into(wall, wall.app.finish.products.fields.row("Covers"), "5")
    assert _needed(wall, "bench-colour") > benchtop_l * 3

    for _ in range(4):
        wall.press(Qt.Key.Key_Z, Keys.ControlModifier)
    assert wall.shown.job is first
    assert _bill(wall)[0] == needs


def test_a_turning_wheel_changes_no_choice(wall: Person) -> None:
    before = wall.shown.job
    box = wall.app.finish.surfaces.rows[Kind.SPLASHBACK].finish
    box.setFocus()
    middle = QPointF(box.rect().center())
    turned = QWheelEvent(
        middle,
        QPointF(box.mapToGlobal(middle)),
        QPoint(),
        QPoint(0, -120),
        Qt.MouseButton.NoButton,
        Keys.NoModifier,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(box, turned)
    assert wall.shown.job is before


def _open(person: Person, heading: Heading) -> None:
    person.app.finish.heading(heading).setFocus()
    person.press(Qt.Key.Key_Space)
    assert person.app.finish.heading(heading).isChecked()


def _choose(person: Person, box: QComboBox, place: int) -> None:
    box.setFocus()
    person.press(Qt.Key.Key_Home)
    for _ in range(place):
        person.press(Qt.Key.Key_Down)
    assert box.currentIndex() == place


def _choose_step(person: Person, place: int) -> None:
    _go_to(person, person.app.finish.build_up.steps.tree, place)
    assert person.app.finish.build_up.steps.place == place


def _choose_product(person: Person, place: int) -> None:
    _go_to(person, person.app.finish.products.products.tree, place)
    assert person.app.finish.products.products.place == place


def _go_to(person: Person, tree: QWidget, place: int) -> None:
    tree.setFocus()
    person.press(Qt.Key.Key_Home)
    for _ in range(place):
        person.press(Qt.Key.Key_Down)


def _type_into(person: Person, row: QWidget, text: str) -> None:
    row.setFocus()
    person.press(Qt.Key.Key_A, Keys.ControlModifier)
    person.read(text)


def _bill(person: Person) -> tuple[Needs, Basket]:
    """What the job as it is needs, and its basket, once they were reckoned."""

    def known() -> bool:
        bill = person.shown.bill
        return bill is not None and bill.job is person.shown.job

    person.wait_until(known)
    bill = person.shown.bill
    assert bill is not None
    return bill.needs, bill.basket


def _needed(person: Person, product: str) -> float:
    options = [need for wanted in _bill(person)[0].wanted for need in wanted.options]
    return next(need.amount.amount for need in options if need.product == product)
