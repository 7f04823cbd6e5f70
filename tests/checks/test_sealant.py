"""How far a cartridge goes. Sources as named; *exact* follows by arithmetic from the definitions."""

import io

import openpyxl
import pytest

from geometry.outlines.shapes import box
from shared.job import Butt, Face, Fillet, Job, Part, Room, Section, Unit
from shared.trade.kinds import Kind
from shared.trade.products import Allowances, Measure, Pack, Product, Use
from shared.written.writing import Writing
from takeoff.bill import make_bill
from takeoff.edges.sealant import as_labelled, metres_per_cartridge, section_area_mm2
from takeoff.tables.takeoff_why import why_text
from takeoff.tables.takeoff_xlsx import xlsx_bytes
from takeoff.take_off import take_off
from takeoff.why.figures import bead_row

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


# Exact: in = 25.4 mm. A bead that is labelled in inches is run by that label.
@pytest.mark.parametrize(
    ("rule", "labelled", "words"),
    [
        (Fillet(6), Fillet(6.35), 'fillet 1/4"'),
        (Fillet(3), Fillet(3.175), 'fillet 1/8"'),
        (Butt(5, 5), Butt(4.7625, 4.7625), 'butt 3/16" x 3/16"'),
        (Butt(6.35, 12.7), Butt(6.35, 12.7), 'butt 1/4" x 1/2"'),
        (Fillet(0.1), Fillet(0.79375), 'fillet 1/32"'),
    ],
)
def test_a_section_in_inches_is_the_one_that_is_labelled(rule: Section, labelled: Section, words: str) -> None:
    assert as_labelled(rule) == labelled
    assert Writing(Unit.INCH).section(as_labelled(rule)) == words


def inch_wall() -> Job:
    """A benchtop 10 ft long along a wall, in inches: ten feet of a fillet of 1/4 in."""
    parts = (
        Part("wall", Kind.WALL, box(0, 0, 120 * INCH_MM, 96 * INCH_MM)),
        Part("tiles", Kind.SPLASHBACK, box(0, 36 * INCH_MM, 120 * INCH_MM, 18 * INCH_MM)),
        Part("bench", Kind.BENCHTOP, box(0, 34.5 * INCH_MM, 120 * INCH_MM, 1.5 * INCH_MM)),
    )
    cartridge = Pack(10.1 * US_FLUID_OUNCE_ML / 1000, 8.0, "cartridge")
    return Job(
        "Wall",
        (Room("r", "Kitchen", (Face("a", "A", parts=parts),)),),
        Unit.INCH,
        products=(Product("seal", "Silicone", Use.SEALANT, (cartridge,), stands_for="wet-area silicone"),),
        allowances=Allowances(sealant=0.0),
    )


def test_a_bead_in_inches_takes_the_sealant_of_its_label() -> None:
    # By hand: 19.25 / (1/4 x 1/4) = 308 ft a gallon for a square bead, 616 ft for the triangle: exact. Ten feet take
    # 10 / 616 gal = 2.0779 fl oz; a fillet of 6 mm would take 1.8552.
    job = inch_wall()
    (need,) = (wanted.options[0] for wanted in make_bill(job, take_off(job)).needs.wanted)
    assert need.amount.amount * 1000 / US_FLUID_OUNCE_ML == pytest.approx(128 * 10 / 616)


def test_what_comes_in_fluid_ounces_is_reckoned_in_them_in_every_sum() -> None:
    # By hand: 616 ft a gallon are 4.8125 ft a fluid ounce, and 10 / 4.8125 = 2.0779; 10.1 - 2.0779 = 8.0221 are left.
    job = inch_wall()
    takeoff = take_off(job)
    bill = make_bill(job, takeoff)
    assert ": 10.00 ft / 4.812 = 2.078 US fl oz" in why_text(takeoff, job, bill)
    book = openpyxl.load_workbook(io.BytesIO(xlsx_bytes(takeoff, job, bill)), data_only=True)
    (needed,) = [row for row in book["Needs"].iter_rows(values_only=True) if row[0] == "Silicone"]
    assert (needed[4], needed[11]) == ("ft", "US fl oz")
    assert (float(str(needed[6])), float(str(needed[10]))) == pytest.approx((4.8125, 2.0779), abs=1e-4)
    (bought,) = [row for row in book["Basket"].iter_rows(values_only=True) if row[0] == "Silicone"]
    assert bought[3] == "US fl oz"
    assert (float(str(bought[2])), float(str(bought[11]))) == pytest.approx((10.1, 8.0221), abs=1e-4)


def test_no_amount_of_a_sum_is_shown_as_nothing() -> None:
    # By hand: 1 mL is 1 / 3785.411784 = 0.000264 US gal, which three decimals would show as 0.000.
    assert Writing(Unit.INCH).amount_in_sum(0.001, Measure.LITRES) == "0.0003 US gal"
    assert Writing(Unit.MM).amount_in_sum(0.0002, Measure.LITRES) == "0.0002 L"
    assert Writing(Unit.INCH).amount_in_sum(0.0, Measure.LITRES) == "0.000 US gal"


@pytest.mark.parametrize(
    ("section", "words"),
    [
        (Butt(6.35, 6.35), "Sealant 308 ft a US gal (width x depth); 10.1 fl oz run 24.3 ft"),
        (Fillet(6.35), "Sealant 616 ft a US gal (a triangle, leg2 / 2); 10.1 fl oz run 48.6 ft"),
    ],
)
def test_why_says_feet_a_gallon_in_a_job_in_inches(section: Section, words: str) -> None:
    assert bead_row(section, Writing(Unit.INCH)).line == words
