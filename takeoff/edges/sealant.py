"""How much sealant a bead takes: its section as it is labelled, the area of that, and the metres of a cartridge."""

from collections.abc import Iterable

from shared.job import Butt, Fillet, Section, Unit
from shared.written.units import labelled_mm
from takeoff.figures.measured import JointRow

CARTRIDGE_L = {Unit.MM: 0.3, Unit.INCH: 10.1 * 0.0295735295625}
"""A usual cartridge of 300 mL, or of 10.1 US fl oz (common practice, no source; 310 mL is usual too)."""


def rows_as_labelled(rows: Iterable[JointRow], unit: Unit) -> tuple[JointRow, ...]:
    """The joints of a job of this unit, with sections as they are labelled: a fillet of 6 mm is 1/4 in, 6.35 mm.

    Who runs a bead goes by the label. So the sealant is reckoned by it too.
    """
    return tuple(rows) if unit is Unit.MM else tuple(row._replace(section=as_labelled(row.section)) for row in rows)


def as_labelled(section: Section) -> Section:
    """A section whose sizes are those that a job in inches shows for it."""
    match section:
        case Fillet(leg_mm=leg):
            return Fillet(labelled_mm(leg, Unit.INCH))
        case Butt(width_mm=width, depth_mm=depth):
            return Butt(labelled_mm(width, Unit.INCH), labelled_mm(depth, Unit.INCH))


def section_area_mm2(section: Section) -> float:
    """The area of a bead's section. The same number is the millilitres that a metre of the bead takes (exact).

    A butt joint is width x depth. A fillet is taken as a *triangle* with two equal legs, leg2 / 2. Tooled to a radius
    equal to its leg it would be (1 - pi/4) leg2, less than half of that, so the triangle is on the safe side.
    """
    match section:
        case Fillet(leg_mm=leg):
            return leg * leg / 2
        case Butt(width_mm=width, depth_mm=depth):
            return width * depth


def metres_per_cartridge(section: Section, cartridge_ml: float) -> float:
    """The metres of bead that a cartridge of this many millilitres gives, without waste.

    ZeroDivisionError for a bead whose section has no area.
    """
    return cartridge_ml / section_area_mm2(section)
