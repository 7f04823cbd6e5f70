"""Finish: products, packs, prices and allowances; what makes no sense of them; finishes from files."""

from pathlib import Path

import pytest
from msgspec.structs import replace
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QInputDialog, QLineEdit

from desktop.count.page import COUNT
from desktop.finish.page import FINISH, Heading
from shared.edits.build_ups import start_job
from shared.edits.finishes import find_finish, find_product
from shared.files.job import JobFile, job_to_json
from tests.desktop.finishing import bill_of, choose_product, go_to, open_section, type_into
from tests.window import Person


def test_a_spread_rate_of_nothing_is_refused_in_words_and_nothing_is_lost(example_on_finish: Person) -> None:
    open_section(example_on_finish, Heading.PRODUCTS)
    job = example_on_finish.shown.job
    place = [product.id for product in job.products].index("tile-colour")
    choose_product(example_on_finish, place)
    row = example_on_finish.app.finish.products.fields.row("Spread rate")
    type_into(example_on_finish, row, "0")

    form = example_on_finish.app.finish.products
    assert "the spread rate must be more than 0" in form.fields.trouble
    assert example_on_finish.shown.job is job
    type_into(example_on_finish, row, "8")
    assert find_product(example_on_finish.shown.job, "tile-colour").covers_m2 == 8
    assert form.fields.trouble == ""


NO_SENSE = (
    ("Mix ratio", "0:1", "both parts of a mix ratio must be above 0"),
    ("Mix ratio", "four", "this is not a mix ratio"),
    ("Solids", "120", "the share of solids must be more than 0 %"),
    ("Pot life", "0", "the pot life must be more than 0 h"),
    ("Shelf life once opened", "-1", "the shelf life once opened must be from 0 days"),
)


def test_what_makes_no_sense_of_a_product_is_refused_in_words(
    example_on_finish: Person, subtests: pytest.Subtests
) -> None:
    open_section(example_on_finish, Heading.PRODUCTS)
    job = example_on_finish.shown.job
    fields = example_on_finish.app.finish.products.fields
    for label, text, words in NO_SENSE:
        with subtests.test(f"{label}: {text}"):
            # Another product and back: the fields are shown anew, without what was refused before.
            choose_product(example_on_finish, 0)
            choose_product(example_on_finish, [product.id for product in job.products].index("clear"))
            assert fields.trouble == ""
            type_into(example_on_finish, fields.row(label), text)

            assert words in fields.trouble
            assert example_on_finish.shown.job is job


def test_a_pack_is_added_with_its_size_and_price(example_on_finish: Person) -> None:
    open_section(example_on_finish, Heading.PRODUCTS)
    choose_product(example_on_finish, 0)
    form = example_on_finish.app.finish.products
    many = len(find_product(example_on_finish.shown.job, form.chosen.id if form.chosen else "").packs)
    form.packs.tree.setFocus()
    example_on_finish.press(Qt.Key.Key_Insert)
    type_into(example_on_finish, form.pack_fields.row("Pack size"), "750 mL")
    type_into(example_on_finish, form.pack_fields.row("Price"), "3.25")

    assert form.chosen is not None
    packs = form.chosen.packs
    assert len(packs) == many + 1
    assert (packs[1].size, packs[1].price) == (0.75, 3.25)
    type_into(example_on_finish, form.pack_fields.row("Pack size"), "0 L")
    assert "a pack cannot be empty" in form.pack_fields.trouble


def test_what_was_refused_is_gone_after_another_page(example_on_finish: Person) -> None:
    open_section(example_on_finish, Heading.PRODUCTS)
    row = example_on_finish.app.finish.products.fields.row("Spread rate")
    edit = row.focusProxy()
    assert isinstance(edit, QLineEdit)
    before = edit.text()
    type_into(example_on_finish, row, "0")
    assert example_on_finish.app.finish.products.fields.trouble

    example_on_finish.turn_to(COUNT)
    example_on_finish.turn_to(FINISH)
    assert edit.text() == before
    assert not example_on_finish.app.finish.products.fields.trouble


def test_a_price_typed_does_not_count_the_takeoff_again(example_on_finish: Person) -> None:
    open_section(example_on_finish, Heading.PRODUCTS)
    choose_product(example_on_finish, 0)
    job, takeoff = example_on_finish.shown.job, example_on_finish.shown.takeoff
    type_into(example_on_finish, example_on_finish.app.finish.products.pack_fields.row("Price"), "41.25")

    assert example_on_finish.shown.job is not job
    assert example_on_finish.shown.takeoff is takeoff


def test_a_price_changes_the_basket_and_a_budget_is_gone_over(example_on_finish: Person) -> None:
    cost = bill_of(example_on_finish)[1].cost
    open_section(example_on_finish, Heading.PRODUCTS)
    for place in range(len(example_on_finish.shown.job.products)):
        choose_product(example_on_finish, place)
        for pack in range(len(example_on_finish.shown.job.products[place].packs)):
            go_to(example_on_finish, example_on_finish.app.finish.products.packs.tree, pack)
            type_into(example_on_finish, example_on_finish.app.finish.products.pack_fields.row("Price"), "99")
    assert bill_of(example_on_finish)[1].cost > cost

    open_section(example_on_finish, Heading.MONEY)
    type_into(example_on_finish, example_on_finish.app.finish.money.money.row("Budget"), "100")
    assert bill_of(example_on_finish)[1].over > 0


