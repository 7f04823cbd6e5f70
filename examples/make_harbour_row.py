"""Build the example: Harbour Row 3, an invented flat with an L-shaped kitchen and a laundry, as read off the tape.

    python -m examples.make_harbour_row      writes the job beside this script, and the copy that the program ships

Every reading is written here, so that the hand calculation (harbour-row.md) can be checked against it. Lengths are mm.
"""

from collections.abc import Iterator
from pathlib import Path

from msgspec.structs import replace

from examples.harbour_row_products import ALLOWANCES, FINISHES, MONEY, NEW_HANDLES_MM, PRODUCTS
from geometry.outlines.shapes import QUARTER, box, circle, rounded_box
from shared.files.job import JobFile, write_job_file
from shared.job import Butt, Corner, Face, Fillet, Job, JointChoice, Outline, Part, Room, Tie, Tiles, Vertex, View
from shared.trade.kinds import Kind, Treatment, usual
from takeoff.surfaces.tags import with_tags_given

HERE = Path(__file__).parent
COPIES = (HERE / "harbour-row.json", HERE / "harbour-row.recoat", HERE.parent / "desktop" / "data" / "example.json")

Row = tuple[tuple[str, float, str], ...]
"""Cabinets from left to right: name, width, fronts ("door", "pair" or "drawers")."""


def part(key: str, kind: Kind, outline: Outline, name: str) -> Part:
    """A part with the thickness that is usual for its kind."""
    return Part(key, kind, outline, name, thickness_mm=usual()[kind].thickness)


def left(key: str, kind: Kind, outline: Outline, name: str) -> Part:
    """A part that is not coated. It is drawn because it hides other parts and meets them."""
    return replace(part(key, kind, outline, name), treatment=Treatment.LEFT)


def outlet(key: str, x: float, y: float) -> Part:
    """A double power outlet, 115 x 72."""
    return part(key, Kind.OUTLET, box(x, y, 115, 72), "power outlet")


def tiled(key: str, outline: Outline, name: str, size: float) -> Part:
    """A splashback of square tiles, laid from its lower left corner with grout lines of 2."""
    return replace(part(key, Kind.SPLASHBACK, outline, name), tiles=Tiles(size, size, 2))


def row(key: str, x: float, y: float, cabinets: Row) -> Iterator[Part]:
    """The parts of a row of cabinets, 720 high, from left to right: each cabinet, then its fronts."""
    for number, (name, width, fronts) in enumerate(cabinets, start=1):
        yield part(f"{key}{number}", Kind.CABINET, box(x, y, width, 720), name)
        yield from hung(f"{key}{number}", x, y, width, fronts)
        x += width


def hung(key: str, x: float, y: float, width: float, fronts: str) -> Iterator[Part]:
    """The fronts of one cabinet in a row: a door, a pair of doors, or drawer fronts 318, 238 and 152 high.

    There is a gap of 2 round the fronts of a cabinet, and of 4 between two of them.
    """
    if fronts == "door":
        yield part(f"{key}-door", Kind.DOOR, box(x + 2, y + 2, width - 4, 716), "door")
    elif fronts == "pair":
        half = width / 2 - 4
        yield part(f"{key}-left", Kind.DOOR, box(x + 2, y + 2, half, 716), "left door")
        yield part(f"{key}-right", Kind.DOOR, box(x + half + 6, y + 2, half, 716), "right door")
    elif fronts == "drawers":
        places = ((2, 318, "bottom drawer"), (324, 238, "middle drawer"), (566, 152, "top drawer"))
        for place, (bottom, tall, name) in enumerate(places, start=1):
            yield part(f"{key}-drawer{place}", Kind.DRAWER_FRONT, box(x + 2, y + bottom, width - 4, tall), name)


