"""How each part is coated and with which finish: its own choice, else the job's for its kind."""

from typing import NamedTuple

from shared.job import KindChoice, Part
from shared.trade.kinds import Treatment, usual


class Treated(NamedTuple):
    """The treatment of a part, never AS_KIND, and the id of its finish; "" if it is not coated or has no finish."""

    treatment: Treatment
    finish: str

    @property
    def finish_in_place(self) -> str | None:
        """The finish that the part gets in place; None when it is not coated in place."""
        return self.finish if self.treatment is Treatment.IN_PLACE else None


LEFT = Treated(Treatment.LEFT, "")


class Treatments:
    """How the parts of a job are coated; made from its `kind_choices`."""

    def __init__(self, kinds: tuple[KindChoice, ...]) -> None:
        self._rows = {row.kind: row for row in kinds}

    def of(self, part: Part) -> Treated:
        """How this part is coated. An opening has no area of its own, so it is never coated."""
        if usual()[part.kind].hole:
            return LEFT
        row = self._rows[part.kind]
        treatment = row.treatment if part.treatment is Treatment.AS_KIND else part.treatment
        if treatment is Treatment.LEFT:
            return LEFT
        return Treated(treatment, part.finish or row.finish)
