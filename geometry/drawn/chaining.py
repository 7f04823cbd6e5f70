"""Joins pieces of line that meet end to end into as few lines as can be."""

from collections.abc import Iterable

from shared.job import Vertex

Piece = tuple[tuple[float, float], tuple[float, float], float]
"""A piece of line: its start, its end, and its bulge as in `shared.job.Vertex`."""


def chained(pieces: Iterable[Piece]) -> tuple[tuple[Vertex, ...], ...]:
    """The same pieces as open paths; empty for no pieces. A path that returns to its start ends on its first point.

    Pieces meet if their ends are equal, as they are in one arrangement. The bulge of a path's last vertex is 0.
    """
    waiting = dict(enumerate(pieces))
    if len(waiting) == 1:  # Most joints are one straight piece, and a drag asks for all of them in every frame.
        return (_path([waiting[0]]),)
    meeting: dict[tuple[float, float], list[int]] = {}
    for number, (start, end, _) in waiting.items():
        meeting.setdefault(start, []).append(number)
        meeting.setdefault(end, []).append(number)
    paths = []
    while waiting:
        first = waiting.pop(next(iter(waiting)))
        onward = _follow([first], waiting, meeting)
        whole = _follow([_turned(piece) for piece in reversed(onward)], waiting, meeting)
        paths.append(_path([_turned(piece) for piece in reversed(whole)]))
    return tuple(paths)


def _follow(path: list[Piece], waiting: dict[int, Piece], meeting: dict[tuple[float, float], list[int]]) -> list[Piece]:
    """The path with all pieces that go on from its end. Pieces that are used are taken out of `waiting`."""
    while True:
        end = path[-1][1]
        following = next((number for number in meeting[end] if number in waiting), None)
        if following is None:
            return path
        piece = waiting.pop(following)
        path.append(piece if piece[0] == end else _turned(piece))


def _turned(piece: Piece) -> Piece:
    start, end, bulge = piece
    return (end, start, -bulge)


def _path(pieces: list[Piece]) -> tuple[Vertex, ...]:
    last = pieces[-1][1]
    return (*(Vertex(start[0], start[1], bulge) for start, _, bulge in pieces), Vertex(last[0], last[1]))
