"""The sheets of what to buy, reckoned by an engine that is not ours (the library `formulas`), from areas to cost."""

import io
from collections.abc import Callable
from functools import cache
from importlib.resources import files
from pathlib import Path

import formulas
import openpyxl
import pytest
from msgspec.structs import replace
from openpyxl.worksheet.worksheet import Worksheet

from geometry.outlines.shapes import box
from shared.files.job import job_from_json
from shared.job import Face, Job, Part, Room, Unit
from shared.trade.finishes import Finish, Material, Step, Work
from shared.trade.kinds import Kind
from shared.trade.products import Allowances, Money, Pack, Product, Use
from takeoff.bill import Bill, make_bill
from takeoff.tables.takeoff_xlsx import xlsx_bytes
from takeoff.take_off import take_off

pytestmark = pytest.mark.filterwarnings(
    "ignore::DeprecationWarning", "ignore::FutureWarning", "ignore::SyntaxWarning", "ignore::RuntimeWarning"
)

WALL = Face(
    "a",
    "A",
    parts=(
        Part("wall", Kind.WALL, box(0, 0, 2000, 2400)),
        Part("tiles", Kind.SPLASHBACK, box(0, 910, 2000, 500), name="=tiles"),
        Part("upper", Kind.CABINET, box(0, 1410, 2000, 700)),
        Part("edge", Kind.BENCHTOP, box(0, 872, 2000, 38)),
        Part("door", Kind.DOOR, box(0, 150, 600, 700)),
        Part("drawer", Kind.DRAWER_FRONT, box(700, 150, 600, 700), made_of="timber"),
    ),
)

MELAMINE_ONLY = (Material.MELAMINE,)

JOB = Job(
    "Quince Lane 2",
    rooms=(
        Room("r", "Kitchen", (WALL,), alike=3),
        Room("s", "kitchen", (replace(WALL, id="b", parts=tuple(replace(p, id=f"{p.id}2") for p in WALL.parts)),)),
    ),
    finishes=(
        Finish("tiles", "White", (Step(Work.CLEAN, "cleaner"), Step(Work.COLOUR, "gloss", coats=2, tool="sleeve"))),
        Finish("benchtop", "Bench"),
        Finish(
            "fronts",
            "white",
            (Step(Work.PRIME, "primer", on=MELAMINE_ONLY), Step(Work.COLOUR, "gloss", coats=2, covers_m2=9.5)),
        ),
    ),
    products=(
        Product("cleaner", "Cleaner", Use.CLEANER, (Pack(1.0, 7.35),), covers_m2=20.0),
        Product("primer", "*", Use.PRIMER, (Pack(0.5, 11.15), Pack(1.0, 19.95)), covers_m2=10.0),
        Product("gloss", "=Gloss", Use.COLOUR, (Pack(1.0, 33.05), Pack(2.5, None)), solids=0.45, film_um=40.0),
        Product("sleeve", "Sleeve", Use.SLEEVE, (Pack(2.0, 5.55),)),
        Product("wet", "Silicone", Use.SEALANT, (Pack(0.3, 12.45),), stands_for="wet-area silicone"),
        Product("paint", "Gap sealant", Use.SEALANT, (Pack(0.3, 9.15),), stands_for="paintable sealant", on_shelf=0.1),
        Product("tape", "Tape", Use.TAPE, (Pack(50.0, 9.95),)),
    ),
    money=Money("crowns", tax=0.1, tax_included=False, budget=400.0),
    allowances=Allowances(loss=0.1, allowance=0.05, tray_l=0.05),
)

Change = Callable[[openpyxl.Workbook], None]


@cache
def example() -> Job:
    return job_from_json((files("desktop") / "data" / "example.json").read_bytes(), "the example")


def bill_of(job: Job) -> Bill:
    return make_bill(job, take_off(job))


