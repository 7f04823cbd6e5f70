"""The rows of fronts in Count: hinges, handles and holes to fill, in total and for each front."""

from desktop.fields.front_rows import CentresWords
from desktop.look.wording import counted, own_writing
from desktop.state.shown import Shown
from desktop.sums.row import SumRow, unfolded
from shared.job import Unit
from takeoff.needs.hardware import Front, coated_fronts, hardware, hinges_of, holes_to_fill
from takeoff.why.figures import hardware_rows

HEADS = ("Fronts", "Hinges", "Old holes", "To fill")

FRONTS = "fronts"
FRONT = "front"
ALL = f"{FRONTS} all"

NOT_SAID = "not said"


def front_rows(shown: Shown) -> SumRow:
    """The group of fronts. It has no rows beneath it if no front is coated."""
    fronts = tuple(coated_fronts(shown.now))
    tags = {row.id: row.tag for row in shown.takeoff.parts}
    rows = tuple(_front(front, tags.get(front.part.id, ""), shown) for front in fronts)
    return SumRow(FRONTS, HEADS, (_all(shown), *rows) if rows else (), head=True)


def front_of(row: SumRow | None) -> str | None:
    """The id of the front that a row is about; "" for the row about all fronts; None for any other row."""
    if row is None or not row.key.startswith(FRONT):
        return None
    return row.key.removeprefix(f"{FRONT} ") if row.key.startswith(f"{FRONT} ") else ""


def _all(shown: Shown) -> SumRow:
    total = hardware(shown.now)
    number = own_writing(shown.unit).number
    handles = counted(round(total.handles.amount), "handle", "handles")
    return SumRow(
        key=ALL,
        cells=(f"all, {handles}", number(total.hinges.amount), "", number(total.holes_to_fill.amount)),
        children=tuple(unfolded(ALL, hardware_rows(total, own_writing(shown.unit)), len(HEADS))),
        parts=total.handles.reason.parts,
    )


def _front(front: Front, tag: str, shown: Shown) -> SumRow:
    part = front.part
    hinges = hinges_of(part)
    alike = f", {front.alike} rooms alike" if front.alike > 1 else ""
    return SumRow(
        key=f"{FRONT} {part.id}",
        cells=(
            f"{tag or front.face.name}  {part.called}{alike}",
            NOT_SAID if hinges is None else f"{hinges}" if hinges else "",
            _old_holes(part.hole_centres_mm, shown.unit),
            f"{holes_to_fill(part, shown.now.handle_centres_mm) or ''}",
        ),
        parts=(part.id,),
        face=front.face.id,
    )


def _old_holes(centres_mm: float | None, unit: Unit) -> str:
    return NOT_SAID if centres_mm is None else CentresWords().show(centres_mm, unit)
