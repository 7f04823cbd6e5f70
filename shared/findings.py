"""Things to look at: a job that can be read and measured, but in which something is odd."""

from enum import Enum, StrEnum
from typing import NamedTuple, Self

NOWHERE = ""
"""The face of what is on none: finishes, products and prices."""


class Place(Enum):
    """A place in the window that says what is odd, beside the fields that put it right.

    `page` is the name of its page, `section` tells it from others on that page. `about` stands where the name of a face
    would, for what is on no face.
    """

    PICKED = "Measure", "picked parts"
    READINGS = "Measure", "readings"
    SURFACES = "Finish", "surfaces", "Basket"
    BUILD_UP = "Finish", "build-up", "Basket"
    PRODUCTS = "Finish", "products", "Basket"
    BASKET = "Buy", "basket", "Basket"

    def __init__(self, page: str, section: str, about: str = "") -> None:
        self.page = page
        self.section = section
        self.about = about


class _Row(NamedTuple):
    """What there is to know of a code, once for all: the fields are explained at `Code`."""

    word: str
    place: Place
    also: tuple[Place, ...] = ()
    leaves_out: bool = False
    mends: tuple[str, ...] = ()


class Code(StrEnum):
    """The checks, each by the word that published files name it with; a word never changes.

    A finding leads to its `place`, which says its message; the places in `also` say it, too. Where a code `leaves_out`,
    the work takes something that is in no amount and no cost. `mends` are the words for what one step may do about it
    (`takeoff.findings.mending` does it); there are none where a person must decide.
    """

    # How the parts of a face stand to each other.
    GAP = _Row("gap", Place.PICKED, mends=("Close the gap",))
    OVERLAP = _Row("overlap", Place.PICKED, mends=("Trim the overlap",))
    OUTSIDE_WALL = _Row("outside-wall", Place.PICKED, mends=("Trim it to the wall", "Move it inside"))
    OFF_BENCHTOP = _Row("off-benchtop", Place.PICKED)
    FRONT_TOO_LARGE = _Row("front-too-large", Place.PICKED, mends=("Make it fit",))
    SAME_OUTLINE = _Row("same-outline", Place.PICKED, mends=("Remove one",))
    HIDDEN = _Row("hidden", Place.PICKED)
    LOOSE_SIDE = _Row("loose-side", Place.PICKED)
    # What a part is said to be.
    UNUSUAL_SIZE = _Row("unusual-size", Place.PICKED)
    THIN_GROUT = _Row("thin-grout", Place.PICKED)
    NO_FINISH = _Row("no-finish", Place.PICKED, leaves_out=True)
    MATERIAL = _Row("material", Place.PICKED, also=(Place.SURFACES, Place.BUILD_UP))
    HINGES = _Row("hinges", Place.PICKED)
    HOLE_CENTRES = _Row("hole-centres", Place.PICKED)
    # Between faces.
    TIE_LENGTH = _Row("tie-length", Place.PICKED)
    TIE_OUTSIDE = _Row("tie-outside", Place.PICKED)
    TIE_BENCHTOP = _Row("tie-benchtop", Place.PICKED)
    EDGE_TWICE = _Row("edge-twice", Place.PICKED)
    SAME_NAME = _Row("same-name", Place.PICKED)
    JOINT_SECTION = _Row("joint-section", Place.PICKED)
    JOINT_NOWHERE = _Row("joint-nowhere", Place.PICKED)
    # What was read from a tape.
    READINGS = _Row("readings", Place.READINGS)
    OUT_OF_SQUARE = _Row("out-of-square", Place.READINGS)
    OUT_OF_PLUMB = _Row("out-of-plumb", Place.READINGS)
    # Finishes and their steps.
    NO_COATS = _Row("no-coats", Place.BUILD_UP, leaves_out=True)
    NO_PRODUCT = _Row("no-product", Place.BUILD_UP, leaves_out=True)
    MEASURE = _Row("measure", Place.BUILD_UP, leaves_out=True)
    # Products.
    STAND_IN = _Row("stand-in", Place.PRODUCTS)
    PASSED_OVER = _Row("passed-over", Place.PRODUCTS)
    SPREAD_RATE = _Row("spread-rate", Place.PRODUCTS, leaves_out=True)
    UNUSUAL_SPREAD_RATE = _Row("unusual-spread-rate", Place.PRODUCTS, also=(Place.BUILD_UP,))
    RATIO = _Row("ratio", Place.PRODUCTS, leaves_out=True)
    NO_SEALANT = _Row("no-sealant", Place.PRODUCTS, leaves_out=True)
    NO_TAPE = _Row("no-tape", Place.PRODUCTS, leaves_out=True)
    # Packs and their prices.
    EMPTY_PACK = _Row("empty-pack", Place.PRODUCTS)
    NO_PACKS = _Row("no-packs", Place.PRODUCTS, leaves_out=True)
    TOO_MANY_PACKS = _Row("too-many-packs", Place.PRODUCTS, leaves_out=True)
    FREE_PACK = _Row("free-pack", Place.PRODUCTS)
    UNUSUAL_PACK = _Row("unusual-pack", Place.PRODUCTS)
    UNUSUAL_PRICE = _Row("unusual-price", Place.PRODUCTS)
    NO_PRICE = _Row("no-price", Place.BASKET)

    place: Place
    also: tuple[Place, ...]
    leaves_out: bool
    mends: tuple[str, ...]

    def __new__(
        cls, word: str, place: Place, also: tuple[Place, ...], leaves_out: bool, mends: tuple[str, ...]
    ) -> Self:
        """The members are made from rows, field by field."""
        code = str.__new__(cls, word)
        code._value_ = word
        code.place, code.also, code.leaves_out, code.mends = place, also, leaves_out, mends
        return code

    @property
    def mend(self) -> str:
        """The words of the one mend there is. ValueError where there is none, or a choice of several."""
        (words,) = self.mends
        return words

    def is_said_in(self, place: Place) -> bool:
        """Whether this place says what was found."""
        return place is self.place or place in self.also


class Finding(NamedTuple):
    """One thing to look at.

    `code` says which check found it, `message` says it to a person in one or two sentences, `face` and `parts` are the
    ids of where it is. `mend` says what one step would put it right, in the words of its code ("Close the gap"), ""
    where a person must decide.
    """

    code: Code
    message: str
    face: str
    parts: tuple[str, ...] = ()
    mend: str = ""
