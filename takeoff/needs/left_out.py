"""Things to look at in what a job needs: what was left out of it because it cannot be reckoned with."""

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


def look_at_needs(job: Job, on: tuple[Surface, ...], run: SealedAndTaped, asked: Sequence[Demand]) -> Iterator[Finding]:
    """All that is odd in finishes and products as far as they are used, for what is coated and run in this job.

    `asked` is what that asks of products.
    """
    products = Products(job)
    yield from _without_coats(job, on)
    for laid in steps_on_surfaces(job, on):
        yield from _without_product(laid, products)
    yield from _stand_ins(job.products)
    yield from _not_reckoned(asked)
    yield from look_at_spread_rates(asked, job.unit)
    yield from _without_sealant_or_tape(run, products)
    yield from _unknown_materials(job, {part for surface in on for part in surface.parts})
    yield from look_at_fronts(job)


def _without_coats(job: Job, on: tuple[Surface, ...]) -> Iterator[Finding]:
    finishes = {finish.id: finish for finish in job.finishes}
    found: dict[str, list[str]] = {}
    for surface in on:
        finish = finishes[surface.finish]
        if not any(step.work in COATS and is_on(step, surface) for step in finish.steps):
            material = f" on {surface.material}" if finish.steps and surface.material else ""
            message = f"Finish {finish.called} has no coat{material}; add its coats."
            found.setdefault(message, []).extend(surface.parts)
    yield from (Finding(Code.NO_COATS, message, NOWHERE, tuple(parts)) for message, parts in found.items())


def _without_product(laid: StepOnSurfaces, products: Products) -> Iterator[Finding]:
    step, where = laid.step, _sentence(laid.where)
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


def _not_reckoned(asked: Sequence[Demand]) -> Iterator[Finding]:
    """What is said of spread rates and ratios, each once."""
    found = [finding for each in asked for product in each.options for finding in _about(product, each)]
    yield from dict.fromkeys(found)


def _about(product: Product, asked: Demand) -> Iterator[Finding]:
    """Why it cannot be reckoned how much of a product it takes, and what that means."""
    if any(per_of(other, asked) is not None and has_ratio(other) for other in asked.options):
        yield from (Finding(Code.PASSED_OVER, f"{why} It is not bought.", NOWHERE) for _, why in _whys(product, asked))
    else:
        for code, why in _whys(product, asked):
            yield Finding(code, f"{why} The amount needed is left out.", NOWHERE)


def _whys(product: Product, asked: Demand) -> Iterator[tuple[Code, str]]:
    name = product.called
    if per_of(product, asked) is None:
        if product is asked.named and asked.covers_m2 is not None:
            where = _sentence(asked.where)
            yield Code.SPREAD_RATE, f"{where}: the spread rate of {name} is {asked.covers_m2:g}; set it above 0."
        else:
            say = "set its spread rate, or its solids and film, above 0"
            yield Code.SPREAD_RATE, f"{name} has no spread rate; {say}."
    if product.ratio is not None and not has_ratio(product):
        yield Code.RATIO, f"{name} is mixed {Writing().ratio(product.ratio)}; set both above 0."


def _without_sealant_or_tape(run: SealedAndTaped, products: Products) -> Iterator[Finding]:
    for word in run.sealed:
        if not sealants(word, products):
            message = (
                f"Joints are sealed with {word}, but no sealant is marked as interchangeable with it; add one, "
                "or mark one."
            )
            yield Finding(Code.NO_SEALANT, message, NOWHERE)
    if run.taped and not tapes(products):
        unmarked = f"no tape is marked as interchangeable with {MASKING_TAPE}; mark one"
        several = any(product.use is Use.TAPE for product in products.all)
        what = unmarked if several else "there is no tape; add one"
        yield Finding(Code.NO_TAPE, f"Edges are masked, but {what}.", NOWHERE)


def _unknown_materials(job: Job, coated: set[str]) -> Iterator[Finding]:
    """Words for what a coated part is made of that name no material, each once on a face."""
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
