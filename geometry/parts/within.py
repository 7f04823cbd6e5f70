"""How far a part reaches beyond others that it should lie on."""

from collections.abc import Iterable

import shapely

from geometry.outlines.measured import flattened
from geometry.outlines.sides import WELD_MM
from shared.job import Part

SAGITTA_MM = 0.05
"""How far the chords that replace an arc may leave it: far less than any distance told here."""


def reaches_beyond_mm(part: Part, others: Iterable[Part]) -> float:
    """The greatest distance from a part's outline to the others taken together; 0 for a part that lies wholly on them.

    Infinite when there are no others.
    """
    ground = shapely.union_all([_polygon(other) for other in others])
    if ground.is_empty:
        return float("inf")
    beyond = shapely.difference(_polygon(part), ground)
    if beyond.is_empty:
        return 0.0
    farthest = max(float(ground.distance(shapely.Point(point))) for point in shapely.get_coordinates(beyond).tolist())
    return farthest if farthest > WELD_MM else 0.0


def _polygon(part: Part) -> shapely.Polygon:
    return shapely.Polygon(flattened(part.outline, SAGITTA_MM)).buffer(0)
