from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from shared.checks.job import check_job
from shared.edits import drawn as edits
from shared.errors import JobError
from shared.job import Face, Fillet, Job, JointChoice, Part, Room, Vertex, View
from shared.trade.kinds import Kind
from tests.shared.conftest import rectangle

DOOR = Part("new", Kind.DOOR, rectangle(500, 150, 450, 700))


def faces_of(job: Job) -> dict[str, Face]:
    return {face.id: face for face in job.faces}


def test_added_parts_stand_in_front_of_those_that_are_there(kitchen: Job) -> None:
    job = edits.with_parts(kitchen, "f1", [DOOR])
    assert edits.find_face(job, "f1").parts[-1] == DOOR
    assert edits.find_part(job, "new") == (edits.find_face(job, "f1"), DOOR)


def test_a_changed_part_keeps_its_place(kitchen: Job) -> None:
    taller = replace(edits.find_part(kitchen, "p3")[1], outline=rectangle(0, 850, 3600, 50))
    job = edits.with_changed_parts(kitchen, [taller])
    assert [part.id for part in edits.find_face(job, "f1").parts] == ["p1", "p2", "p3", "p4"]
    assert edits.find_part(job, "p3")[1] is taller


def test_a_tie_to_a_side_that_is_no_more_is_dropped(kitchen: Job) -> None:
    triangle = replace(edits.find_part(kitchen, "p6")[1], outline=(Vertex(0, 0), Vertex(600, 0)), coated_sides=None)
    assert edits.find_face(edits.with_changed_parts(kitchen, [triangle]), "f3").ties == ()
    same = edits.with_changed_parts(kitchen, [edits.find_part(kitchen, "p6")[1]])
    assert edits.find_face(same, "f3").ties is edits.find_face(kitchen, "f3").ties


def test_with_a_part_go_its_ties_and_joint_choices(kitchen: Job) -> None:
    job = edits.without_parts(kitchen, ["p6", "p5"])
    assert edits.find_face(job, "f3").ties == ()
    assert [choice.parts for choice in job.joints] == [("p2", "p3")]
    check_job(job)


def test_with_a_face_go_the_ties_to_it_and_its_joint_choices(kitchen: Job) -> None:
    job = edits.without_face(kitchen, "f1")
    assert (edits.find_face(job, "f3").ties, job.joints) == ((), ())
    assert [choice.parts for choice in edits.without_face(kitchen, "f2").joints] == [("p2", "p3")]
    check_job(job)


def test_a_room_goes_with_all_its_faces(kitchen: Job) -> None:
    job = edits.without_room(kitchen, "r1")
    assert [room.id for room in job.rooms] == ["r2"]
    assert job.joints == ()
    assert job.rooms[0] is kitchen.rooms[1]


def test_raising_and_lowering_a_part_gives_the_same_job(kitchen: Job) -> None:
    raised = edits.raised(kitchen, ["p2", "p7"], 2)
    assert [edits.find_part(raised, name)[1].level for name in ("p2", "p7", "p1")] == [2, 2, 0]
    assert edits.raised(raised, ["p2", "p7"], -2) == kitchen


def test_elevations_stand_before_plans_wherever_a_face_is_put(kitchen: Job) -> None:
    job = edits.with_face(kitchen, "r1", Face("f9", "E"))
    assert [face.id for face in job.rooms[0].faces] == ["f1", "f2", "f9", "f3"]
    job = edits.with_face(kitchen, "r1", Face("f9", "E", view=View.PLAN), at=0)
    assert [face.id for face in job.rooms[0].faces] == ["f1", "f2", "f9", "f3"]
    job = edits.with_face_moved(kitchen, "f1", 7)
    assert [face.id for face in job.rooms[0].faces] == ["f2", "f1", "f3"]


def test_a_copied_face_has_parts_choices_and_a_letter_of_its_own(kitchen: Job) -> None:
    job = edits.copied_face(kitchen, "f1")
    copy = job.rooms[0].faces[1]
    assert (copy.name, copy.corner) == ("E", edits.find_face(kitchen, "f1").corner)
    assert [part.outline for part in copy.parts] == [part.outline for part in edits.find_face(kitchen, "f1").parts]
    assert job.joints[-1] == replace(kitchen.joints[0], face=copy.id, parts=(copy.parts[1].id, copy.parts[2].id))
    check_job(job)


def test_a_copied_plan_is_not_tied(kitchen: Job) -> None:
    job = edits.copied_face(kitchen, "f3")
    assert job.rooms[0].faces[3].ties == ()
    check_job(job)


def test_a_room_can_be_added_anywhere_and_changed(kitchen: Job) -> None:
    laundry = Room("r3", "Laundry")
    assert [room.id for room in edits.with_room(kitchen, laundry).rooms] == ["r1", "r2", "r3"]
    first = edits.with_room(kitchen, laundry, at=0)
    assert [room.id for room in first.rooms] == ["r3", "r1", "r2"]
    assert edits.with_changed_room(first, replace(laundry, name="Wash room")).rooms[0].name == "Wash room"


def test_a_joint_choice_takes_the_place_of_the_one_about_the_same_joint(kitchen: Job) -> None:
    swapped = JointChoice("f1", ("p3", "p2"), sealed=False)
    assert edits.with_joint_choice(kitchen, swapped).joints == (kitchen.joints[1], swapped)
    other_way = JointChoice("f1", ("p5", "p2"), next_face="f2", section=Fillet(5.0))
    assert len(edits.with_joint_choice(kitchen, other_way).joints) == 3


