"""The cautions of a job: where its work can hurt someone, from the table `data/cautions.toml`."""

import tomllib
from collections.abc import Iterable
from functools import cache
from importlib.resources import files
from typing import NamedTuple

import msgspec

from shared.job import Face, Job
from shared.trade.finishes import Material, Work
from shared.trade.kinds import Kind
from shared.trade.products import Use
from takeoff.figures.measured import Takeoff
from takeoff.needs.by_area import StepOnSurfaces, steps_on_surfaces, surfaces


class Caution(NamedTuple):
    """What to watch and who decides, the source of that, and the ids of the finishes whose steps call for it."""

    text: str
    source: str
    finishes: tuple[str, ...]


class _Row(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """The fields are explained at the head of `data/cautions.toml`."""

    text: str
    source: str
    works: frozenset[Work] = frozenset()
    uses: frozenset[Use] = frozenset()
    two_part: bool = False
    materials: frozenset[Material] = frozenset()
    kinds: frozenset[Kind] = frozenset()
    near: frozenset[Kind] = frozenset()


class _Met(NamedTuple):
    """What is compared with the rows of the table for a step. `near` are the kinds on the faces that it is done on."""

    finish: str
    two_part: bool
    works: frozenset[Work]
    uses: frozenset[Use]
    materials: frozenset[Material | None]
    kinds: frozenset[Kind]
    near: frozenset[Kind]


def cautions(job: Job, takeoff: Takeoff) -> tuple[Caution, ...]:
    """The cautions that the steps of a job call for; none if nothing is coated. `takeoff` is this job's."""
    met = tuple(_met_by(job, steps_on_surfaces(job, surfaces(job, takeoff))))
    found = ((row, tuple(dict.fromkeys(each.finish for each in met if _fits(row, each)))) for row in _table())
    return tuple(Caution(row.text, row.source, finishes) for row, finishes in found if finishes)


def caution_of_hardeners() -> str:
    """The text of the caution for two-part products."""
    return next(row.text for row in _table() if row.two_part)


def _met_by(job: Job, steps: Iterable[StepOnSurfaces]) -> Iterable[_Met]:
    products = {product.id: product for product in job.products}
    kind_of = {part.id: part.kind for face in job.faces for part in face.parts}
    near = {part: kinds for parts, kinds in map(_kinds_on, job.faces) for part in parts}
    for each in steps:
        product = products.get(each.step.product)
        yield _Met(
            finish=each.finish.id,
            two_part=product is not None and product.ratio is not None,
            works=frozenset({each.step.work}),
            uses=frozenset({product.use}) if product else frozenset(),
            materials=frozenset(surface.material for surface in each.on),
            kinds=frozenset(kind_of[part] for part in each.parts),
            near=frozenset().union(*(near[part] for part in each.parts)),
        )


def _kinds_on(face: Face) -> tuple[tuple[str, ...], frozenset[Kind]]:
    """The ids of the parts of a face, and the kinds of those parts."""
    return tuple(part.id for part in face.parts), frozenset(part.kind for part in face.parts)


def _fits(row: _Row, met: _Met) -> bool:
    """Whether a step meets every condition that a row of the table names."""
    conditions = (
        (row.works, met.works),
        (row.uses, met.uses),
        (row.materials, met.materials),
        (row.kinds, met.kinds),
        (row.near, met.near),
    )
    return (met.two_part or not row.two_part) and all(not named or named & there for named, there in conditions)


@cache
def _table() -> tuple[_Row, ...]:
    text = (files("takeoff") / "data" / "cautions.toml").read_text("utf-8")
    return msgspec.convert(tomllib.loads(text)["caution"], tuple[_Row, ...])
