"""A small kitchen that the tests of the shared words edit, check, save and load."""

import pytest

from shared.job import Butt, Corner, Face, Fillet, Job, JointChoice, Outline, Part, Room, Tie, Vertex, View
from shared.trade.kinds import Kind


def rectangle(x: float, y: float, width: float, height: float) -> Outline:
    return (Vertex(x, y), Vertex(x + width, y), Vertex(x + width, y + height), Vertex(x, y + height))


@pytest.fixture
def kitchen() -> Job:
    """Two walls, a benchtop with a round sink tied to the first, a bathroom; a choice about a joint of each sort."""
    wall = Face(
        "f1",
        "A",
        parts=(
            Part("p1", Kind.WALL, rectangle(0, 0, 3600, 2400)),
            Part("p2", Kind.SPLASHBACK, rectangle(0, 900, 3600, 600), name="Tiles"),
            Part("p3", Kind.BENCHTOP, rectangle(0, 862, 3600, 38)),
            Part("p4", Kind.DOOR, rectangle(0, 150, 450, 700)),
        ),
        corner=Corner.INSIDE,
    )
    side = Face("f2", "B", parts=(Part("p5", Kind.SPLASHBACK, rectangle(0, 900, 2000, 600)),))
    plan = Face(
        "f3",
        "C",
        view=View.PLAN,
        parts=(
            Part("p6", Kind.BENCHTOP, rectangle(0, 0, 3600, 600), coated_sides=(0,)),
            Part("p7", Kind.FIXTURE, (Vertex(800, 300, 1), Vertex(1200, 300, 1)), name="Sink"),
        ),
        ties=(Tie("p6", 2, "f1", 0, 3600),),
    )
    bathroom = Room("r2", "Bathroom", (Face("f4", "D", parts=(Part("p8", Kind.WALL, rectangle(0, 0, 1800, 2400)),)),))
    joints = (
        JointChoice("f1", ("p2", "p3"), section=Fillet(6.0), old_bead=True),
        JointChoice("f1", ("p2", "p5"), next_face="f2", section=Butt(6.0, 6.0)),
    )
    return Job("Kitchen of a corner house", (Room("r1", "Kitchen", (wall, side, plan)), bathroom), joints=joints)
