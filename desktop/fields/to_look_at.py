"""What there is to look at, said beside the fields that put it right."""

from collections.abc import Iterable

from PySide6.QtWidgets import QWidget

from desktop.look.plain import Label
from desktop.look.roles import set_role
from desktop.look.wording import own_writing
from shared.findings import Finding

MOST_SAID = 4


class ToLookAt(Label):
    """Says a few findings and how many more there are; hidden where there are none."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._first: Finding | None = None
        set_role(self, "trouble")
        self.setWordWrap(True)
        self.hide()

    def begin_with(self, finding: Finding) -> None:
        """Say this one first as long as it is there: a person has come for it."""
        self._first = finding

    def say(self, findings: Iterable[Finding]) -> None:
        """Say these, and no others."""
        in_order = sorted(findings, key=lambda each: each != self._first)
        lines = [own_writing().sentence(each.message) for each in in_order]
        more = [f"and {len(lines) - MOST_SAID} more"] if len(lines) > MOST_SAID else []
        self.setText("\n".join((*lines[:MOST_SAID], *more)))
        self.setVisible(bool(lines))
