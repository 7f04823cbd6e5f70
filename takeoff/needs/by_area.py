"""The demands of steps for coatings and sleeves, from the coated areas that the steps are done on."""

from collections.abc import Iterator
from math import ceil
from typing import NamedTuple

from shared.job import Job
from shared.trade.finishes import Finish, Material, Step, Work
from shared.trade.products import Measure, Product
from shared.written.units import MM2_IN_A_SQUARE_METRE
from takeoff.figures.measured import Takeoff
from takeoff.figures.to_buy import Used
from takeoff.needs.demands import Demand, Products
from takeoff.surfaces.materials import material_of

COATS = frozenset({Work.PRIME, Work.COLOUR, Work.CLEAR})
"""The kinds of work that lay a coat. With each coat some of the product stays behind in tray and sleeve."""

BY_AREA = "coated area x coats / spread rate, / (1 - loss), x (1 + allowance)"
IN_TRAY = (
    f"{BY_AREA}, + what stays in tray and sleeve at each coat; "
    "rooms alike are laid one by one, different rooms together"
)
SLEEVES = "one for each product and finish, and again after so many coats; for each of the rooms alike"


class Surface(NamedTuple):
    """All of one material that gets one finish.

    `area_m2` is its coated area, with every one of the rooms alike counted. `alike` is how often each coat is laid: the
    greatest number of rooms alike that any of its `parts` is in.
    """

    finish: str
    material: Material | None
    area_m2: float
    parts: tuple[str, ...]
    alike: int


def surfaces(job: Job, takeoff: Takeoff) -> tuple[Surface, ...]:
    """The surfaces of a job, in the order of their first parts; none if nothing is coated. `takeoff` is this job's."""
    material = {part.id: material_of(part) for face in job.faces for part in face.parts}
    alike = {room.id: room.alike for room in job.rooms}
    gathered: dict[tuple[str, Material | None], list[tuple[str, float, int]]] = {}
    for row in takeoff.parts:
        if row.finish and row.coated_mm2.amount > 0:
            rows = gathered.setdefault((row.finish, material[row.id]), [])
            rows.append((row.id, row.coated_mm2.amount, alike[row.room]))
    return tuple(
        Surface(
            finish,
            made_of,
            sum(area_mm2 * rooms for _, area_mm2, rooms in rows) / MM2_IN_A_SQUARE_METRE,
            tuple(part for part, _, _ in rows),
            max(rooms for _, _, rooms in rows),
        )
        for (finish, made_of), rows in gathered.items()
    )


class StepOnSurfaces(NamedTuple):
    """A step of a finish that is done, and the surfaces that it is done on. `place` counts the steps from 0."""

    finish: Finish
    place: int
    step: Step
    on: tuple[Surface, ...]

    @property
    def where(self) -> str:
        """The step in words: "finish Fronts, step 3 (prime)"."""
        return f"finish {self.finish.called}, step {self.place + 1} ({self.step.work})"

    @property
    def alike(self) -> int:
        """How many rooms alike the step is done in, one after the other."""
        return max(surface.alike for surface in self.on)

    @property
    def parts(self) -> tuple[str, ...]:
        """The ids of all parts that the step is done on."""
        return tuple(part for surface in self.on for part in surface.parts)


def is_on(step: Step, surface: Surface) -> bool:
    """Whether a step is done on a surface: it has coats, and it is meant for every material or for this one."""
    return step.coats > 0 and (not step.on or surface.material in step.on)


def steps_on_surfaces(job: Job, on: tuple[Surface, ...]) -> tuple[StepOnSurfaces, ...]:
    """Every step that is done on any of these surfaces, in the order of the job's finishes and their steps."""
    by_finish: dict[str, list[Surface]] = {}
    for surface in on:
        by_finish.setdefault(surface.finish, []).append(surface)
    return tuple(
        StepOnSurfaces(finish, place, step, there)
        for finish in job.finishes
        for place, step in enumerate(finish.steps)
        if (there := tuple(surface for surface in by_finish.get(finish.id, ()) if is_on(step, surface)))
    )


def demands_of_steps(job: Job, steps: tuple[StepOnSurfaces, ...], products: Products) -> Iterator[Demand]:
    """The demand of each step for its product. A step without a product, or with one sold by the metre, has none."""
    for done in steps:
        product = products.find(done.step.product)
        if product is not None and product.measure is not Measure.METRES:
            yield _demand(job, done, product, products)


def demands_of_sleeves(job: Job, steps: tuple[StepOnSurfaces, ...], products: Products) -> Iterator[Demand]:
    """The demands for sleeves: as many as the coats of one product in one finish wear out, in each room alike.

    A tool that is not counted in pieces, and a step without a product, have no demand.
    """
    gathered: dict[tuple[str, str, str], list[StepOnSurfaces]] = {}
    for done in steps:
        if done.step.tool and done.step.product:
            gathered.setdefault((done.step.tool, done.finish.id, done.step.product), []).append(done)
    for (tool_id, finish_id, product_id), some in gathered.items():
        tool, product = products.find(tool_id), products.find(product_id)
        if tool is None or product is None or tool.measure is not Measure.PIECES:
            continue
        coats = sum(each.step.coats for each in some)
        use = Used(
            f"{some[0].finish.called}: {product.called}, {_coats(coats)}",
            size=ceil(coats / job.allowances.coats_a_sleeve),
            times=max(each.alike for each in some),
            per=1.0,
            parts=tuple(dict.fromkeys(part for each in some for part in each.parts)),
            finish=finish_id,
        )
        yield Demand(products.options(tool), use, SLEEVES, some[0].where, named=tool)


def _demand(job: Job, done: StepOnSurfaces, product: Product, products: Products) -> Demand:
    step, allowances = done.step, job.allowances
    in_tray = step.work in COATS and product.measure is Measure.LITRES
    use = Used(
        _words(done),
        size=sum(surface.area_m2 for surface in done.on),
        times=step.coats,
        per=0.0,
        loss=allowances.loss,
        allowance=allowances.allowance,
        left_behind=allowances.tray_l * (step.coats * done.alike) if in_tray else 0.0,
        parts=done.parts,
        finish=done.finish.id,
    )
    return Demand(
        products.options(product),
        use,
        IN_TRAY if in_tray else BY_AREA,
        done.where,
        named=product,
        covers_m2=step.covers_m2,
        thinning=step.thinning,
    )


def _words(done: StepOnSurfaces) -> str:
    """What a step does, on which materials and how often: "Fronts: prime on melamine, 1 coat"."""
    materials = (surface.material.value for surface in done.on if surface.material is not None)
    return f"{done.finish.called}: {done.step.work} on {', '.join(materials)}, {_coats(done.step.coats)}"


def _coats(coats: int) -> str:
    return "1 coat" if coats == 1 else f"{coats} coats"
