"""What was counted from the picked parts."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFormLayout, QFrame, QWidget

from desktop.look.plain import Label
from desktop.look.roles import set_role
from desktop.look.wording import own_writing
from desktop.state.shown import Shown
from takeoff.faces.counted import counted_from


class CountedView(QFrame):
    """Shows the areas of the picked parts, and the lengths of masking and beads in which they have a share."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.head = Label("Counted from this part", self)
        set_role(self.head, "quiet")
        self.figures = {name: Label(self) for name in ("Gross", "Net", "Coated", "Masked", "Bead")}
        form = QFormLayout(self)
        form.setContentsMargins(0, 8, 0, 0)
        form.setVerticalSpacing(4)
        form.addRow(self.head)
        for name, label in self.figures.items():
            label.setAlignment(Qt.AlignmentFlag.AlignRight)
            label.setAccessibleName(name)
            form.addRow(Label(name, self), label)

    def show_counted(self, shown: Shown) -> None:
        """Show the figures of the picked parts; hide if none is picked."""
        self.setVisible(bool(shown.picked))
        if not shown.picked:
            return
        self.head.setText("Counted from this part" if len(shown.picked) == 1 else "Counted from these parts")
        counted = counted_from(shown.takeoff, shown.picked)
        self.figures["Gross"].setText(own_writing(shown.unit).area(counted.gross_mm2))
        self.figures["Net"].setText(own_writing(shown.unit).area(counted.net_mm2))
        self.figures["Coated"].setText(own_writing(shown.unit).area(counted.coated_mm2))
        self.figures["Masked"].setText(own_writing(shown.unit).total_length(counted.masking_mm))
        self.figures["Bead"].setText(own_writing(shown.unit).total_length(counted.bead_mm))
