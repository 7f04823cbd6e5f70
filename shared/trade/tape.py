"""How far a tape measure may be wrong, by its class; read from `data/tape.toml`, which names the source."""

import tomllib
from enum import StrEnum
from functools import cache
from importlib.resources import files
from math import ceil

import msgspec


class TapeClass(StrEnum):
    """The accuracy class that is printed on a tape."""

    FIRST = "I"
    SECOND = "II"
    THIRD = "III"


class _Row(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """The tolerance of one class, all in mm: `a` always, `b` for each metre begun, `hook` for the end hook."""

    a: float
    b: float
    hook: float


@cache
def _rows() -> dict[TapeClass, _Row]:
    table = tomllib.loads((files("shared") / "data" / "tape.toml").read_text("utf-8"))
    return msgspec.convert(table, dict[TapeClass, _Row])


def tape_tolerance_mm(length_mm: float, tape_class: TapeClass, *, hooked: bool) -> float:
    """The greatest error allowed of a reading of this length, mm. `hooked` says that it was read from the end hook.

    It is a + b L, with L in metres rounded up to the next whole metre (UK SI 2016/1153 schedule 1I), and the hook's own
    tolerance. ValueError for a negative length.
    """
    if length_mm < 0:
        raise ValueError(length_mm)
    row = _rows()[tape_class]
    return row.a + row.b * ceil(length_mm / 1000) + (row.hook if hooked else 0.0)
