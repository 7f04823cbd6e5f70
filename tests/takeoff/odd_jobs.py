"""For every code of a finding the smallest job in which it is found."""

import math

from msgspec.structs import replace

from geometry.edits.setting_out import with_chain, with_straight
from geometry.outlines.shapes import box
from shared.findings import Code, Finding
from shared.job import CORNERS, Face, Job, JointChoice, Part, Room, Tie, Tiles, View, Way
from shared.trade.finishes import Finish, Step, Work
from shared.trade.kinds import Kind, Treatment
from shared.trade.products import Pack, Product, Use
from takeoff.bill import make_bill
from takeoff.take_off import take_off
from tests.takeoff.rows import face_of, job_of

WALL = Part("wall", Kind.WALL, box(0, 0, 3000, 2400))
BASE = Part("base", Kind.CABINET, box(600, 150, 600, 720))
DOOR = Part("door", Kind.DOOR, box(602, 152, 596, 716))
TILES = Part("tiles", Kind.SPLASHBACK, box(0, 910, 3000, 600))
EDGE = Part("edge", Kind.BENCHTOP, box(0, 872, 3000, 38))
TOP = Part("top", Kind.BENCHTOP, box(0, 0, 3000, 600), coated_sides=(1, 3))
ALCOVE = ((0.0, 0.0), (3000.0, 0.0), (3012.0, 2400.0), (-8.0, 2390.0))

TIN = Pack(1.0, 24.0, "tin")
SATIN = Product("satin", "Tern satin", Use.COLOUR, (TIN,), covers_m2=12)
TAPE = Product("tape", "Tape 24", Use.TAPE, (Pack(50.0, 6.0, "roll"),))
SLEEVE = Product("sleeve", "Sleeve 100", Use.SLEEVE, (Pack(1.0, 3.5),))


def found_in(job: Job) -> tuple[Finding, ...]:
    """All there is to look at in a job: in what is drawn, needed and bought."""
    takeoff = take_off(job)
    return (*takeoff.findings, *make_bill(job, takeoff).findings)


def drawn(*parts: Part) -> Job:
    """A wall with these parts."""
    return job_of(face_of(WALL, *parts))


def moved(part: Part, name: str, x: float) -> Part:
    """Another part like this one, elsewhere."""
    left, bottom, right, top = part.outline[0].x, part.outline[0].y, part.outline[2].x, part.outline[2].y
    return replace(part, id=name, outline=box(x, bottom, right - left, top - bottom))


def on_a_plan(*parts: Part) -> Job:
    """A plan with these parts."""
    return job_of(Face("p", "P", View.PLAN, parts=parts))


def tied(start_mm: float, end_mm: float, *coated_sides: int) -> Job:
    """A benchtop's plan that runs along a wall from here to there, its front on the wall's face."""
    top = replace(TOP, coated_sides=coated_sides or TOP.coated_sides)
    plan = Face("p", "P", View.PLAN, parts=(top,), ties=(Tie("top", 0, "a", start_mm, end_mm),))
    return job_of(face_of(WALL, EDGE, TILES), plan)


def decided(choice: JointChoice) -> Job:
    """A cabinet with its door, and something decided about a joint of theirs."""
    return replace(drawn(BASE, DOOR, TILES), joints=(choice,))


def out_of_true() -> Job:
    """A wall of which sides and diagonals were read: it is neither square nor plumb."""
    job = drawn()
    for one, other in ((0, 1), (0, 2), (0, 3), (1, 2), (1, 3), (2, 3)):
        length_mm = math.dist(ALCOVE[one], ALCOVE[other])
        job = with_straight(job, "a", CORNERS[one], CORNERS[other], length_mm)
    return job


def coated(*products: Product, steps: tuple[Step, ...] = (Step(Work.COLOUR, "satin"),), made_of: str = "") -> Job:
    """Tiles, their finish, and what there is for it."""
    finish = Finish("tiles", "Tiles", steps)
    return replace(drawn(replace(TILES, made_of=made_of)), finishes=(finish,), products=products)


def over_a_benchtop(job: Job) -> Job:
    """The same, on a benchtop that is not coated: a joint is sealed between them."""
    edge = replace(EDGE, treatment=Treatment.LEFT)
    return replace(job, rooms=drawn(*job.faces[0].parts[1:], edge).rooms)


def bought_in(*packs: Pack) -> Job:
    """Tiles coated with what is bought in these packs."""
    return coated(replace(SATIN, packs=packs), TAPE)


