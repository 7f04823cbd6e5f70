"""Tiles and grout against published figures (the design's page of checks, "Tiles")."""

import pytest

from geometry.outlines.shapes import box
from geometry.seen.arrange import arrange
from geometry.tiles.tiling import tiling
from shared.job import Part, Tiles
from shared.trade.kinds import Kind

MM3_IN_A_LITRE = 1_000_000.0
KG_IN_A_LITRE = 1.6
"""The weight of grout in the published formula (seen)."""


def grout_m_per_m2(tiles: Tiles, across: int, up: int) -> float:
    """Metres of grout line a square metre, counted on a region of so many whole tiles, each with its grout line."""
    pitch, rise = tiles.width_mm + tiles.grout_mm, tiles.height_mm + tiles.grout_mm
    part = Part("tiles", Kind.SPLASHBACK, box(0, 0, across * pitch, up * rise))
    counted = tiling(arrange([part]).region("tiles"), tiles, (0, 0))
    return counted.grout_mm * 1e3 / (across * pitch * up * rise)


def test_grout_lines_of_150_by_150_tiles_are_as_long_as_published() -> None:
    # 1000/(A + j) + 1000/(B + j) metres a square metre: 13.158 for 150 x 150, 2 mm (exact). It counts the little square
    # where two lines cross twice, once on either line; so does a length along the middle of every line, which goes
    # through its crossings. Tiles that start half a grout line from the border have as many lines as tiles.
    assert grout_m_per_m2(Tiles(150, 150, 2), 40, 30) == pytest.approx(13.158, abs=5e-4)
    assert grout_m_per_m2(Tiles(150, 150, 2), 40, 30) == pytest.approx(2000 / 152, rel=1e-9)


def test_half_bond_has_the_grout_lines_of_the_same_tiles_one_over_another() -> None:
    assert grout_m_per_m2(Tiles(150, 150, 2, course_shift=0.5), 40, 30) == pytest.approx(2000 / 152, rel=1e-3)


def test_grout_weighs_what_the_published_formula_says_but_for_its_larger_joints() -> None:
    # kg/m2 = (A + B)/(A B) x depth x joint x 1.6: 300 x 300 x 10, 2 mm gives 0.2133 (seen). It takes the tiles' own
    # sizes, without the joint, so it is larger than length x joint x depth by (A + j)/A: 302/300.
    metres = grout_m_per_m2(Tiles(300, 300, 2), 20, 20)
    kg = metres * 1000 * 2 * 10 / MM3_IN_A_LITRE * KG_IN_A_LITRE
    assert kg * 302 / 300 == pytest.approx(0.2133, abs=5e-5)
    assert 5 / (kg * 302 / 300) == pytest.approx(23.44, abs=0.005)  # m2 that 5 kg fill (seen)
