"""Why this much of a product is needed: its uses, down to the parts that they were measured from, and the losses."""

from collections.abc import Iterator

from shared.job import Job
from shared.trade.products import Product
from shared.written.packs import is_small
from shared.written.writing import Writing
from takeoff.figures.measured import PartRow, Takeoff, Term
from takeoff.figures.naming import Names
from takeoff.figures.to_buy import Need, Used
from takeoff.why.row import WhyRow
from takeoff.why.uses import use_sum, written_size

MOST_PARTS = 200
"""The most parts that are listed for one use. The sums of a whole building name more."""


class NeedRows:
    """Writes the rows of any need of a job. `takeoff` is this job's."""

    def __init__(self, takeoff: Takeoff, job: Job, writing: Writing) -> None:
        self._names, self._writing = Names(job), writing
        self._parts = {row.id: row for row in takeoff.parts}
        self._products = {product.id: product for product in job.products}

    def row(self, need: Need) -> WhyRow:
        """The row of a need. The amounts of its children add up to its own, apart from the row of base and hardener."""
        product, reason = self._products[need.product], need.amount.reason
        return WhyRow(
            product.called,
            self._writing.amount(need.amount.amount, product.measure),
            children=(*self._uses(need, product), *self._mixed(need, product)),
            parts=reason.parts,
            rule=self._writing.sentence(reason.rule),
            source=self._writing.squares(reason.source),
        )

    def _uses(self, need: Need, product: Product) -> Iterator[WhyRow]:
        """A row for each term of the need: first its uses, then loss, allowance and what is left behind."""
        for place, term in enumerate(need.amount.reason.terms):
            used = need.used[place] if place < len(need.used) else None
            yield WhyRow(
                self._writing.sentence(term.what),
                self._writing.amount_in_sum(term.amount, product.measure, small=is_small(product)),
                self._factors(used, product) if used else "",
                children=tuple(self._coated(term)) if used and used.finish else (),
                parts=term.parts,
            )

    def _factors(self, used: Used, product: Product) -> str:
        """The factors of a use, written out: "6.767 m2 x 2 / 9"; "" if its size is the only one."""
        writing, numbers = self._writing, use_sum(used, product, self._writing.unit)
        times = f" {writing.times} {writing.number(numbers.times)}" if numbers.times != 1 else ""
        per = f" {writing.divided} {writing.number(numbers.per)}" if numbers.per != 1 else ""
        return f"{written_size(used, product, writing)}{times}{per}" if times or per else ""

    def _coated(self, term: Term) -> Iterator[WhyRow]:
        """A row for each part of a use by area, up to the most that are listed."""
        known = [self._parts[part] for part in term.parts if part in self._parts]
        yield from map(self._part, known[:MOST_PARTS])
        if len(known) > MOST_PARTS:
            yield WhyRow(f"and {len(known) - MOST_PARTS} parts more")

    def _part(self, row: PartRow) -> WhyRow:
        alike = self._names.alike(row.face)
        return WhyRow(
            f"{row.tag or self._names.face(row.face)}  {self._names.part(row.id)}",
            self._writing.area_in_sum(row.coated_mm2.amount * alike),
            note=f"{alike} rooms alike" if alike > 1 else "",
            parts=(row.id,),
            face=row.face,
        )

    def _mixed(self, need: Need, product: Product) -> Iterator[WhyRow]:
        if need.mixed is not None:
            base, hardener = (self._writing.amount(litres, product.measure) for litres in need.mixed)
            yield WhyRow(f"Base {base}, hardener {hardener}")