def kitchen_a() -> Face:
    """The long wall, 3600 x 2400: sink, dishwasher, oven and cooktop. Wall B's row stands in front of its last 600.

    The splashback rises behind the rangehood. Its door has a knob, that of the last wall cabinet a glass pane.
    """
    base: Row = (("drawer base", 600, "drawers"), ("sink base", 900, "pair"))
    upper: Row = (("wall cabinet 1", 600, "door"), ("wall cabinet 2", 900, "pair"), ("wall cabinet 3", 600, "door"))
    splash = ((0, 908), (3600, 908), (3600, 1508), (2700, 1508), (2700, 1608), (2100, 1608), (2100, 1508), (0, 1508))
    return Face(
        "A",
        "A",
        corner=Corner.INSIDE,
        parts=(
            part("a-wall", Kind.WALL, box(0, 0, 3600, 2400), "wall"),
            part("a-bulkhead", Kind.BULKHEAD, box(0, 2228, 3600, 172), "bulkhead"),
            tiled("a-splash", tuple(Vertex(x, y) for x, y in splash), "splashback", 150),
            part("a-kick", Kind.KICKBOARD, box(0, 0, 3000, 150), "kickboard"),
            *row("a-base", 0, 150, base),
            part("a-dishwasher", Kind.FIXTURE, box(1500, 150, 600, 720), "dishwasher"),
            part("a-oven-base", Kind.CABINET, box(2100, 150, 600, 720), "oven base"),
            part("a-oven-drawer", Kind.DRAWER_FRONT, box(2102, 152, 596, 116), "drawer under the oven"),
            part("a-oven", Kind.FIXTURE, box(2100, 270, 600, 600), "oven"),
            *row("a-narrow", 2700, 150, (("narrow base", 250, "door"),)),
            part("a-filler", Kind.FILLER, box(2950, 150, 50, 720), "corner filler"),
            left("a-return", Kind.CABINET, box(3000, 0, 600, 870), "end of run B"),
            left("a-bench", Kind.BENCHTOP, box(0, 870, 3600, 38), "benchtop edge (coated on the plan)"),
            *row("a-upper", 0, 1508, upper),
            part("a-hood-cabinet", Kind.CABINET, box(2100, 1758, 600, 470), "rangehood cabinet"),
            replace(part("a-hood-door", Kind.DOOR, box(2102, 1760, 596, 466), "rangehood door"), hole_centres_mm=0.0),
            part("a-hood", Kind.FIXTURE, box(2100, 1608, 600, 150), "rangehood"),
            *row("a-glazed", 2700, 1508, (("glazed cabinet", 600, "door"),)),
            part("a-glass", Kind.WINDOW, box(2772, 1580, 456, 576), "glass of the door"),
            outlet("a-outlet1", 700, 1100),
            outlet("a-outlet2", 2800, 1100),
        ),
    )


def kitchen_b() -> Face:
    """The window wall, 3300 x 2400. Wall A's row stands in front of its first 600; its benchtop ends free at 2400."""
    base: Row = (("corner base", 450, "door"), ("pot drawers", 900, "drawers"), ("end base", 400, "door"))
    return Face(
        "B",
        "B",
        corner=Corner.INSIDE,
        parts=(
            part("b-wall", Kind.WALL, box(0, 0, 3300, 2400), "wall"),
            tiled("b-splash", box(0, 908, 2400, 600), "splashback", 150),
            left("b-return", Kind.CABINET, box(0, 0, 600, 870), "end of run A"),
            part("b-kick", Kind.KICKBOARD, box(600, 0, 1800, 150), "kickboard"),
            part("b-filler", Kind.FILLER, box(600, 150, 50, 720), "corner filler"),
            *row("b-base", 650, 150, base),
            left("b-bench", Kind.BENCHTOP, box(0, 870, 2400, 38), "benchtop edge (coated on the plan)"),
            part("b-window", Kind.WINDOW, box(750, 1108, 1200, 900), "window"),
            outlet("b-outlet", 2050, 1000),
        ),
    )


