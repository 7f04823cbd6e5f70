import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from examples.make_harbour_row import harbour_row
from geometry.outlines.measured import outline_box
from geometry.outlines.shapes import box, circle, rounded_box
from geometry.seen.near import near_misses
from shared.edits.drawn import find_face, find_part, with_changed_face, with_changed_parts
from shared.errors import JobError
from shared.findings import Code, Finding
from shared.job import Job, Part, Vertex
from shared.trade.kinds import Kind
from takeoff.findings.mending import all_mended, mended
from takeoff.take_off import take_off
from tests.takeoff.rows import codes, face_of, job_of

WALL = Part("wall", Kind.WALL, box(0, 0, 3000, 2400))
BASE = Part("base", Kind.CABINET, box(0, 150, 600, 720), name="sink base")


def cabinet(part_id: str, x: float, width: float = 600) -> Part:
    return Part(part_id, Kind.CABINET, box(x, 150, width, 720))


def only_finding(job: Job) -> Finding:
    (finding,) = take_off(job).findings
    return finding


def put_right(*parts: Part) -> Job:
    """The job after its only finding is mended, with nothing left to look at."""
    job = job_of(face_of(*parts))
    after = mended(job, only_finding(job))
    assert codes(take_off(after)) == []
    return after


def box_in(job: Job, part: str) -> tuple[float, float, float, float]:
    return outline_box(find_part(job, part)[1].outline)


@pytest.mark.parametrize("gap", [3, -3])
def test_of_two_cabinets_the_later_one_comes_to_touch_with_its_facing_side_only(gap: float) -> None:
    after = put_right(WALL, BASE, cabinet("next", 600 + gap))
    assert box_in(after, "next") == (600, 150, 1200 + gap, 870)
    assert box_in(after, "base") == (0, 150, 600, 870)


def test_the_words_of_the_mend_say_what_it_does() -> None:
    apart, across = (job_of(face_of(WALL, BASE, cabinet("next", 600 + gap))) for gap in (3, -3))
    assert (only_finding(apart).mend, only_finding(across).mend) == ("Close the gap", "Trim the overlap")


def test_tiles_are_cut_to_the_cabinet_though_they_were_drawn_later() -> None:
    tiles = Part("tiles", Kind.SPLASHBACK, box(604, 900, 900, 600))
    upper = Part("upper", Kind.CABINET, box(0, 900, 600, 600))
    for parts in ((WALL, tiles, upper), (WALL, upper, tiles)):
        after = put_right(*parts)
        assert box_in(after, "tiles") == (600, 900, 1504, 1500)


def test_the_example_mended_has_its_tiles_at_the_cabinet_and_along_the_slope() -> None:
    job = harbour_row()
    after = mended(job, only_finding(job))
    corners = [(v.x, v.y) for v in find_part(after, "g-tiles")[1].outline]
    assert corners == [(0, 900), (1200, 900), (1200, 2100), (900, 2400), (0, 2400)]
    assert take_off(after).findings == ()
    assert find_face(after, "A") is find_face(job, "A")


def test_the_side_is_moved_that_makes_no_new_miss() -> None:
    """The later cabinet, come down to the first one, would stand 4 mm over the second; so the first one rises."""
    second = Part("second", Kind.CABINET, box(600, 150, 300, 716))
    after = put_right(WALL, BASE, second, Part("upper", Kind.CABINET, box(0, 874, 900, 600)))
    assert box_in(after, "base") == (0, 150, 600, 874)
    assert box_in(after, "upper") == (0, 874, 900, 1474)


def test_closing_one_gap_leaves_another_as_it_was() -> None:
    job = job_of(face_of(WALL, BASE, cabinet("b", 603), cabinet("c", 1206)))
    first, second = take_off(job).findings
    after = mended(job, first)
    assert box_in(after, "b") == (600, 150, 1203, 870)
    assert take_off(after).findings == (second,)


def test_what_has_arcs_is_moved_as_a_whole() -> None:
    sink = Part("sink", Kind.FIXTURE, rounded_box(603, 150, 500, 720, 100))
    after = put_right(WALL, replace(BASE, locked=True), sink)
    assert box_in(after, "sink") == pytest.approx((600, 150, 1100, 870))


def test_a_moved_cabinet_takes_its_fronts_along() -> None:
    outside, door = cabinet("c", 2500), Part("d", Kind.DOOR, box(2502, 152, 490, 716))
    job = job_of(face_of(WALL, outside, door))
    finding = only_finding(job)
    assert finding.mend == "Move it inside"
    after = mended(job, finding)
    assert box_in(after, "c") == (2400, 150, 3000, 870)
    assert box_in(after, "d") == (2402, 152, 2892, 868)


@pytest.mark.parametrize(
    ("tiles", "kept"),
    [
        (box(2500, 900, 600, 600), (2500, 900, 3000, 1500)),
        (box(-50, 900, 600, 600), (0, 900, 550, 1500)),
        (box(0, 2000, 600, 600), (0, 2000, 600, 2400)),
        (box(-100, -100, 4000, 4000), (0, 0, 3000, 2400)),
    ],
)
def test_what_is_cut_on_site_is_trimmed_to_the_wall(tiles: tuple[Vertex, ...], kept: tuple[float, ...]) -> None:
    job = job_of(face_of(WALL, Part("tiles", Kind.SPLASHBACK, tiles)))
    assert only_finding(job).mend == "Trim it to the wall"
    assert box_in(mended(job, only_finding(job)), "tiles") == kept


