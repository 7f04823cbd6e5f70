"""An invented wall with a return, and the plan of its benchtop; small enough to count by hand."""

import pytest

from geometry.outlines.shapes import box, circle
from shared.job import Corner, Face, Job, Part, Room, Tie, View
from shared.trade.kinds import Kind
from takeoff.figures.measured import Takeoff
from takeoff.take_off import take_off


@pytest.fixture
def wall_a() -> Face:
    """3600 x 2400: splashback with two outlets, benchtop edge, three cabinets with doors, kickboard, upper cabinet."""
    return Face(
        "a",
        "A",
        parts=(
            Part("wall", Kind.WALL, box(0, 0, 3600, 2400)),
            Part("tiles", Kind.SPLASHBACK, box(0, 910, 3600, 600)),
            Part("outlet1", Kind.OUTLET, box(500, 1100, 115, 72)),
            Part("outlet2", Kind.OUTLET, box(2500, 1100, 115, 72)),
            Part("edge", Kind.BENCHTOP, box(0, 872, 3600, 38)),
            Part("kick", Kind.KICKBOARD, box(0, 0, 3600, 150)),
            Part("base1", Kind.CABINET, box(0, 150, 1200, 722)),
            Part("base2", Kind.CABINET, box(1200, 150, 1200, 722)),
            Part("base3", Kind.CABINET, box(2400, 150, 1200, 722)),
            Part("door1", Kind.DOOR, box(2, 152, 1196, 718)),
            Part("door2", Kind.DOOR, box(1202, 152, 1196, 718), profile_factor=1.2, back_coated=True),
            Part("upper", Kind.CABINET, box(0, 1510, 3600, 700)),
        ),
        corner=Corner.INSIDE,
    )


@pytest.fixture
def wall_b() -> Face:
    """2400 x 2400: a splashback 500 high and a benchtop edge along its first metre."""
    return Face(
        "b",
        "B",
        parts=(
            Part("wall-b", Kind.WALL, box(0, 0, 2400, 2400)),
            Part("tiles-b", Kind.SPLASHBACK, box(0, 910, 1000, 500)),
            Part("edge-b", Kind.BENCHTOP, box(0, 872, 1000, 38)),
        ),
    )


@pytest.fixture
def plan() -> Face:
    """The benchtop along wall A, 600 deep, with a round cut-out of radius 200; its ends are coated."""
    return Face(
        "p",
        "P",
        View.PLAN,
        parts=(
            Part("top", Kind.BENCHTOP, box(0, 0, 3600, 600), coated_sides=(1, 3)),
            Part("sink", Kind.CUT_OUT, circle(900, 300, 200)),
        ),
        ties=(Tie("top", 0, "a", 0, 3600),),
    )


@pytest.fixture
def kitchen(wall_a: Face, wall_b: Face, plan: Face) -> Job:
    return Job("Quince Lane 2", rooms=(Room("r", "Kitchen", (wall_a, wall_b, plan)),))


@pytest.fixture
def counted(kitchen: Job) -> Takeoff:
    return take_off(kitchen)
