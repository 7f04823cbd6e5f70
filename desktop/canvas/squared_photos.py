"""The photo under the face that is shown. It is squared off the window's thread and kept until another is needed."""

from dataclasses import replace
from typing import NamedTuple

from PySide6.QtCore import QObject, Signal

from desktop.canvas.new_photo import picture_of
from desktop.painting.photo import PhotoLayer, squared_layer
from desktop.state.background import Background
from desktop.state.shown import Shown
from shared.errors import RecoatError
from shared.files.job import Photo
from shared.job import PhotoMark, View


class _Wanted(NamedTuple):
    """What a squared picture is made from."""

    photo: Photo
    marks: tuple[PhotoMark, ...]
    view: View


class FacePhotos(QObject):
    """Gives the squared photo of a face: `ready` says that it can be shown now, `failed(words)` that it never can."""

    ready = Signal()
    failed = Signal(str)

    def __init__(self, background: Background, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._background = background
        self._wanted: _Wanted | None = None
        self._layer: PhotoLayer | None = None

    def layer(self, shown: Shown) -> PhotoLayer | None:
        """The photo under the face that is shown; None if the face has none, and until it is ready."""
        face = shown.shown_face
        place = face.photo_place if face else None
        if face is None or place is None:
            return None
        photo = shown.photo(face.photo)
        wanted = _Wanted(photo, place.marks, face.view) if photo else None
        if wanted != self._wanted:
            self._wanted, self._layer = wanted, None
            if wanted is not None:
                self._begin(wanted)
        if self._layer is not None and self._layer.opacity != place.opacity:
            self._layer = replace(self._layer, opacity=place.opacity)
        return self._layer

    def _begin(self, wanted: _Wanted) -> None:
        def work() -> PhotoLayer:
            return squared_layer(picture_of(wanted.photo), wanted.marks, wanted.view)

        def done(layer: PhotoLayer) -> None:
            if wanted is self._wanted:
                self._layer = layer
                self.ready.emit()

        def failed(error: RecoatError) -> None:
            self.failed.emit(str(error))

        self._background.start("Straightening the photo", work, done, failed)
