from collections.abc import Callable

import pytest
from msgspec.structs import replace

from shared import limits
from shared.checks.job import check_job
from shared.edits.drawn import find_face, find_part, with_changed_face, with_changed_parts
from shared.errors import JobError
from shared.job import Butt, Face, Fillet, Job, JointChoice, KindChoice, Part, Room, Tie, Vertex
from shared.trade.finishes import Finish
from shared.trade.kinds import Kind, Treatment
from tests.shared.conftest import rectangle

NAN = float("nan")
ENDLESS = float("inf")


def part_changed(**fields: object) -> Callable[[Job], Job]:
    def change(job: Job) -> Job:
        return with_changed_parts(job, [replace(find_part(job, "p6")[1], **fields)])

    return change


def tie_changed(**fields: object) -> Callable[[Job], Job]:
    def change(job: Job) -> Job:
        plan = find_face(job, "f3")
        return with_changed_face(job, replace(plan, ties=(replace(plan.ties[0], **fields),)))

    return change


def with_joints(*joints: JointChoice) -> Callable[[Job], Job]:
    return lambda job: replace(job, joints=joints)


def with_twins(job: Job) -> Job:
    twin = Part("p1", Kind.DOOR, rectangle(0, 0, 10, 10))
    return replace(job, rooms=(*job.rooms, Room("r9", "Store", (Face("f9", "E", parts=(twin,)),))))


def tied_elevation(job: Job) -> Job:
    return with_changed_face(job, replace(find_face(job, "f1"), ties=(Tie("p1", 0, "f2", 0, 10),)))


def crowded(job: Job) -> Job:
    many = tuple(Part(f"q{n}", Kind.DOOR, rectangle(0, 0, 10, 10)) for n in range(limits.MOST_PARTS))
    return with_changed_face(job, replace(find_face(job, "f2"), parts=many))


