import pytest
from msgspec.structs import replace

from geometry.outlines.shapes import box
from shared.job import Butt, Fillet, Job, JointChoice, Part, View
from shared.trade.kinds import Kind
from takeoff.edges.joints import joint_table
from takeoff.figures.measured import Takeoff
from takeoff.take_off import take_off
from tests.takeoff.rows import bead_mm, codes, face_of, job_of, joint_row


def test_a_benchtop_is_sealed_to_the_splashback_over_all_their_shared_edge(counted: Takeoff) -> None:
    row = joint_row(counted, "tiles", "edge")
    assert (row.name, row.section, row.old_bead) == ("benchtop to splashback", Fillet(6), True)
    assert row.length_mm.amount == pytest.approx(3600)
    assert row.length_mm.reason.source == "common practice, no source"


def test_the_splashback_is_sealed_to_the_carcass_not_to_the_door_that_overhangs_it() -> None:
    face = face_of(
        Part("tiles", Kind.SPLASHBACK, box(0, 0, 600, 600)),
        Part("upper", Kind.CABINET, box(0, 600, 600, 700)),
        Part("door", Kind.DOOR, box(0, 580, 600, 720)),
    )
    takeoff = take_off(job_of(face))
    assert bead_mm(takeoff, "tiles", "upper") == pytest.approx(600)
    assert bead_mm(takeoff, "tiles", "door") == 0


def test_the_rim_of_a_round_cut_out_is_sealed_along_its_arc(counted: Takeoff) -> None:
    row = joint_row(counted, "top", "sink")
    assert (row.name, row.section) == ("rim to benchtop", Fillet(4))
    assert row.length_mm.amount == pytest.approx(2 * 3.141592653589793 * 200)
    assert {term.what for term in row.length_mm.reason.terms} == {"arc"}


def test_an_oven_under_a_benchtop_is_not_sealed_to_it_on_an_elevation() -> None:
    parts = (
        Part("bench", Kind.BENCHTOP, box(0, 872, 600, 38)),
        Part("oven", Kind.FIXTURE, box(0, 150, 600, 722)),
    )
    assert take_off(job_of(face_of(*parts))).joints == ()
    assert len(take_off(job_of(replace(face_of(*parts), view=View.PLAN))).joints) == 1


def test_the_wall_is_sealed_above_and_beside_a_benchtop_but_not_below_it() -> None:
    face = face_of(Part("wall", Kind.WALL, box(0, 0, 3000, 2400)), Part("bench", Kind.BENCHTOP, box(0, 872, 1000, 38)))
    assert bead_mm(take_off(job_of(face)), "wall", "bench") == pytest.approx(1000 + 38)


def test_what_a_rule_leaves_open_can_be_added_by_hand() -> None:
    face = face_of(Part("wall", Kind.WALL, box(0, 0, 1000, 910)), Part("bench", Kind.BENCHTOP, box(0, 872, 1000, 38)))
    assert take_off(job_of(face)).joints == ()
    added = JointChoice("a", ("wall", "bench"), sealed=True, section=Fillet(5))
    assert bead_mm(take_off(replace(job_of(face), joints=(added,))), "wall", "bench") == pytest.approx(1000)


def test_a_joint_can_be_switched_off_and_then_counts_for_nothing(kitchen: Job, counted: Takeoff) -> None:
    choice = JointChoice("a", ("edge", "tiles"), sealed=False)
    takeoff = take_off(replace(kitchen, joints=(choice,)))
    assert joint_row(takeoff, "tiles", "edge").sealed is False
    assert takeoff.totals.bead_mm == pytest.approx(counted.totals.bead_mm - 3600)
    assert takeoff.totals.old_bead_mm == pytest.approx(counted.totals.old_bead_mm - 3600)


def test_section_and_old_bead_can_be_chosen_by_hand(kitchen: Job) -> None:
    choice = JointChoice("a", ("tiles", "edge"), section=Butt(8, 5), old_bead=False)
    row = joint_row(take_off(replace(kitchen, joints=(choice,))), "tiles", "edge")
    assert (row.section, row.old_bead, row.length_mm.reason.source) == (Butt(8, 5), False, "decided by hand")


def test_a_joint_can_be_added_between_parts_that_no_rule_seals(kitchen: Job, counted: Takeoff) -> None:
    choice = JointChoice("a", ("kick", "base1"), sealed=True, section=Butt(5, 5))
    takeoff = take_off(replace(kitchen, joints=(choice,)))
    assert bead_mm(takeoff, "kick", "base1") == pytest.approx(1200)
    assert takeoff.totals.bead_mm == pytest.approx(counted.totals.bead_mm + 1200)


@pytest.mark.parametrize(
    ("choice", "code"),
    [
        (JointChoice("a", ("kick", "base1"), sealed=True), "joint-section"),
        (JointChoice("a", ("kick", "upper"), old_bead=True), "joint-nowhere"),
    ],
)
def test_a_choice_that_counts_for_nothing_is_told(kitchen: Job, choice: JointChoice, code: str) -> None:
    assert code in codes(take_off(replace(kitchen, joints=(choice,))))


def test_an_inside_corner_is_sealed_where_both_sides_are_wet(counted: Takeoff) -> None:
    row = joint_row(counted, "tiles", "tiles-b")
    assert (row.face, row.next_face, row.section) == ("a", "b", Butt(5, 5))
    assert row.length_mm.amount == pytest.approx(500)
    assert bead_mm(counted, "edge", "edge-b") == 0  # a benchtop runs round its corner in one piece


def test_an_upright_joint_is_switched_off_by_both_its_faces(kitchen: Job) -> None:
    choice = JointChoice("a", ("tiles", "tiles-b"), next_face="b", sealed=False)
    assert bead_mm(take_off(replace(kitchen, joints=(choice,))), "tiles", "tiles-b") == 0


def test_the_totals_are_the_sums_of_the_rows(counted: Takeoff) -> None:
    totals = counted.totals
    assert totals.bead_mm == pytest.approx(sum(row.length_mm.amount for row in counted.joints))
    assert totals.masking_mm == pytest.approx(sum(row.length_mm.amount for row in counted.masking))
    assert totals.coated_mm2 == pytest.approx(sum(row.coated_mm2.amount for row in counted.parts))
    assert totals.fronts == 2


def test_what_ends_on_a_benchtop_is_sealed_to_it_in_the_order_of_the_table() -> None:
    assert joint_table().ending_on(Kind.BENCHTOP) == (Kind.SPLASHBACK, Kind.WALL)
    assert joint_table().ending_on(Kind.SPLASHBACK) == ()
