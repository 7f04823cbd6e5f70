"""Rows for the fields of fronts: how many hinges, and the hole centres of the old handle."""

from typing import NamedTuple

from desktop.fields.value_rows import TypedRow, always
from desktop.fields.words import NumberWords
from desktop.look.plain import tip_words
from desktop.look.wording import decimal_sign, own_writing
from desktop.state.shown import Shown
from shared.job import Part, Unit
from shared.limits import MOST_HINGES
from shared.typed.lengths import read_length
from takeoff.needs.hardware import hinges_of
from takeoff.surfaces.fronts import is_front

KNOB = "knob"
NOBODY_SAID = "not measured yet"

MEANS = {
    "Hinges": "How many hinges it has, if not the number that suits its height",
    "Hole centres": "The distance between the screw holes of the old handle. Type knob, or 0, for a knob or no handle",
    "New handles": "Their hole centres. Old holes that do not match are filled. Leave it empty to keep the old handles",
}


class CentresWords(NamedTuple):
    """How hole centres are read and shown: a length in mm, 0 for a knob, None for an empty field."""

    def read(self, text: str, unit: Unit) -> float | None:
        """The length in mm; 0 for a knob, None for an empty text. ReadingError if it is no length."""
        if not text.strip():
            return None
        if text.strip().casefold() == KNOB:
            return 0.0
        return read_length(text, unit, decimal=decimal_sign(), allow_zero=True)

    def show(self, value: object, unit: Unit) -> str:
        """The length as it is read off a tape, or the word for a knob; "" for None."""
        if not isinstance(value, int | float):
            return ""
        return own_writing(unit).length(value) if value else KNOB


def hinges_row() -> TypedRow[Part]:
    """The row for how many hinges a front has. An empty field shows how many the front's height asks for."""
    words = NumberWords("number of hinges", most=MOST_HINGES, empty=True, whole=True)
    return _explained(TypedRow("Hinges", "hinges", always(words), _usual_hinges, is_front))


def centres_row() -> TypedRow[Part]:
    """The row for the hole centres of the old handle."""
    return _explained(TypedRow("Hole centres", "hole_centres_mm", always(CentresWords()), _nobody_said, is_front))


def _nobody_said(_part: Part, _shown: Shown) -> str:
    return NOBODY_SAID


def _usual_hinges(part: Part, _shown: Shown) -> str:
    usual = hinges_of(part)
    return "how many?" if usual is None else f"usually {usual}" if usual else "none"


def _explained(row: TypedRow[Part]) -> TypedRow[Part]:
    row.setToolTip(tip_words(MEANS[row.label]))
    return row
