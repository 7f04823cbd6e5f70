"""What a job needs: how much of every product, with the sum down to the parts that it is used on."""

from collections.abc import Iterable, Iterator

from shared.job import Job, Unit
from shared.trade.products import Product
from shared.written.writing import Writing
from takeoff.figures.measured import Figure, Fronts, Reason, Takeoff, Term
from takeoff.figures.to_buy import Need, Needs, Used, Wanted
from takeoff.needs.anyway import demands_of_what_is_needed_anyway
from takeoff.needs.by_area import demands_of_sleeves, demands_of_steps, steps_on_surfaces, surfaces
from takeoff.needs.by_front import demands_of_handles, demands_of_hinges
from takeoff.needs.by_metre import demands_of_joints, demands_of_masking, sealed_and_taped
from takeoff.needs.demands import Demand, Products, has_ratio, per_of
from takeoff.needs.hardware import hardware
from takeoff.needs.left_out import look_at_needs
from takeoff.needs.spread import FROM_SOLIDS, applied_m2_per_l

Group = tuple[Demand, ...]
"""All demands that the same products can meet."""


def needs(job: Job, takeoff: Takeoff) -> Needs:
    """What a job needs of its products, with every one of the rooms alike counted. `takeoff` is this job's.

    What cannot be worked out is left out, and a finding says so. An empty job needs nothing.
    """
    products = Products(job)
    coated, by_metre = surfaces(job, takeoff), sealed_and_taped(job, takeoff)
    steps = steps_on_surfaces(job, coated)
    counted = hardware(job)
    demands = (
        *demands_of_steps(job, steps, products),
        *demands_of_sleeves(job, steps, products),
        *demands_of_joints(job, by_metre.sealed, products),
        *demands_of_masking(job, by_metre.taped, products),
        *demands_of_handles(job, counted, products),
        *demands_of_hinges(counted, products),
        *demands_of_what_is_needed_anyway(products),
    )
    wanted = [_wanted(group, job.unit) for group in _grouped(demands)]
    place = {product.id: place for place, product in enumerate(job.products)}
    in_order = sorted(filter(None, wanted), key=lambda each: min(place[need.product] for need in each.options))
    return Needs(tuple(in_order), counted, tuple(look_at_needs(job, coated, by_metre, demands)))


def _grouped(demands: Iterable[Demand]) -> tuple[Group, ...]:
    """Demands gathered by the products that can meet them. Interchangeable products share all of their work."""
    groups: dict[frozenset[str], list[Demand]] = {}
    for demand in demands:
        groups.setdefault(frozenset(product.id for product in demand.options), []).append(demand)
    return tuple(tuple(group) for group in groups.values())


def _wanted(group: Group, unit: Unit) -> Wanted | None:
    """How much of each product a group would take, those that finishes name first; None if no amount is known."""
    options = {each.named.id: each.named for each in group if each.named is not None}
    options |= {product.id: product for product in group[0].options if product.id not in options}
    found = tuple(need for product in options.values() if (need := _need(product, group, unit)) is not None)
    first = group[0].options[0]
    return Wanted(first.stands_for or first.called, found) if found else None


def _need(product: Product, group: Group, unit: Unit) -> Need | None:
    """How much of this product a group would take; None if a spread rate is missing or its ratio is not above 0."""
    used = [_used(product, demand, unit) for demand in group]
    whole = tuple(use for use in used if use is not None)
    if len(whole) < len(used) or not has_ratio(product):
        return None
    amount = sum(use.amount for use in whole)
    return Need(
        product.id,
        Figure(amount, _reason(product, group, whole)),
        used=whole,
        mixed=_mixed(product, amount),
    )


def _used(product: Product, demand: Demand, unit: Unit) -> Used | None:
    """The use of this product that meets a demand; None for a product without a spread rate."""
    per = per_of(product, demand)
    if per is None:
        return None
    if demand.use.per:
        return demand.use
    words = f"{demand.use.what} at {Writing(unit).spread_rate(per, product.measure)}"
    if demand.thinning:
        thinned = Writing(unit).spread_rate(applied_m2_per_l(per, demand.thinning), product.measure)
        words += f" (thinned by {Writing().percent(demand.thinning)}: {thinned} as laid)"
    return demand.use._replace(what=words, per=per)


def _reason(product: Product, group: Group, used: tuple[Used, ...]) -> Reason:
    rules = [demand.rule for demand in group]
    sources = [demand.source for demand in group]
    if product.covers_m2 is None and any(not demand.use.per for demand in group):
        sources.append(FROM_SOLIDS)
    if product.ratio is not None:
        rules.append(f"base and hardener mixed {Writing().ratio(product.ratio)} by volume")
    return Reason("; ".join(dict.fromkeys(rules)), "; ".join(dict.fromkeys(sources)), Fronts.OFF, tuple(_terms(used)))


def _terms(used: tuple[Used, ...]) -> Iterator[Term]:
    """A term for each use, then one each for loss, allowance and what is left behind, as far as they are not 0."""
    for use in used:
        yield Term(use.what, use.bare, parts=use.parts)
    beyond: dict[str, float] = {}
    for use in used:
        lost = use.bare / (1 - use.loss) - use.bare
        for words, amount in (
            (f"loss, {Writing().percent(use.loss)} of what is taken", lost),
            (f"allowance, {Writing().percent(use.allowance)} more", (use.bare + lost) * use.allowance),
            ("left in tray and sleeve", use.left_behind),
        ):
            if amount:
                beyond[words] = beyond.get(words, 0.0) + amount
    yield from (Term(words, amount) for words, amount in beyond.items())


def _mixed(product: Product, amount: float) -> tuple[float, float] | None:
    """The litres of base and of hardener in an amount of a mix; None for a product that is not mixed."""
    if product.ratio is None:
        return None
    base, hardener = product.ratio
    return amount * base / (base + hardener), amount * hardener / (base + hardener)