def standing_in(product: Product) -> Job:
    """Tiles coated with what this product stands in for."""
    return coated(replace(SATIN, stands_for="satin"), replace(product, id="other", stands_for="satin"), TAPE)


def same_names() -> Job:
    """Two faces with one name and a door each."""
    faces = (Face(name, "A", parts=(moved(DOOR, f"{name} door", 0),)) for name in ("a", "b"))
    return Job("Quince Lane 2", rooms=(Room("r", "Kitchen", tuple(faces)),))


FOUND_IN: dict[Code, Job] = {
    Code.GAP: drawn(BASE, moved(BASE, "next", 1203)),
    Code.OVERLAP: drawn(BASE, moved(BASE, "next", 1196)),
    Code.OUTSIDE_WALL: drawn(moved(TILES, "tiles", 200)),
    Code.OFF_BENCHTOP: on_a_plan(TOP, Part("sink", Kind.FIXTURE, box(300, 60, 580, 570))),
    Code.FRONT_TOO_LARGE: drawn(BASE, replace(DOOR, outline=box(602, 152, 640, 716))),
    Code.SAME_OUTLINE: drawn(BASE, replace(BASE, id="again")),
    Code.HIDDEN: drawn(
        Part("shelf", Kind.SHELF, box(100, 100, 200, 20)), Part("oven", Kind.FIXTURE, box(0, 0, 600, 600))
    ),
    Code.LOOSE_SIDE: on_a_plan(TOP),
    Code.UNUSUAL_SIZE: drawn(Part("kick", Kind.KICKBOARD, box(0, 0, 600, 50))),
    Code.THIN_GROUT: drawn(replace(TILES, tiles=Tiles(150, 150, 1.4))),
    Code.NO_FINISH: replace(job_of(face_of(replace(WALL, treatment=Treatment.IN_PLACE))), products=(SATIN, TAPE)),
    Code.MATERIAL: coated(SATIN, TAPE, made_of="river stone"),
    Code.HINGES: job_of(face_of(replace(DOOR, outline=box(0, 0, 450, 2600)))),
    Code.HOLE_CENTRES: replace(drawn(BASE, DOOR), handle_centres_mm=96.0),
    Code.TIE_LENGTH: tied(0, 2990),
    Code.TIE_OUTSIDE: tied(100, 3100),
    Code.TIE_BENCHTOP: tied(100, 3100),
    Code.EDGE_TWICE: tied(0, 3000, 1, 2, 3),
    Code.SAME_NAME: same_names(),
    Code.JOINT_SECTION: decided(JointChoice("a", ("base", "wall"), sealed=True)),
    Code.JOINT_NOWHERE: decided(JointChoice("a", ("base", "tiles"), old_bead=True)),
    Code.READINGS: with_chain(drawn(), "a", Way.ACROSS, (600, 1200, 1206)),
    Code.OUT_OF_SQUARE: out_of_true(),
    Code.OUT_OF_PLUMB: out_of_true(),
    Code.NO_COATS: coated(SATIN, TAPE, steps=()),
    Code.NO_PRODUCT: coated(SATIN, TAPE, steps=(Step(Work.COLOUR),)),
    Code.MEASURE: coated(SATIN, TAPE, steps=(Step(Work.COLOUR, "tape"),)),
    Code.STAND_IN: standing_in(SLEEVE),
    Code.PASSED_OVER: standing_in(replace(SATIN, covers_m2=0)),
    Code.SPREAD_RATE: coated(replace(SATIN, covers_m2=0), TAPE),
    Code.UNUSUAL_SPREAD_RATE: coated(replace(SATIN, covers_m2=120), TAPE),
    Code.RATIO: coated(replace(SATIN, ratio=(4, 0)), TAPE),
    Code.NO_SEALANT: over_a_benchtop(coated(SATIN, TAPE)),
    Code.NO_TAPE: coated(SATIN),
    Code.EMPTY_PACK: bought_in(replace(TIN, size=0.0), TIN),
    Code.NO_PACKS: bought_in(),
    Code.TOO_MANY_PACKS: bought_in(replace(TIN, size=1e-6)),
    Code.FREE_PACK: bought_in(replace(TIN, price=0.0)),
    Code.UNUSUAL_PACK: bought_in(TIN, Pack(41.0)),
    Code.UNUSUAL_PRICE: bought_in(TIN, Pack(2.5, 550.0, "tin")),
    Code.NO_PRICE: bought_in(replace(TIN, price=None)),
}
