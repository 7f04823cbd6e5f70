"""The cheapest packs by an integer program, solved and proved by a constraint solver."""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from ortools.sat.python import cp_model

from takeoff.basket_packs import Choice, Offer

SEED = 1


class _Asked(NamedTuple):
    """The program: whether each offer is taken, and how many of each of its packs."""

    model: cp_model.CpModel
    taken: tuple[cp_model.IntVar, ...]
    counts: tuple[tuple[cp_model.IntVar, ...], ...]


def solve(offers: Sequence[Offer], effort: float) -> Choice:
    """The answer to `takeoff.basket_packs.cheapest`: aim after aim, each holding what the earlier ones reached.

    Where the effort is used up the best answer so far stands, not proved.
    """
    asked = _asked(offers)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = SEED
    solver.parameters.max_deterministic_time = effort
    best = _of_one_size(offers)
    for aim in _aims(asked, offers):
        asked.model.minimize(aim)
        status = solver.solve(asked.model)
        if status in (cp_model.OPTIMAL, cp_model.FEASIBLE):
            best = _choice(solver, asked)
        if status != cp_model.OPTIMAL:
            return best._replace(proved=False)
        asked.model.add(aim == solver.value(aim))
    return best


def _asked(offers: Sequence[Offer]) -> _Asked:
    model = cp_model.CpModel()
    taken = tuple(model.new_bool_var("") for _ in offers)
    counts = tuple(tuple(model.new_int_var(0, _most(offer, size), "") for size in offer.sizes) for offer in offers)
    model.add_exactly_one(taken)
    for offer, chosen, many in zip(offers, taken, counts, strict=True):
        held = cp_model.LinearExpr.weighted_sum(many, offer.sizes)
        model.add(held >= offer.missing).only_enforce_if(chosen)
        for count in many:
            model.add(count == 0).only_enforce_if(~chosen)
    return _Asked(model, taken, counts)


def _most(offer: Offer, size: int) -> int:
    """More packs of one size than would do by themselves are never better: one could go back."""
    return max(-(-offer.missing // size), 0)


def _aims(asked: _Asked, offers: Sequence[Offer]) -> Iterator[cp_model.LinearExpr]:
    """Cost; then what is left over; then how many packs, and of answers alike in all that the earliest offer."""
    counts = [count for many in asked.counts for count in many]
    sizes = [size for offer in offers for size in offer.sizes]
    missing = [-offer.missing for offer in offers]
    places = list(range(len(offers)))
    weighted_sum = cp_model.LinearExpr.weighted_sum
    yield weighted_sum(counts, [price for offer in offers for price in offer.prices])
    yield weighted_sum([*counts, *asked.taken], [*sizes, *missing])
    yield weighted_sum([*counts, *asked.taken], [len(offers)] * len(counts) + places)


def _choice(solver: cp_model.CpSolver, asked: _Asked) -> Choice:
    place = next(place for place, taken in enumerate(asked.taken) if solver.value(taken))
    return Choice(place, tuple(solver.value(count) for count in asked.counts[place]))


def _of_one_size(offers: Sequence[Offer]) -> Choice:
    """The cheapest that is all of one size: where the search begins, and what stands if it finds nothing."""
    found: list[tuple[int, Choice]] = []
    for place, offer in enumerate(offers):
        for pack, (size, price) in enumerate(zip(offer.sizes, offer.prices, strict=True)):
            many = _most(offer, size)
            counts = tuple(many if other == pack else 0 for other in range(len(offer.sizes)))
            found.append((many * price, Choice(place, counts)))
        if offer.missing <= 0:
            found.append((0, Choice(place, (0,) * len(offer.sizes))))
    return min(found)[1]
