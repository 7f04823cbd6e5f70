"""The demands for sealant and tape, from the metres of joint and of masking."""

from collections.abc import Iterator
from typing import NamedTuple

from shared.job import Job, Section
from shared.trade.products import Product, Use
from shared.written.units import ML_IN_A_LITRE, MM_IN_A_METRE
from shared.written.writing import Writing
from takeoff.edges.sealant import section_area_mm2
from takeoff.figures.measured import Takeoff
from takeoff.figures.to_buy import Used
from takeoff.needs.demands import Demand, Products

MASKING_TAPE = "masking tape"
"""The word by which the tape for masking is told from other tapes: it is interchangeable with it."""

BEAD = "metres of joint x section (fillet: a triangle, leg2 / 2; butt: width x depth), x (1 + allowance)"
EXACT_SECTION = "exact: the millilitres of a metre are its section in mm2; allowance: common practice, no source"
TAPE = "metres of masking x (1 + allowance)"


class Metres(NamedTuple):
    """Metres of joint or masking, with every one of the rooms alike counted, and the parts along them."""

    metres: float
    parts: tuple[str, ...]


Beads = dict[tuple[str, Section], Metres]
"""Metres of bead, by the name of the joint and its section."""


class SealedAndTaped(NamedTuple):
    """All that is sealed, by the word for its sealant, and all that is taped, by the id of the room."""

    sealed: dict[str, Beads]
    taped: dict[str, Metres]


def sealed_and_taped(job: Job, takeoff: Takeoff) -> SealedAndTaped:
    """The metres of sealed joints and of masking of a job; both are empty for an empty job."""
    return SealedAndTaped(_sealed(job, takeoff), _taped(job, takeoff))


def _sealed(job: Job, takeoff: Takeoff) -> dict[str, Beads]:
    room_of = job.room_of
    found: dict[str, dict[tuple[str, Section], list[Metres]]] = {}
    for row in takeoff.joints:
        if row.sealed and row.length_mm.amount > 0:
            metres = row.length_mm.amount * room_of[row.face].alike / MM_IN_A_METRE
            found.setdefault(row.sealant, {}).setdefault((row.name, row.section), []).append(Metres(metres, row.parts))
    return {word: {joint: _together(rows) for joint, rows in of_word.items()} for word, of_word in found.items()}


def _taped(job: Job, takeoff: Takeoff) -> dict[str, Metres]:
    room_of = job.room_of
    found: dict[str, list[Metres]] = {}
    for row in takeoff.masking:
        if row.length_mm.amount > 0:
            room = room_of[row.face]
            metres = row.length_mm.amount * room.alike / MM_IN_A_METRE
            parts = tuple(part for part in row.parts if part is not None)
            found.setdefault(room.id, []).append(Metres(metres, parts))
    return {room: _together(rows) for room, rows in found.items()}


def sealants(word: str, products: Products) -> tuple[Product, ...]:
    """The sealants that are interchangeable with this word. If there are none: those that have it for a name."""
    every = [product for product in products.all if product.use is Use.SEALANT]
    standing = tuple(product for product in every if product.stands_for == word)
    return standing or tuple(product for product in every if product.name == word and not product.stands_for)


def tapes(products: Products) -> tuple[Product, ...]:
    """The tapes that are marked for masking. If none is marked: the only tape; none if there are several."""
    return products.for_work(Use.TAPE, MASKING_TAPE)


def demands_of_joints(job: Job, sealed: dict[str, Beads], products: Products) -> Iterator[Demand]:
    """The demand of each sort of joint for its sealant. Joints whose sealant no product is have none."""
    for word, of_word in sealed.items():
        options = sealants(word, products)
        for (name, section), bead in of_word.items() if options else ():
            use = Used(
                f"{name}, {Writing(job.unit).section(section)}",
                size=bead.metres,
                times=1,
                per=ML_IN_A_LITRE / section_area_mm2(section),
                allowance=job.allowances.sealant,
                parts=bead.parts,
            )
            yield Demand(options, use, BEAD, f"joint {name}", EXACT_SECTION)


def demands_of_masking(job: Job, taped: dict[str, Metres], products: Products) -> Iterator[Demand]:
    """The demand of each room for masking tape; none if no product is the masking tape."""
    options = tapes(products)
    names = {room.id: room.called for room in job.rooms}
    for room, masking in taped.items() if options else ():
        use = Used(
            f"masking, {names[room]}",
            size=masking.metres,
            times=1,
            per=1.0,
            allowance=job.allowances.tape,
            parts=masking.parts,
        )
        yield Demand(options, use, TAPE, f"masking of {names[room]}")


def _together(rows: list[Metres]) -> Metres:
    return Metres(
        sum(each.metres for each in rows),
        tuple(dict.fromkeys(part for each in rows for part in each.parts)),
    )