def test_a_joint_choice_that_decides_nothing_clears_the_one_before(kitchen: Job) -> None:
    assert edits.with_joint_choice(kitchen, JointChoice("f1", ("p2", "p3"))).joints == kitchen.joints[1:]


def test_fresh_ids_are_used_by_nothing(kitchen: Job) -> None:
    assert edits.fresh_id(kitchen, "p") == "p9"
    assert edits.fresh_ids(kitchen, "door", 2) == ("door1", "door2")


@pytest.mark.parametrize(
    "edit",
    [
        lambda job: edits.with_parts(job, "nowhere", [DOOR]),
        lambda job: edits.with_changed_parts(job, [DOOR]),
        lambda job: edits.without_parts(job, ["nowhere"]),
        lambda job: edits.raised(job, ["nowhere"], 1),
        lambda job: edits.with_face(job, "nowhere", Face("f9", "E")),
        lambda job: edits.with_changed_face(job, Face("nowhere", "E")),
        lambda job: edits.without_face(job, "nowhere"),
        lambda job: edits.with_face_moved(job, "nowhere", 0),
        lambda job: edits.copied_face(job, "nowhere"),
        lambda job: edits.with_changed_room(job, Room("nowhere", "")),
        lambda job: edits.without_room(job, "nowhere"),
        lambda job: edits.with_joint_choice(job, JointChoice("nowhere", ("p1", "p2"))),
        lambda job: edits.find_part(job, "nowhere"),
    ],
)
def test_an_id_that_the_job_does_not_have_is_refused(kitchen: Job, edit: Callable[[Job], object]) -> None:
    with pytest.raises(JobError, match=r'the job has no (part|face|room) "(nowhere|new)"'):
        edit(kitchen)


@pytest.mark.parametrize(
    "edit",
    [
        lambda job: edits.with_parts(job, "f1", [replace(DOOR, id="p6")]),
        lambda job: edits.with_parts(job, "f1", [DOOR, DOOR]),
        lambda job: edits.with_face(job, "r1", Face("f4", "E")),
        lambda job: edits.with_face(job, "r1", Face("f9", "E", parts=(replace(DOOR, id="p1"),))),
        lambda job: edits.with_room(job, Room("r1", "Again")),
    ],
)
def test_an_id_that_is_used_already_is_refused(kitchen: Job, edit: Callable[[Job], object]) -> None:
    with pytest.raises(JobError, match="is used already"):
        edit(kitchen)


EDITS: dict[str, tuple[Callable[[Job], Job], set[str]]] = {
    "add": (lambda job: edits.with_parts(job, "f1", [DOOR]), {"f1"}),
    "change": (lambda job: edits.with_changed_parts(job, [replace(DOOR, id="p5")]), {"f2"}),
    "remove": (lambda job: edits.without_parts(job, ["p4", "p7"]), {"f1", "f3"}),
    "raise": (lambda job: edits.raised(job, ["p8"], 1), {"f4"}),
    "remove face": (lambda job: edits.without_face(job, "f2"), set()),
    "remove tied face": (lambda job: edits.without_face(job, "f1"), {"f3"}),
    "move face": (lambda job: edits.with_face_moved(job, "f2", 0), set()),
    "copy face": (lambda job: edits.copied_face(job, "f1"), set()),
    "choose joint": (lambda job: edits.with_joint_choice(job, JointChoice("f1", ("p1", "p2"), sealed=True)), set()),
}


@pytest.mark.parametrize("name", EDITS)
def test_an_edit_leaves_every_face_that_it_does_not_touch_the_same_object(kitchen: Job, name: str) -> None:
    edit, touched = EDITS[name]
    after = faces_of(edit(kitchen))
    assert {key for key, face in faces_of(kitchen).items() if key in after and after[key] is not face} == touched


@given(st.lists(st.sampled_from(sorted(EDITS)), max_size=6))
def test_a_job_holds_together_after_any_edits_that_it_accepts(names: list[str]) -> None:
    job = small_job()
    for name in names:
        try:
            job = EDITS[name][0](job)
        except JobError:
            continue
        check_job(job)


def small_job() -> Job:
    faces = (
        Face("f1", "A", parts=tuple(Part(f"p{n}", Kind.DOOR, rectangle(n * 10, 0, 10, 10)) for n in (1, 2, 4))),
        Face("f2", "B", parts=(Part("p5", Kind.WALL, rectangle(0, 0, 10, 10)),)),
        Face("f3", "C", view=View.PLAN, parts=(Part("p7", Kind.SHELF, rectangle(0, 0, 10, 10)),)),
    )
    other = Face("f4", "D", parts=(Part("p8", Kind.WALL, rectangle(0, 0, 10, 10)),))
    return Job("Small", (Room("r1", "One", faces), Room("r2", "Two", (other,))))


def test_letters_go_on_after_z() -> None:
    names = [chr(ord("A") + index) for index in range(26)]
    room = Room("r", "R", tuple(Face(f"f{name}", name) for name in names))
    assert edits.next_letter(Job("J", (room,))) == "AA"
    assert edits.next_letter(Job("J")) == "A"
