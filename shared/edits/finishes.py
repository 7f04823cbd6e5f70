"""Edits of finishes and products: functions that make a new job from a job.

JobError where an id is not in the job, or is new but in it already, and for the number of a step or pack that does not
exist. Numbers are counted from 0 here, and from 1 in messages. An edit keeps a job whole: a finish that goes takes the
choices of it with it. A product stays for as long as a step uses it, so that nothing is left out of the takeoff unseen.
Whether the values themselves make sense is for `shared.checks.job`. `shared.edits.drawn` edits what is drawn.
"""

from collections.abc import Iterable, Iterator
from itertools import chain
from typing import TypeVar

from msgspec.structs import replace

from shared.edits.drawn import next_ids
from shared.errors import JobError
from shared.job import Face, Job, KindChoice, Part
from shared.trade.finishes import Finish, Step
from shared.trade.kinds import usual
from shared.trade.products import Pack, Product

Item = TypeVar("Item")


def find_finish(job: Job, finish_id: str) -> Finish:
    """The finish with this id."""
    for finish in job.finishes:
        if finish.id == finish_id:
            return finish
    raise _missing("finish", finish_id)


def find_product(job: Job, product_id: str) -> Product:
    """The product with this id."""
    for product in job.products:
        if product.id == product_id:
            return product
    raise _missing("product", product_id)


def fresh_finish_id(job: Job) -> str:
    """An id that no finish of the job has."""
    return next_ids((finish.id for finish in job.finishes), "finish", 1)[0]


def fresh_product_id(job: Job) -> str:
    """An id that no product of the job has and no step names."""
    named = (name for finish in job.finishes for step in finish.steps for name in (step.product, step.tool))
    return next_ids((*(product.id for product in job.products), *named), "product", 1)[0]


def with_finish(job: Job, finish: Finish, at: int | None = None) -> Job:
    """The job with a finish added: at this place, or last."""
    _refuse_taken(finish.id, (other.id for other in job.finishes))
    return replace(job, finishes=_inserted(job.finishes, finish, at))


def with_changed_finish(job: Job, finish: Finish) -> Job:
    """The job with this finish in place of the one that has its id."""
    old = find_finish(job, finish.id)
    return replace(job, finishes=tuple(finish if other is old else other for other in job.finishes))


def copied_finish(job: Job, finish_id: str) -> Job:
    """The job with a copy of a finish right after it, named with the next free number: "Tiles 2"."""
    finish = find_finish(job, finish_id)
    copy = replace(finish, id=fresh_finish_id(job), name=free_finish_name(job, finish.name))
    return with_finish(job, copy, job.finishes.index(finish) + 1)


def free_finish_name(job: Job, name: str) -> str:
    """The name if no finish of the job has it, else the name with the next free number: "Tiles 2"."""
    names = {finish.name for finish in job.finishes}
    numbered = (f"{name} {number}" for number in range(2, len(names) + 3))
    return next(each for each in chain((name,), numbered) if each not in names)


def without_finish(job: Job, finish_id: str) -> Job:
    """The job without a finish.

    Parts that had chosen it get their kind's finish. Kinds that had chosen it get the finish that is usual for them, or
    none when the job lacks that finish.
    """
    gone = find_finish(job, finish_id)
    left = tuple(finish for finish in job.finishes if finish is not gone)
    ids = {finish.id for finish in left}

    def fallen_back(choice: KindChoice) -> KindChoice:
        if choice.finish != finish_id:
            return choice
        usual_one = usual()[choice.kind].finish
        return replace(choice, finish=usual_one if usual_one in ids else "")

    kinds = tuple(map(fallen_back, job.kinds))
    rooms = tuple(
        replace(room, faces=tuple(_without_choice(face, finish_id) for face in room.faces))
        if any(part.finish == finish_id for face in room.faces for part in face.parts)
        else room
        for room in job.rooms
    )
    return replace(job, finishes=left, kinds=kinds, rooms=rooms)


def with_kind_choice(job: Job, choice: KindChoice) -> Job:
    """The job with this choice in place of the earlier one for its kind, or as its first."""
    if choice.finish:
        find_finish(job, choice.finish)
    if all(old.kind is not choice.kind for old in job.kinds):
        return replace(job, kinds=(*job.kinds, choice))
    return replace(job, kinds=tuple(choice if old.kind is choice.kind else old for old in job.kinds))


def with_step(job: Job, finish_id: str, step: Step, at: int | None = None) -> Job:
    """The job with a step added to a finish: at this place, or last."""
    finish = find_finish(job, finish_id)
    return with_changed_finish(job, replace(finish, steps=_inserted(finish.steps, step, at)))


