import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.dragging.standing import Standing
from geometry.outlines.shapes import box, circle
from geometry.parts.moves import moved
from geometry.seen.arrange import arrange
from geometry.seen.arrangement import Arrangement
from shared.errors import OutlineError
from shared.job import Part, Vertex
from shared.trade.kinds import Kind
from tests.geometry.faces import counts, lengths, random_face


@pytest.fixture
def wall() -> tuple[Part, ...]:
    return (
        Part("wall", Kind.WALL, box(0, 0, 3000, 2400)),
        Part("left", Kind.CABINET, box(0, 100, 600, 720)),
        Part("right", Kind.CABINET, box(600, 100, 600, 720)),
        Part("door", Kind.DOOR, box(2, 102, 596, 716)),
        Part("basin", Kind.FIXTURE, circle(1500, 900, 200)),
        Part("outlet", Kind.OUTLET, box(200, 1200, 120, 75)),
    )


def with_moved(parts: tuple[Part, ...], changed: list[Part]) -> list[Part]:
    new = {part.id: part for part in changed}
    return [new.get(part.id, part) for part in parts]


def same(one: Arrangement, other: Arrangement) -> bool:
    return set(one.regions) == set(other.regions) and set(one.edges) == set(other.edges)


@pytest.mark.parametrize("name", ["left", "right", "door", "basin", "outlet", "wall"])
@pytest.mark.parametrize("step", [(0, 0), (600, 0), (-0.01, 0), (13, 7.5), (0, 720), (5000, 0)])
def test_dragged_part_gives_what_arranging_anew_gives(
    wall: tuple[Part, ...], name: str, step: tuple[float, float]
) -> None:
    standing = Standing(wall, [name])
    changed = [moved(next(part for part in wall if part.id == name), *step)]
    assert same(standing.arranged(changed), arrange(with_moved(wall, changed)))


def test_standing_is_not_changed_by_its_frames(wall: tuple[Part, ...]) -> None:
    standing, outlet = Standing(wall, ["outlet"]), wall[5]
    first = standing.arranged([moved(outlet, 10, 0)])
    standing.arranged([moved(outlet, 500, -300)])
    assert same(standing.arranged([moved(outlet, 10, 0)]), first)


def test_several_parts_move_together(wall: tuple[Part, ...]) -> None:
    changed = [moved(part, 600, 0) for part in wall if part.id in ("left", "door", "outlet")]
    assert same(Standing(wall, ["left", "door", "outlet"]).arranged(changed), arrange(with_moved(wall, changed)))


def test_half_a_wall_moves_over_the_other_half() -> None:
    parts = tuple(
        Part(f"{row} {column}", Kind.CABINET, box(100 * column, 100 * row, 100, 90))
        for row in range(12)
        for column in range(12)
    )
    changed = [moved(part, 650, 35) for part in parts[:72]]
    assert same(Standing(parts, [part.id for part in changed]).arranged(changed), arrange(with_moved(parts, changed)))


def test_part_may_take_another_shape(wall: tuple[Part, ...]) -> None:
    changed = [Part("outlet", Kind.OUTLET, circle(600, 800, 60))]
    assert same(Standing(wall, ["outlet"]).arranged(changed), arrange(with_moved(wall, changed)))


def test_part_may_be_raised_while_it_moves(wall: tuple[Part, ...]) -> None:
    changed = [Part("left", Kind.CABINET, box(300, 100, 600, 720), level=3)]
    assert same(Standing(wall, ["left"]).arranged(changed), arrange(with_moved(wall, changed)))


def test_part_that_is_not_given_stays(wall: tuple[Part, ...]) -> None:
    assert same(Standing(wall, ["left", "right"]).arranged([]), arrange(wall))


def test_everything_may_move(wall: tuple[Part, ...]) -> None:
    changed = [moved(part, 7, 7) for part in wall]
    assert same(Standing(wall, [part.id for part in wall]).arranged(changed), arrange(changed))


def test_part_that_was_not_said_to_move_is_refused(wall: tuple[Part, ...]) -> None:
    with pytest.raises(KeyError, match="door"):
        Standing(wall, ["left"]).arranged([moved(wall[3], 1, 1)])


def test_outline_that_encloses_nothing_is_refused_as_in_arranging(wall: tuple[Part, ...]) -> None:
    flat = Part("left", Kind.CABINET, (Vertex(0, 0), Vertex(100, 0), Vertex(50, 0)))
    with pytest.raises(OutlineError, match=r"^cabinet: "):
        Standing(wall, ["left"]).arranged([flat])


@given(st.integers(0, 10**9), st.sampled_from([(0, 0), (10, 0), (-50, 100), (0.01, 0), (37.31, -81.07)]))
def test_any_drag_on_any_face_gives_what_arranging_anew_gives(seed: int, step: tuple[float, float]) -> None:
    parts = random_face(seed)
    dice = np.random.default_rng(seed)
    names = [parts[place].id for place in dice.permutation(len(parts))[: dice.integers(1, 3)]]
    changed = [moved(part, *step) for part in parts if part.id in names]
    found, expected = Standing(parts, names).arranged(changed), arrange(with_moved(parts, changed))
    assert counts(found) == counts(expected)
    assert lengths(found) == pytest.approx(lengths(expected), abs=1e-6)
    assert [region.area_mm2 for region in found.regions] == pytest.approx(
        [region.area_mm2 for region in expected.regions], abs=1e-6
    )
