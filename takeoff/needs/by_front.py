"""What new handles ask of products: the handles themselves, and filler for the holes that the old ones leave."""

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
"""The word that handles stand for, among products of other use."""

HOLE_FILLER = "hole filler"
"""The word that the filler of holes stands for, where there are several fillers."""

HOLE_MM = 5.0
"""Across a hole for a handle's screw (common practice, no source)."""

HOLE_MM2 = pi / 4 * HOLE_MM**2

FILLED = "holes of old handles x thickness of the front x section of a hole 5 mm across, x (1 + allowance)"


def demands_of_handles(job: Job, counted: Hardware, products: Products) -> Iterator[Demand]:
    """What new handles ask, for all rooms; nothing where the old ones go back on, or no product serves."""
    if job.handle_centres_mm is None:
        return
    handles = tuple(each for each in products.all if each.use is Use.OTHER and each.stands_for == HANDLE)
    for term in counted.handles.reason.terms if handles else ():
        use = Used(term.what, size=term.amount, times=1, per=1.0, parts=term.parts)
        yield Demand(handles, use, HANDLES, f"handles of {term.what}")
    fillers = products.for_work(Use.FILLER, HOLE_FILLER)
    if fillers and counted.holes_to_fill.amount:
        yield Demand(fillers, _filled(job), FILLED, "holes of old handles")


def _filled(job: Job) -> Used:
    """The holes, as metres through the boards; as with a bead, the mm2 of their section are the mL of a metre."""
    holes = [(front, holes_to_fill(front.part, job.handle_centres_mm)) for front in coated_fronts(job)]
    return Used(
        "holes of old handles",
        size=sum(many * front.alike * thickness_mm(front.part) for front, many in holes) / MM_IN_A_METRE,
        times=1,
        per=ML_IN_A_LITRE / HOLE_MM2,
        allowance=job.allowances.allowance,
        parts=tuple(front.part.id for front, many in holes if many),
    )
