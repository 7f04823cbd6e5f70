"""What can be changed in What if: prices, spread rates, coats, products, finishes, loss and allowance, the budget."""

from collections.abc import Callable, Iterator
from functools import partial
from typing import NamedTuple

from msgspec.structs import replace

from desktop.fields.words import FieldWords, MoneyWords, NumberWords, SpreadWords
from desktop.look.wording import own_writing
from shared.edits.finishes import (
    find_finish,
    find_product,
    steps_with,
    with_changed_pack,
    with_changed_product,
    with_changed_step,
    with_kind_choice,
    with_product_exchanged,
)
from shared.job import Job, KindChoice, Unit
from shared.limits import GREATEST_LOSS, MOST_COATS
from shared.trade.products import Product, Use
from takeoff.basket.instead import taken_for
from takeoff.bill import Bill
from takeoff.figures.measured import Takeoff
from takeoff.figures.to_buy import Wanted
from takeoff.needs.spread import covers_m2

Options = tuple[tuple[str, object], ...]


class Change(NamedTuple):
    """One thing that can be changed: `which` in words, its value `now`, and `made`, which makes the job with another.

    The new value is typed, as `words` reads it, or is chosen from `options`, each of which is words and a value.
    `product` is the id of the product that the change is about; "" if it is about none.
    """

    which: str
    now: object
    made: Callable[[Job, object], Job]
    words: FieldWords | None = None
    options: Options = ()
    product: str = ""

    def said(self, value: object, unit: Unit) -> str:
        """The change from the present value to this one, in words."""
        return f"{self.which}: {self._shown(value, unit)} instead of {self._shown(self.now, unit)}"

    def _shown(self, value: object, unit: Unit) -> str:
        if self.words is None:
            return next((words for words, each in self.options if each == value), "none")
        return self.words.show(value, unit) or "none"


def price_changes(bill: Bill, _takeoff: Takeoff) -> Iterator[Change]:
    """The price of every pack of the products that could be bought."""
    for product in _needed(bill):
        for place, pack in enumerate(product.packs):
            which = f"{product.name}, {own_writing(bill.job.unit).pack(pack, product.measure)}"
            made = partial(_with_price, product.id, place)
            yield Change(which, pack.price, made, MoneyWords("price"), product=product.id)


def spread_changes(bill: Bill, _takeoff: Takeoff) -> Iterator[Change]:
    """The spread rate of every product that is laid on a surface, in m² per litre or piece."""
    laid = {
        need.product: {used.per for used in need.used if used.finish}
        for wanted in bill.needs.wanted
        for need in wanted.options
    }
    for product in _needed(bill):
        rates = laid[product.id]
        if rates and product.use is not Use.SLEEVE:
            now = rates.pop() if len(rates) == 1 else covers_m2(product)
            words = SpreadWords(product.measure)
            yield Change(product.name, now, partial(_with_spread, product.id), words, product=product.id)


def coat_changes(bill: Bill, takeoff: Takeoff) -> Iterator[Change]:
    """The number of coats of every step, in the finishes that are laid."""
    used = {row.finish for row in takeoff.parts}
    names = {product.id: product.called for product in bill.job.products}
    words = NumberWords("number of coats", most=MOST_COATS, whole=True)
    for finish in bill.job.finishes:
        for place, step in enumerate(finish.steps):
            if finish.id in used and step.product in names:
                which = f"{finish.name}: {step.work}, {names[step.product]}"
                yield Change(which, step.coats, partial(_with_coats, finish.id, place), words, product=step.product)


def product_changes(bill: Bill, _takeoff: Takeoff) -> Iterator[Change]:
    """The product that does a piece of work, if the job has others that could do it."""
    for wanted in bill.needs.wanted:
        taken = taken_for(wanted, bill.basket)
        now = taken.product if taken else wanted.options[0].product
        options = tuple((product.name, product.id) for product in _alike(wanted, bill.job))
        if len(options) > 1:
            yield Change(wanted.name, now, partial(_with_only, wanted), None, options, now)


