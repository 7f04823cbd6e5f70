"""The needs of a building of 200 kitchens from its takeoff: once as rooms alike, once with each room drawn."""

from collections.abc import Iterator
from functools import partial

from msgspec.structs import replace

from benchmarks.kitchens import kitchen_wall
from benchmarks.measuring import Measured, medians
from shared.job import Face, Job, Room
from shared.trade.finishes import Finish, Material, Step, Work
from shared.trade.products import Product, Use
from takeoff.needs.quantities import needs
from takeoff.take_off import take_off

KITCHENS = 200
PARTS_A_KITCHEN = 40

GOAL_MS = 1000.0
"""The building takes 5 s from its file to its basket, most of it for measuring and for the basket."""

PRODUCTS = (
    Product("cleaner", "Cleaner", Use.CLEANER, covers_m2=20),
    Product("discs", "Discs", Use.ABRASIVE, covers_m2=2),
    Product("primer", "Primer", Use.PRIMER, covers_m2=10),
    *(Product(f"colour {maker}", f"Colour {maker}", Use.COLOUR, covers_m2=12, stands_for="colour") for maker in "ABC"),
    Product("clear", "Clear", Use.CLEAR, covers_m2=10, ratio=(4, 1)),
    Product("sleeve", "Sleeve", Use.SLEEVE),
    Product("silicone", "Silicone", Use.SEALANT, stands_for="wet-area silicone"),
    Product("gap", "Gap sealant", Use.SEALANT, stands_for="paintable sealant"),
    Product("tape", "Tape", Use.TAPE),
)
STEPS = (
    Step(Work.CLEAN, "cleaner"),
    Step(Work.RINSE, coats=2),
    Step(Work.KEY, "discs"),
    Step(Work.PRIME, "primer", on=(Material.LAMINATE, Material.MELAMINE), tool="sleeve"),
    Step(Work.COLOUR, "colour A", coats=2, tool="sleeve"),
    Step(Work.CLEAR, "clear", coats=2, tool="sleeve"),
)


def measured() -> Iterator[Measured]:
    """The times from takeoff to needs."""
    alike, drawn = _building(rooms=1, alike=KITCHENS), _building(rooms=KITCHENS, alike=1)
    works = (partial(needs, job, take_off(job, sure=False)) for job in (alike, drawn))
    of_alike, of_drawn = medians(*works)
    yield Measured(f"needs of {KITCHENS} kitchens alike", of_alike, "{:.2f} ms", GOAL_MS)
    yield Measured(f"needs of {KITCHENS} kitchens, each drawn", of_drawn, "{:.0f} ms", GOAL_MS)


def _building(rooms: int, alike: int) -> Job:
    finishes = tuple(Finish(name, name, STEPS) for name in ("tiles", "benchtop", "fronts"))
    kitchens = tuple(_kitchen(number, alike) for number in range(rooms))
    return Job("Building", rooms=kitchens, finishes=finishes, products=PRODUCTS)


def _kitchen(number: int, alike: int) -> Room:
    parts = tuple(replace(part, id=f"{number} {part.id}") for part in kitchen_wall(PARTS_A_KITCHEN))
    wall = Face(f"face {number}", f"A{number}", parts=parts)
    return Room(f"room {number}", f"Kitchen {number}", (wall,), alike=alike)
