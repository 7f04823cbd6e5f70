import pytest
from msgspec.structs import replace

from geometry.outlines.shapes import box
from shared.job import Face, Job, Part, Unit, View
from shared.trade.kinds import Kind, Treatment
from takeoff.figures.measured import Takeoff
from takeoff.take_off import take_off
from tests.takeoff.rows import codes, face_of, job_of

WALL = Part("wall", Kind.WALL, box(0, 0, 3000, 2400))


def messages(*parts: Part) -> list[str]:
    return [finding.message for finding in take_off(job_of(face_of(*parts))).findings]


def test_a_sound_job_has_nothing_to_look_at(counted: Takeoff) -> None:
    assert counted.findings == ()


def test_parts_that_miss_each_other_by_little_are_told() -> None:
    assert messages(
        WALL,
        Part("c1", Kind.CABINET, box(0, 150, 600, 720), name="sink base"),
        Part("c2", Kind.CABINET, box(603, 150, 600, 720), name="drawer base"),
    ) == ["sink base and drawer base are 3 mm apart along 720 mm; measure them again."]


def test_parts_that_overlap_by_little_are_told() -> None:
    assert messages(
        WALL,
        Part("c1", Kind.CABINET, box(0, 150, 600, 720), name="sink base"),
        Part("c2", Kind.CABINET, box(596, 150, 600, 720), name="drawer base"),
    ) == ["sink base and drawer base overlap by 4 mm along 720 mm; measure them again."]


@pytest.mark.parametrize(
    ("outline", "words"),
    [
        (box(2500, 900, 600, 600), "100 mm beyond the right end"),
        (box(-50, 900, 600, 600), "50 mm beyond the left end"),
        (box(0, 2000, 600, 600), "200 mm beyond the top"),
        (box(0, -5, 600, 600), "5 mm beyond the floor line"),
    ],
)
def test_a_part_outside_the_wall_is_told_with_how_far(outline: tuple[object, ...], words: str) -> None:
    tiles = replace(Part("t", Kind.SPLASHBACK, box(0, 0, 1, 1)), outline=outline)
    assert messages(WALL, tiles) == [f"splashback reaches {words} of the wall; move or shorten it."]


def test_a_part_of_which_nothing_is_seen_is_told() -> None:
    shelf = Part("s", Kind.SHELF, box(100, 100, 200, 20), name="spice shelf")
    oven = Part("o", Kind.FIXTURE, box(0, 0, 600, 600))
    assert messages(WALL, shelf, oven) == ["Other parts hide all of spice shelf; raise it, or remove it."]


def test_a_carcass_behind_its_door_is_nothing_odd() -> None:
    outline = box(0, 150, 600, 720)
    assert messages(WALL, Part("c", Kind.CABINET, outline), Part("d", Kind.DOOR, outline)) == []


def test_two_parts_of_one_kind_with_one_outline_are_told() -> None:
    first, again = (Part(part, Kind.CABINET, box(0, 150, 600, 720), name=part) for part in ("first", "again"))
    assert messages(WALL, first, again) == ["first and again have the same outline; remove one."]


BASE = Part("c", Kind.CABINET, box(600, 150, 600, 720), name="sink base")


def door(x: float, width: float, y: float = 152, height: float = 716) -> Part:
    return Part("d", Kind.DOOR, box(x, y, width, height))


@pytest.mark.parametrize(
    ("front", "beyond"),
    [(door(602, 640), 42), (door(560, 600), 40), (door(602, 596, 152, 760), 42), (door(602, 596, 100), 50)],
    ids=["to the right", "to the left", "above", "below"],
)
def test_a_front_larger_than_what_it_hangs_on_is_told(front: Part, beyond: int) -> None:
    assert messages(WALL, BASE, front) == [
        f"door reaches {beyond} mm beyond sink base, which it hangs on; measure it again."
    ]


def test_a_front_that_reaches_into_the_next_cabinet_is_told() -> None:
    after = Part("n", Kind.CABINET, box(1200, 150, 600, 720), name="next base")
    assert messages(WALL, BASE, after, door(602, 640)) == [
        "door reaches 42 mm beyond sink base, which it hangs on; measure it again."
    ]


@pytest.mark.parametrize(
    "others",
    [
        (door(600, 600, 130, 740),),
        (Part("n", Kind.CABINET, box(1200, 150, 300, 720)), door(602, 896)),
        (Part("f", Kind.FILLER, box(1200, 150, 50, 720)), door(602, 646)),
        (Part("k", Kind.KICKBOARD, box(0, 0, 3000, 150)), door(602, 596, 5, 863)),
        (door(1202, 596),),
        (Part("d", Kind.DRAWER_FRONT, box(602, 600, 596, 140)),),
    ],
    ids=["a finger pull", "two cabinets", "a filler", "down to the floor", "no cabinet", "one drawer of several"],
)
def test_a_front_that_covers_what_it_may_is_nothing_odd(others: tuple[Part, ...]) -> None:
    assert messages(WALL, BASE, *others) == []


def test_a_coat_without_a_finish_is_told() -> None:
    wall = replace(WALL, treatment=Treatment.IN_PLACE)
    assert messages(wall) == ["wall is coated, but no finish is chosen for it; choose one."]


def test_two_faces_with_fronts_and_one_name_are_told() -> None:
    def face(key: str) -> Face:
        return Face(key, "A", parts=(Part(f"{key}-door", Kind.DOOR, box(0, 0, 400, 700)),))

    assert codes(take_off(job_of(face("a"), face("b")))) == ["same-name"]


def test_lengths_are_told_in_the_jobs_unit() -> None:
    job: Job = replace(
        job_of(face_of(WALL, Part("t", Kind.SPLASHBACK, box(2500, 900, 627, 600)))),
        unit=Unit.INCH,
    )
    assert take_off(job).findings[0].message.startswith('splashback reaches 5" beyond the right end')


def test_what_is_set_into_a_benchtop_and_reaches_beyond_it_is_told() -> None:
    top = Part("b", Kind.BENCHTOP, box(0, 0, 1200, 600))
    cooktop = Part("c", Kind.FIXTURE, box(300, 60, 580, 570), name="cooktop")
    plan = Face("f1", "D", View.PLAN, parts=(top, cooktop))
    said = [each.message for each in take_off(job_of(plan)).findings if each.code == "off-benchtop"]
    assert said == ["cooktop reaches 30 mm beyond the benchtop; move it or measure again."]
