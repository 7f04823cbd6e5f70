"""Things to look at: a job that can be read and measured, but in which something is odd."""

from enum import Enum, StrEnum
from typing import NamedTuple, Self

NOWHERE = ""
"""The face of a finding that is on no face: about a finish, a product or a price."""


class Place(Enum):
    """A place in the window that says what is odd, beside the fields that put it right.

    `page` is the name of its page, and `section` tells it from other places on that page. `about` stands in for the
    name of the face of a finding that is on no face; "" for places whose findings are on faces.
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
    """What is known of a code. The fields are explained at `Code`."""

    word: str
    place: Place
    also: tuple[Place, ...] = ()
    leaves_out: bool = False
    mends: tuple[str, ...] = ()


class Code(StrEnum):
    """The checks. The value of each is the word that names it in published files, so it never changes.

    A finding leads to its `place`, which says its message; the places in `also` say it, too. A code that `leaves_out`
    means that the work takes something that is in no amount and no cost. `mends` are the words for the edits that put
    it right at once (`takeoff.findings.mending` makes them); there are none if a person must decide.
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
        """Make a member from the fields of its row."""
        code = str.__new__(cls, word)
        code._value_ = word
        code.place, code.also, code.leaves_out, code.mends = place, also, leaves_out, mends
        return code

    @property
    def mend(self) -> str:
        """The words of the only mend. ValueError for a code with no mend or with several."""
        (words,) = self.mends
        return words

    def is_said_in(self, place: Place) -> bool:
        """Whether this place shows findings of this code."""
        return place is self.place or place in self.also


class Finding(NamedTuple):
    """One thing to look at.

    `code` says which check found it. `message` says it to a person in one or two sentences. `face` and `parts` are the
    ids of where it is. `mend` says which edit would put it right, in the words of its code ("Close the gap"); "" if a
    person must decide.
    """

    code: Code
    message: str
    face: str
    parts: tuple[str, ...] = ()
    mend: str = ""
