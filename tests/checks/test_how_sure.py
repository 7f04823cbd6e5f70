"""How sure the takeoff is, against the library `uncertainties`, which carries errors along by itself.

Everything is built once more, by hand, of readings with their tolerances; the library keeps track of what they share.
"""

import math

import pytest
from uncertainties import UFloat, ufloat
from uncertainties.umath import sqrt

from geometry.outlines.shapes import box, circle, rounded_box
from shared.job import Face, Job, Part, Room, View
from shared.trade.kinds import Kind
from shared.trade.tape import TapeClass
from takeoff.figures.measured import Sureness
from takeoff.take_off import take_off

TAPE = TapeClass.SECOND
A_MM, B_MM, HOOK_MM = 0.3, 0.2, 0.2
"""Class II: a + b L, L in whole metres begun, and more where read from the end hook.

UK SI 2016/1153 schedule 1I = EU directive 2014/32 annex X (seen); OIML R 35-1 has the same a and b (from memory).
"""

CABINET_MM, DOOR_MM = 16.0, 18.0

QUARTER_SEGMENT = (math.pi / 2 - 1) / 4
"""The area between a quarter arc and its chord over the chord's square (exact)."""

QUARTER_ARC = math.pi / (2 * math.sqrt(2))
"""The length of a quarter arc over that of its chord (exact)."""

Box = tuple[float, float, float, float]
"""Left, bottom, width, height."""


class Readings:
    """One reading for each distance, as often as it is used; 0 is exact."""

    def __init__(self) -> None:
        self._taken: dict[float, UFloat] = {0.0: 0.0}

    def __call__(self, distance: float) -> UFloat:
        if distance not in self._taken:
            self._taken[distance] = ufloat(distance, A_MM + B_MM * math.ceil(distance / 1000) + HOOK_MM)
        return self._taken[distance]


def rectangle(x: Readings, y: Readings, box: Box) -> UFloat:
    left, bottom, width, height = box
    return (x(left + width) - x(left)) * (y(bottom + height) - y(bottom))


def round_it(x: Readings, y: Readings, box: Box) -> UFloat:
    left, bottom, width, height = box
    return 2 * (x(left + width) - x(left)) + 2 * (y(bottom + height) - y(bottom))


def rounded(x: Readings, y: Readings, box: Box, r: float) -> UFloat:
    """The polygon through the ends of its sides, and a segment at every corner."""
    left, bottom, width, height = box
    right, top = left + width, bottom + height
    points = [
        (x(left + r), y(bottom)),
        (x(right - r), y(bottom)),
        (x(right), y(bottom + r)),
        (x(right), y(top - r)),
        (x(right - r), y(top)),
        (x(left + r), y(top)),
        (x(left), y(top - r)),
        (x(left), y(bottom + r)),
    ]
    sides = list(zip(points, points[1:] + points[:1], strict=True))
    area = sum((x0 * y1 - x1 * y0) / 2 for (x0, y0), (x1, y1) in sides)
    return area + sum(QUARTER_SEGMENT * ((x1 - x0) ** 2 + (y1 - y0) ** 2) for (x0, y0), (x1, y1) in sides[1::2])


def rounded_length(x: Readings, y: Readings, box: Box, r: float) -> UFloat:
    """Four straight sides, and at every corner an arc over its chord."""
    left, bottom, width, height = box
    right, top = left + width, bottom + height
    straight = 2 * (x(right - r) - x(left + r)) + 2 * (y(top - r) - y(bottom + r))
    chords = [
        sqrt((a - b) ** 2 + (c - d) ** 2)
        for a, b in ((x(left + r), x(left)), (x(right), x(right - r)))
        for c, d in ((y(bottom + r), y(bottom)), (y(top), y(top - r)))
    ]
    return straight + QUARTER_ARC * sum(chords)


@pytest.fixture
def wall() -> Face:
    """A wall with a splashback with two openings, two cabinets, and a moulded and a plain front."""
    return Face(
        "a",
        "A",
        parts=(
            Part("wall", Kind.WALL, box(0, 0, 3600, 2400)),
            Part("tiles", Kind.SPLASHBACK, box(0, 910, 3600, 600)),
            Part("outlet", Kind.OUTLET, box(500, 1100, 115, 72)),
            Part("niche", Kind.CUT_OUT, rounded_box(2000, 1000, 500, 300, 50)),
            Part("base1", Kind.CABINET, box(0, 150, 1200, 760)),
            Part("base2", Kind.CABINET, box(1200, 150, 2400, 760)),
            Part("door1", Kind.DOOR, box(2, 152, 1196, 756), profile_factor=1.2, back_coated=True),
            Part("door2", Kind.DOOR, box(1202, 152, 2396, 756)),
        ),
    )


