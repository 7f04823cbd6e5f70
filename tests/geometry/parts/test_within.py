import math

from geometry.outlines.shapes import box, circle
from geometry.parts.within import reaches_beyond_mm
from shared.job import Part
from shared.trade.kinds import Kind

TOP = Part("a", Kind.BENCHTOP, box(0, 0, 2000, 600))
LEG = Part("b", Kind.BENCHTOP, box(1400, 600, 600, 900))


def test_what_lies_on_the_others_taken_together_reaches_nowhere_beyond() -> None:
    across_the_joint = Part("c", Kind.CUT_OUT, box(1500, 500, 400, 300))
    assert reaches_beyond_mm(across_the_joint, (TOP, LEG)) == 0
    assert reaches_beyond_mm(Part("c", Kind.CUT_OUT, box(0, 0, 2000, 600)), (TOP,)) == 0


def test_the_greatest_distance_beyond_is_told() -> None:
    assert math.isclose(reaches_beyond_mm(Part("c", Kind.CUT_OUT, box(500, 300, 400, 330)), (TOP, LEG)), 30)
    basin = Part("c", Kind.FIXTURE, circle(1000, 500, 150))
    assert math.isclose(reaches_beyond_mm(basin, (TOP,)), 50, abs_tol=0.1)


def test_without_others_there_is_nothing_to_lie_on() -> None:
    assert reaches_beyond_mm(TOP, ()) == math.inf
