"""Savings: changes that would make a basket cheaper. Each is made and the basket worked out anew, nothing is estimated.

The basket already has the cheapest packs and the cheapest of interchangeable products, so the changes use less.
"""

from collections.abc import Callable
from typing import NamedTuple

from msgspec.structs import replace

from shared.edits.finishes import with_changed_finish, with_changed_step
from shared.job import Job
from shared.trade.finishes import Finish, Work
from shared.trade.products import Product
from takeoff.basket.cheapest import basket
from takeoff.basket.compared import compare
from takeoff.figures.measured import Takeoff
from takeoff.figures.to_buy import Basket
from takeoff.needs.by_area import StepOnSurfaces, steps_on_surfaces, surfaces
from takeoff.needs.demands import Products
from takeoff.needs.quantities import needs

LEAST_COATS = {Work.PRIME: 1, Work.COLOUR: 1, Work.CLEAR: 0}
"""The fewest coats that these steps may come down to; other steps keep theirs (own choice)."""

SMALL_ALLOWANCE = 0.05
"""The allowance, as a share, that a careful person may do with (own choice)."""


class Saving(NamedTuple):
    """A change in words, the job and the basket after it, and what it saves. `enough`: the basket is within budget."""

    what: str
    job: Job
    basket: Basket
    saves: float
    enough: bool


class _Change(NamedTuple):
    what: str
    made: Callable[[Job], Job]


def savings(job: Job, takeoff: Takeoff, before: Basket) -> tuple[Saving, ...]:
    """What each change would save by itself, those that save most first; empty if none saves anything.

    The changes are one coat fewer, a smaller allowance, and a finish left out. Leaving out a finish saves what its
    steps use; its masking and sealant stay. `takeoff` and `before` are the takeoff and the basket of this job.
    """
    changes = (*_thrift(job, takeoff), *_left_out(job, takeoff))
    return tuple(saving for _, saving in _that_save(changes, job, takeoff, before))


def under_budget(job: Job, takeoff: Takeoff, before: Basket) -> tuple[Saving, ...]:
    """The savings that bring a basket within its budget; empty for a basket that is not over it.

    They are the changes that are enough by themselves, the one that saves least first. If none is, fewer coats and a
    smaller allowance are added up, those that save most first, until they are enough. They are then one saving that
    names them all; its `enough` is False if all of them are not enough.
    """
    if not before.over:
        return ()
    alone = [saving for saving in savings(job, takeoff, before) if saving.enough]
    return tuple(reversed(alone)) or _added_up(job, takeoff, before)


def _added_up(job: Job, takeoff: Takeoff, before: Basket) -> tuple[Saving, ...]:
    taken: Saving | None = None
    for change, _ in _that_save(_thrift(job, takeoff), job, takeoff, before):
        both = _Change(f"{taken.what}; {change.what}" if taken else change.what, change.made)
        taken = _saving(both, taken.job if taken else job, takeoff, before)
        if taken.enough:
            break
    return (taken,) if taken else ()


def _that_save(
    changes: tuple[_Change, ...], job: Job, takeoff: Takeoff, before: Basket
) -> list[tuple[_Change, Saving]]:
    found = ((change, _saving(change, job, takeoff, before)) for change in changes)
    return sorted((each for each in found if each[1].saves > 0), key=lambda each: -each[1].saves)


def _saving(change: _Change, job: Job, takeoff: Takeoff, before: Basket) -> Saving:
    changed = change.made(job)
    after = basket(changed, needs(changed, takeoff))
    return Saving(change.what, changed, after, -compare(before, after).cost, not after.over)


def _thrift(job: Job, takeoff: Takeoff) -> tuple[_Change, ...]:
    """The changes that leave every surface its finish: one coat fewer, or a smaller allowance."""
    products = Products(job)
    coats = tuple(
        _one_coat_fewer(done, product)
        for done in steps_on_surfaces(job, surfaces(job, takeoff))
        if done.step.coats > LEAST_COATS.get(done.step.work, done.step.coats)
        and (product := products.find(done.step.product)) is not None
    )
    return (*coats, *_small_allowance(job))


def _one_coat_fewer(done: StepOnSurfaces, product: Product) -> _Change:
    coats = done.step.coats
    left = {0: "no coat", 1: "1 coat"}.get(coats - 1, f"{coats - 1} coats")
    return _Change(
        f"{done.finish.called}: {left} of {product.called} instead of {coats}",
        lambda job: with_changed_step(job, done.finish.id, done.place, replace(done.step, coats=coats - 1)),
    )


def _small_allowance(job: Job) -> tuple[_Change, ...]:
    allowances = job.allowances
    if allowances.allowance <= SMALL_ALLOWANCE:
        return ()
    small = replace(allowances, allowance=SMALL_ALLOWANCE)
    what = f"An allowance of {SMALL_ALLOWANCE:.0%} instead of {allowances.allowance:.0%}"
    return (_Change(what, lambda job: replace(job, allowances=small)),)


def _left_out(job: Job, takeoff: Takeoff) -> tuple[_Change, ...]:
    used = {surface.finish for surface in surfaces(job, takeoff)}
    return tuple(_without(finish) for finish in job.finishes if finish.id in used and finish.steps)


def _without(finish: Finish) -> _Change:
    bare = replace(finish, steps=())
    return _Change(f"{finish.called} left out", lambda job: with_changed_finish(job, bare))
