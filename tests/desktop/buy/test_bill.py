"""What the job costs stands along the bottom, and follows every edit."""

from msgspec.structs import replace
from PySide6.QtCore import Qt

from shared.trade.products import Money, Pack, Product
from tests.window import Keys, Person


def test_the_basket_is_reckoned_in_the_background_and_follows_edits(person: Person) -> None:
    person.app.start.open_doors()
    person.press(Qt.Key.Key_Return)
    person.read("3000")
    person.press(Qt.Key.Key_U, Keys.AltModifier)
    person.read("600 door, 900 pair, splashback")
    person.wait_until(lambda: _is_of_the_job(person))
    assert person.totals[-1].endswith("no prices yet")

    job = person.shown.job
    priced = tuple(replace(product, packs=_priced(product)) for product in job.products)
    person.app.store.edit("Prices", replace(job, products=priced, money=Money("crowns", budget=10.0)))
    person.wait_until(lambda: _is_of_the_job(person))
    bill = person.shown.bill
    assert bill is not None
    assert bill.basket.cost > 10
    assert "(budget 10.00)" in person.totals[-1]

    person.press(Qt.Key.Key_Z, Keys.ControlModifier)
    person.wait_until(lambda: _is_of_the_job(person))
    assert person.totals[-1].endswith("no prices yet")


def _priced(product: Product) -> tuple[Pack, ...]:
    return tuple(replace(pack, price=10.0) for pack in product.packs)


def _is_of_the_job(person: Person) -> bool:
    bill = person.shown.bill
    return bill is not None and bill.job is person.shown.job
