"""The demands of the fronts: new handles, filler for the holes that the old handles leave, and new hinges."""

from collections.abc import Iterator
from math import pi

from shared.job import Job
from shared.trade.products import Use
from shared.written.units import ML_IN_A_LITRE, MM_IN_A_METRE
from takeoff.figures.to_buy import Hardware, Used
from takeoff.needs.demands import Demand, Products
from takeoff.needs.hardware import HANDLES, coated_fronts, holes_to_fill
from takeoff.surfaces.coated import thickness_mm

HANDLE = "handle"
"""The word by which handles are known that are used as "other": they are interchangeable with it."""

HINGE = "hinge"
"""The word by which the hinges to buy are told from other hinges: they are interchangeable with it."""

HOLE_FILLER = "hole filler"
"""The word by which the filler of holes is told from other fillers: it is interchangeable with it."""

HOLE_MM = 5.0
"""The diameter of a hole for a handle's screw (common practice, no source)."""

HOLE_MM2 = pi / 4 * HOLE_MM**2

FILLED = "holes of old handles x thickness of the front x section of a hole 5 mm across, x (1 + allowance)"


def demands_of_handles(job: Job, counted: Hardware, products: Products) -> Iterator[Demand]:
    """The demands of new handles, for all rooms. `counted` is this job's.

    There are none if the old handles go back on. Handles, or filler, that no product is marked for have no demand.
    """
    if job.handle_centres_mm is None:
        return
    marked = tuple(each for each in products.all if each.use is Use.OTHER and each.stands_for == HANDLE)
    handles = products.for_work(Use.HANDLE, HANDLE) or marked
    for term in counted.handles.reason.terms if handles else ():
        use = Used(term.what, size=term.amount, times=1, per=1.0, parts=term.parts)
        yield Demand(handles, use, HANDLES, f"handles of {term.what}")
    fillers = products.for_work(Use.FILLER, HOLE_FILLER)
    if fillers and counted.holes_to_fill.amount:
        yield Demand(fillers, _filled(job), FILLED, "holes of old handles")


def demands_of_hinges(counted: Hardware, products: Products) -> Iterator[Demand]:
    """The demands of new hinges, for all rooms; none if no product is used as hinge: the old ones go back on then."""
    hinges = products.for_work(Use.HINGE, HINGE)
    for term in counted.hinges.reason.terms if hinges else ():
        use = Used(term.what, size=term.amount, times=1, per=1.0, parts=term.parts)
        yield Demand(hinges, use, counted.hinges.reason.rule, f"hinges of {term.what}", counted.hinges.reason.source)


def _filled(job: Job) -> Used:
    """The use of filler: the metres of hole through all boards. A section of 1 mm2 takes 1 mL a metre (exact)."""
    holes = [(front, holes_to_fill(front.part, job.handle_centres_mm)) for front in coated_fronts(job)]
    return Used(
        "holes of old handles",
        size=sum(many * front.alike * thickness_mm(front.part) for front, many in holes) / MM_IN_A_METRE,
        times=1,
        per=ML_IN_A_LITRE / HOLE_MM2,
        allowance=job.allowances.allowance,
        parts=tuple(front.part.id for front, many in holes if many),
    )