class Book:
    """The spreadsheet of a job as another engine reckons it, perhaps after a change."""

    def __init__(self, job: Job, folder: Path, change: Change | None = None) -> None:
        content = xlsx_bytes(take_off(job), job, bill_of(job))
        book = openpyxl.load_workbook(io.BytesIO(content))
        if change is not None:
            change(book)
        path = folder / "bill.xlsx"
        book.save(path)
        self._sheets = {name: book[name] for name in book.sheetnames}
        self._solution = formulas.ExcelModel().loads(str(path)).finish().calculate()
        self._name = path.name

    def value(self, sheet: str, cell: str) -> object:
        key = f"'[{self._name}]{sheet.upper()}'!{cell}"
        if key not in self._solution:
            return self._sheets[sheet][cell].value
        value: object = self._solution[key].value[0, 0]
        return value

    def number(self, sheet: str, cell: str) -> float:
        return float(str(self.value(sheet, cell)))

    def total(self, name: str) -> float:
        return self.number("Basket", f"H{row_of(self._sheets['Basket'], name)}")

    def column(self, sheet: str, column: str) -> dict[str, object]:
        """What stands in a column by the name in the first, where it is filled; the first row of a name counts."""
        found: dict[str, object] = {}
        for row in range(2, self._sheets[sheet].max_row + 1):
            if self._sheets[sheet][f"{column}{row}"].value is not None:
                found.setdefault(str(self._sheets[sheet][f"A{row}"].value), self.value(sheet, f"{column}{row}"))
        return found


def row_of(sheet: Worksheet, name: str) -> int:
    return next(row for row in range(1, sheet.max_row + 1) if str(sheet[f"A{row}"].value).startswith(name))


@pytest.mark.parametrize("job", [JOB, replace(JOB, unit=Unit.INCH), example()], ids=["small", "inches", "example"])
def test_another_engine_reckons_the_same_basket_to_the_cent(job: Job, tmp_path: Path) -> None:
    basket = bill_of(job).basket
    book = Book(job, tmp_path)
    assert basket.cost > 0
    assert round(book.total("Total"), 2) == basket.cost
    assert round(book.total("including tax"), 2) == basket.tax
    assert round(book.total("Left of the budget"), 2) == pytest.approx(basket.budget - basket.cost)
    assert set(book.column("Basket", "M").values()) == {"enough"}


def test_every_amount_is_what_was_needed_and_is_left_over(tmp_path: Path) -> None:
    bill, book = bill_of(JOB), Book(JOB, tmp_path)
    called = {product.id: product.name for product in JOB.products}
    needed, left = book.column("Basket", "I"), book.column("Basket", "L")
    assert len(bill.basket.rows) == len(JOB.products)
    for row in bill.basket.rows:
        assert float(str(needed[called[row.product]])) == pytest.approx(row.need, rel=1e-9)
        assert float(str(left[called[row.product]])) == pytest.approx(row.left_over, abs=1e-6)


def test_sizes_come_from_the_sheets_of_the_takeoff() -> None:
    book = openpyxl.load_workbook(io.BytesIO(xlsx_bytes(take_off(JOB), JOB, bill_of(JOB))))
    sizes = {row[0]: str(row[3]) for row in book["Needs"].iter_rows(min_row=2, values_only=True)}
    assert all(sizes[name].startswith("=SUMPRODUCT((Areas!") for name in ("Cleaner", "*", "=Gloss"))
    assert all(sizes[name].startswith("=SUMPRODUCT((Joints!") for name in ("Silicone", "Gap sealant"))
    assert sizes["Tape"].startswith("=SUMPRODUCT((Masking!")
    assert sizes["Sleeve"] == "2"


def test_a_dearer_pack_costs_that_much_more_times_its_number(tmp_path: Path) -> None:
    def dearer(book: openpyxl.Workbook) -> None:
        sheet = book["Basket"]
        sheet[f"F{row_of(sheet, '=Gloss')}"] = 40.0

    basket = bill_of(JOB).basket
    (many,) = (each.many for row in basket.rows for each in row.packs if row.product == "gloss")
    book = Book(JOB, tmp_path, dearer)
    # 33.05 with a tenth of tax is 36.355, and half a cent is rounded up; 40 is 44.
    assert round(book.total("Total"), 2) == round(basket.cost + many * (44.0 - 36.36), 2)


def test_a_lower_spread_rate_asks_for_more_and_says_when_packs_no_longer_suffice(tmp_path: Path) -> None:
    def half(book: openpyxl.Workbook) -> None:
        sheet = book["Needs"]
        sheet[f"G{row_of(sheet, 'Cleaner')}"] = 1.0

    before = next(row.need for row in bill_of(JOB).basket.rows if row.product == "cleaner")
    book = Book(JOB, tmp_path, half)
    assert float(str(book.column("Basket", "I")["Cleaner"])) == pytest.approx(20 * before)
    assert book.column("Basket", "M")["Cleaner"] == "not enough"


