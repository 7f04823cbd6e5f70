"""What can be decided about a joint: whether it is sealed, whether an old bead is cut out, and the bead's section."""

from msgspec.structs import replace
from PySide6.QtWidgets import QCheckBox, QComboBox, QFrame, QHBoxLayout, QVBoxLayout, QWidget

from desktop.fields.length import LengthField
from desktop.look.plain import Label
from desktop.look.roles import set_role
from desktop.state.store import Store
from shared.edits.drawn import with_joint_choice
from shared.job import Butt, Fillet, JointChoice, Section, Unit
from takeoff.edges.joints import Choices
from takeoff.figures.measured import JointRow

SECTIONS = ("fillet", "butt")


class JointForm(QFrame):
    """The fields of one joint. A change overrides the table of rules for this joint, and is one edit for undo."""

    def __init__(self, store: Store, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        set_role(self, "card")
        self._store = store
        self._row: JointRow | None = None
        self.name = Label(self)
        self.sealed = QCheckBox("seale&d", self)
        self.old_bead = QCheckBox("cut out a&n old bead first", self)
        self.section = QComboBox(self)
        self.first = LengthField("Leg or width", self)
        self.second = LengthField("Depth", self)
        self.trouble = Label(self)
        self._lay_out()
        self.sealed.clicked.connect(self._set_sealed)
        self.old_bead.clicked.connect(self._set_old_bead)
        self.section.activated.connect(self._set_shape)
        for field in (self.first, self.second):
            field.taken.connect(self._set_section)
            field.told.connect(self.trouble.setText)

    def show_joint(self, row: JointRow | None, unit: Unit) -> None:
        """Show what holds for this joint. None hides the form."""
        self._row = row
        self.setVisible(row is not None)
        self.trouble.clear()
        if row is None:
            return
        self.name.setText(row.name)
        self.sealed.setChecked(row.sealed)
        self.old_bead.setChecked(row.old_bead)
        self.old_bead.setEnabled(row.sealed)
        section = row.section
        butt = isinstance(section, Butt)
        self.section.setCurrentIndex(int(butt))
        self.first.setAccessibleName("Width" if butt else "Leg")
        self.first.show_length(section.width_mm if isinstance(section, Butt) else section.leg_mm, unit)
        self.second.setVisible(butt)
        if isinstance(section, Butt):
            self.second.show_length(section.depth_mm, unit)
        for field in (self.section, self.first, self.second):
            field.setEnabled(row.sealed)

    def _lay_out(self) -> None:
        set_role(self.name, "head")
        set_role(self.trouble, "trouble")
        self.trouble.setWordWrap(True)
        self.section.addItems(SECTIONS)
        self.section.setAccessibleName("Section of the bead")
        row = QHBoxLayout()
        row.setSpacing(12)
        for widget in (self.sealed, self.old_bead, self.section, self.first, self.second):
            row.addWidget(widget)
        for field in (self.first, self.second):
            field.setFixedWidth(64)
        row.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(14, 10, 14, 10)
        column.addWidget(self.name)
        column.addLayout(row)
        column.addWidget(self.trouble)
        self.hide()

    def _set_sealed(self, on: bool) -> None:
        self._decide("Joint sealed" if on else "Joint not sealed", sealed=on)

    def _set_old_bead(self, on: bool) -> None:
        self._decide("Old bead cut out" if on else "No old bead", old_bead=on)

    def _set_shape(self, place: int) -> None:
        row = self._row
        if row is None or place == int(isinstance(row.section, Butt)):
            return
        self._decide("Section of a joint", section=_as_other(row.section))

    def _set_section(self, length_mm: float) -> None:
        row = self._row
        if row is None:
            return
        first = self.sender() is self.first
        self._decide("Section of a joint", section=_with_length(row.section, length_mm, first=first))

    def _decide(
        self, label: str, *, sealed: bool | None = None, old_bead: bool | None = None, section: Section | None = None
    ) -> None:
        row, job = self._row, self._store.open.job
        if row is None:
            return
        fresh = JointChoice(face=row.face, parts=row.parts, next_face=row.next_face)
        before = Choices(job.joints).about(row.face, row.next_face, row.parts) or fresh
        choice = replace(
            before,
            sealed=before.sealed if sealed is None else sealed,
            old_bead=before.old_bead if old_bead is None else old_bead,
            section=before.section if section is None else section,
        )
        self._store.edit(label, with_joint_choice(job, choice))


def _as_other(section: Section) -> Section:
    """The section in the other shape: a butt as wide and deep as the fillet's leg, or a fillet of the butt's width."""
    if isinstance(section, Butt):
        return Fillet(leg_mm=section.width_mm)
    return Butt(width_mm=section.leg_mm, depth_mm=section.leg_mm)


def _with_length(section: Section, length_mm: float, *, first: bool) -> Section:
    if isinstance(section, Fillet):
        return Fillet(leg_mm=length_mm)
    return replace(section, width_mm=length_mm) if first else replace(section, depth_mm=length_mm)
