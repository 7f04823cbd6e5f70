"""Tags. Common practice, no source: a tag stands on tape inside the door and by its opening, so it never changes."""

from msgspec.structs import replace

from geometry.edits.copying import copied_along
from geometry.edits.splitting import with_split
from geometry.outlines.shapes import box
from shared.edits.drawn import (
    copied_face,
    find_part,
    next_letter,
    with_changed_face,
    with_changed_parts,
    with_parts,
    without_parts,
)
from shared.job import Face, Job, Part, Room
from shared.limits import HIGHEST_TAG
from shared.trade.kinds import Kind
from takeoff.surfaces.tags import renumbered, tags, with_tags_given


def face_of_fronts(*fronts: tuple[str, float, float]) -> Face:
    parts = (Part(name, Kind.DOOR, box(x, y, 300, 200)) for name, x, y in fronts)
    return Face("b", "B", parts=tuple(parts))


def test_base_fronts_are_numbered_from_the_left_and_up_each_stack_then_upper_ones() -> None:
    face = face_of_fronts(
        ("upper right", 400, 1500),
        ("upper left", 0, 1500),
        ("top drawer", 2, 600),
        ("door", 400, 150),
        ("drawer", 0, 150),
    )
    assert tags(face) == {"drawer": "B1", "top drawer": "B2", "door": "B3", "upper left": "B4", "upper right": "B5"}


def test_only_fronts_have_tags() -> None:
    assert tags(Face("b", "B", parts=(Part("cabinet", Kind.CABINET, box(0, 0, 600, 720)),))) == {}


def test_a_tall_door_is_a_base_front_and_the_one_over_it_an_upper_one() -> None:
    face = face_of_fronts(("over", 0, 1400), ("beside", 400, 150), ("tall", 0, 150))
    assert tags(face) == {"tall": "B1", "beside": "B2", "over": "B3"}


def job_of(*faces: Face) -> Job:
    return Job("Quince Lane 2", (Room("r", "Kitchen", faces),))


def given(*fronts: tuple[str, float, float]) -> Job:
    """A job with one face of these fronts, to which their tags were given."""
    return with_tags_given(job_of(face_of_fronts(*fronts)))


FOUR = (("one", 0, 150), ("two", 300, 150), ("three", 600, 150), ("four", 900, 150))


def test_a_job_saved_without_tags_has_the_tags_that_it_would_have_had() -> None:
    old = job_of(face_of_fronts(*FOUR))
    as_it_was = {"one": "B1", "two": "B2", "three": "B3", "four": "B4"}
    assert tags(old.faces[0]) == as_it_was
    assert tags(with_tags_given(old).faces[0]) == as_it_was
    assert [part.tag_number for part in with_tags_given(old).faces[0].parts] == [1, 2, 3, 4]


def test_deleting_a_front_renames_no_other() -> None:
    left = without_parts(given(*FOUR), {"two"})
    assert tags(left.faces[0]) == {"one": "B1", "three": "B3", "four": "B4"}


def test_a_front_drawn_between_two_renames_neither_and_moving_one_keeps_its_tag() -> None:
    job = given(*FOUR)
    new = with_parts(job, "b", (Part("new", Kind.DOOR, box(450, 150, 100, 200)),))
    assert tags(new.faces[0]) == {"one": "B1", "two": "B2", "three": "B3", "four": "B4", "new": "B5"}
    first = new.faces[0].parts[0]
    away = with_changed_parts(new, (replace(first, outline=box(5000, 1500, 300, 200)),))
    assert tags(away.faces[0])["one"] == "B1"


def test_the_copy_of_a_front_gets_a_tag_of_its_own() -> None:
    job, copies = copied_along(given(*FOUR), ("two",), 2, 1500.0)
    tagged = tags(job.faces[0])
    assert tagged["two"] == "B2"
    assert [tagged[copy] for copy in copies] == ["B5", "B6"]
    split, pieces = with_split(given(*FOUR), ("one",), 2)
    assert [tags(split.faces[0])[piece] for piece in pieces] == ["B1", "B5"]


def test_the_number_of_what_is_no_front_for_now_is_kept_for_it() -> None:
    job = given(*FOUR)
    last = job.faces[0].parts[-1]
    panel = with_changed_parts(job, (replace(last, kind=Kind.END_PANEL),))
    more = with_tags_given(with_parts(panel, "b", (Part("new", Kind.DOOR, box(1500, 150, 100, 200)),)))
    back = with_changed_parts(more, (replace(find_part(more, "four")[1], kind=Kind.DOOR),))
    assert tags(back.faces[0]) == {"one": "B1", "two": "B2", "three": "B3", "four": "B4", "new": "B5"}


def test_numbers_are_given_anew_only_when_asked() -> None:
    left = without_parts(given(*FOUR), {"two"})
    assert tags(renumbered(left, "b").faces[0]) == {"one": "B1", "three": "B2", "four": "B3"}
    assert renumbered(given(*FOUR), "b") == given(*FOUR)


def test_a_face_has_a_letter_for_its_tags_beside_its_name() -> None:
    job = given(*FOUR)
    named = with_changed_face(job, replace(job.faces[0], name="Window wall", letter="K"))
    assert tags(named.faces[0])["three"] == "K3"
    assert next_letter(named) == "A"


def test_a_copied_face_counts_its_own_fronts_under_the_next_letter() -> None:
    job = copied_face(without_parts(given(*FOUR), {"two"}), "b")
    assert list(tags(job.faces[1]).values()) == ["A1", "A2", "A3"]


def test_faces_that_an_edit_leaves_alone_stay_the_same_objects() -> None:
    job = with_tags_given(job_of(face_of_fronts(*FOUR), Face("c", "C", parts=(Part("d", Kind.DOOR, box(0, 0, 9, 9)),))))
    assert with_tags_given(job) is job
    new = with_parts(job, "c", (Part("e", Kind.DOOR, box(20, 0, 9, 9)),))
    assert with_tags_given(new, job).faces[0] is job.faces[0]
    assert [part.tag_number for part in with_tags_given(new, job).faces[1].parts] == [1, 2]


def test_no_tag_is_given_beyond_what_a_job_can_hold() -> None:
    face = face_of_fronts(*FOUR)
    high = replace(face, parts=(replace(face.parts[0], tag_number=HIGHEST_TAG), *face.parts[1:]))
    assert tags(high) == {"one": f"B{HIGHEST_TAG}", "two": "B1", "three": "B2", "four": "B3"}
