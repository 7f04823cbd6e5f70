"""The cheapest packs, chosen and proved by a constraint solver as an integer program."""

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import chain
from typing import NamedTuple

from ortools.sat.python import cp_model

from takeoff.basket.offers import PackChoice, PackOffer

SEED = 1

weighted_sum = cp_model.LinearExpr.weighted_sum


class _Program(NamedTuple):
    """The integer program. Its variables say whether each offer is taken, and how many of each of its packs."""

    offers: tuple[PackOffer, ...]
    model: cp_model.CpModel
    taken: tuple[cp_model.IntVar, ...]
    counts: tuple[tuple[cp_model.IntVar, ...], ...]


def solve(offers: tuple[PackOffer, ...], effort: float) -> PackChoice:
    """The choice that `takeoff.basket.packs.cheapest` gives. Each aim is reached in turn and then kept."""
    best = _of_one_size(offers)
    program = _program(offers)
    solver = _solver(effort)
    proved = False
    for aim in _aims(program):
        _leave_out_what_costs_more(program, _cost(offers, best))
        program.model.minimize(aim)
        status = solver.solve(program.model)
        if status in (cp_model.OPTIMAL, cp_model.FEASIBLE):
            best = _choice(solver, program)
        if status != cp_model.OPTIMAL:
            break
        proved = True
        program.model.add(aim == solver.value(aim))
    return best._replace(proved=proved)


def _solver(effort: float) -> cp_model.CpSolver:
    """A solver that gives the same choice every time, as it has one worker and a fixed seed."""
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = SEED
    solver.parameters.max_deterministic_time = effort
    return solver


def _program(offers: tuple[PackOffer, ...]) -> _Program:
    model = cp_model.CpModel()
    taken = tuple(model.new_bool_var("") for _ in offers)
    counts = tuple(tuple(model.new_int_var(0, _alone(offer, size), "") for size in offer.sizes) for offer in offers)
    model.add_exactly_one(taken)
    for offer, chosen, many in zip(offers, taken, counts, strict=True):
        model.add(weighted_sum(many, offer.sizes) >= offer.missing).only_enforce_if(chosen)
        for count in many:
            model.add(count == 0).only_enforce_if(~chosen)
    return _Program(offers, model, taken, counts)


def _alone(offer: PackOffer, size: int) -> int:
    """How many packs of one size hold all that is missing. More are never better, as one of them could go back."""
    return max(-(-offer.missing // size), 0)


def _leave_out_what_costs_more(program: _Program, ceiling: int) -> None:
    """Bound the number of each pack by the ceiling of the cost, which the solver would take long to find out.

    At best, all that is missing is bought at the lowest price per unit. What is then left of the ceiling pays the extra
    price of a pack, over that lowest price, only so many times.
    """
    for offer, counts in zip(program.offers, program.counts, strict=True):
        packs = tuple(zip(offer.sizes, offer.prices, strict=True))
        best_size, best_price = min(packs, key=_price_per_unit, default=(0, 0))
        spare = max(ceiling * best_size - best_price * offer.missing, 0)
        for count, (size, price) in zip(counts, packs, strict=True):
            over = price * best_size - best_price * size
            if over and spare // over < _alone(offer, size):
                program.model.add(count <= spare // over)


def _price_per_unit(pack: tuple[int, int]) -> Fraction:
    size, price = pack
    return Fraction(price, size)


def _aims(program: _Program) -> Iterator[cp_model.LinearExpr]:
    """The aims in turn: the cost, what is left over, and the number of packs; offers that tie are taken in order."""
    counts = list(chain.from_iterable(program.counts))
    offers = program.offers
    yield weighted_sum(counts, [price for offer in offers for price in offer.prices])
    sizes = [size for offer in offers for size in offer.sizes]
    yield weighted_sum([*counts, *program.taken], [*sizes, *(-offer.missing for offer in offers)])
    yield weighted_sum([*counts, *program.taken], [len(offers)] * len(counts) + list(range(len(offers))))


def _choice(solver: cp_model.CpSolver, program: _Program) -> PackChoice:
    place = next(place for place, taken in enumerate(program.taken) if solver.value(taken))
    return PackChoice(place, tuple(solver.value(count) for count in program.counts[place]))


def _of_one_size(offers: Sequence[PackOffer]) -> PackChoice:
    """The cheapest choice of packs of one size. The search begins there, and keeps to it if it finds no other."""
    found: list[tuple[int, PackChoice]] = []
    for place, offer in enumerate(offers):
        for pack, size in enumerate(offer.sizes):
            counts = [0] * len(offer.sizes)
            counts[pack] = _alone(offer, size)
            found.append((counts[pack] * offer.prices[pack], PackChoice(place, tuple(counts))))
        if offer.missing <= 0:
            found.append((0, PackChoice(place, (0,) * len(offer.sizes))))
    return min(found)[1]


def _cost(offers: Sequence[PackOffer], choice: PackChoice) -> int:
    return sum(price * many for price, many in zip(offers[choice.offer].prices, choice.counts, strict=True))