TROUBLE: dict[str, tuple[Callable[[Job], Job], str]] = {
    "two parts of one id": (with_twins, 'two parts have the id "p1"'),
    "two faces of one id": (
        lambda job: replace(job, rooms=(*job.rooms, Room("r9", "", (Face("f1", "Z"),)))),
        'two faces have the id "f1"',
    ),
    "two rooms of one id": (lambda job: replace(job, rooms=(*job.rooms, Room("r1", ""))), 'two rooms have the id "r1"'),
    "two finishes of one id": (
        lambda job: replace(job, finishes=(*job.finishes, Finish("tiles", ""))),
        'two finishes have the id "tiles"',
    ),
    "no id": (lambda job: replace(job, rooms=(*job.rooms, Room("", "Store"))), 'one of the rooms has the id ""'),
    "an endless id": (
        lambda job: replace(job, rooms=(*job.rooms, Room("r" * 99, "Store"))),
        "one of the rooms has the id",
    ),
    "10 km wall": (part_changed(outline=rectangle(0, 0, 1e7, 600)), "Kitchen, face C, benchtop"),
    "a corner 10 km away": (
        part_changed(outline=rectangle(0, 0, 1e7, 600)),
        "a corner at (1e+07, 0) is more than 100 m",
    ),
    "a corner that is not a number": (
        part_changed(outline=rectangle(NAN, 0, 9, 9)),
        "a corner has a value that is not a number",
    ),
    "an endless corner": (
        part_changed(outline=rectangle(0, ENDLESS, 9, 9)),
        "a corner has a value that is not a number",
    ),
    "a bulge that is not a number": (
        part_changed(outline=(Vertex(0, 0, NAN),) * 4),
        "a corner has a value that is not a number",
    ),
    "an arc that reaches beyond": (
        part_changed(outline=(Vertex(0, 0, 1e6), Vertex(900, 0), Vertex(0, 900), Vertex(0, 9))),
        "a round side at (0, 0) reaches beyond 100 m",
    ),
    "too many corners": (part_changed(outline=(Vertex(0, 0),) * 2001), "the outline has 2001 corners"),
    "a factor of nothing": (part_changed(profile_factor=0.0), "the profile factor is 0"),
    "a factor that is not a number": (part_changed(profile_factor=NAN), "the profile factor is nan"),
    "a negative thickness": (part_changed(thickness_mm=-1.0), "the thickness in mm is -1"),
    "a level out of reach": (part_changed(level=10**50), "the level is 1e+50"),
    "a level too long for any float": (part_changed(level=10**309), "the level is a number of 310 digits"),
    "hinges too many for any float": (part_changed(hinges=-(10**5000)), "of hinges is a number of 5001 digits"),
    "rooms too many for any float": (
        lambda job: replace(job, rooms=(replace(job.rooms[0], alike=10**400), *job.rooms[1:])),
        "the number of rooms alike is a number of 401 digits",
    ),
    "a sleeve that lasts for ever": (
        lambda job: replace(job, allowances=replace(job.allowances, coats_a_sleeve=10**310)),
        "coats per sleeve is a number of 311 digits",
    ),
    "a coated side that is not there": (
        part_changed(coated_sides=(4,)),
        "its coated sides include a wrong or repeated number",
    ),
    "a coated side named twice": (
        part_changed(coated_sides=(1, 1)),
        "its coated sides include a wrong or repeated number",
    ),
    "a finish that is not there": (part_changed(finish="gold"), 'the job has no finish "gold"'),
    "an endless name": (part_changed(name="n" * 501), "is too long"),
    "a name over two lines": (part_changed(name="a\nb"), "contains a control character"),
    "a name that steers the terminal": (part_changed(made_of="\x1b[31m"), "contains a control character"),
    "a tie of a part elsewhere": (tie_changed(part="p1"), 'a tie names the part "p1", which is not here'),
    "a tie of a side that is not there": (tie_changed(side=4), 'a tie names side 4 of "p6"'),
    "a tie to a face that is not there": (tie_changed(face="f9"), 'the face "f9", which is not an elevation'),
    "a tie to a plan": (tie_changed(face="f3"), 'the face "f3", which is not an elevation'),
    "a tie that runs backwards": (tie_changed(start_mm=3600.0, end_mm=0.0), "a tie runs from 3600 to 0 mm"),
    "a tie that is not a number": (tie_changed(end_mm=NAN), "a tie runs from 0 to nan mm"),
    "a tied elevation": (tied_elevation, "only plans have ties"),
    "a joint on a face that is not there": (with_joints(JointChoice("f9", ("p1", "p2"))), 'the job has no face "f9"'),
    "a joint of a part that is not there": (
        with_joints(JointChoice("f1", ("p1", "p9"))),
        'face "f1" has no part "p9"',
    ),
    "a joint up a corner of the wrong face": (
        with_joints(JointChoice("f1", ("p2", "p5"), next_face="f3")),
        'face "f3" has no part "p5"',
    ),
    "a bead of nothing": (with_joints(JointChoice("f1", ("p1", "p2"), section=Fillet(0.0))), "no usable size"),
    "a bead too thin to have an area": (
        with_joints(JointChoice("f1", ("p1", "p2"), section=Fillet(1e-200))),
        "no usable size; give it a size from 0.1 mm to 1 m",
    ),
    "a bead that is not a number": (
        with_joints(JointChoice("f1", ("p1", "p2"), section=Butt(6.0, NAN))),
        "no usable size",
    ),
    "a kind with two rows": (lambda job: replace(job, kinds=job.kinds + job.kinds[:1]), "the kind wall has 2 rows"),
    "a kind treated as itself": (
        lambda job: replace(job, kinds=(KindChoice(Kind.WALL, Treatment.AS_KIND), *job.kinds[1:])),
        "a kind cannot be treated",
    ),
    "a kind with no such finish": (
        lambda job: replace(job, kinds=(KindChoice(Kind.WALL, Treatment.IN_PLACE, "gold"), *job.kinds[1:])),
        'kind wall: the job has no finish "gold"',
    ),
    "too many parts": (crowded, "parts; Recoat can measure at most 20000"),
    "too many rooms": (
        lambda job: replace(job, rooms=tuple(Room(f"r{n}", "") for n in range(201))),
        "the job has 201 rooms",
    ),
}


def test_a_sound_job_passes(kitchen: Job) -> None:
    check_job(kitchen)
    check_job(Job("Empty"))


def test_a_job_that_says_nothing_of_a_kind_passes(kitchen: Job) -> None:
    check_job(replace(kitchen, kinds=kitchen.kinds[1:]))
    check_job(replace(kitchen, kinds=()))


@pytest.mark.parametrize("name", TROUBLE)
def test_trouble_is_said_in_one_sentence_with_what_to_do(kitchen: Job, name: str) -> None:
    change, said = TROUBLE[name]
    broken = change(kitchen)
    with pytest.raises(JobError) as caught:
        check_job(broken)
    assert said in str(caught.value)
    assert caught.value.do
    assert len(str(caught.value)) < 220
