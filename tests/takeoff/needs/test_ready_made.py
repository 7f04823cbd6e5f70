"""The ready-made products are enough for every joint that the table of joints knows."""

import tomllib
from importlib.resources import files

import pytest

from shared.edits.build_ups import ready_made
from shared.job import Unit
from shared.trade.products import Use


@pytest.mark.parametrize("unit", Unit)
def test_every_sealant_that_a_joint_asks_for_is_there(unit: Unit) -> None:
    table = tomllib.loads((files("takeoff") / "data" / "joints.toml").read_text("utf-8"))
    asked = {row["sealant"] for row in (table["upright"], *table["joint"])}
    assert {product.stands_for for product in ready_made(unit).products if product.use is Use.SEALANT} == asked
