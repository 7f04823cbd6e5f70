"""Live formulas that take the sizes of needs from the worksheets of a takeoff."""

from collections import defaultdict
from math import isclose
from typing import NamedTuple

from shared.job import Job
from shared.trade.products import Product, Use
from shared.written.units import area_in, length_in
from shared.written.writing import Writing
from takeoff.figures.measured import Takeoff
from takeoff.figures.naming import Names
from takeoff.figures.to_buy import Used
from takeoff.surfaces.materials import material_of
from takeoff.tables.worksheets import Live, cells_of
from takeoff.why.uses import use_sum

SAME = 1e-9
"""The share by which two sums of the same floats, added in another order, may differ."""


class Source(NamedTuple):
    """Where the size of a use comes from: the finish, sealant or room that chooses rows, and the sum of those rows."""

    chosen_by: str
    size: Live


class Sources:
    """Finds the source of any use. No two rooms, and no two finishes, of `job` have one name."""

    def __init__(self, takeoff: Takeoff, job: Job) -> None:
        self._takeoff, self._job, self._names = takeoff, job, Names(job)
        self._made_of = {part.id: material_of(part) for face in job.faces for part in face.parts}
        self._room_of = {part.id: self._names.room_of(face.id) for face in job.faces for part in face.parts}
        self._masked: defaultdict[str, float] = defaultdict(float)
        for row in takeoff.masking:
            self._masked[self._names.room_of(row.face)] += row.length_mm.amount * self._names.alike(row.face)

    def of(self, used: Used, product: Product, word: str, row: int) -> Source | None:
        """The source of a use, for a formula in this row of the worksheet Needs. `word` is the name of the work.

        None if no rows of the worksheets make up the size, as for sleeves.
        """
        if used.finish:
            source = self._surface(used, row)
        elif product.use is Use.SEALANT:
            source = self._joint(used, word, row)
        else:
            source = self._masking(used, row)
        size = use_sum(used, product, self._job.unit).size
        return source if isclose(float(source.size.value), size, rel_tol=SAME) else None

    def _surface(self, used: Used, row: int) -> Source:
        made_of = {self._made_of[part] for part in used.parts}
        rows = [each for each in self._takeoff.parts if each.finish == used.finish]
        area = sum(
            each.coated_mm2.amount * self._names.alike(each.face) for each in rows if self._made_of[each.id] in made_of
        )
        finish, coated, material, alike = (cells_of("Areas", column, self._takeoff.parts) for column in "FJKL")
        words = sorted(each or "" for each in made_of)
        chosen = "+".join(f'({material}="{each}")' for each in words)
        formula = f"=SUMPRODUCT(({finish}=C{row})*({chosen})*{coated}*{alike})"
        return Source(self._names.finish(used.finish), Live(formula, area_in(area, self._job.unit)))

    def _joint(self, used: Used, word: str, row: int) -> Source:
        unit, writing = self._job.unit, Writing(self._job.unit)
        length = sum(
            each.length_mm.amount * self._names.alike(each.face)
            for each in self._takeoff.joints
            if each.sealed and each.sealant == word and f"{each.name}, {writing.section(each.section)}" == used.what
        )
        joint, section, sealant, sealed, metres, alike = (
            cells_of("Joints", column, self._takeoff.joints) for column in "CFGHJK"
        )
        chosen = f'({sealant}=C{row})*({joint}&", "&{section}=B{row})*({sealed}="yes")'
        live = Live(f"=SUMPRODUCT({chosen}*{metres}*{alike})", length_in(length, unit))
        return Source(word, live)

    def _masking(self, used: Used, row: int) -> Source:
        unit = self._job.unit
        room = next((self._room_of[part] for part in used.parts if part in self._room_of), "")
        where, metres, alike = (cells_of("Masking", column, self._takeoff.masking) for column in "AFG")
        live = Live(f"=SUMPRODUCT(({where}=C{row})*{metres}*{alike})", length_in(self._masked[room], unit))
        return Source(room, live)
