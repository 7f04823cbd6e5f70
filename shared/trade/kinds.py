"""The kinds of parts and what is usual for each, read from `data/kinds.toml`."""

import tomllib
from enum import StrEnum
from functools import cache
from importlib.resources import files

import msgspec

from shared.trade.finishes import Material


class Kind(StrEnum):
    """What a part is, in the words of the trade."""

    WALL = "wall"
    BULKHEAD = "bulkhead"
    SPLASHBACK = "splashback"
    CABINET = "cabinet"
    BENCHTOP = "benchtop"
    KICKBOARD = "kickboard"
    FILLER = "filler"
    END_PANEL = "end panel"
    SHELF = "shelf"
    DOOR = "door"
    DRAWER_FRONT = "drawer front"
    FIXTURE = "fixture"
    WINDOW = "window"
    OUTLET = "outlet"
    CUT_OUT = "cut-out"


class Treatment(StrEnum):
    """How a part is coated."""

    AS_KIND = "as kind"
    IN_PLACE = "in place"
    TAKEN_OFF = "taken off"
    LEFT = "left"

    @property
    def words(self) -> str:
        """The words that people read for a treatment. Job files hold the value instead."""
        return _SHOWN.get(self, self.value)


_SHOWN = {Treatment.AS_KIND: "as usual for its kind", Treatment.LEFT: "not coated"}


class Usual(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """What is usual for a kind. The fields are explained at the head of `data/kinds.toml`.

    `thickness` is in mm. `material` is None for holes only.
    """

    rank: int
    treatment: Treatment
    material: Material | None = None
    finish: str = ""
    thickness: float = 0.0
    sides: bool = False
    frame: bool = False
    can_be_tiled: bool = False
    wet: bool = False
    hole: bool = False
    front: bool = False
    hinged: bool = False
    one_piece: bool = False
    made_to_fit: bool = False
    cut_on_site: bool = False
    often_hidden: bool = False
    in_row: bool = False
    holds_fronts: bool = False
    below_row: bool = False
    behind_row: bool = False
    under_benchtop: bool = False
    set_in: bool = False
    in_levels: bool = False
    said: tuple[str, ...] = ()


@cache
def usual() -> dict[Kind, Usual]:
    """What is usual for every kind, in the order of `Kind`. LookupError if kinds have no row; it names them."""
    table = tomllib.loads((files("shared") / "data" / "kinds.toml").read_text("utf-8"))
    rows = msgspec.convert(table, dict[Kind, Usual])
    if missing := [kind for kind in Kind if kind not in rows]:
        raise LookupError(f"data/kinds.toml has no row for: {', '.join(missing)}")
    return {kind: rows[kind] for kind in Kind}
