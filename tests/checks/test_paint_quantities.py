"""Published worked examples of what a room takes, from its walls to its litres. Sources as named."""

from math import ceil

import pytest
from msgspec.structs import replace

from geometry.outlines.shapes import box
from shared.job import Butt, Face, Job, JointChoice, KindChoice, Part, Section, View
from shared.trade.finishes import Finish, Step, Work
from shared.trade.kinds import Kind, Treatment
from shared.trade.products import Allowances, Product, Use
from takeoff.needs.quantities import needs
from takeoff.take_off import take_off
from tests.takeoff.rows import job_of

FOOT_MM = 304.8
US_GALLON_L = 3.785411784
SQUARE_METRES_A_LITRE = (FOOT_MM / 1000) ** 2 / US_GALLON_L
"""Of each square foot a gallon."""

BARE = Allowances(loss=0, allowance=0, tray_l=0, tape=0, sealant=0)


def surface(name: str, width_mm: float, height_mm: float, *opening_m2: float) -> Face:
    """A wall with so many openings of these areas side by side, each 1 m high."""
    openings = tuple(
        Part(f"{name} {number}", Kind.WINDOW, box(100 + 2000 * number, 500, area * 1000, 1000))
        for number, area in enumerate(opening_m2)
    )
    return Face(name, name, parts=(Part(f"{name} wall", Kind.WALL, box(0, 0, width_mm, height_mm)), *openings))


def painted(covers_m2: float, coats: int, *faces: Face) -> Job:
    product = Product("paint", "Wall paint", Use.COLOUR, covers_m2=covers_m2)
    return replace(
        job_of(*faces),
        kinds=(KindChoice(Kind.WALL, Treatment.IN_PLACE, "walls"),),
        finishes=(Finish("walls", "Walls", (Step(Work.COLOUR, "paint", coats=coats),)),),
        products=(product,),
        allowances=BARE,
    )


def litres(job: Job) -> float:
    return needs(job, take_off(job)).wanted[0].options[0].amount.amount


# Seen: a room of 4 x 3 x 2.5 m with its ceiling, less 3.8 m2 of openings, is 43.2 m2; at 9 to 13 m2/L a coat takes
# 4.8 to 3.32 L.
@pytest.mark.parametrize(("covers", "printed"), [(9, 4.8), (13, 3.32)])
def test_a_room_with_its_ceiling_takes_4_8_to_3_32_litres_a_coat(covers: float, printed: float) -> None:
    room = (
        surface("a", 4000, 2500, 1.9, 1.9),
        surface("b", 3000, 2500),
        surface("c", 4000, 2500),
        surface("d", 3000, 2500),
        replace(surface("ceiling", 4000, 3000), view=View.PLAN),
    )
    job = painted(covers, 1, *room)
    assert take_off(job).totals.coated_mm2 == pytest.approx(43.2e6)
    assert litres(job) == pytest.approx(printed, abs=0.005)


def test_the_walls_of_a_room_in_feet_take_three_gallons_for_two_coats() -> None:
    # Seen, a textbook: 15 x 12 x 9 ft less 4 openings of 15 ft2 is 426 ft2; 2 coats at 350 take 2.434 gal, so 3.
    opening_m2 = 15 * (FOOT_MM / 1000) ** 2
    long, short, high = 15 * FOOT_MM, 12 * FOOT_MM, 9 * FOOT_MM
    walls = (
        surface("a", long, high, opening_m2, opening_m2),
        surface("b", short, high),
        surface("c", long, high, opening_m2),
        surface("d", short, high, opening_m2),
    )
    job = painted(350 * SQUARE_METRES_A_LITRE, 2, *walls)
    assert take_off(job).totals.coated_mm2 / FOOT_MM**2 == pytest.approx(426)
    gallons = litres(job) / US_GALLON_L
    assert gallons == pytest.approx(2.434, abs=0.0005)
    assert ceil(gallons) == 3


# Exact: metres of a butt joint that a cartridge of 300 mL runs.
@pytest.mark.parametrize(("section", "metres"), [(Butt(5, 5), 12.0), (Butt(10, 5), 6.0), (Butt(10, 10), 3.0)])
def test_so_many_metres_of_joint_take_a_cartridge(section: Section, metres: float) -> None:
    face = Face(
        "a",
        "A",
        parts=(
            Part("bench", Kind.BENCHTOP, box(0, 870, metres * 1000, 38)),
            Part("tiles", Kind.SPLASHBACK, box(0, 908, metres * 1000, 600)),
        ),
    )
    job = replace(
        job_of(face),
        joints=(JointChoice("a", ("bench", "tiles"), section=section),),
        products=(Product("bead", "Silicone", Use.SEALANT, stands_for="wet-area silicone"),),
        allowances=BARE,
    )
    assert litres(job) == pytest.approx(0.3)