def test_allowances_and_areas_run_through_to_what_is_needed(tmp_path: Path) -> None:
    def more(book: openpyxl.Workbook) -> None:
        sheet = book["Allowances"]
        sheet["B2"], sheet["B3"], sheet["B4"], sheet["B5"], sheet["B6"] = 0.2, 0.3, 0.1, 0.5, 0.6
        areas = book["Areas"]
        areas[f"J{next(row for row in range(2, 99) if areas[f'D{row}'].value == '=tiles')}"] = 2.0

    share = Allowances(loss=0.2, allowance=0.3, tray_l=0.1, tape=0.5, sealant=0.6)
    expected = {row.product: row.need for row in bill_of(replace(JOB, allowances=share)).basket.rows}
    needed = Book(JOB, tmp_path, more).column("Basket", "I")
    for product in ("primer", "wet", "paint", "tape", "sleeve"):
        name = next(each.name for each in JOB.products if each.id == product)
        assert float(str(needed[name])) == pytest.approx(expected[product], rel=1e-9)
    # The kitchens' splashbacks are 2 m2 instead of 1 m2 now, and there are three of them: 3 m2 more.
    assert float(str(needed["Cleaner"])) == pytest.approx(expected["cleaner"] + 3 / 20 / 0.8 * 1.3, rel=1e-9)


def test_no_cost_is_reckoned_as_long_as_nothing_has_a_price(tmp_path: Path) -> None:
    def typed(book: openpyxl.Workbook) -> None:
        sheet = book["Basket"]
        sheet[f"F{row_of(sheet, 'Cleaner')}"] = 10.0

    products = tuple(replace(p, packs=tuple(replace(pack, price=None) for pack in p.packs)) for p in JOB.products)
    job = replace(JOB, products=products)
    book = openpyxl.load_workbook(io.BytesIO(xlsx_bytes(take_off(job), job, bill_of(job))), data_only=True)
    assert book["Basket"][f"H{row_of(book['Basket'], 'Total')}"].value in (None, "")
    assert Book(job, tmp_path).value("Basket", f"H{row_of(book['Basket'], 'Total')}") == ""
    assert Book(job, tmp_path, typed).total("Total") == pytest.approx(11.0)


def test_tax_inside_the_prices_is_not_added_again(tmp_path: Path) -> None:
    def inside(book: openpyxl.Workbook) -> None:
        book["Allowances"]["B8"] = "yes"

    book = Book(JOB, tmp_path, inside)
    many = [(row.product, each) for row in bill_of(JOB).basket.rows for each in row.packs]
    assert round(book.total("Total"), 2) == round(sum(each.many * (each.pack.price or 0) for _, each in many), 2)


def test_what_has_no_price_stands_beside_the_total_until_its_price_is_typed(tmp_path: Path) -> None:
    def typed(book: openpyxl.Workbook) -> None:
        sheet = book["Basket"]
        for row in range(2, sheet.max_row + 1):
            if sheet[f"A{row}"].value == "Ebbstone degreaser":
                sheet[f"F{row}"] = 9.0

    bare = (Use.CLEANER, Use.SLEEVE)
    products = tuple(
        replace(p, packs=tuple(replace(pack, price=None) for pack in p.packs)) if p.use in bare else p
        for p in example().products
    )
    job = replace(example(), products=products)
    before, after = Book(job, tmp_path), Book(job, tmp_path, typed)
    total = next(row for row in range(2, 99) if str(before.value("Basket", f"A{row}")).startswith("Total"))
    assert before.value("Basket", f"I{total}") == "so far, 2 products without a price"
    assert after.value("Basket", f"I{total}") == "so far, 1 product without a price"
    assert Book(example(), tmp_path).value("Basket", f"I{total}") in ("", "0")


@pytest.mark.parametrize("unit", list(Unit))
def test_free_lines_and_hinges_are_reckoned_with_the_rest(unit: Unit, tmp_path: Path) -> None:
    # By hand: a door of 700 mm in each of four rooms has 2 hinges, 8 in all; three masks are two packs of 2.
    hinge = Product("hinge", "Hinge", Use.HINGE, (Pack(1.0, 3.0),))
    mask = Product("mask", "Mask", Use.OTHER, (Pack(2.0, 5.0),), anyway=3.0)
    doors = tuple(replace(part, made_of="") for part in WALL.parts)
    job = replace(JOB, unit=unit, rooms=(Room("r", "Kitchen", (replace(WALL, parts=doors),), alike=4),), money=Money())
    job = replace(job, products=(hinge, mask))
    book = Book(job, tmp_path)
    needed = book.column("Basket", "I")
    assert [float(str(needed[name])) for name in ("Hinge", "Mask")] == [8.0, 3.0]
    assert book.total("Total") == pytest.approx(8 * 3.0 + 2 * 5.0)
