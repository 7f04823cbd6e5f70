"""Things to look at in what a job needs: what was left out because its amount cannot be worked out."""

from collections.abc import Iterator, Sequence

from shared.findings import NOWHERE, Code, Finding
from shared.job import Job
from shared.trade.finishes import Material
from shared.trade.products import Measure, Product, Use
from shared.written.writing import Writing
from takeoff.needs.by_area import COATS, StepOnSurfaces, Surface, is_on, steps_on_surfaces
from takeoff.needs.by_metre import MASKING_TAPE, SealedAndTaped, sealants, tapes
from takeoff.needs.demands import Demand, Products, has_ratio, per_of
from takeoff.needs.hardware import look_at_fronts
from takeoff.needs.unusual import look_at_spread_rates
from takeoff.surfaces.materials import material_named


def look_at_needs(
    job: Job, coated: tuple[Surface, ...], by_metre: SealedAndTaped, demands: Sequence[Demand]
) -> Iterator[Finding]:
    """All that is odd in the finishes, products and fronts of a job, as far as they are used.

    `coated` and `by_metre` are what is coated, sealed and taped in this job, and `demands` what comes of that.
    """
    products = Products(job)
    yield from _without_coats(job, coated)
    for done in steps_on_surfaces(job, coated):
        yield from _without_product(done, products)
    yield from _stand_ins(job.products)
    yield from _unknown_amounts(demands)
    yield from look_at_spread_rates(demands, job.unit)
    yield from _without_sealant_or_tape(by_metre, products)
    yield from _unknown_materials(job, {part for surface in coated for part in surface.parts})
    yield from look_at_fronts(job)


def _without_coats(job: Job, coated: tuple[Surface, ...]) -> Iterator[Finding]:
    finishes = {finish.id: finish for finish in job.finishes}
    found: dict[str, list[str]] = {}
    for surface in coated:
        finish = finishes[surface.finish]
        if not any(step.work in COATS and is_on(step, surface) for step in finish.steps):
            material = f" on {surface.material}" if finish.steps and surface.material else ""
            message = f"Finish {finish.called} has no coat{material}; add its coats."
            found.setdefault(message, []).extend(surface.parts)
    yield from (Finding(Code.NO_COATS, message, NOWHERE, tuple(parts)) for message, parts in found.items())


def _without_product(done: StepOnSurfaces, products: Products) -> Iterator[Finding]:
    step, where = done.step, _sentence(done.where)
    if not step.product:
        if step.work in COATS:
            yield Finding(Code.NO_PRODUCT, f"{where}, has no product; choose one.", NOWHERE)
        return
    product = products.find(step.product)
    if product is None:
        message = f'{where}, uses a product "{step.product}" that is not in the list; choose another.'
        yield Finding(Code.NO_PRODUCT, message, NOWHERE)
    elif product.measure is Measure.METRES:
        message = f"{where}, uses {product.called}, which is counted in metres; choose another product."
        yield Finding(Code.MEASURE, message, NOWHERE)
    if step.tool:
        yield from _without_tool(step.tool, where, products)


def _without_tool(tool_id: str, where: str, products: Products) -> Iterator[Finding]:
    tool = products.find(tool_id)
    if tool is None:
        message = f'{where}, is applied with a tool "{tool_id}" that is not in the list; choose another.'
        yield Finding(Code.NO_PRODUCT, message, NOWHERE)
    elif tool.measure is not Measure.PIECES:
        message = f"{where}, is applied with {tool.called}, which is not counted in pieces; choose a tool."
        yield Finding(Code.MEASURE, message, NOWHERE)


def _stand_ins(products: tuple[Product, ...]) -> Iterator[Finding]:
    first: dict[str, Product] = {}
    for product in products:
        if not product.stands_for:
            continue
        other = first.setdefault(product.stands_for, product)
        if other.measure is not product.measure:
            message = (
                f"{other.called} and {product.called} are interchangeable with {product.stands_for}, "
                f"but one is counted in {other.measure} and the other in {product.measure}; give one another word."
            )
            yield Finding(Code.STAND_IN, message, NOWHERE)


def _unknown_amounts(demands: Sequence[Demand]) -> Iterator[Finding]:
    """Things to look at in spread rates and ratios, each said once."""
    found = [finding for demand in demands for product in demand.options for finding in _about(product, demand)]
    yield from dict.fromkeys(found)


def _about(product: Product, demand: Demand) -> Iterator[Finding]:
    """Why the amount of a product cannot be worked out, and whether another product is bought or none is."""
    if any(per_of(other, demand) is not None and has_ratio(other) for other in demand.options):
        yield from (Finding(Code.PASSED_OVER, f"{why} It is not bought.", NOWHERE) for _, why in _whys(product, demand))
    else:
        for code, why in _whys(product, demand):
            yield Finding(code, f"{why} The amount needed is left out.", NOWHERE)


def _whys(product: Product, demand: Demand) -> Iterator[tuple[Code, str]]:
    name = product.called
    if per_of(product, demand) is None:
        if product is demand.named and demand.covers_m2 is not None:
            where = _sentence(demand.where)
            yield Code.SPREAD_RATE, f"{where}: the spread rate of {name} is {demand.covers_m2:g}; set it above 0."
        else:
            say = "set its spread rate, or its solids and film, above 0"
            yield Code.SPREAD_RATE, f"{name} has no spread rate; {say}."
    if product.ratio is not None and not has_ratio(product):
        yield Code.RATIO, f"{name} is mixed {Writing().ratio(product.ratio)}; set both above 0."


def _without_sealant_or_tape(by_metre: SealedAndTaped, products: Products) -> Iterator[Finding]:
    for word in by_metre.sealed:
        if not sealants(word, products):
            message = (
                f"Joints are sealed with {word}, but no sealant is marked as interchangeable with it; add one, "
                "or mark one."
            )
            yield Finding(Code.NO_SEALANT, message, NOWHERE)
    if by_metre.taped and not tapes(products):
        unmarked = f"no tape is marked as interchangeable with {MASKING_TAPE}; mark one"
        several = any(product.use is Use.TAPE for product in products.all)
        what = unmarked if several else "there is no tape; add one"
        yield Finding(Code.NO_TAPE, f"Edges are masked, but {what}.", NOWHERE)


def _unknown_materials(job: Job, coated: set[str]) -> Iterator[Finding]:
    """Words that name no material, typed for what a coated part is made of. Each is said once a face."""
    known = ", ".join(Material)
    for face in job.faces:
        found: dict[str, list[str]] = {}
        for part in face.parts:
            if part.made_of and part.id in coated and material_named(part.made_of) is None:
                found.setdefault(part.made_of, []).append(part.id)
        for words, parts in found.items():
            message = (
                f'"{words}" is none of {known}, so the usual material is assumed. If a step depends on it, use one '
                "of these words."
            )
            yield Finding(Code.MATERIAL, message, face.id, tuple(parts))


def _sentence(words: str) -> str:
    return words[:1].upper() + words[1:]
