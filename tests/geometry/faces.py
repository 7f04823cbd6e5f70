"""Random faces of every awkward sort, and what must be true of any arrangement of one."""

import math
from collections import Counter
from collections.abc import Sequence
from typing import TypeVar

import numpy as np

from geometry.outlines.shapes import box, circle, rounded_box
from geometry.parts.moves import moved
from geometry.seen.arrangement import Arrangement, Edge
from shared.job import Outline, Part, Vertex
from shared.trade.kinds import Kind, usual

KINDS = (Kind.WALL, Kind.SPLASHBACK, Kind.CABINET, Kind.DOOR, Kind.FIXTURE, Kind.OUTLET)
LATTICES = (100.0, 50.0, 10.0, 1.0, 0.01)


Option = TypeVar("Option")

ARCS = ("circle", "rounded")
SHAPES = ("box", "box", "box", "circle", "rounded", "triangle", "again", "sliver")


def random_face(seed: int, *, arcs: bool = True, turned: bool = True, slivers: bool = True) -> tuple[Part, ...]:
    """A face of up to 14 parts: shared sides, overlaps, T-junctions, duplicates, `slivers` of 0.01 mm, `arcs`.

    Corners lie on a lattice, coarse ones making many contacts; some faces are `turned` by any angle.
    """
    dice = np.random.default_rng(seed)
    lattice = pick(dice, LATTICES)
    parts: list[Part] = []
    for number in range(dice.integers(1, 15)):
        shapes = [shape for shape in SHAPES if (arcs or shape not in ARCS) and (slivers or shape != "sliver")]
        outline = _outline(dice, parts, lattice, pick(dice, shapes))
        if dice.random() < 0.3:
            outline = reversed_outline(outline)
        parts.append(Part(f"part {number}", pick(dice, KINDS), outline, hides=dice.random() > 0.1))
    angle = dice.uniform(0, 6) if turned and dice.random() < 0.4 else 0.0
    return tuple(rotated(part, angle) for part in parts) if angle else tuple(parts)


def pick(dice: np.random.Generator, options: Sequence[Option]) -> Option:
    return options[int(dice.integers(len(options)))]


def _outline(dice: np.random.Generator, parts: list[Part], lattice: float, shape: str) -> Outline:
    x, y, width, height = (_on(lattice, dice.uniform(low, high)) for low, high in ((0, 600),) * 2 + ((20, 400),) * 2)
    if parts and shape == "again":
        again = pick(dice, parts).outline
        return (*again[1:], again[0])
    if parts and shape == "sliver":
        return moved(pick(dice, parts), 0.01, 0).outline
    if shape == "circle":
        return circle(x, y, width / 2)
    if shape == "rounded":
        return rounded_box(x, y, width, height, min(width, height) / pick(dice, (2.5, 4, 10)))
    if shape == "triangle":
        return (Vertex(x, y), Vertex(x + width, y), Vertex(x + width / 2, y + height))
    return box(x, y, width, height)


def _on(lattice: float, value: float) -> float:
    return max(lattice, round(value / lattice) * lattice)


def reversed_outline(outline: Outline) -> Outline:
    """The same outline run the other way; each bulge goes with its side."""
    last = len(outline) - 1
    return tuple(Vertex(outline[place].x, outline[place].y, -outline[place - 1].bulge) for place in range(last, -1, -1))


def rotated(part: Part, angle: float) -> Part:
    """The part turned about the face's corner."""
    cos, sin = math.cos(angle), math.sin(angle)
    turned = tuple(Vertex(cos * v.x - sin * v.y, sin * v.x + cos * v.y, v.bulge) for v in part.outline)
    return Part(part.id, part.kind, turned, level=part.level, hides=part.hides)


def has_surface(part: Part) -> bool:
    return not usual()[part.kind].hole


def lengths(arrangement: Arrangement) -> dict[tuple[str, str], float]:
    """The total length between each two parts, "" for the outside."""
    totals: dict[tuple[str, str], float] = {}
    for edge in arrangement.edges:
        one, other = sorted((edge.left or "", edge.right or ""))
        totals[one, other] = totals.get((one, other), 0.0) + edge.length_mm
    return totals


def counts(arrangement: Arrangement) -> Counter[tuple[str, str]]:
    """The number of edges between each two parts, "" for the outside."""
    pairs = (sorted((edge.left or "", edge.right or "")) for edge in arrangement.edges)
    return Counter((one, other) for one, other in pairs)


def open_ends(arrangement: Arrangement) -> int:
    """How many more edges of a part begin than end at any point; 0 where every boundary is closed."""
    ends: Counter[tuple[str, float, float]] = Counter()
    for edge in arrangement.edges:
        for part, sign in ((edge.left, 1), (edge.right, -1)):
            if part is not None:
                ends[part, edge.x0, edge.y0] += sign
                ends[part, edge.x1, edge.y1] -= sign
    return sum(map(abs, ends.values()))


def area_by_edges(arrangement: Arrangement, part: str) -> float:
    """The area of a part's region from its edges alone: the trapezium sum over chords plus the segment of each arc."""
    own = [edge for edge in arrangement.edges if part in (edge.left, edge.right)]
    if not own:
        return 0.0
    x, y = own[0].x0, own[0].y0
    area = 0.0
    for edge in own:
        chord = ((edge.x0 - x) * (edge.y1 - y) - (edge.x1 - x) * (edge.y0 - y)) / 2
        area += (chord + segment(edge)) * (1 if edge.left == part else -1)
    return area


def segment(edge: Edge) -> float:
    """The area between an edge's arc and chord, positive anticlockwise."""
    if not edge.bulge:
        return 0.0
    angle = 4 * math.atan(edge.bulge)
    radius = edge.length_mm / abs(angle)
    return radius * radius * (angle - math.sin(angle)) / 2
