"""The form for the photo under the face: how fine it is, how far it is known to be off, and its opacity."""

from msgspec.structs import replace
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QSlider, QVBoxLayout, QWidget

from desktop.gestures.check_photo import off_words
from desktop.look.plain import Label
from desktop.look.roles import set_role
from desktop.look.wording import own_writing
from desktop.state.shown import Shown
from desktop.state.store import Store
from geometry.photos.squaring import check_lengths, mm_per_dot
from shared.edits.drawn import with_changed_face
from shared.job import Job, PhotoPlace, Unit

NOT_SQUARED = (
    "The photo is not straightened yet, so it is not shown. Choose Job > Photo under the face > Straighten the photo."
)
UNCHECKED = "The photo has not been checked yet. Choose Job > Photo under the face > Check a length on the photo."
GUIDE = "A photo is a guide; the tape is right."
STEP = 5
FAR_STEP = 20


class PhotoForm(QFrame):
    """Shown while nothing is picked on a face that has a photo. A change of opacity is one edit for undo."""

    def __init__(self, store: Store, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._store = store
        self.head, self.words = Label(self), Label(self)
        self.opacity = QSlider(Qt.Orientation.Horizontal, self)
        self._opacity_label = Label("Opacity of the photo", self)
        self._lay_out()
        self.opacity.sliderMoved.connect(self._try)
        self.opacity.sliderReleased.connect(self._try_nothing)
        self.opacity.valueChanged.connect(self._take)

    def show_photo(self, shown: Shown) -> None:
        """Show what is known of the photo; hide if the face has none or parts are picked."""
        face = shown.shown_face
        self.setVisible(face is not None and bool(face.photo) and not shown.picked)
        if face is None or not face.photo:
            return
        self.head.setText(f"Photo {face.photo}")
        place = face.photo_place
        self.words.setText(NOT_SQUARED if place is None else _known(place, shown.unit))
        self._opacity_label.setVisible(place is not None)
        self.opacity.setVisible(place is not None)
        if place is not None and not self.opacity.isSliderDown():
            self.opacity.blockSignals(True)
            self.opacity.setValue(round(place.opacity * 100))
            self.opacity.blockSignals(False)

    def _lay_out(self) -> None:
        set_role(self.head, "head")
        for label in (self.head, self.words):
            label.setWordWrap(True)
        set_role(self._opacity_label, "quiet")
        self._opacity_label.setBuddy(self.opacity)
        self.opacity.setAccessibleName("Opacity of the photo, percent")
        self.opacity.setRange(0, 100)
        self.opacity.setSingleStep(STEP)
        self.opacity.setPageStep(FAR_STEP)
        self.opacity.setTracking(False)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 8, 0, 0)
        column.setSpacing(4)
        for widget in (self.head, self.words, self._opacity_label, self.opacity):
            column.addWidget(widget)
        self.hide()

    def _try(self, percent: int) -> None:
        self._store.try_out(self._with_opacity(percent))

    def _try_nothing(self) -> None:
        self._store.try_out(None)

    def _take(self, percent: int) -> None:
        job = self._with_opacity(percent)
        if job is not None:
            self._store.edit("Opacity of the photo", job)

    def _with_opacity(self, percent: int) -> Job | None:
        """The job with the photo at this opacity; None if the face has no squared photo any more."""
        job, face = self._store.open.job, self._store.open.shown_face
        if face is None or face.photo_place is None:
            return None
        place = replace(face.photo_place, opacity=percent / 100)
        return with_changed_face(job, replace(face, photo_place=place))


def _known(place: PhotoPlace, unit: Unit) -> str:
    fineness = f"One pixel is {own_writing(unit).length_with_unit(mm_per_dot(place.marks))}."
    checks = [
        f"{own_writing(unit).length(check.measured_mm)} by the tape: {off_words(check, own_writing(unit))}."
        for check in check_lengths(place)
    ]
    return "\n".join([fineness, *(checks or [UNCHECKED]), GUIDE])
