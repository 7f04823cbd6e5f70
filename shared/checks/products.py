"""Checks products, finishes and money: their ids, and that every number is within its range.

It is a part of `shared.checks.job`. What can be read but not reckoned with (a pack of 0 L, a step without its product)
is a finding of the takeoff.
"""

import re
from collections import Counter
from collections.abc import Iterable

from shared import limits
from shared.checks.numbers import in_words
from shared.errors import JobError
from shared.job import Job, Part
from shared.trade.finishes import Finish, Step
from shared.trade.products import Product

_SHADE = re.compile(r"#[0-9A-Fa-f]{6}")

Ranges = Iterable[tuple[str, float | None, float, float]]
"""What each number is, its value, and the least and the greatest that it may be. None, for not said, is allowed."""


def check_products(job: Job) -> None:
    """Refuse products, finishes, money or allowances that do not hold together: JobError for the first trouble."""
    for what, count, most in (
        ("products", len(job.products), limits.MOST_PRODUCTS),
        ("packs", sum(len(product.packs) for product in job.products), limits.MOST_PRODUCTS),
        ("steps", sum(len(finish.steps) for finish in job.finishes), limits.MOST_PRODUCTS),
    ):
        if count > most:
            raise JobError(f"the job has {count} {what}; Recoat can use at most {most}", do="remove some")
    for name, many in Counter(product.id for product in job.products).items():
        if many > 1:
            raise JobError(f'two products have the id "{name}"', do="give one of them another id")
    _check_stand_ins(job)
    for product in job.products:
        _check_numbers(_product_ranges(product), f"product {product.called}")
    for finish in job.finishes:
        _check_finish(finish)
    for room in job.rooms:
        _check_numbers((("number of rooms alike", room.alike, 1, limits.MOST_ALIKE),), room.called)
    _check_numbers(_money_ranges(job), "prices and allowances")


def front_ranges(part: Part) -> Ranges:
    """The ranges of the numbers that only fronts have."""
    return (
        ("number of hinges", part.hinges, 0, limits.MOST_HINGES),
        ("hole centres in mm", part.hole_centres_mm, 0.0, limits.LONGEST_MM),
        ("number of the tag", part.tag_number, 0, limits.HIGHEST_TAG),
    )


def _check_stand_ins(job: Job) -> None:
    for word, many in Counter(product.stands_for for product in job.products if product.stands_for).items():
        if many > limits.MOST_STAND_INS:
            stand = f"{many} products are interchangeable with {word[: limits.LONGEST_QUOTED]}"
            most = f"at most {limits.MOST_STAND_INS} can be compared"
            raise JobError(f"{stand}, and {most}", do="give some of them another word")


def _check_finish(finish: Finish) -> None:
    where = f"finish {finish.called}"
    if finish.shade and not _SHADE.fullmatch(finish.shade):
        raise JobError(f'its shade is "{finish.shade[:20]}"', where=where, do="write it as #RRGGBB, or leave it out")
    for number, step in enumerate(finish.steps, 1):
        _check_numbers(_step_ranges(step), f"{where}, step {number} ({step.work})")


def _check_numbers(ranges: Ranges, where: str) -> None:
    for what, value, least, most in ranges:
        if value is not None and not least <= value <= most:  # NaN fails every comparison
            do = f"set it from {max(least, 0.0):.15g} to {most:.15g}"  # below 0 it is read, but never meant
            raise JobError(f"the {what} is {in_words(value)}", where=where, do=do)


def _product_ranges(product: Product) -> Ranges:
    most = limits.MOST_OF_A_PRODUCT
    yield "spread rate", product.covers_m2, -most, most
    yield "share of solids", product.solids, -1.0, 1.0
    yield "dry film in um", product.film_um, -most, most
    yield "pot life in hours", product.usable_h, -most, most
    yield "shelf life once opened, in days,", product.keeps_days, -most, most
    yield "amount on the shelf", product.on_shelf, 0.0, most
    yield "number needed anyway", product.anyway, 0.0, most
    for part in product.ratio or ():
        yield "mix ratio", part, -most, most
    for pack in product.packs:
        yield "size of a pack", pack.size, -most, most
        yield "price of a pack", pack.price, 0.0, most


def _step_ranges(step: Step) -> Ranges:
    hours = limits.MOST_HOURS
    return (
        ("number of coats", step.coats, 0, limits.MOST_COATS),
        ("spread rate", step.covers_m2, -limits.MOST_OF_A_PRODUCT, limits.MOST_OF_A_PRODUCT),
        ("thinning", step.thinning, 0.0, 1.0),
        ("shortest wait for the next step, in hours,", step.next_h, 0.0, hours),
        ("longest wait for the next coat, in hours,", step.next_most_h, 0.0, hours),
        ("time until it is touch dry, in hours,", step.touch_h, 0.0, hours),
        ("time until it is in service, in hours,", step.use_h, 0.0, hours),
    )


def _money_ranges(job: Job) -> Ranges:
    money, allowances = job.money, job.allowances
    return (
        ("tax", money.tax, 0.0, 1.0),
        ("budget", money.budget, 0.0, limits.MOST_MONEY),
        ("loss", allowances.loss, 0.0, limits.GREATEST_LOSS),
        ("allowance", allowances.allowance, 0.0, limits.GREATEST_ALLOWANCE),
        ("litres left in the tray", allowances.tray_l, 0.0, limits.GREATEST_ALLOWANCE),
        ("allowance of tape", allowances.tape, 0.0, limits.GREATEST_ALLOWANCE),
        ("allowance of sealant", allowances.sealant, 0.0, limits.GREATEST_ALLOWANCE),
        ("number of coats per sleeve", allowances.coats_a_sleeve, 1, limits.MOST_COATS),
        ("hole centres of the new handles in mm", job.handle_centres_mm, 0.0, limits.LONGEST_MM),
    )