def kitchen_c() -> Face:
    """The pantry wall, 1518 x 2400: an alcove of 900 for the fridge, then the pantry and its end panel.

    The fridge rolls out, so it hides nothing.
    """
    return Face(
        "C",
        "C",
        corner=Corner.OUTSIDE,
        parts=(
            part("c-wall", Kind.WALL, box(0, 0, 1518, 2400), "wall"),
            replace(part("c-fridge", Kind.FIXTURE, box(90, 20, 720, 1700), "fridge"), hides=False),
            part("c-shelf", Kind.SHELF, box(0, 1800, 900, 32), "shelf over the fridge"),
            part("c-kick", Kind.KICKBOARD, box(900, 0, 600, 150), "kickboard"),
            part("c-pantry", Kind.CABINET, box(900, 150, 600, 2078), "pantry"),
            part("c-pantry-low", Kind.DOOR, box(902, 152, 596, 1216), "lower pantry door"),
            part("c-pantry-high", Kind.DOOR, box(902, 1372, 596, 854), "upper pantry door"),
            part("c-end", Kind.END_PANEL, box(1500, 0, 18, 2228), "edge of the end panel"),
            outlet("c-outlet", 600, 1900),
        ),
    )


def kitchen_d() -> Face:
    """The side of the pantry, round the outside corner: 600 wide, with no wall behind it."""
    return Face(
        "D",
        "D",
        parts=(
            part("d-panel", Kind.END_PANEL, box(0, 0, 600, 2228), "end panel"),
            outlet("d-outlet", 250, 1050),
        ),
    )


def kitchen_bench() -> Face:
    """The L-shaped benchtop, 600 deep: inner corner rounded to 50, free corners to 60; sink, tap hole and cooktop.

    Its front edges and free ends are coated and counted here, not on the walls.
    """
    top = (
        Vertex(0, 0),
        Vertex(3600, 0),
        Vertex(3600, 2400),
        Vertex(3060, 2400, QUARTER),
        Vertex(3000, 2340),
        Vertex(3000, 650, -QUARTER),
        Vertex(2950, 600),
        Vertex(60, 600, QUARTER),
        Vertex(0, 540),
    )
    return Face(
        "E",
        "E",
        View.PLAN,
        parts=(
            replace(part("e-top", Kind.BENCHTOP, top, "benchtop"), coated_sides=(2, 3, 4, 5, 6, 7, 8)),
            part("e-sink", Kind.FIXTURE, rounded_box(660, 90, 780, 430, 60), "sink"),
            part("e-tap", Kind.CUT_OUT, circle(1050, 50, 17.5), "tap hole"),
            part("e-cooktop", Kind.FIXTURE, box(2110, 50, 580, 510), "cooktop"),
        ),
        ties=(Tie("e-top", 0, "A", 0, 3600), Tie("e-top", 1, "B", 0, 2400)),
    )


def moulded(front: Part) -> Part:
    """A front of moulded timber that was painted before."""
    return replace(front, profile_factor=1.15, made_of="old paint on timber")


def laundry_f() -> Face:
    """The basin wall, 1800 x 2400: washing machine and vanity, tiled from the vanity top to 2100; a round mirror.

    The front edge of the vanity top is coated and counted here. The drawer fronts are moulded, and were painted before.
    """
    base: Row = (("vanity left", 600, "pair"), ("vanity right", 600, "drawers"))
    vanity = row("f-base", 600, 150, base)
    return Face(
        "F",
        "F",
        corner=Corner.INSIDE,
        parts=(
            part("f-wall", Kind.WALL, box(0, 0, 1800, 2400), "wall"),
            tiled("f-tiles", box(0, 900, 1800, 1200), "tiles", 300),
            part("f-kick", Kind.KICKBOARD, box(600, 0, 1200, 150), "kickboard"),
            part("f-washer", Kind.FIXTURE, box(0, 0, 600, 870), "washing machine"),
            *(moulded(each) if each.kind is Kind.DRAWER_FRONT else each for each in vanity),
            part("f-top", Kind.BENCHTOP, box(0, 870, 1800, 30), "front edge of the vanity top"),
            part("f-mirror", Kind.FIXTURE, circle(900, 1600, 300), "round mirror"),
            outlet("f-outlet", 300, 1100),
        ),
    )


