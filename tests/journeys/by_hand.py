"""Holds a takeoff to a page of hand calculation: every part, joint and piece of masking, and the totals.

The pages say in a first table what each part is and where its lower left corner stands; joints and masking name the
parts as that table does. Their tables are read as those of the example (`tests.takeoff.hand_calculation`).
"""

import math
from collections import defaultdict
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import NamedTuple

import pytest

from geometry.outlines.measured import outline_box
from shared.job import Butt, Fillet, Job, Section
from takeoff.figures.measured import Takeoff
from tests.takeoff.hand_calculation import rows_under, totals_on, worked_out

CLOSE = 1e-6

AT_MM = 0.01
"""A part this near to where the page has it is that part."""

Sums = Mapping[tuple[str, ...], tuple[float, ...]]


class Page(NamedTuple):
    """A page of hand calculation and its unit: mm, and into how many of them its totals are parted."""

    path: Path
    unit_mm: float = 1.0
    area_mm2: float = 1e6
    length_mm: float = 1e3

    @property
    def parts(self) -> Sums:
        """By face, kind, place and tag, the name, as a key; gross, net and coated area in mm2."""
        return {row.words[:4]: self._areas(row.amounts) for row in rows_under("Areas", self.path)}

    @property
    def joints(self) -> Sums:
        """By face, the two parts by name, bead and old bead: the length in mm."""
        return {
            (face, *sorted((one, other)), bead, old): self._lengths(row.amounts)
            for row in rows_under("Joints", self.path)
            for face, one, other, bead, old in [row.words]
        }

    @property
    def masking(self) -> Sums:
        """By face and the two parts by name, or "outside": the length in mm."""
        return {
            (face, *sorted((one, other))): self._lengths(row.amounts)
            for row in rows_under("Masking", self.path)
            for face, one, other in [row.words]
        }

    def names(self, job: Job) -> dict[str, str]:
        """By id of a part, the name that the page gives it, found by its face, kind and place."""
        rows = [row.words for row in rows_under("Areas", self.path)]
        placed = [(name, (name[0].upper(), kind), self._place(at)) for name, kind, at, *_ in rows]
        return {
            part.id: next(
                name
                for name, what, place in placed
                if what == (face.name, part.kind.value) and math.dist(place, outline_box(part.outline)[:2]) < AT_MM
            )
            for face in job.faces
            for part in face.parts
        }

    def _place(self, at: str) -> tuple[float, ...]:
        return tuple(worked_out(text.strip(), {}) * self.unit_mm for text in at.split(","))

    def _areas(self, amounts: Iterable[float]) -> tuple[float, ...]:
        return tuple(amount * self.unit_mm**2 for amount in amounts)

    def _lengths(self, amounts: Iterable[float]) -> tuple[float, ...]:
        return tuple(amount * self.unit_mm for amount in amounts)


def counted_parts(job: Job, takeoff: Takeoff, page: Page) -> dict[tuple[str, ...], tuple[float, ...]]:
    """The parts of a takeoff as the page has them."""
    names = page.names(job)
    places = {row.words[0]: row.words[2] for row in rows_under("Areas", page.path)}
    return {
        (names[row.id], row.kind.value, places[names[row.id]], row.tag): (
            row.gross_mm2.amount,
            row.net_mm2.amount,
            row.coated_mm2.amount,
        )
        for row in takeoff.parts
    }


def counted_joints(job: Job, takeoff: Takeoff, page: Page) -> dict[tuple[str, ...], tuple[float, ...]]:
    """The joints of a takeoff that are sealed, as the page has them."""
    names, faces = page.names(job), {face.id: face.name for face in job.faces}
    joints: defaultdict[tuple[str, ...], float] = defaultdict(float)
    for row in takeoff.joints:
        if row.sealed:
            pair = sorted(names[part] for part in row.parts)
            joints[faces[row.face], *pair, _in_words(row.section), "cut out" if row.old_bead else "none"] += (
                row.length_mm.amount
            )
    return {key: (length,) for key, length in joints.items()}


def counted_masking(job: Job, takeoff: Takeoff, page: Page) -> dict[tuple[str, ...], tuple[float, ...]]:
    """The masking of a takeoff as the page has it."""
    names, faces = page.names(job), {face.id: face.name for face in job.faces}
    masking: defaultdict[tuple[str, ...], float] = defaultdict(float)
    for row in takeoff.masking:
        pair = sorted(names[part] if part else "outside" for part in row.parts)
        masking[faces[row.face], *pair] += row.length_mm.amount
    return {key: (length,) for key, length in masking.items()}


def assert_as_by_hand(job: Job, takeoff: Takeoff, page: Page) -> None:
    """Every part, joint, piece of masking and total is what the page says."""
    assert counted_parts(job, takeoff, page) == _about(page.parts)
    assert counted_joints(job, takeoff, page) == _about(page.joints)
    assert counted_masking(job, takeoff, page) == _about(page.masking)
    totals, printed = takeoff.totals, totals_on(page.path)
    amounts = (
        ("coated", totals.coated_mm2 / page.area_mm2, 5.1e-5),
        ("masking", totals.masking_mm / page.length_mm, 5.1e-4),
        ("bead", totals.bead_mm / page.length_mm, 5.1e-4),
        ("old bead", totals.old_bead_mm / page.length_mm, 5.1e-4),
        ("fronts", float(totals.fronts), 0.0),
    )
    by_hand = {what.split(",")[0].replace(" to cut out", ""): total for what, total in printed.items()}
    for what, amount, off in amounts:
        assert amount == pytest.approx(by_hand[what], abs=off), what


def _about(sums: Sums) -> dict[tuple[str, ...], object]:
    return {key: pytest.approx(amounts, rel=CLOSE, abs=CLOSE) for key, amounts in sums.items()}


def _in_words(section: Section) -> str:
    match section:
        case Fillet(leg_mm=leg):
            return f"fillet {leg:g}"
        case Butt(width_mm=width, depth_mm=depth):
            return f"butt {width:g} x {depth:g}"
