"""The takeoff of a started kitchen with one row, against the hand calculation that stands here.

Readings: one wall of 3000, the usual heights in mm, `450 door, 600 drawers 3, 900 pair, splashback`; 1950 long.
Edges of boards are 18 thick (fronts) and 16 (frames of cabinets); reveals are 3.
"""

import pytest

from geometry.kitchens.rows import with_row
from geometry.kitchens.walls import start_kitchen
from shared.job import Unit, usual_heights
from shared.trade.kinds import Kind
from shared.typed.rows import read_row
from shared.typed.walls import read_walls
from takeoff.figures.measured import Takeoff
from takeoff.take_off import take_off

SPLASHBACK = 1950 * 600
KICKBOARD = 1950 * 150
BENCHTOP = 1950 * 38
FRAMES = [2 * (450 + 720) * 16, 2 * (600 + 720) * 16, 2 * (900 + 720) * 16]
DOOR = 447 * 717 + 2 * (447 + 717) * 18
DRAWER = 597 * 237 + 2 * (597 + 237) * 18


@pytest.fixture
def counted() -> Takeoff:
    job = start_kitchen("Quince Lane 2", read_walls("3000", Unit.MM), usual_heights(), Unit.MM)
    return take_off(with_row(job, "f1", read_row("450 door, 600 drawers 3, 900 pair, splashback", Unit.MM))[0])


def test_every_part_is_coated_as_by_hand(counted: Takeoff) -> None:
    assert [(row.kind, row.coated_mm2.amount) for row in counted.parts] == [
        (Kind.WALL, 0),
        (Kind.SPLASHBACK, SPLASHBACK),
        (Kind.KICKBOARD, KICKBOARD),
        (Kind.CABINET, pytest.approx(FRAMES[0])),
        (Kind.DOOR, pytest.approx(DOOR)),
        (Kind.CABINET, pytest.approx(FRAMES[1])),
        *[(Kind.DRAWER_FRONT, pytest.approx(DRAWER))] * 3,
        (Kind.CABINET, pytest.approx(FRAMES[2])),
        *[(Kind.DOOR, pytest.approx(DOOR))] * 2,
        (Kind.BENCHTOP, BENCHTOP),
    ]


def test_the_totals_are_as_by_hand(counted: Takeoff) -> None:
    totals = counted.totals
    assert totals.coated_mm2 == pytest.approx(3_269_868)
    assert totals.coated_mm2 == pytest.approx(SPLASHBACK + KICKBOARD + BENCHTOP + sum(FRAMES) + 3 * DOOR + 3 * DRAWER)
    assert totals.fronts == 6
    # benchtop to splashback, and its right end to the wall
    assert totals.bead_mm == pytest.approx(1950 + 38)
    # left end of the wall, floor, top and right end of the splashback, right ends of benchtop, cabinet and kickboard,
    # splashback to benchtop, benchtop to cabinets
    left = 150 + 720 + 38 + 600
    assert totals.masking_mm == pytest.approx(left + 1950 + 1950 + 600 + 38 + 720 + 150 + 1950 + 1950)
    assert counted.findings == ()
