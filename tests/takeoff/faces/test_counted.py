"""What was counted from some parts, and the totals by finish."""

import pytest

from geometry.outlines.shapes import box
from shared.job import Face, Job, Part, Room
from shared.trade.kinds import Kind
from takeoff.faces.counted import counted_from
from takeoff.surfaces.by_finish import totals_by_finish
from takeoff.take_off import take_off


@pytest.fixture
def job() -> Job:
    """A splashback of 3600 x 600 above a benchtop edge of 3600 x 38, with an outlet of 115 x 72 in it."""
    parts = (
        Part("splash", Kind.SPLASHBACK, box(0, 900, 3600, 600)),
        Part("top", Kind.BENCHTOP, box(0, 862, 3600, 38)),
        Part("outlet", Kind.OUTLET, box(700, 1150, 115, 72)),
    )
    return Job("one wall", rooms=(Room("r1", "Kitchen", (Face("f1", "A", parts=parts),)),))


def test_a_part_has_its_areas_and_a_share_in_its_joints(job: Job) -> None:
    counted = counted_from(take_off(job), ["splash"])

    assert counted.gross_mm2 == pytest.approx(3600 * 600)
    assert counted.net_mm2 == pytest.approx(3600 * 600 - 115 * 72)
    assert counted.bead_mm == pytest.approx(3600)


def test_a_joint_between_two_parts_counts_once_for_both(job: Job) -> None:
    assert counted_from(take_off(job), ["splash", "top"]).bead_mm == pytest.approx(3600)


def test_nothing_is_counted_from_no_part(job: Job) -> None:
    assert counted_from(take_off(job), []) == (0, 0, 0, 0, 0)


def test_finishes_add_up_to_what_is_coated(job: Job) -> None:
    takeoff = take_off(job)
    totals = totals_by_finish(takeoff)

    assert [total.finish for total in totals] == ["tiles", "benchtop"]
    assert sum(total.coated_mm2 for total in totals) == pytest.approx(takeoff.totals.coated_mm2)
