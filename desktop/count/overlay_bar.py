"""The bar that chooses what is shown on the face: fronts hung or off, masking, joints, sizes, names, the photo."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QAbstractButton, QButtonGroup, QCheckBox, QFrame, QHBoxLayout, QRadioButton, QWidget

from desktop.look.plain import button_words
from desktop.state.shown import Overlay, Shown
from takeoff.figures.measured import Fronts


class OverlayBar(QFrame):
    """Buttons for the fronts and the overlays. `hung(fronts)` and `switched(overlay)` say what the person chose."""

    hung = Signal(object)
    switched = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("paper")
        self._fronts = QButtonGroup(self)
        self._overlays = QButtonGroup(self)
        self._overlays.setExclusive(False)
        row = QHBoxLayout(self)
        row.setContentsMargins(14, 6, 14, 8)
        row.setSpacing(14)
        for place, fronts in enumerate(Fronts):
            button = QRadioButton(button_words(f"Fronts {fronts.value}"), self)
            self._fronts.addButton(button, place)
            row.addWidget(button)
        row.addSpacing(14)
        for place, overlay in enumerate(Overlay):
            box = QCheckBox(overlay.value.capitalize(), self)
            self._overlays.addButton(box, place)
            row.addWidget(box)
        row.addStretch(1)
        self._fronts.buttonClicked.connect(self._hang)
        self._overlays.buttonClicked.connect(self._switch)

    def follow(self, old: Shown | None, new: Shown) -> None:
        """Mark what is shown. The photo is offered only for a face that has one."""
        self._fronts.button(list(Fronts).index(new.fronts)).setChecked(True)
        for place, overlay in enumerate(Overlay):
            self._overlays.button(place).setChecked(overlay in new.overlays)
        face = new.shown_face
        has_photo = face is not None and face.photo_place is not None
        self._overlays.button(list(Overlay).index(Overlay.PHOTO)).setVisible(has_photo)

    def _hang(self, button: QAbstractButton) -> None:
        self.hung.emit(list(Fronts)[self._fronts.id(button)])

    def _switch(self, button: QAbstractButton) -> None:
        self.switched.emit(list(Overlay)[self._overlays.id(button)])
