"""Finish: what each kind and part gets, and how a finish is built up; litres follow every edit."""

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from desktop.canvas.face_view import options
from desktop.finish.page import FINISH, Heading
from desktop.look.palette import shades
from desktop.painting.finish_colours import finish_colours
from shared.edits.build_ups import ready_made
from shared.edits.finishes import find_finish
from shared.trade.kinds import Kind, Treatment
from tests.desktop.finishing import bill_of, choose, choose_product, choose_step, needed, open_section, type_into
from tests.window import Keys, Person


def test_ctrl_2_opens_the_page_in_finish_colours(example_on_finish: Person) -> None:
    shown = example_on_finish.shown
    assert shown.page is FINISH
    shades_seen = {shade for _, shade in finish_colours(shown.job, shown.takeoff, shown.face)}
    assert shades_seen == {finish.shade for finish in shown.job.finishes if finish.id != "benchtop"}


def test_a_kind_gets_another_finish_by_keys_and_undo_gives_it_back(wall_on_finish: Person) -> None:
    before = wall_on_finish.shown.job
    row = wall_on_finish.app.finish.surfaces.rows[Kind.SPLASHBACK]
    row.finish.setFocus()
    wall_on_finish.press(Qt.Key.Key_Down)

    (choice,) = (choice for choice in wall_on_finish.shown.job.kinds if choice.kind is Kind.SPLASHBACK)
    assert choice.finish == wall_on_finish.shown.job.finishes[1].id
    splashback = next(row for row in wall_on_finish.shown.takeoff.parts if row.kind is Kind.SPLASHBACK)
    assert splashback.finish == choice.finish
    wall_on_finish.press(Qt.Key.Key_Z, Keys.ControlModifier)
    assert wall_on_finish.shown.job == before


def test_a_kind_that_is_left_is_coated_no_more(wall_on_finish: Person) -> None:
    row = wall_on_finish.app.finish.surfaces.rows[Kind.DOOR]
    row.way.setFocus()
    coated = wall_on_finish.shown.takeoff.totals.coated_mm2
    wall_on_finish.type(Treatment.LEFT.words[0])

    assert wall_on_finish.shown.takeoff.totals.coated_mm2 < coated
    assert not row.finish.isEnabled()


def test_the_keys_in_a_row_light_up_its_kind(wall_on_finish: Person) -> None:
    wall_on_finish.app.finish.surfaces.rows[Kind.DOOR].finish.setFocus()

    doors = {row.id for row in wall_on_finish.shown.takeoff.parts if row.kind is Kind.DOOR}
    assert set(wall_on_finish.shown.lit) == doors
    assert options(wall_on_finish.shown).lit == doors


def test_more_coats_take_more_litres(example_on_finish: Person) -> None:
    open_section(example_on_finish, Heading.BUILD_UP)
    before = needed(example_on_finish, "tile-colour")
    choose_step(example_on_finish, 4)
    type_into(example_on_finish, example_on_finish.app.finish.build_up.fields.row("Coats"), "3")

    assert find_finish(example_on_finish.shown.job, "tiles").steps[4].coats == 3
    assert needed(example_on_finish, "tile-colour") > before
    example_on_finish.press(Qt.Key.Key_Z, Keys.ControlModifier)
    assert needed(example_on_finish, "tile-colour") == before


def test_a_step_is_added_moved_and_taken_away_by_keys(example_on_finish: Person) -> None:
    open_section(example_on_finish, Heading.BUILD_UP)
    before = example_on_finish.shown.job
    choose_step(example_on_finish, 5)
    example_on_finish.press(Qt.Key.Key_Insert)
    steps = find_finish(example_on_finish.shown.job, "tiles").steps
    assert (len(steps), steps[6].work, steps[6].product) == (7, steps[5].work, "clear")

    example_on_finish.press(Qt.Key.Key_Up, Keys.ControlModifier)
    assert find_finish(example_on_finish.shown.job, "tiles").steps[5] == steps[6]
    assert example_on_finish.app.finish.build_up.steps.place == 5
    example_on_finish.press(Qt.Key.Key_Delete)
    assert example_on_finish.shown.job == before


def test_other_work_asks_for_a_product_that_is_for_it(wall_on_finish: Person) -> None:
    open_section(wall_on_finish, Heading.BUILD_UP)
    choose_step(wall_on_finish, 0)
    wall_on_finish.app.finish.build_up.fields.row("Work").setFocus()
    wall_on_finish.type("p")

    step = wall_on_finish.shown.job.finishes[0].steps[0]
    assert (step.work, step.product) == ("prime", "primer")


