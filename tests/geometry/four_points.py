"""Random four points that go round, such as marks on a photo."""

from hypothesis import strategies as st

from geometry.photos.squaring import FourPoints, check_four
from shared.errors import JobError


def four_points(reach: int) -> st.SearchStrategy[FourPoints]:
    """Each in a quarter of its own, fit to square by; whole, so that single precision holds them exactly."""
    near, far = st.integers(0, reach * 45 // 100), st.integers(reach * 55 // 100, reach)
    return st.tuples(near, near, far, near, far, far, near, far).map(_paired).filter(_is_fit)


def _paired(numbers: tuple[int, ...]) -> FourPoints:
    a, b, c, d, e, f, g, h = map(float, numbers)
    return (a, b), (c, d), (e, f), (g, h)


def _is_fit(points: FourPoints) -> bool:
    try:
        check_four(points, "the photo")
    except JobError:
        return False
    return True