def with_changed_step(job: Job, finish_id: str, at: int, step: Step) -> Job:
    """The job with this step in place of the one that a finish has there."""
    finish = find_finish(job, finish_id)
    return with_changed_finish(job, replace(finish, steps=_but(finish.steps, at, finish.name, step)))


def without_step(job: Job, finish_id: str, at: int) -> Job:
    """The job without the step in this place of a finish."""
    finish = find_finish(job, finish_id)
    return with_changed_finish(job, replace(finish, steps=_but(finish.steps, at, finish.name)))


def with_step_moved(job: Job, finish_id: str, at: int, to: int) -> Job:
    """The job with a step of a finish moved to another place among its steps."""
    finish = find_finish(job, finish_id)
    others = _but(finish.steps, at, finish.name)
    return with_changed_finish(job, replace(finish, steps=_inserted(others, finish.steps[at], to)))


def with_product(job: Job, product: Product, at: int | None = None) -> Job:
    """The job with a product added: at this place, or last."""
    _refuse_taken(product.id, (other.id for other in job.products))
    return replace(job, products=_inserted(job.products, product, at))


def with_changed_product(job: Job, product: Product) -> Job:
    """The job with this product in place of the one that has its id."""
    old = find_product(job, product.id)
    return replace(job, products=tuple(product if other is old else other for other in job.products))


def without_product(job: Job, product_id: str) -> Job:
    """The job without a product. JobError, which names the step, where a step still uses it."""
    gone = find_product(job, product_id)
    for finish, number, step in steps_with(job, product_id):
        where = f"finish {finish.called}, step {number + 1} ({step.work})"
        raise JobError(f"it uses {gone.called}", where=where, do="choose another product there first")
    return replace(job, products=tuple(product for product in job.products if product is not gone))


def with_product_exchanged(job: Job, old_id: str, new_id: str) -> Job:
    """The job with the new product in place of the old one in every step; both stay in the job."""
    find_product(job, new_id)
    changed = job
    for finish, number, step in steps_with(job, old_id):
        product, tool = (new_id if name == old_id else name for name in (step.product, step.tool))
        changed = with_changed_step(changed, finish.id, number, replace(step, product=product, tool=tool))
    return changed


def steps_with(job: Job, product_id: str) -> Iterator[tuple[Finish, int, Step]]:
    """The steps that use a product up or apply theirs with it: the finish, the step's place in it, the step."""
    for finish in job.finishes:
        for number, step in enumerate(finish.steps):
            if product_id in (step.product, step.tool):
                yield finish, number, step


def with_pack(job: Job, product_id: str, pack: Pack, at: int | None = None) -> Job:
    """The job with a pack added to a product: at this place, or last."""
    product = find_product(job, product_id)
    return with_changed_product(job, replace(product, packs=_inserted(product.packs, pack, at)))


def with_changed_pack(job: Job, product_id: str, at: int, pack: Pack) -> Job:
    """The job with this pack in place of the one that a product has there."""
    product = find_product(job, product_id)
    return with_changed_product(job, replace(product, packs=_but(product.packs, at, product.name, pack)))


def without_pack(job: Job, product_id: str, at: int) -> Job:
    """The job without the pack in this place of a product."""
    product = find_product(job, product_id)
    return with_changed_product(job, replace(product, packs=_but(product.packs, at, product.name)))


def _without_choice(face: Face, finish_id: str) -> Face:
    if not any(part.finish == finish_id for part in face.parts):
        return face

    def fallen_back(part: Part) -> Part:
        return replace(part, finish="") if part.finish == finish_id else part

    return replace(face, parts=tuple(map(fallen_back, face.parts)))


def _inserted(items: tuple[Item, ...], item: Item, at: int | None) -> tuple[Item, ...]:
    place = len(items) if at is None else min(max(at, 0), len(items))
    return (*items[:place], item, *items[place:])


def _but(items: tuple[Item, ...], at: int, name: str, *instead: Item) -> tuple[Item, ...]:
    """The items with `instead`, which may be none, in place of the one at this place. `name` is for the error."""
    if not 0 <= at < len(items):
        raise JobError(
            f"it has {len(items)} of them, so there is no number {at + 1}", where=name, do="choose one of these"
        )
    return (*items[:at], *instead, *items[at + 1 :])


def _refuse_taken(new: str, ids: Iterable[str]) -> None:
    if new in ids:
        raise JobError(f'the id "{new}" is used already', do="give the new one an id of its own")


def _missing(what: str, name: str) -> JobError:
    return JobError(f'the job has no {what} "{name}"', do="choose one that it has")