def test_picked_parts_get_a_finish_of_their_own(wall_on_finish: Person) -> None:
    part = next(part for part in wall_on_finish.shown.job.faces[0].parts if part.kind is Kind.DOOR)
    xs, ys = [vertex.x for vertex in part.outline], [vertex.y for vertex in part.outline]
    canvas = wall_on_finish.app.finish.canvas
    pixel = canvas.glass.to_device.map(QPointF(sum(xs) / len(xs), sum(ys) / len(ys))).toPoint()
    QTest.mouseClick(canvas, Qt.MouseButton.LeftButton, Keys.NoModifier, pixel)
    assert wall_on_finish.shown.picked == (part.id,)

    wall_on_finish.app.finish.picked.finish.setFocus()
    wall_on_finish.press(Qt.Key.Key_Down)
    row = next(row for row in wall_on_finish.shown.takeoff.parts if row.id == part.id)
    assert row.finish == wall_on_finish.shown.job.finishes[0].id


def test_a_finish_is_made_named_shaded_and_taken_away(wall_on_finish: Person) -> None:
    before = wall_on_finish.shown.job
    open_section(wall_on_finish, Heading.BUILD_UP)
    form = wall_on_finish.app.finish.build_up
    wall_on_finish.click(form.new)
    wall_on_finish.type("Bath")
    wall_on_finish.press(Qt.Key.Key_Return)
    wall_on_finish.click(form.shade.swatches[shades()["white"]])
    finish = wall_on_finish.shown.job.finishes[-1]
    assert (finish.name, finish.shade) == ("Bath", shades()["white"])
    wall_on_finish.click(form.away)
    assert wall_on_finish.shown.job == before


def test_the_ready_made_build_ups_are_shown_in_shades_that_can_be_chosen() -> None:
    assert {finish.shade for finish in ready_made().finishes} <= set(shades().values())


def test_the_keys_go_round_face_section_and_strip(example_on_finish: Person) -> None:
    example_on_finish.app.finish.canvas.setFocus()
    example_on_finish.press(Qt.Key.Key_F6)
    assert QApplication.focusWidget() is example_on_finish.app.finish.heading(Heading.SURFACES)
    example_on_finish.press(Qt.Key.Key_F6)
    example_on_finish.press(Qt.Key.Key_F6)
    assert QApplication.focusWidget() is example_on_finish.app.finish.canvas


def test_a_pick_leaves_the_face_where_it_is(wall_on_finish: Person) -> None:
    before = wall_on_finish.app.finish.canvas.size()
    wall_on_finish.app.store.pick((wall_on_finish.shown.job.faces[0].parts[0].id,))
    QApplication.processEvents()
    assert wall_on_finish.app.finish.picked.fields.isVisible()
    assert wall_on_finish.app.finish.canvas.size() == before


def test_finish_coats_steps_and_spread_rate_are_changed_by_keys_and_undone_step_by_step(wall_on_finish: Person) -> None:
    first, needs = wall_on_finish.shown.job, bill_of(wall_on_finish)[0]
    wall_on_finish.app.finish.surfaces.rows[Kind.SPLASHBACK].finish.setFocus()
    wall_on_finish.press(Qt.Key.Key_Down)  # as the benchtop, which has a primer too
    open_section(wall_on_finish, Heading.BUILD_UP)
    choose(wall_on_finish, wall_on_finish.app.finish.build_up.finish, 1)
    choose_step(wall_on_finish, 4)
    benchtop_l = needed(wall_on_finish, "bench-colour")
    type_into(wall_on_finish, wall_on_finish.app.finish.build_up.fields.row("Coats"), "3")
    assert needed(wall_on_finish, "bench-colour") == pytest.approx(benchtop_l * 1.5)
    wall_on_finish.app.finish.build_up.steps.tree.setFocus()
    wall_on_finish.press(Qt.Key.Key_Insert)
    assert needed(wall_on_finish, "bench-colour") == pytest.approx(benchtop_l * 2)
    open_section(wall_on_finish, Heading.PRODUCTS)
    choose_product(wall_on_finish, [product.id for product in wall_on_finish.shown.job.products].index("bench-colour"))
    type_into(wall_on_finish, wall_on_finish.app.finish.products.fields.row("Spread rate"), "5")
    assert needed(wall_on_finish, "bench-colour") > benchtop_l * 3

    for _ in range(4):
        wall_on_finish.press(Qt.Key.Key_Z, Keys.ControlModifier)
    assert wall_on_finish.shown.job is first
    assert bill_of(wall_on_finish)[0] == needs


def test_a_turning_wheel_changes_no_choice(wall_on_finish: Person) -> None:
    before = wall_on_finish.shown.job
    box = wall_on_finish.app.finish.surfaces.rows[Kind.SPLASHBACK].finish
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
    assert wall_on_finish.shown.job is before
