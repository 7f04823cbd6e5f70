"""Spread rates that are far from what is usual for their use: a slip of the decimal sign, and nothing that is sold."""

import pytest
from msgspec.structs import replace

from shared.edits.build_ups import ready_made
from shared.findings import Code
from shared.job import Unit
from shared.trade.finishes import Step, Work
from shared.trade.products import Use
from tests.takeoff.odd_jobs import SATIN, TAPE, coated, found_in


def said(covers_m2: float, unit: Unit = Unit.MM) -> list[str]:
    job = replace(coated(replace(SATIN, covers_m2=covers_m2), TAPE), unit=unit)
    return [each.message for each in found_in(job) if each.code is Code.UNUSUAL_SPREAD_RATE]


def test_a_slip_of_the_decimal_sign_is_said_with_what_is_usual() -> None:
    usual = "the 10 m2/L that is usual for colour; check it."
    assert said(120) == [f"The spread rate of Tern satin is 120 m2/L, 12 times {usual}"]
    assert said(1.0) == [f"The spread rate of Tern satin is 1 m2/L, a tenth of {usual}"]
    assert "489 ft2/gal" not in said(120, Unit.INCH)[0]
    assert "ft2/gal" in said(120, Unit.INCH)[0]


@pytest.mark.parametrize("rate", [4, 6, 8, 12, 16, 20])
def test_rates_that_are_sold_are_not_looked_at(rate: float) -> None:
    assert said(rate) == []


def test_a_step_with_a_rate_of_its_own_is_named() -> None:
    (message,) = [
        each.message
        for each in found_in(coated(SATIN, TAPE, steps=(Step(Work.COLOUR, "satin", covers_m2=1.2),)))
        if each.code is Code.UNUSUAL_SPREAD_RATE
    ]
    assert "the spread rate of Tern satin is 1.2 m2/L" in message
    assert message.endswith("1/8 of the 10 m2/L that is usual for colour; check it.")


def test_a_use_without_a_usual_rate_is_not_looked_at() -> None:
    job = coated(replace(SATIN, use=Use.FILLER, covers_m2=500), TAPE)
    assert Code.UNUSUAL_SPREAD_RATE not in [each.code for each in found_in(job)]


@pytest.mark.parametrize("unit", Unit)
def test_no_ready_made_product_is_unusual(unit: Unit) -> None:
    for product in ready_made(unit).products:
        job = coated(replace(product, id="satin"), TAPE)
        assert not [each for each in found_in(job) if each.code.startswith("unusual-")], product.called