def test_undoing_all_gives_the_first_job(example_on_finish: Person) -> None:
    before = example_on_finish.shown.job
    open_section(example_on_finish, Heading.MONEY)
    type_into(example_on_finish, example_on_finish.app.finish.money.allowances.row("Loss"), "20 %")
    type_into(example_on_finish, example_on_finish.app.finish.money.money.row("Tax"), "12.5")
    assert (example_on_finish.shown.job.allowances.loss, example_on_finish.shown.job.money.tax) == (0.2, 0.125)
    while example_on_finish.shown.history.can_undo:
        example_on_finish.app.store.undo()
    assert example_on_finish.shown.job is before


def test_a_finish_goes_from_one_job_to_another_by_a_file(example_on_finish: Person, tmp_path: Path) -> None:
    path = tmp_path / "tiles.buildup"
    tiles = find_finish(example_on_finish.shown.job, "tiles")
    example_on_finish.app.menus.action("&Write the finish to a file...").trigger()
    example_on_finish.fill_file_dialog(path)
    example_on_finish.wait_until(path.exists)

    example_on_finish.app.files.show_new(JobFile(start_job("Other")))
    example_on_finish.app.menus.action("Ta&ke a finish from a file...").trigger()
    example_on_finish.fill_file_dialog(path)
    example_on_finish.wait_until(lambda: len(example_on_finish.shown.job.finishes) == 4)
    taken = example_on_finish.shown.job.finishes[-1]
    assert (taken.shade, [step.work for step in taken.steps]) == (tiles.shade, [step.work for step in tiles.steps])
    assert example_on_finish.shown.page is FINISH
    assert example_on_finish.app.finish.build_up.isVisible()
    assert example_on_finish.app.finish.build_up.chosen == taken
    example_on_finish.app.store.undo()
    assert len(example_on_finish.shown.job.finishes) == 3


def test_of_several_finishes_in_a_file_one_is_asked_for(wall_on_finish: Person, tmp_path: Path) -> None:
    path = tmp_path / "job.json"
    path.write_bytes(job_to_json(start_job("Other")))
    wall_on_finish.app.menus.action("Ta&ke a finish from a file...").trigger()
    wall_on_finish.fill_file_dialog(path)
    wall_on_finish.wait_until(lambda: wall_on_finish.app.window.findChild(QInputDialog) is not None)
    dialog = wall_on_finish.app.window.findChild(QInputDialog)
    assert dialog is not None
    dialog.setTextValue("2  Benchtop")
    dialog.accept()
    assert wall_on_finish.shown.job.finishes[-1].name == "Benchtop 2"


def test_a_file_without_a_finish_is_refused_in_words(wall_on_finish: Person, tmp_path: Path) -> None:
    path = tmp_path / "note.buildup"
    path.write_text("milk, bread", "utf-8")
    job = wall_on_finish.shown.job
    wall_on_finish.app.menus.action("Ta&ke a finish from a file...").trigger()
    wall_on_finish.fill_file_dialog(path)
    wall_on_finish.wait_until(wall_on_finish.app.window.notice.isVisible)
    assert "note.buildup" in wall_on_finish.app.window.notice.text()
    assert wall_on_finish.shown.job is job


def test_what_cannot_be_reckoned_with_is_said_in_its_section_and_led_to(example_on_finish: Person) -> None:
    job = example_on_finish.shown.job
    products = tuple(
        replace(product, covers_m2=0.0) if product.id == "tile-colour" else product for product in job.products
    )
    example_on_finish.app.store.edit("As from an odd file", replace(job, products=products))
    needs, _ = bill_of(example_on_finish)
    (finding,) = (finding for finding in needs.findings if finding.code == "spread-rate")

    example_on_finish.app.frame.findings.chosen.emit(finding)
    assert example_on_finish.app.finish.products.isVisible()
    assert example_on_finish.app.finish.products.to_look_at.text() == finding.message


def test_of_products_that_stand_in_for_each_other_the_one_that_is_bought_is_needed(example_on_finish: Person) -> None:
    open_section(example_on_finish, Heading.PRODUCTS)
    tree = example_on_finish.app.finish.products.products.tree
    items = [item for row in range(tree.topLevelItemCount()) if (item := tree.topLevelItem(row)) is not None]
    cells = {item.text(0): item.text(1) for item in items}

    assert cells["Ebbstone satin, sage"] == "2.71 L"
    assert cells["Larkmoor satin, sage"] == ""


def test_the_size_of_a_new_pack_is_typed_over_whatever_is_reckoned_meanwhile(example_on_finish: Person) -> None:
    open_section(example_on_finish, Heading.PRODUCTS)
    form = example_on_finish.app.finish.products
    choose_product(example_on_finish, [product.id for product in example_on_finish.shown.job.products].index("clear"))
    form.packs.tree.setFocus()
    example_on_finish.press(Qt.Key.Key_Insert)
    bill_of(example_on_finish)
    example_on_finish.read("4")

    assert 4.0 in [pack.size for pack in find_product(example_on_finish.shown.job, "clear").packs]
