"""The job: everything about one piece of work, as one frozen value.

Lengths are millimetres. On an elevation x runs to the right and y up from the floor. On a plan x runs to the right and
y out from the wall. Two jobs with the same content are equal. An edit (`shared.edits.drawn`) makes a new job that
shares with the old one all that the edit did not touch.
"""

import tomllib
from enum import StrEnum
from functools import cache
from importlib.resources import files

import msgspec
from msgspec.structs import replace

from shared.trade.finishes import Finish
from shared.trade.kinds import Kind, Treatment, usual
from shared.trade.products import Allowances, Money, Product
from shared.trade.tape import TapeClass
from shared.trade.value import NamedValue, Value

VERSION = 1
"""The version of the job's schema that this program writes."""


class Vertex(msgspec.Struct, frozen=True, array_like=True, forbid_unknown_fields=True, gc=False):
    """A corner of an outline, and the shape of the side from it to the next vertex.

    `bulge` is the tangent of a quarter of the angle that this side turns through, positive anticlockwise: 0 is a
    straight side, 1 is half a circle (DXF reference, LWPOLYLINE group 42).
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
    """How a part is tiled: the size of a tile without its grout line, the grout line's width, where a tile starts.

    The lower left corner of one tile is `start_x_mm`, `start_y_mm` from the lower left corner of the part's box. Each
    course is shifted over the one below by `course_shift` of a tile: 0.5 is half bond.
    """

    width_mm: float
    height_mm: float
    grout_mm: float
    start_x_mm: float = 0.0
    start_y_mm: float = 0.0
    course_shift: float = 0.0


class Part(Value, frozen=True):
    """One closed outline on a face, with a kind.

    `id` is unique in the job. A part of a higher `level` is in front of parts of any kind with a lower one. A part that
    does not `hide` leaves what is behind it in sight (a fridge that rolls out). `treatment` AS_KIND and `finish` ""
    follow the part's kind. `profile_factor` is 1 for flat work and more for moulded work.
    `thickness_mm` is the thickness of the board, seen at its edges. `coated_sides` are the sides whose edge is coated,
    each by the index of the vertex it leaves; None keeps what is usual for the kind. `back_coated` counts only for a
    part that is taken off. The hand does not move or change a `locked` part.
    `hinges` is a front's number of hinges; None is as many as its size asks for. `hole_centres_mm` is the distance
    between the two screw holes of its old handle: 0 for a knob or no handle, None while nobody has said.
    `tag_number` is the number of a front's tag, which stands on tape inside it; 0 while it was given none.
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
    tag_number: int = 0

    @property
    def called(self) -> str:
        """Its name; its kind where it has none."""
        return self.name or self.kind.value


class Tie(Value, frozen=True):
    """A side of a part on a plan that runs along an elevation, from `start_mm` to `end_mm` from that face's left end.

    `side` is the index of the vertex that the side leaves; `face` is the elevation.
    """

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

    For the ways across and up, a mark is the name of a set-out line, `START` (the left end, or the floor) or `END` (the
    right end, or the top of the wall). For the way straight, the marks are two of `CORNERS`. `hooked` says that the
    tape's end hook was used. `accepted` says that the person keeps the reading although others disagree with it.
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
    """How a photo lies under its face. Four marks square it; the measured `lengths` serve to check it.

    `opacity` is from 0, not seen, to 1.
    """

    marks: tuple[PhotoMark, PhotoMark, PhotoMark, PhotoMark]
    lengths: tuple[PhotoLength, ...] = ()
    opacity: float = 0.5


class Face(NamedValue, frozen=True):
    """Something flat, drawn square on: a wall as an elevation, or a benchtop or shelf from above as a plan.

    `parts` are in drawing order: when two have the same rank, the one drawn later is in front.
    `corner` says how the right end of an elevation meets the next elevation of the room (the last meets the first).
    `photo` names a picture kept in the job file. `photo_place` says how it lies and is None until the photo is squared.
    Only plans have `ties`. `readings` set out the face. `letter` begins the tags of its fronts; "" is its name.
    """

    view: View = View.ELEVATION
    parts: tuple[Part, ...] = ()
    corner: Corner = Corner.NONE
    ties: tuple[Tie, ...] = ()
    photo: str = ""
    photo_place: PhotoPlace | None = None
    readings: tuple[Reading, ...] = ()
    letter: str = ""

    @property
    def tag_letter(self) -> str:
        """What the tags of its fronts begin with: its letter; its name where it has none."""
        return self.letter or self.name


class Heights(Value, frozen=True):
    """The usual sizes in a room, mm; rows of cabinets are drawn with them.

    From the floor up stand the kickboard, the cabinet, the benchtop, the splashback and the wall cabinet. On plans the
    benchtop is `benchtop_depth_mm` deep and reaches `overhang_mm` beyond a row's open ends. `reveal_mm` is left free
    between fronts.
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

    `alike` is how many rooms like this one there are: all that is counted in it is needed that many times.
    """

    faces: tuple[Face, ...] = ()
    heights: Heights = msgspec.field(default_factory=usual_heights)
    alike: int = 1


class Fillet(Value, frozen=True, tag="fillet"):
    """A bead across a corner. Its section is a triangle with two equal legs."""

    leg_mm: float


class Butt(Value, frozen=True, tag="butt"):
    """A bead between two edges. Its section is width x depth."""

    width_mm: float
    depth_mm: float


Section = Fillet | Butt


class JointChoice(Value, frozen=True):
    """What a person decided about one joint; it overrules the table of joints.

    `parts` are the two parts that the joint divides, both on `face`. For an upright joint in a corner of the room the
    first part is on `face` and the second on `next_face`. A field that is None stays as the rule says. `sealed` True
    and a section add a joint that has no rule.
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


@cache
def usual_kinds() -> tuple[KindChoice, ...]:
    """How each kind is usually coated, one row a kind. A new job begins with these."""
    return tuple(KindChoice(kind, row.treatment, row.finish) for kind, row in usual().items())


USUAL_FINISHES = (
    Finish("tiles", "Tiles"),
    Finish("benchtop", "Benchtop"),
    Finish("fronts", "Fronts and cabinets"),
)


class Job(Value, frozen=True):
    """Everything about one piece of work.

    `tape` is the accuracy class printed on the tape that the readings were taken with. `handle_centres_mm` is the
    distance between the two screw holes of the new handles; None when the old handles go back on. `kinds` may lack a
    kind that was not known when the job was saved; then the usual holds for it.
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
    def kind_choices(self) -> tuple[KindChoice, ...]:
        """How each kind is coated: as its row in `kinds` says, and for a kind without a row as is usual.

        A kind without a row gets no finish where the job has not got the usual one.
        """
        said = {choice.kind for choice in self.kinds}
        ids = {finish.id for finish in self.finishes}
        missing = (choice for choice in usual_kinds() if choice.kind not in said)
        usual_ones = (choice if choice.finish in ids else replace(choice, finish="") for choice in missing)
        return (*self.kinds, *usual_ones)

    @property
    def faces(self) -> tuple[Face, ...]:
        """All faces of all rooms, in order."""
        return tuple(face for room in self.rooms for face in room.faces)

    @property
    def room_of(self) -> dict[str, Room]:
        """The room that each face is in, by the face's id; taken once where many faces are asked about."""
        return {face.id: room for room in self.rooms for face in room.faces}