@pytest.fixture
def plan() -> Face:
    """A benchtop with a round cut-out; its front edge is coated."""
    return Face(
        "p",
        "P",
        View.PLAN,
        parts=(
            Part("top", Kind.BENCHTOP, box(0, 0, 3600, 600), coated_sides=(2,)),
            Part("sink", Kind.CUT_OUT, circle(900, 300, 200)),
        ),
    )


def sure(*faces: Face) -> Sureness:
    found = take_off(Job("Quince Lane 2", rooms=(Room("r", "Kitchen", faces),), tape=TAPE)).sure
    assert found is not None
    return found


def wall_by_hand() -> dict[str, UFloat]:
    x, y = Readings(), Readings()
    outlet, niche = (500, 1100, 115, 72), (2000, 1000, 500, 300)
    one, two = (2, 152, 1196, 756), (1202, 152, 2396, 756)
    base1, base2 = (0, 150, 1200, 760), (1200, 150, 2400, 760)
    return {
        "tiles": rectangle(x, y, (0, 910, 3600, 600)) - rectangle(x, y, outlet) - rounded(x, y, niche, 50),
        "base1": CABINET_MM * round_it(x, y, base1),
        "base2": CABINET_MM * round_it(x, y, base2),
        "door1": 2.2 * rectangle(x, y, one) + DOOR_MM * round_it(x, y, one),
        "door2": rectangle(x, y, two) + DOOR_MM * round_it(x, y, two),
        "masked round openings": round_it(x, y, outlet) + rounded_length(x, y, niche, 50),
    }


def test_the_coated_area_of_every_part_of_a_wall_is_as_the_library_has_it(wall: Face) -> None:
    found, by_hand = dict(sure(wall).parts), wall_by_hand()
    for part in ("tiles", "base1", "base2", "door1", "door2"):
        assert found[part] == pytest.approx(by_hand[part].std_dev, rel=1e-9)
    assert (found["wall"], found["outlet"]) == (0, 0)


def test_the_coated_area_of_a_wall_is_as_the_library_has_it(wall: Face) -> None:
    by_hand = wall_by_hand()
    total = sum(by_hand[part] for part in ("tiles", "base1", "base2", "door1", "door2"))
    assert sure(wall).coated_mm2 == pytest.approx(total.std_dev, rel=1e-9)


def test_the_lengths_of_a_splashback_are_as_the_library_has_them(wall: Face) -> None:
    tiles = wall.parts[1:4]  # by itself nothing is beside it, so only its openings are masked
    found, by_hand = sure(Face("a", "A", parts=tiles)), wall_by_hand()
    assert found.masking_mm == pytest.approx(by_hand["masked round openings"].std_dev, rel=1e-9)
    assert found.bead_mm == 0


def test_a_bead_is_as_the_library_has_it() -> None:
    x = Readings()
    bench = Part("bench", Kind.BENCHTOP, box(300, 872, 2000, 38))
    found = sure(Face("a", "A", parts=(Part("tiles", Kind.SPLASHBACK, box(100, 910, 3000, 600)), bench)))
    assert found.bead_mm == found.old_bead_mm == pytest.approx((x(2300) - x(300)).std_dev, rel=1e-9)


def test_a_plan_with_a_round_cut_out_is_as_the_library_has_it(plan: Face) -> None:
    x, y = Readings(), Readings()
    across = x(1100) - x(700)
    top = rectangle(x, y, (0, 0, 3600, 600)) - math.pi * across**2 / 4 + 38 * (x(3600) - x(0))
    assert sure(plan).coated_mm2 == pytest.approx(top.std_dev, rel=1e-9)


def test_faces_together_are_as_the_library_has_them(wall: Face, plan: Face) -> None:
    one, other = sure(wall).coated_mm2, sure(plan).coated_mm2
    both = ufloat(0, one) + ufloat(0, other)
    assert sure(wall, plan).coated_mm2 == pytest.approx(both.std_dev, rel=1e-9)
