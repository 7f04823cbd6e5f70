"""Why the packs of a small basket are bought, which can be reckoned in the head."""

from msgspec.structs import replace

from shared.trade.products import Money
from shared.written.writing import Writing
from takeoff.basket.groups import BasketLine
from takeoff.bill import Bill
from takeoff.figures.measured import Figure, Fronts, Reason
from takeoff.figures.to_buy import Bought, Hardware, Need, Needs, Wanted
from takeoff.why.bought import MOST_OTHERS, BoughtRows
from tests.takeoff.bought import BASKET, JOB, KIT, LARGE

NONE = Figure(0.0, Reason("", "", Fronts.HUNG, ()))
NEEDS = Needs((Wanted("satin", (Need("satin", NONE), Need("clear", NONE))),), Hardware(NONE, NONE, NONE))
SATIN, CLEAR = (BasketLine(product, row) for product, row in zip(JOB.products[:2], BASKET.rows[:2], strict=True))


def lines_of(bill: Bill, line: BasketLine) -> list[str]:
    return [row.line for row in BoughtRows(bill, Writing()).rows(line)]


def test_every_pack_comes_to_what_it_costs_and_one_more_is_priced() -> None:
    assert lines_of(Bill(JOB, NEEDS, BASKET), SATIN) == [
        "1 x 1 L tin at 32.00 = 32.00",
        "1 x 2.5 L tin at 65.00 = 65.00",
        "One pack more would cost 32.00.",
        "for satin",
        "shelf life once opened 365 days",
    ]


def test_a_price_without_tax_is_said_with_it() -> None:
    taxed = replace(JOB, money=Money("crowns", tax=0.1, tax_included=False))
    assert lines_of(Bill(taxed, NEEDS, BASKET), SATIN)[0] == "1 x 1 L tin at 35.20 = 35.20"


def test_a_pack_without_a_price_is_said_so() -> None:
    assert lines_of(Bill(JOB, NEEDS, BASKET), CLEAR)[:2] == ["2 x 1 L kit: no price", "pot life 4 h"]


def test_other_ways_to_buy_it_say_by_how_much_they_cost_more_and_only_a_few_are_told() -> None:
    other = BASKET.rows[0]._replace(packs=(Bought(LARGE, 2),), cost=130.0)
    instead = (other, BASKET.rows[1]._replace(packs=(Bought(KIT, 1),), cost=97.0), *(other,) * MOST_OTHERS)
    lines = lines_of(Bill(JOB, NEEDS, BASKET, instead), SATIN)
    told = [line for line in lines if " would cost " in line and not line.startswith("One pack")]
    assert len(told) == MOST_OTHERS
    assert told[:2] == [
        "2 x 2.5 L tin would cost 130.00, 33.00 more.",
        "=Clear, 1 x 1 L kit would cost 97.00, as much.",
    ]
