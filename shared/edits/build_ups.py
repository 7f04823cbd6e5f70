"""The build-ups that a new job begins with, and the products that they use, read from `data/build_ups.toml`."""

import tomllib
from functools import cache
from importlib.resources import files
from typing import NamedTuple

import msgspec

from shared.job import Job, Room, Unit
from shared.trade.finishes import Finish
from shared.trade.products import Product


class BuildUps(NamedTuple):
    """Finishes, the products that their steps use, and the products used besides: sealants and tape."""

    finishes: tuple[Finish, ...]
    products: tuple[Product, ...]


@cache
def ready_made(unit: Unit = Unit.MM) -> BuildUps:
    """The build-ups that a new job of this unit begins with, with packs of the sizes usual for it, without prices."""
    table = tomllib.loads((files("shared") / "data" / "build_ups.toml").read_text("utf-8"))
    products = [row | {"packs": row["packs"][unit.name.lower()]} for row in table["products"]]
    return BuildUps(
        msgspec.convert(table["finishes"], tuple[Finish, ...]), msgspec.convert(products, tuple[Product, ...])
    )


def start_job(name: str, unit: Unit = Unit.MM, rooms: tuple[Room, ...] = ()) -> Job:
    """A new job of this name, unit and rooms, with the ready-made build-ups."""
    finishes, products = ready_made(unit)
    return Job(name, rooms, unit, finishes=finishes, products=products)