def test_what_lies_wholly_outside_is_moved_in() -> None:
    after = put_right(WALL, Part("tiles", Kind.SPLASHBACK, box(3100, 900, 600, 600)))
    assert box_in(after, "tiles") == (2400, 900, 3000, 1500)


def test_what_is_larger_than_the_wall_and_cannot_be_cut_has_no_mend() -> None:
    job = job_of(face_of(WALL, Part("f", Kind.FIXTURE, circle(1500, 1200, 1800))))
    assert only_finding(job).mend == ""
    with pytest.raises(JobError, match="no single step mends this; put it right by hand"):
        mended(job, only_finding(job))


def test_a_front_is_trimmed_where_it_reaches_beyond_to_half_the_reveal() -> None:
    after = put_right(WALL, BASE, Part("d", Kind.DOOR, box(2, 152, 640, 716)))
    assert box_in(after, "d") == (2, 152, 598.5, 868)


def test_of_two_parts_with_one_outline_the_later_goes() -> None:
    again = replace(BASE, id="again")
    after = put_right(WALL, BASE, again)
    assert [part.id for part in after.faces[0].parts] == ["wall", "base"]
    kept = put_right(WALL, BASE, replace(again, locked=True))
    assert [part.id for part in kept.faces[0].parts] == ["wall", "again"]


def test_a_locked_part_stays_and_the_other_gives_way() -> None:
    after = put_right(WALL, BASE, replace(cabinet("next", 603), locked=True))
    assert box_in(after, "base") == (0, 150, 603, 870)


@pytest.mark.parametrize(
    "parts",
    [
        (BASE, cabinet("next", 603)),
        (BASE, replace(BASE, id="again")),
        (BASE, Part("d", Kind.DOOR, box(2, 152, 640, 716))),
        (Part("tiles", Kind.SPLASHBACK, box(2500, 900, 600, 600)),),
        (cabinet("c", 2500),),
    ],
    ids=["gap", "same outline", "front", "trim", "move"],
)
def test_where_only_locked_parts_could_change_nothing_does(parts: tuple[Part, ...]) -> None:
    job = job_of(face_of(WALL, *(replace(part, locked=True) for part in parts)))
    with pytest.raises(JobError, match="it is locked"):
        mended(job, only_finding(job))


def test_what_is_no_longer_so_is_said() -> None:
    job = job_of(face_of(WALL, BASE, cabinet("next", 603)))
    finding = only_finding(job)
    with pytest.raises(JobError, match="A: this has been mended already; look at the list again"):
        mended(mended(job, finding), finding)


def test_all_of_one_sort_are_mended_in_one_step_and_the_rest_stays() -> None:
    parts = (BASE, cabinet("b", 603), cabinet("c", 1206), Part("t", Kind.SPLASHBACK, box(2500, 900, 600, 600)))
    after = all_mended(job_of(face_of(WALL, *parts)), Code.GAP)
    assert codes(take_off(after)) == ["outside-wall"]
    with pytest.raises(JobError, match="none of these can be mended in one step"):
        all_mended(after, Code.GAP)


def test_a_wall_is_not_moved_for_what_misses_it() -> None:
    job = job_of(face_of(WALL, Part("bulkhead", Kind.BULKHEAD, box(3003, 0, 500, 2400))))
    after = mended(job, next(finding for finding in take_off(job).findings if finding.code == "gap"))
    assert box_in(after, "wall") == (0, 0, 3000, 2400)
    assert box_in(after, "bulkhead") == (3000, 0, 3503, 2400)


boxes = st.tuples(st.integers(0, 400), st.integers(0, 400), st.integers(40, 400), st.integers(40, 400))


@given(st.floats(-5, 5), st.integers(-300, 300), st.integers(50, 600), st.integers(50, 600), st.booleans(), boxes)
def test_any_near_miss_of_two_boxes_is_gone_once_mended_and_nothing_else_changes(
    gap: float, shift: int, width: int, height: int, upright: bool, third: tuple[int, int, int, int]
) -> None:
    beside = box(400 + gap, shift, width, height) if upright else box(shift, 400 + gap, width, height)
    first, second = Part("a", Kind.CABINET, box(0, 0, 400, 400)), Part("b", Kind.FIXTURE, beside)
    other = Part("c", Kind.OUTLET, box(*third))
    face = face_of(first, second, other)
    for miss in near_misses(face.parts):
        job = job_of(face)
        finding = Finding(Code.GAP if miss.gap_mm > 0 else Code.OVERLAP, "", "a", miss.parts, "mend it")
        after = find_face(mended(job, finding), "a")
        assert miss.parts not in [each.parts for each in near_misses(after.parts)]
        changed = [old.id for old, new in zip(face.parts, after.parts, strict=True) if old is not new]
        assert len(changed) == 1
        assert changed[0] in miss.parts
        assert len(near_misses(after.parts)) <= len(near_misses(face.parts))


def test_a_mend_is_an_edit_like_any_other() -> None:
    """Another face stays the same object, and so do ties and choices."""
    job = harbour_row()
    g = find_face(job, "G")
    tiles = find_part(job, "g-tiles")[1]
    moved_face = with_changed_face(job, replace(g, parts=(*g.parts,)))
    after = mended(with_changed_parts(moved_face, (tiles,)), only_finding(job))
    assert after.joints == job.joints
    assert find_face(after, "E") is find_face(job, "E")
