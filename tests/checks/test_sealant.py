"""How far a cartridge goes. Sources as named; *exact* follows by arithmetic from the definitions."""

import pytest

from shared.job import Butt, Fillet, Section
from takeoff.edges.sealant import metres_per_cartridge, section_area_mm2

US_FLUID_OUNCE_ML = 29.5735295625  # exact: 231 in3 / 128
FOOT_M = 0.3048
INCH_MM = 25.4


def test_millilitres_per_metre_are_the_section_in_square_millimetres() -> None:
    assert section_area_mm2(Butt(10, 5)) == 50  # exact
    assert section_area_mm2(Fillet(6)) == 18  # exact: a triangle, leg2 / 2


# Exact. Metres of a butt joint per 300 and 310 mL.
@pytest.mark.parametrize(
    ("width", "depth", "of_300", "of_310"),
    [
        (5, 5, 12.0, 12.4),
        (6, 6, 8.33, 8.61),
        (10, 5, 6.0, 6.2),
        (10, 6, 5.0, 5.17),
        (10, 10, 3.0, 3.1),
        (20, 10, 1.5, 1.55),
    ],
)
def test_metres_of_a_butt_joint_per_cartridge(width: float, depth: float, of_300: float, of_310: float) -> None:
    section = Butt(width, depth)
    assert metres_per_cartridge(section, 300) == pytest.approx(of_300, abs=0.005)
    assert metres_per_cartridge(section, 310) == pytest.approx(of_310, abs=0.005)


def test_a_20_by_10_joint_takes_300_ml_for_1_5_m_and_600_ml_for_3_m() -> None:
    # Seen: a supplier's table.
    assert metres_per_cartridge(Butt(20, 10), 300) == pytest.approx(1.5)
    assert metres_per_cartridge(Butt(20, 10), 600) == pytest.approx(3.0)


# Exact. A supplier's page prints 50 to 55 ft for the square one, which is wrong: we follow the arithmetic.
@pytest.mark.parametrize(("section", "feet"), [(Butt(6.35, 6.35), 24.3), (Fillet(6.35), 48.6)])
def test_feet_per_cartridge_of_10_1_fluid_ounces(section: Section, feet: float) -> None:
    assert metres_per_cartridge(section, 10.1 * US_FLUID_OUNCE_ML) / FOOT_M == pytest.approx(feet, abs=0.05)


# Exact: 19.25 / (w d) feet per US gallon, w and d in inches.
@pytest.mark.parametrize(
    ("width", "depth", "feet"),
    [
        (1 / 4, 1 / 4, 308),
        (3 / 8, 1 / 4, 205.3),
        (1 / 2, 1 / 4, 154),
        (1 / 2, 3 / 8, 102.7),
        (1 / 2, 1 / 2, 77),
        (3 / 4, 3 / 8, 68.4),
        (3 / 4, 1 / 2, 51.3),
        (1, 1 / 2, 38.5),
    ],
)
def test_feet_per_gallon(width: float, depth: float, feet: float) -> None:
    section = Butt(width * INCH_MM, depth * INCH_MM)
    assert metres_per_cartridge(section, 128 * US_FLUID_OUNCE_ML) / FOOT_M == pytest.approx(feet, abs=0.05)
