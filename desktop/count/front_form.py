"""What can be set for fronts on the page Count: hinges, old hole centres, and the hole centres of the new handles."""

from msgspec.structs import replace
from PySide6.QtWidgets import QFrame, QHBoxLayout, QVBoxLayout, QWidget

from desktop.fields.front_rows import MEANS, CentresWords, centres_row, hinges_row
from desktop.fields.grid import Edit, RowGrid
from desktop.fields.typed import ValueField
from desktop.look.plain import Label, tip_words
from desktop.look.roles import set_role
from desktop.state.shown import Shown
from desktop.state.store import Store
from shared.edits.drawn import find_part, with_changed_parts
from shared.errors import RecoatError
from shared.job import Part

OLD_GO_BACK = "the old handles go back on"


class FrontForm(QFrame):
    """The fields of one front, and the field of the new handles, which holds for the whole job.

    Each change is one edit for undo.
    """

    def __init__(self, store: Store, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        set_role(self, "card")
        self._store = store
        self._part = ""
        self.name = Label(self)
        self.fields = RowGrid[Part](((hinges_row(), centres_row()),), self)
        self.new_handles = ValueField("Hole centres of the new handles", self)
        self.trouble = Label(self)
        self._lay_out()
        self.fields.edited.connect(self._edit)
        self.new_handles.taken.connect(self._set_new)
        self.new_handles.told.connect(self._tell)

    def show_front(self, part_id: str | None, shown: Shown) -> None:
        """Show the fields of the front with this id; "" shows the new handles alone, and None hides the form."""
        self.setVisible(part_id is not None)
        self._tell("")
        self._part = part_id or ""
        self.fields.setVisible(bool(part_id))
        self.name.setVisible(bool(part_id))
        if part_id:
            part = find_part(shown.job, part_id)[1]
            tag = next((row.tag for row in shown.takeoff.parts if row.id == part_id), "")
            self.name.setText(f"{tag}  {part.called}".strip())
            self.fields.show_values((part,), shown)
        self.new_handles.show_value(shown.job.handle_centres_mm, CentresWords(), shown.unit, hint=OLD_GO_BACK)

    def _edit(self, label: str, edit: Edit[Part]) -> None:
        job = self._store.open.job
        try:
            changed = with_changed_parts(job, (edit(find_part(job, self._part)[1]),))
        except RecoatError as error:
            self._tell(str(error))
            return
        self._store.edit(label, changed)

    def _set_new(self, centres_mm: object) -> None:
        self._store.edit("New handles", replace(self._store.open.job, handle_centres_mm=centres_mm))

    def _tell(self, words: str) -> None:
        self.trouble.setText(words)
        self.trouble.setVisible(bool(words))

    def _lay_out(self) -> None:
        set_role(self.name, "head")
        set_role(self.trouble, "trouble")
        self.trouble.setWordWrap(True)
        label = Label("New handles, hole centres", self)
        set_role(label, "quiet")
        label.setToolTip(tip_words(MEANS["New handles"]))
        row = QHBoxLayout()
        row.addWidget(label)
        row.addWidget(self.new_handles, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(14, 10, 14, 10)
        column.addWidget(self.name)
        column.addWidget(self.fields)
        column.addLayout(row)
        column.addWidget(self.trouble)
        self.hide()
