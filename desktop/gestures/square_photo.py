"""Square the photo: the person marks four points on it and types what is known of them.

Either they are the corners of a rectangle with a known width and height, or the distances between them are known.
"""

from msgspec.structs import replace

from desktop.gestures.gesture import HELD_NONE, Done, Gesture, Held, Scene
from desktop.gestures.pick import Pick
from desktop.gestures.preview import Preview
from desktop.gestures.shaping import positive
from desktop.painting.photo import PhotoLayer
from geometry.outlines.sides import Point
from geometry.photos.marks import (
    DISTANCES,
    FEWEST_DISTANCES,
    FourMarks,
    check_marks,
    distance_marks,
    known_lengths,
    rectangle_marks,
)
from geometry.photos.squaring import FourPoints, homography
from shared.edits.drawn import with_changed_face
from shared.errors import JobError, ReadingError
from shared.job import CORNERS, PhotoPlace, Unit, Vertex, View
from shared.typed.length_words import quoted
from shared.typed.lengths import read_lengths

MARKS = len(CORNERS)
RECTANGLE = ("width of the rectangle", "height of the rectangle")
SURPLUS = "from mark 2 to mark 4, or ⏎ without it"
FIRST_FROM_LEFT = "how far it is from the left end, or ⏎ for 0"


class SquarePhoto(Gesture):
    """Squares a photo, which lies over the face as it was taken.

    Marks are clicked, or typed as dots from the photo's left and from its top. Unless the person says otherwise, what
    was marked stands in the lower left corner of the face (on a plan in the upper left).
    """

    title = "Straighten the photo"

    def __init__(self, scene: Scene, layer: PhotoLayer, *, by_distances: bool = False) -> None:
        super().__init__(scene)
        self._layer = layer
        self._by_distances = by_distances
        self._dots: tuple[Point, ...] = ()
        self._sizes: tuple[float, ...] = ()
        self._sizes_done = False
        self._left: float | None = None
        self._here: Point | None = None

    @property
    def wants(self) -> str:
        if len(self._dots) < MARKS:
            corner = CORNERS[len(self._dots)]
            return f"mark {len(self._dots) + 1}, {corner} corner" if self._by_distances else f"its {corner} corner"
        if not self._knows_sizes:
            return self._wanted_size()
        if self._left is None:
            return FIRST_FROM_LEFT
        height = "height above the floor" if self.scene.face.view is View.ELEVATION else "distance from the wall"
        return f"{height}, or ⏎ for 0"

    @property
    def example(self) -> str:
        if self._dots:
            return ""
        what = "four points, going round" if self._by_distances else "the corners of something rectangular"
        return f"click {what}; Ctrl and wheel zoom in"

    @property
    def other_way(self) -> str:
        return "a rectangle" if self._by_distances else "four distances"

    @property
    def is_begun(self) -> bool:
        return bool(self._dots)

    @property
    def preview(self) -> Preview:
        places = tuple(self._layer.place(*dot) for dot in self._dots)
        path = tuple(Vertex(*place) for place in places)
        marked = Preview(photo=self._layer, marks=places)
        if len(places) == MARKS:
            return marked._replace(outlines=(path,))
        if self._here is None:
            return marked._replace(path=path)
        words = CORNERS[len(places)]
        return marked._replace(path=(*path, Vertex(*self._here)), spot=self._here, words=words)

    def point(self, at: Point, held: Held = HELD_NONE) -> None:
        self._here = at

    def press(self, at: Point, held: Held = HELD_NONE) -> Done | None:
        self._here = at
        if len(self._dots) < MARKS:
            self._mark(self._layer.dot(*at))
        return None

    def says(self, text: str) -> str:
        if len(self._dots) == MARKS:
            return super().says(text)
        return " · ".join(f"{u:g} pixels from the left, {v:g} from the top" for u, v in self._typed_dots(text))

    def type(self, text: str) -> Done | None:
        if len(self._dots) == MARKS:
            return super().type(text)
        for dot in self._typed_dots(text):
            self._mark(dot)
        return None

    def read(self, length_mm: float) -> Done | None:
        if not self._knows_sizes:
            self._sizes = (*self._sizes, positive(length_mm, "length"))
            return None
        if self._left is None:
            self._left = length_mm
            return None
        return self._squared((self._left, length_mm))

    def enter(self) -> Done | None:
        if self._knows_sizes:
            return self._squared((self._left or 0.0, 0.0))
        if self._by_distances and len(self._sizes) == FEWEST_DISTANCES:
            self._sizes_done = True
        return None

    def turned(self) -> Gesture:
        """The marks stay; their sizes are typed anew."""
        self._by_distances = not self._by_distances
        self._forget_sizes()
        return self

    def again(self, scene: Scene) -> Gesture:
        """Pick: the photo is squared, or another face is shown."""
        return Pick(scene)

    def back(self) -> None:
        if self._left is not None:
            self._left = None
        elif self._sizes:
            self._sizes, self._sizes_done = self._sizes[:-1], False
        else:
            self._dots = self._dots[:-1]

    def cancel(self) -> None:
        self._dots = ()
        self._forget_sizes()

    @property
    def _knows_sizes(self) -> bool:
        most = len(DISTANCES) if self._by_distances else len(RECTANGLE)
        return len(self._dots) == MARKS and (self._sizes_done or len(self._sizes) == most)

    def _forget_sizes(self) -> None:
        self._sizes, self._sizes_done, self._left = (), False, None

    def _wanted_size(self) -> str:
        count = len(self._sizes)
        if not self._by_distances:
            return RECTANGLE[count]
        start, end = DISTANCES[count]
        return SURPLUS if count == FEWEST_DISTANCES else f"from mark {start + 1} to mark {end + 1}"

    def _typed_dots(self, text: str) -> tuple[Point, ...]:
        numbers = read_lengths(text, Unit.MM, decimal=self.scene.decimal, allow_zero=True)
        if len(numbers) % 2:
            raise ReadingError(
                "a mark needs two numbers", where=quoted(text), do="type its pixels from the left, then from the top"
            )
        return tuple(zip(numbers[::2], numbers[1::2], strict=True))

    def _mark(self, dot: Point) -> None:
        size = self._layer.image.size()
        if len(self._dots) == MARKS:
            raise ReadingError("there are four marks already", do="type the sizes, or take back a mark")
        if not (0 <= dot[0] <= size.width() and 0 <= dot[1] <= size.height()):
            raise JobError("that point is outside the photo", do="click on the photo")
        dots = (*self._dots, dot)
        if len(dots) == MARKS:
            check_marks(dots)
        self._dots = dots

    def _squared(self, at: Point) -> Done:
        one, two, three, four = self._dots
        face = self.scene.face
        marks = self._marks((one, two, three, four), at)
        homography(marks)
        lengths = known_lengths((one, two, three, four), self._sizes) if self._by_distances else ()
        before = face.photo_place
        place = PhotoPlace(marks, lengths, before.opacity) if before else PhotoPlace(marks, lengths)
        job = with_changed_face(self.scene.job, replace(face, photo_place=place))
        return Done(self.title, job, ())

    def _marks(self, dots: FourPoints, at: Point) -> FourMarks:
        view = self.scene.face.view
        if self._by_distances:
            return distance_marks(dots, self._sizes, at, view, self.scene.job.tape)
        return rectangle_marks(dots, self._sizes[0], self._sizes[1], at, view)
