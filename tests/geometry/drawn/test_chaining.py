from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from geometry.drawn.chaining import Piece, chained
from shared.job import Vertex


def test_nothing_makes_no_line() -> None:
    assert chained(()) == ()


def test_pieces_in_any_order_and_direction_make_one_line_and_keep_their_arcs() -> None:
    pieces: list[Piece] = [((30, 0), (20, 0), 0.5), ((0, 0), (10, 0), 0.0), ((20, 0), (10, 0), 0.25)]
    (path,) = chained(pieces)
    assert path == (Vertex(30, 0, 0.5), Vertex(20, 0, 0.25), Vertex(10, 0), Vertex(0, 0)) or path == (
        Vertex(0, 0),
        Vertex(10, 0, -0.25),
        Vertex(20, 0, -0.5),
        Vertex(30, 0),
    )


def test_a_line_round_something_ends_where_it_began() -> None:
    pieces: list[Piece] = [((0, 0), (9, 0), 0.0), ((9, 0), (9, 9), 0.0), ((0, 9), (0, 0), 0.0), ((9, 9), (0, 9), 0.0)]
    (path,) = chained(pieces)
    assert len(path) == 5
    assert path[0] == path[-1]


def test_pieces_that_do_not_meet_stay_apart() -> None:
    assert len(chained([((0, 0), (1, 0), 0.0), ((2, 0), (3, 0), 0.0)])) == 2


points = st.tuples(st.integers(0, 4), st.integers(0, 4)).map(lambda p: (float(p[0]), float(p[1])))
some_pieces = st.lists(st.tuples(points, points, st.sampled_from([0.0, 1.0, -0.5])), max_size=20)


@given(some_pieces)
def test_every_piece_is_drawn_once(pieces: list[Piece]) -> None:
    def plain(piece: Piece) -> tuple[Piece, ...]:
        start, end, bulge = piece
        return tuple(sorted([piece, (end, start, -bulge + 0.0)]))[:1]

    drawn = [((a.x, a.y), (b.x, b.y), a.bulge) for path in chained(pieces) for a, b in pairwise(path)]
    assert sorted(map(plain, drawn)) == sorted(map(plain, pieces))
