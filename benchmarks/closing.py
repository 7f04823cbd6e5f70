"""Whether 10 000 random faces close: this measures soundness, not speed."""

from collections.abc import Iterator

from benchmarks.measuring import Measured
from geometry.seen.arrange import arrange
from tests.geometry.faces import area_by_edges, open_ends, random_face

FACES = 10_000

SLIVERS_MM2 = 2e-4
"""How far contacts a few micrometres wide may move an area."""


def measured() -> Iterator[Measured]:
    """The number of faces that do not close, or whose regions and edges give different areas."""
    open_faces = apart = 0
    for seed in range(FACES):
        found = arrange(random_face(seed))
        open_faces += open_ends(found) > 0
        apart += any(abs(area_by_edges(found, region.part) - region.area_mm2) > SLIVERS_MM2 for region in found.regions)
    yield Measured(f"{FACES} faces, not closed", open_faces, "{:.0f}", 0)
    yield Measured(f"{FACES} faces, areas of regions and edges apart", apart, "{:.0f}", 0)
