"""The face on a page's canvas and the photo under it, kept up to date with what is shown."""

from typing import NamedTuple

from desktop.canvas.board import MARGIN_PX, Canvas
from desktop.canvas.squared_photos import FacePhotos
from desktop.look.palette import Look
from desktop.painting.drawing import PaintOptions
from desktop.painting.finish_colours import finish_colours
from desktop.painting.kept import Drawings
from desktop.state.shown import Overlay, Shown
from geometry.drawn.chaining import chained

OVER_A_PHOTO = 0.3
"""How dense parts are over a photo: told apart, and the photo seen through them (own choice)."""

LINES_OF_THE_TAKEOFF = frozenset({Overlay.JOINTS, Overlay.MASKING})


class FaceSource(NamedTuple):
    """What the canvases of all pages show faces from."""

    look: Look
    drawings: Drawings
    photos: FacePhotos


class FaceView:
    """Draws the face on the canvas of one page while that page is open."""

    def __init__(self, source: FaceSource, *, margin_px: int = MARGIN_PX) -> None:
        self.canvas = Canvas(source.look, margin_px=margin_px)
        self._drawings = source.drawings
        self._photos = source.photos
        self._last: Shown | None = None

    def follow(self, new: Shown) -> None:
        """Show the face again if anything of it has changed."""
        if self._last is None or _what_is_drawn(self._last) != _what_is_drawn(new):
            face = new.shown_face
            self.canvas.show_drawing(self._drawings.of_face(new, face) if face else None)
        photo = self._photos.layer(new) if Overlay.PHOTO in new.overlays else None
        self.canvas.show_photo(photo)
        wanted = options(new)._replace(density=1.0 if photo is None else OVER_A_PHOTO)
        if new.page.in_finish_colours:
            wanted = wanted._replace(finishes=finish_colours(new.now, new.takeoff, new.face))
        self.canvas.set_options(wanted)
        self._last = new


def options(shown: Shown) -> PaintOptions:
    """How much of the face to paint, by the overlays that are on."""
    overlays = shown.overlays
    return PaintOptions(
        names=Overlay.NAMES in overlays,
        tags=Overlay.NAMES in overlays,
        sizes=Overlay.SIZES in overlays,
        joints=Overlay.JOINTS in overlays,
        masking=Overlay.MASKING in overlays,
        set_out=Overlay.SET_OUT in overlays,
        picked=frozenset(shown.picked),
        lit=frozenset(shown.lit),
        lit_lines=chained((edge.start, edge.end, edge.bulge) for edge in shown.lit_edges),
    )


def _what_is_drawn(shown: Shown) -> tuple[object, ...]:
    """What the drawing depends on. Large values are compared by identity.

    While a job is only tried out, its figures change only the lines of the takeoff: without those they do not count.
    """
    counts = shown.tried is None or not LINES_OF_THE_TAKEOFF.isdisjoint(shown.overlays)
    return id(shown.now), id(shown.takeoff) if counts else 0, shown.face, shown.fronts, shown.picked
