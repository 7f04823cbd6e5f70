"""The job: everything about one piece of work, as one frozen value.

Lengths are millimetres. On an elevation x runs to the right and y up from the floor; on a plan x runs to the right and
y out from the wall. Equal jobs compare equal; an edit (`shared.edits.drawn`) makes a new job that shares what it did
not touch.
"""

import tomllib
from enum import StrEnum
from functools import cache
from importlib.resources import files

import msgspec

from shared.trade.finishes import Finish
from shared.trade.kinds import Kind, Treatment, usual
from shared.trade.products import Allowances, Money, Product
from shared.trade.tape import TapeClass
from shared.trade.value import NamedValue, Value

VERSION = 1
"""The version of the job's schema that this program writes."""


class Vertex(msgspec.Struct, frozen=True, array_like=True, forbid_unknown_fields=True, gc=False):
    """A corner of an outline and the side that leaves it.

    `bulge` is the tangent of a quarter of the angle that the side to the next vertex turns through, positive
    anticlockwise: 0 is a straight side, 1 half a circle (DXF reference, LWPOLYLINE group 42).
    """

    x: float
    y: float
    bulge: float = 0.0


Outline = tuple[Vertex, ...]
"""The sides of a part, closed from the last vertex to the first, in either direction."""


class View(StrEnum):
    """How a face is seen."""

    ELEVATION = "elevation"
    PLAN = "plan"


class Corner(StrEnum):
    """How the right end of a face meets the left end of the next face of its room."""

    INSIDE = "inside"
    OUTSIDE = "outside"
    NONE = "none"


class Tiles(Value, frozen=True):
    """How a surface is tiled: the size of a tile without its grout line, the grout line's width, where a tile starts.

    The lower left corner of one tile stands `start_x_mm`, `start_y_mm` from the lower left corner of the part's box;
    each course is shifted by `course_shift` of a tile over the one below (0.5 is half bond).
    """

    width_mm: float
    height_mm: float
    grout_mm: float
    start_x_mm: float = 0.0
    start_y_mm: float = 0.0
    course_shift: float = 0.0


class Part(Value, frozen=True):
    """One closed outline on a face, with a kind.

    `id` is unique in the job. `level` raises (or, negative, lowers) it over others of any kind; a part that does not
    `hide` leaves what is behind it in sight (a fridge that rolls out). `treatment` and `finish` are the kind's unless
    set. `profile_factor` is 1 for flat work, more for moulded. `thickness_mm` is that of the board's edges;
    `coated_sides` are the sides (index of the vertex they leave) whose edge is coated, None for what is usual for the
    kind. `back_coated` counts for what is taken off. A `locked` part is not moved or changed by the hand.
    A front has `hinges`, None for as many as its size asks for, and the `hole_centres_mm` of its old handle: 0 for a
    knob or none, None where nobody has said.
    """

    id: str
    kind: Kind
    outline: Outline
    name: str = ""
    level: int = 0
    hides: bool = True
    treatment: Treatment = Treatment.AS_KIND
    finish: str = ""
    profile_factor: float = 1.0
    thickness_mm: float = 0.0
    coated_sides: tuple[int, ...] | None = None
    back_coated: bool = False
    made_of: str = ""
    tiles: Tiles | None = None
    locked: bool = False
    hinges: int | None = None
    hole_centres_mm: float | None = None

    @property
    def called(self) -> str:
        """Its name; its kind where it has none."""
        return self.name or self.kind.value


class Tie(Value, frozen=True):
    """A side of a part on a plan that runs along an elevation, `start_mm` to `end_mm` from that face's left end."""

    part: str
    side: int
    face: str
    start_mm: float
    end_mm: float


class Way(StrEnum):
    """Which way a reading goes: level, upright, or straight from one corner of the face to another."""

    ACROSS = "across"
    UP = "up"
    STRAIGHT = "straight"


class Reading(Value, frozen=True):
    """One length read from a tape on a face, from mark to mark.

    Across and up, a mark is a set-out line by its name, `START` (the left end, the floor) or `END` (the right end, the
    top of the wall). Straight, the marks are two of `CORNERS`. `hooked` where the tape's end hook was used. `accepted`
    where the person has decided that it stands though others disagree.
    """

    start: str
    end: str
    length_mm: float
    way: Way = Way.ACROSS
    hooked: bool = False
    accepted: bool = False


START = "start"
END = "end"
CORNERS = ("lower left", "lower right", "upper right", "upper left")


class PhotoMark(Value, frozen=True):
    """A point marked on a photo, `u` right and `v` down in dots of the kept picture, and its place on the face, mm."""

    u: float
    v: float
    x: float
    y: float


class PhotoLength(Value, frozen=True):
    """A known length on a photo, between two points in dots of the kept picture."""

    u0: float
    v0: float
    u1: float
    v1: float
    length_mm: float


