"""A finish as a small file of its own, to be copied between jobs.

It is a job file without rooms, with one finish and the products for it. So it is read, checked and brought up to date
like any job file, and a finish can be copied from any job file just as well.
"""

from pathlib import Path

from msgspec.structs import replace

from shared.checks.job import check_job
from shared.edits.finishes import (
    find_finish,
    find_product,
    free_finish_name,
    fresh_finish_id,
    fresh_product_id,
    with_finish,
    with_product,
)
from shared.errors import FileError, JobError
from shared.files.disk import write_atomically
from shared.files.job import job_to_json, read_job_file
from shared.job import Job
from shared.trade.finishes import Finish
from shared.trade.products import Money, Product

ENDING = ".buildup"
"""The ending of such a file's name, for people to tell it from a job's. Only the content decides what it is."""


def finish_alone(job: Job, finish_id: str) -> Job:
    """A job with only this finish, the products that its steps name, and the products that may replace those.

    It keeps the prices, but neither the amounts on the shelf nor the budget. JobError where the job lacks the finish or
    one of the products named.
    """
    finish = find_finish(job, finish_id)
    named = {name for step in finish.steps for name in (step.product, step.tool) if name}
    words = {find_product(job, name).stands_for for name in sorted(named)} - {""}
    products = (product for product in job.products if product.id in named or product.stands_for in words)
    return Job(
        finish.name,
        unit=job.unit,
        kinds=tuple(replace(choice, finish="") for choice in job.kinds),
        finishes=(finish,),
        products=tuple(replace(product, on_shelf=0.0) for product in products),
        money=replace(job.money, budget=0.0),
    )


def write_finish_file(path: Path, job: Job, finish_id: str) -> None:
    """Write a finish of the job and the products for it. FileError where that fails."""
    write_atomically(path, job_to_json(finish_alone(job, finish_id)))


def read_finish_file(path: Path) -> Job:
    """The job in a finish's file or in any job file; it has at least one finish.

    FileError where it cannot be read or has no finish. JobError where the job contradicts itself. Both name the file.
    """
    job = read_job_file(path).job
    try:
        check_job(job)
    except JobError as trouble:
        raise trouble.within(str(path)) from trouble
    if not job.finishes:
        raise FileError("the file has no finish", where=str(path), do="choose another file")
    return job


def with_finish_from(job: Job, source: Job, finish_id: str) -> Job:
    """The job with a finish of another job added last, and the products for it, under ids that are free here.

    A product that this job has already, apart from prices and shelf, is not added again. Prices come along when both
    jobs count money alike, or when this job has no price and no money of its own yet. JobError where the job would grow
    too large.
    """
    alone = finish_alone(source, finish_id)
    larger, priced = _with_money_of(job, alone)
    ids = {"": ""}
    for product in alone.products:
        larger, ids[product.id] = _with_product_from(larger, product if priced else _without_prices(product))
    finish = find_finish(alone, finish_id)
    steps = tuple(replace(step, product=ids[step.product], tool=ids[step.tool]) for step in finish.steps)
    own_id = fresh_finish_id(job) if any(other.id == finish_id for other in job.finishes) else finish_id
    larger = with_finish(larger, Finish(own_id, free_finish_name(job, finish.name), steps, finish.shade))
    check_job(larger)
    return larger


def _with_product_from(job: Job, product: Product) -> tuple[Job, str]:
    """The job with this product, unless it has it already, and the product's id in it."""
    for own in job.products:
        if _but_for_prices(own) == _but_for_prices(product):
            return job, own.id
    taken = any(own.id == product.id for own in job.products)
    own_id = fresh_product_id(job) if taken else product.id
    return with_product(job, replace(product, id=own_id)), own_id


def _but_for_prices(product: Product) -> Product:
    return replace(_without_prices(product), id="", on_shelf=0.0)


def _without_prices(product: Product) -> Product:
    return replace(product, packs=tuple(replace(pack, price=None) for pack in product.packs))


def _with_money_of(job: Job, source: Job) -> tuple[Job, bool]:
    """The job, and whether the other job's prices hold in it. With no money of its own it takes the other's."""
    priced = any(pack.price is not None for product in job.products for pack in product.packs)
    if not priced and replace(job.money, budget=0.0) == Money():
        return replace(job, money=replace(source.money, budget=job.money.budget)), True
    return job, replace(job.money, budget=0.0) == source.money
