"""The finish of the picked parts, for parts whose finish is another than that of their kind."""

from PySide6.QtWidgets import QVBoxLayout, QWidget

from desktop.fields.form_rows import SEVERAL, ChoiceRow, TextRow, ways_of_coating
from desktop.fields.grid import Edit, RowGrid
from desktop.finish.section import Section
from desktop.look.plain import Label
from desktop.look.roles import set_role
from desktop.measure.details import AS_USUAL, head_words
from desktop.state.shown import Shown
from desktop.state.store import Store
from shared.edits.drawn import with_changed_parts
from shared.job import Part
from takeoff.surfaces.materials import material_of

NOTHING_PICKED = "Click a part to give it a finish of its own. Hold Shift to pick more."


class PickedForm(Section):
    """The fields under the face. Setting a field sets it for all picked parts in one edit."""

    def __init__(self, store: Store, parent: QWidget | None = None) -> None:
        super().__init__(store, parent)
        self.head = Label(self)
        self.finish = ChoiceRow[Part]("Finish", "finish")
        coated = ChoiceRow[Part]("Coated", "treatment", ways_of_coating())
        self.made_of = TextRow[Part]("Made of", "made_of")
        self.fields = RowGrid[Part](((self.finish, coated), (self.made_of,)), self)
        self.head.setWordWrap(True)
        keeps_its_room = self.fields.sizePolicy()
        keeps_its_room.setRetainSizeWhenHidden(True)  # else the face would jump under the hand that picks
        self.fields.setSizePolicy(keeps_its_room)
        column = QVBoxLayout(self)
        column.setContentsMargins(14, 6, 14, 8)
        column.setSpacing(6)
        for widget in (self.head, self.fields, self.trouble, self.to_look_at):
            column.addWidget(widget)
        self.fields.edited.connect(self._edit)

    def follow(self, new: Shown) -> None:
        super().follow(new)
        parts = new.picked_parts
        set_role(self.head, "head" if parts else "quiet")
        self.head.setText(head_words(parts, new) if parts or not new.face else NOTHING_PICKED)
        self.fields.setVisible(bool(parts))
        if parts:
            self.finish.offer([(AS_USUAL, ""), *((finish.name, finish.id) for finish in new.job.finishes)])
            self.fields.show_values(parts, new)
            self.made_of.edit.setPlaceholderText(_made_of(parts))

    def _edit(self, label: str, edit: Edit[Part]) -> None:
        parts = self._store.open.picked_parts
        self.take(label, lambda job: with_changed_parts(job, map(edit, parts)))


def _made_of(parts: tuple[Part, ...]) -> str:
    """The hint in the empty field: that the parts differ, or the material that is usual for their kinds."""
    if len({part.made_of for part in parts}) > 1:
        return SEVERAL
    usual = {material_of(part) for part in parts} - {None}
    return f"{', '.join(sorted(material for material in usual if material))}, as usual for its kind" if usual else ""
