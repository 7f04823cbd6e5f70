"""How much sealant a bead takes: the area of its section, and the metres of a cartridge."""

from shared.job import Butt, Fillet, Section

CARTRIDGE_ML = 300.0
"""A usual cartridge (common practice, no source; 310 mL and 10.1 US fl oz are usual too)."""


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
