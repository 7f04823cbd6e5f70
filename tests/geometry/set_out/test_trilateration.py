import math
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.set_out.trilateration import placed
from shared.errors import JobError
from shared.job import CORNERS

ALCOVE = ((0.0, 0.0), (3000.0, 0.0), (3012.0, 2400.0), (-8.0, 2390.0))


def between(*without: tuple[int, int]) -> dict[tuple[int, int], float]:
    pairs = set(combinations(range(4), 2)).difference(without)
    return {pair: math.dist(ALCOVE[pair[0]], ALCOVE[pair[1]]) for pair in pairs}


@pytest.mark.parametrize("without", list(combinations(range(4), 2)))
def test_any_five_distances_place_four_corners(without: tuple[int, int]) -> None:
    for found, corner in zip(placed(between(without), 4, CORNERS), ALCOVE, strict=True):
        assert found == pytest.approx(corner, abs=1e-6)


@given(st.integers(0, 2**30))
def test_any_distances_are_placed_or_refused_in_words(seed: int) -> None:
    some = {pair: float((seed >> 5 * count) % 32 * 100) for count, pair in enumerate(combinations(range(4), 2))}
    try:
        found = placed({pair: length for pair, length in some.items() if length}, 4, CORNERS)
    except JobError:
        return
    assert len(found) == 4
    assert all(math.isfinite(size) for point in found for size in point)


def test_three_lengths_that_make_no_triangle_are_named() -> None:
    distances = between((1, 3)) | {(0, 2): 6000.0}
    with pytest.raises(JobError, match="between lower left, lower right and upper right make no triangle; measure"):
        placed(distances, 4, CORNERS)


def test_loose_corners_are_named() -> None:
    with pytest.raises(JobError, match="too few distances fix upper left; measure one more"):
        placed(between((1, 3), (0, 3)), 4, CORNERS)
    with pytest.raises(JobError, match="no distance reaches lower left"):
        placed({}, 4, CORNERS)
