"""Measuring rules: they say which openings are deducted from a part that is coated in place."""

import tomllib
from functools import cache
from importlib.resources import files

import msgspec

from shared.written.units import MM2_IN_A_SQUARE_METRE

NET = "net"
"""The rule that is followed unless another is chosen: all openings are deducted."""


class MeasuringRule(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """A rule; its fields are explained at the head of `data/measuring_rules.toml`."""

    words: str
    source: str
    left_in_m2: float
    wholly_inside: bool

    def deducts(self, opening_mm2: float, *, is_inside: bool) -> bool:
        """Whether an opening of this area is deducted. `is_inside` says that it does not touch the part's border."""
        is_small = opening_mm2 <= self.left_in_m2 * MM2_IN_A_SQUARE_METRE
        return not is_small or (self.wholly_inside and not is_inside)


def measured_by(name: str) -> str:
    """Words that name a measuring rule and say what it does: "Measured by net: all openings deducted"."""
    return f"Measured by {name}: {measuring_rules()[name].words}"


@cache
def measuring_rules() -> dict[str, MeasuringRule]:
    """The rules by name, "net" first."""
    text = (files("takeoff") / "data" / "measuring_rules.toml").read_text("utf-8")
    return msgspec.convert(tomllib.loads(text), dict[str, MeasuringRule])