class PhotoPlace(Value, frozen=True):
    """How a photo lies under its face: four marks square it; `lengths` are what was measured, to check it by."""

    marks: tuple[PhotoMark, PhotoMark, PhotoMark, PhotoMark]
    lengths: tuple[PhotoLength, ...] = ()
    opacity: float = 0.5


class Face(NamedValue, frozen=True):
    """One flat surface seen square on. Parts stand in drawing order: of two of equal rank the later is in front.

    `corner` says how the right end of an elevation meets the next elevation of the room (the last meets the first).
    `photo` names a picture kept in the job file, and `photo_place` how it lies; None until it is squared. `ties` belong
    to plans. `readings` set out the face.
    """

    view: View = View.ELEVATION
    parts: tuple[Part, ...] = ()
    corner: Corner = Corner.NONE
    ties: tuple[Tie, ...] = ()
    photo: str = ""
    photo_place: PhotoPlace | None = None
    readings: tuple[Reading, ...] = ()


class Heights(Value, frozen=True):
    """What is usual in a room, mm; rows of cabinets take their sizes from it.

    The kickboard stands on the floor, the cabinet on it, the benchtop on that, then the splashback up to the wall
    cabinet. On plans the benchtop is `benchtop_depth_mm` deep and reaches `overhang_mm` beyond a row's open ends.
    `reveal_mm` is left between fronts.
    """

    ceiling_mm: float
    kickboard_mm: float
    cabinet_mm: float
    benchtop_mm: float
    splashback_mm: float
    wall_cabinet_mm: float
    benchtop_depth_mm: float
    overhang_mm: float
    reveal_mm: float


class Unit(StrEnum):
    """The unit in which a job's lengths are shown, and in which a bare number is read."""

    MM = "mm"
    INCH = "in"


@cache
def usual_heights(unit: Unit = Unit.MM) -> Heights:
    """The heights that a new room begins with, in round numbers of the unit; `data/heights.toml` names their source."""
    table = tomllib.loads((files("shared") / "data" / "heights.toml").read_text("utf-8"))
    return msgspec.convert(table[unit.name.lower()], Heights)


class Room(NamedValue, frozen=True):
    """A kitchen, bathroom or laundry: its elevations in the order one meets them, then its plans.

    There are so many `alike`: all that is counted in it is needed so many times.
    """

    faces: tuple[Face, ...] = ()
    heights: Heights = msgspec.field(default_factory=usual_heights)
    alike: int = 1


class Fillet(Value, frozen=True, tag="fillet"):
    """A bead across a corner; a triangle of two equal legs."""

    leg_mm: float


class Butt(Value, frozen=True, tag="butt"):
    """A bead between two edges: width x depth."""

    width_mm: float
    depth_mm: float


Section = Fillet | Butt


class JointChoice(Value, frozen=True):
    """What a person decided about one joint, over the table of rules.

    `parts` are the two parts it divides, on `face`; for an upright joint the first is on `face`, the second on
    `next_face`. A field that is None stays as the rule says. A joint without a rule is added by `sealed=True` and a
    section.
    """

    face: str
    parts: tuple[str, str]
    next_face: str = ""
    sealed: bool | None = None
    section: Section | None = None
    old_bead: bool | None = None


class KindChoice(Value, frozen=True):
    """How parts of a kind are coated in this job, and with which finish."""

    kind: Kind
    treatment: Treatment
    finish: str = ""


def usual_kinds() -> tuple[KindChoice, ...]:
    """How each kind is usually coated: a new job begins with these."""
    return tuple(KindChoice(kind, row.treatment, row.finish) for kind, row in usual().items())


USUAL_FINISHES = (
    Finish("tiles", "Tiles"),
    Finish("benchtop", "Benchtop"),
    Finish("fronts", "Fronts and cabinets"),
)


class Job(Value, frozen=True):
    """Everything about one piece of work.

    `tape` is the accuracy class printed on the tape that it was read with. `handle_centres_mm` are the hole centres of
    the new handles, None where the old ones go back on.
    """

    name: str
    rooms: tuple[Room, ...] = ()
    unit: Unit = Unit.MM
    kinds: tuple[KindChoice, ...] = msgspec.field(default_factory=usual_kinds)
    finishes: tuple[Finish, ...] = USUAL_FINISHES
    joints: tuple[JointChoice, ...] = ()
    tape: TapeClass = TapeClass.SECOND
    products: tuple[Product, ...] = ()
    money: Money = Money()
    allowances: Allowances = Allowances()
    handle_centres_mm: float | None = None
    version: int = VERSION

    @property
    def faces(self) -> tuple[Face, ...]:
        """All faces of all rooms, in order."""
        return tuple(face for room in self.rooms for face in room.faces)

    @property
    def room_of(self) -> dict[str, Room]:
        """The room that each face is in, by the face's id; taken once where many faces are asked about."""
        return {face.id: room for room in self.rooms for face in room.faces}
