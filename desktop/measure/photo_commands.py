"""The commands for the photo under a face: bring it in, square it, check a length on it, take it away."""

from pathlib import Path

from msgspec.structs import replace
from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QFileDialog, QWidget

from desktop.canvas.new_photo import picture_of, read_photo
from desktop.gestures.check_photo import CheckPhoto
from desktop.gestures.gesture import Gesture, Scene
from desktop.gestures.square_photo import SquarePhoto
from desktop.measure.hand import Hand
from desktop.measure.page import MEASURE
from desktop.painting.photo import fitted_layer
from desktop.painting.viewing import EMPTY_FACE
from desktop.state.background import Background
from desktop.state.shown import Shown
from desktop.state.store import Store
from geometry.parts.extent import extent
from shared.edits.drawn import find_face, with_changed_face
from shared.errors import RecoatError
from shared.files.job import Photo
from shared.job import Face

PHOTO_FILES = "Photos (*.jpg *.jpeg *.png *.webp);;All files (*)"


class PhotoCommands(QObject):
    """Commands for the photo under a face. Photos are read off the window's thread.

    `failed(words)` says why a file holds no photo that can be read.
    """

    failed = Signal(str)

    def __init__(self, store: Store, background: Background, hand: Hand, window: QWidget) -> None:
        super().__init__(window)
        self._store = store
        self._background = background
        self._hand = hand
        self._window = window

    def bring_in(self) -> None:
        """Ask for a photo and lay it under the face."""
        shown = self._store.open
        folder = shown.path.parent if shown.path else Path.home()
        dialog = QFileDialog(self._window, "Photo under the face", str(folder), PHOTO_FILES)
        dialog.setFileMode(QFileDialog.FileMode.ExistingFile)
        dialog.fileSelected.connect(self._bring_named)
        dialog.finished.connect(dialog.deleteLater)
        dialog.open()

    def bring_path(self, path: Path) -> None:
        """Lay the photo in this file under the face that is shown, and go on to square it."""
        face, kept = self._store.open.face, self._store.open.photos

        def work() -> tuple[Photo, QImage]:
            photo = read_photo(path, kept)
            return photo, picture_of(photo)

        def done(read: tuple[Photo, QImage]) -> None:
            if self._has(face) and self._lay_under(face, read[0]):
                self._square(face, read[1])

        self._background.start(f"Reading {path.name}", work, done, self._fail)

    def square(self) -> None:
        """Square the photo of the face, or square it again."""
        shown = self._store.open
        face, photo = shown.face, _photo(shown)
        if photo is None:
            return

        def work() -> QImage:
            return picture_of(photo)

        def done(image: QImage) -> None:
            if self._has(face, photo.name):
                self._square(face, image)

        self._background.start(f"Reading {photo.name}", work, done, self._fail)

    def check(self) -> None:
        """Check a length on the squared photo."""
        self._store.turn_to(MEASURE)
        self._hand.take_up(CheckPhoto)

    def take_away(self) -> None:
        """Take the photo away from the face."""
        shown = self._store.open
        face = replace(find_face(shown.job, shown.face), photo="", photo_place=None)
        self._store.edit("Remove the photo", with_changed_face(shown.job, face))

    def _bring_named(self, name: str) -> None:
        self.bring_path(Path(name))

    def _has(self, face: str, photo: str = "") -> bool:
        """Whether the face is still there after a photo was read for it, and has this photo, if one is named."""
        shown = self._store.shown
        faces = shown.job.faces if shown else ()
        return any(other.id == face and photo in ("", other.photo) for other in faces)

    def _lay_under(self, face_id: str, photo: Photo) -> bool:
        """Lay the photo under the face in one edit, unless it lies there already. Whether it lies there now."""
        job = self._store.open.job
        face = find_face(job, face_id)
        if face.photo == photo.name:
            return True
        self._store.keep_photo(photo)
        under = replace(face, photo=photo.name, photo_place=None)
        return self._store.edit("Photo under the face", with_changed_face(job, under), face=face_id, picked=())

    def _square(self, face_id: str, image: QImage) -> None:
        self._store.turn_to(MEASURE)
        self._store.show_face(face_id)

        def make(scene: Scene) -> Gesture:
            return SquarePhoto(scene, fitted_layer(image, _box(scene.face), scene.face.view))

        self._hand.take_up(make)

    def _fail(self, error: RecoatError) -> None:
        self.failed.emit(str(error))


def with_photo(shown: Shown | None) -> bool:
    """Whether the face that is shown has a photo."""
    return shown is not None and _photo(shown) is not None


def with_squared_photo(shown: Shown | None) -> bool:
    """Whether the face that is shown has a photo that is squared."""
    face = shown.shown_face if shown else None
    return face is not None and face.photo_place is not None


def _photo(shown: Shown) -> Photo | None:
    face = shown.shown_face
    return shown.photo(face.photo) if face else None


def _box(face: Face) -> tuple[float, float, float, float]:
    left, bottom, right, top = extent(face)
    return (left, bottom, right, top) if right > left and top > bottom else EMPTY_FACE
