"""What is bought whatever is measured: free lines of the basket, bought in packs like the rest."""

from msgspec.structs import replace

from geometry.outlines.shapes import box
from shared.job import Job, Part
from shared.trade.kinds import Kind
from shared.trade.products import Allowances, Money, Pack, Product, Use
from takeoff.basket.groups import basket_groups
from takeoff.bill import Bill, make_bill
from takeoff.take_off import take_off
from tests.takeoff.rows import face_of, job_of

MASK = Product("mask", "Dust mask", Use.OTHER, (Pack(1.0, 4.0), Pack(5.0, 15.0)), anyway=6.0)
HIRE = Product("hire", "Hire of a dehumidifier", Use.OTHER, (Pack(1.0, 38.0, "day"),), anyway=3.0)
WASTE = Product("waste", "Waste, taken to the tip", Use.OTHER, (Pack(1.0, 55.0, "load"),), anyway=1.0)


def bill_of(*products: Product, job: Job | None = None) -> Bill:
    job = replace(job or Job("Quince Lane 2"), products=products, money=Money("crowns", budget=300.0))
    return make_bill(job, take_off(job))


def test_masks_hire_and_waste_are_bought_like_the_rest() -> None:
    # By hand: six masks are 5 + 1 = 15.00 + 4.00; three days are 3 x 38.00 = 114.00; one load is 55.00: 188.00 in all.
    basket = bill_of(MASK, HIRE, WASTE).basket
    assert [(row.product, row.cost) for row in basket.rows] == [("mask", 19.0), ("hire", 114.0), ("waste", 55.0)]
    assert basket.cost == 188.0
    assert basket.proved
    assert not bill_of(MASK, HIRE, WASTE).left_out


def test_what_is_on_the_shelf_is_used_first() -> None:
    (row,) = bill_of(replace(MASK, on_shelf=5.0)).basket.rows
    assert (row.from_shelf, row.cost) == (5.0, 4.0)


def test_it_is_added_to_what_the_work_needs_of_the_same_product() -> None:
    # By hand: two doors of 700 mm have 2 hinges each (data/hinges.toml), and 2 more are wanted: 6.
    doors = job_of(face_of(*(Part(name, Kind.DOOR, box(x, 0, 450, 700)) for name, x in (("a", 0), ("b", 500)))))
    hinge = Product("hinge", "Hinge", Use.HINGE, (Pack(1.0, 3.5),), anyway=2.0)
    bill = bill_of(hinge, job=replace(doors, allowances=Allowances()))
    (row,) = bill.basket.rows
    assert (row.need, row.cost) == (6.0, 21.0)
    assert [group.name for group in basket_groups(bill.basket, bill.job)] == ["Handles and hinges"]


def test_a_number_counts_only_for_what_is_counted_in_pieces() -> None:
    assert bill_of(replace(MASK, use=Use.COLOUR)).basket.rows == ()