def laundry_g() -> Face:
    """The side wall under the slope: 1500 wide, 2400 high, falling from 900 on to 1800; tiled up to the ceiling.

    The tiles were read as 1197 wide, the linen cabinet as 1200 from the left. They should touch; the program says so.
    """
    wall = ((0, 0), (1500, 0), (1500, 1800), (900, 2400), (0, 2400))
    tiles = ((0, 900), (1197, 900), (1197, 2103), (900, 2400), (0, 2400))
    cabinet, door = row("g-linen", 1200, 1080, (("linen cabinet", 300, "door"),))
    return Face(
        "G",
        "G",
        parts=(
            part("g-wall", Kind.WALL, tuple(Vertex(x, y) for x, y in wall), "wall"),
            tiled("g-tiles", tuple(Vertex(x, y) for x, y in tiles), "tiles", 300),
            left("g-return", Kind.CABINET, box(0, 0, 560, 870), "end of the vanity"),
            left("g-top", Kind.BENCHTOP, box(0, 870, 560, 30), "end of the vanity top"),
            cabinet,
            replace(door, back_coated=True),
            outlet("g-outlet", 700, 1100),
        ),
    )


def laundry_top() -> Face:
    """The vanity top, 1800 x 560 x 30, with a round basin and a tap hole. Only its free left end is coated here."""
    top = part("h-top", Kind.BENCHTOP, box(0, 0, 1800, 560), "vanity top")
    return Face(
        "H",
        "H",
        View.PLAN,
        parts=(
            replace(top, thickness_mm=30.0, coated_sides=(3,)),
            part("h-basin", Kind.FIXTURE, circle(900, 300, 210), "round basin"),
            part("h-tap", Kind.CUT_OUT, circle(900, 50, 17.5), "tap hole"),
        ),
        ties=(Tie("h-top", 0, "F", 0, 1800), Tie("h-top", 1, "G", 0, 560)),
    )


JOINTS = (
    # The sink was set in last year, with a small bead that stays.
    JointChoice("E", ("e-top", "e-sink"), section=Fillet(3), old_bead=False),
    # The rangehood hangs free of the tiles; the splashback's bare top edge is closed against the wall instead.
    JointChoice("A", ("a-splash", "a-hood"), sealed=False),
    JointChoice("A", ("a-splash", "a-wall"), sealed=True, section=Butt(5, 5)),
)
"""What the owner decided about joints. It overrides the table of rules."""


def with_handles(face: Face, centres_mm: float) -> Face:
    """The face with old handles of these hole centres on all its fronts that have no other hole centres."""
    return replace(face, parts=tuple(with_handle(each, centres_mm) for each in face.parts))


def with_handle(each: Part, centres_mm: float) -> Part:
    """The part with an old handle of these hole centres, if it is a front that has no other."""
    bare = usual()[each.kind].front and each.hole_centres_mm is None
    return replace(each, hole_centres_mm=centres_mm) if bare else each


def harbour_row() -> Job:
    """The job of the whole example."""
    kitchen = (kitchen_a(), kitchen_b(), kitchen_c(), kitchen_d(), kitchen_bench())
    laundry = (laundry_f(), laundry_g(), laundry_top())
    rooms = (
        Room("kitchen", "Kitchen", tuple(with_handles(face, 96) for face in kitchen)),
        Room("laundry", "Laundry", tuple(with_handles(face, 128) for face in laundry)),
    )
    job = Job(
        "Harbour Row 3, kitchen and laundry",
        rooms,
        joints=JOINTS,
        finishes=FINISHES,
        products=PRODUCTS,
        money=MONEY,
        allowances=ALLOWANCES,
        handle_centres_mm=NEW_HANDLES_MM,
    )
    return with_tags_given(job)


if __name__ == "__main__":
    for copy in COPIES:
        write_job_file(copy, JobFile(harbour_row()))
        print(f"wrote {copy.name}")