def finish_changes(bill: Bill, takeoff: Takeoff) -> Iterator[Change]:
    """The finish of every kind of part that gets one."""
    coated = {row.kind for row in takeoff.parts if row.finish}
    options = tuple((finish.name, finish.id) for finish in bill.job.finishes)
    for choice in bill.job.kind_choices:
        if choice.kind in coated:
            yield Change(choice.kind.value, choice.finish, partial(_with_finish, choice), None, options)


def allowance_changes(bill: Bill, _takeoff: Takeoff) -> Iterator[Change]:
    """The loss, and the allowance that is bought beyond the sum, both as shares."""
    allowances = bill.job.allowances
    words = NumberWords("share", most=GREATEST_LOSS, percent=True)
    yield Change("Loss", allowances.loss, partial(_with_allowance, "loss"), words)
    yield Change("Allowance", allowances.allowance, partial(_with_allowance, "allowance"), words)


def budget_changes(bill: Bill, _takeoff: Takeoff) -> Iterator[Change]:
    """The budget."""
    yield Change("Budget", bill.job.money.budget, with_budget, MoneyWords("budget", nothing=0.0))


CHANGES: dict[str, Callable[[Bill, Takeoff], Iterator[Change]]] = {
    "a price": price_changes,
    "a spread rate": spread_changes,
    "coats": coat_changes,
    "a product": product_changes,
    "a finish": finish_changes,
    "loss or allowance": allowance_changes,
    "the budget": budget_changes,
}
"""The sorts of change, by the words in which a person chooses them."""


def with_budget(job: Job, budget: object) -> Job:
    """The job with another budget, in money; 0 means no budget."""
    return replace(job, money=replace(job.money, budget=budget))


def _needed(bill: Bill) -> Iterator[Product]:
    """The products that could be bought, in the order of the needs."""
    for wanted in bill.needs.wanted:
        for need in wanted.options:
            yield find_product(bill.job, need.product)


def _alike(wanted: Wanted, job: Job) -> Iterator[Product]:
    """The products that could do this work: the options, and if a step names the first of them, any of the same use."""
    options = {need.product for need in wanted.options}
    first = find_product(job, wanted.options[0].product)
    named = any(True for _ in steps_with(job, first.id))
    for product in job.products:
        if product.id in options or (named and product.use is first.use):
            yield product


def _with_price(product_id: str, place: int, job: Job, price: object) -> Job:
    pack = find_product(job, product_id).packs[place]
    return with_changed_pack(job, product_id, place, replace(pack, price=price))


def _with_spread(product_id: str, job: Job, covers: object) -> Job:
    """The job in which the product covers so many m² wherever it is laid: no step has its own rate any more."""
    changed = with_changed_product(job, replace(find_product(job, product_id), covers_m2=covers))
    for finish, place, step in steps_with(job, product_id):
        if step.product == product_id:
            changed = with_changed_step(changed, finish.id, place, replace(step, covers_m2=None))
    return changed


def _with_coats(finish_id: str, place: int, job: Job, coats: object) -> Job:
    step = find_finish(job, finish_id).steps[place]
    return with_changed_step(job, finish_id, place, replace(step, coats=coats))


def _with_only(wanted: Wanted, job: Job, chosen: object) -> Job:
    """The job in which this product does the work, and none of the other options is interchangeable with it."""
    changed = job
    for need in wanted.options:
        if need.product != chosen:
            changed = with_product_exchanged(changed, need.product, str(chosen))
            other = find_product(changed, need.product)
            changed = with_changed_product(changed, replace(other, stands_for=""))
    return changed


def _with_finish(choice: KindChoice, job: Job, finish: object) -> Job:
    return with_kind_choice(job, replace(choice, finish=finish))


def _with_allowance(field: str, job: Job, share: object) -> Job:
    return replace(job, allowances=replace(job.allowances, **{field: share}))
