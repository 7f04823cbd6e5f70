"""The build-ups, products, packs and prices of Harbour Row 3. All are invented, and so is the money.

The basket that follows from them is worked out by hand in `harbour-row-basket.md`.
"""

from msgspec.structs import replace

from shared.trade.finishes import Finish, Material, Step, Work
from shared.trade.products import Allowances, Money, Pack, Product, Use

MONEY = Money("crowns", tax=0.1, tax_included=True, budget=750.0)
ALLOWANCES = Allowances(loss=0.1, allowance=0.05, tray_l=0.05, tape=0.1, sealant=0.1, coats_a_sleeve=1)
NEW_HANDLES_MM = 128.0
"""The hole centres of the new handles. The old ones of the kitchen were 96 apart, those of the laundry 128."""

CLEAN = Step(Work.CLEAN, "cleaner")
RINSE = Step(Work.RINSE, coats=2, next_h=2.0)
KEY = Step(Work.KEY, "abrasive")
ALL_BUT_TILE = (Material.LAMINATE, Material.MELAMINE, Material.TIMBER, Material.OLD_PAINT, Material.METAL)
ALL_BUT_OLD_PAINT = (Material.TILE, Material.LAMINATE, Material.MELAMINE, Material.TIMBER, Material.METAL)
PRIME = Step(Work.PRIME, "primer", tool="sleeve", next_h=6.0, touch_h=2.0)


def coats(work: Work, product: str, *, touch_h: float, use_h: float, next_most_h: float | None = None) -> Step:
    """A step of two coats, at least 6 h apart, laid with a small sleeve."""
    return Step(
        work, product, coats=2, tool="sleeve", next_h=6.0, next_most_h=next_most_h, touch_h=touch_h, use_h=use_h
    )


TILES = Finish(
    "tiles",
    "Tiles, slate blue",
    (
        CLEAN,
        RINSE,
        KEY,
        replace(PRIME, on=ALL_BUT_TILE),
        coats(Work.COLOUR, "tile-colour", touch_h=8.0, use_h=72.0, next_most_h=48.0),
        coats(Work.CLEAR, "clear", touch_h=8.0, use_h=72.0, next_most_h=48.0),
    ),
    shade="#6F8592",
)

BENCHTOP = Finish(
    "benchtop",
    "Benchtop, sand",
    (
        CLEAN,
        RINSE,
        KEY,
        PRIME,
        replace(coats(Work.COLOUR, "bench-colour", touch_h=4.0, use_h=24.0), thinning=0.05),
        # A benchtop is worn more than a wall: its clear coats are laid thicker than their sheet asks for.
        replace(coats(Work.CLEAR, "clear", touch_h=12.0, use_h=168.0, next_most_h=48.0), covers_m2=9.0),
    ),
    shade="#D3C4A9",
)

FRONTS = Finish(
    "fronts",
    "Fronts and cabinets, sage",
    (
        CLEAN,
        RINSE,
        KEY,
        replace(PRIME, on=ALL_BUT_OLD_PAINT),
        coats(Work.COLOUR, "front-colour", touch_h=6.0, use_h=24.0),
    ),
    shade="#A3B59B",
)

FINISHES = (TILES, BENCHTOP, FRONTS)


def packs(name: str, *sizes_and_prices: tuple[float, float]) -> tuple[Pack, ...]:
    """Packs of one name, each with its size and price."""
    return tuple(Pack(size, price, name) for size, price in sizes_and_prices)


PRODUCTS = (
    Product(
        "cleaner",
        "Ebbstone degreaser",
        Use.CLEANER,
        packs("bottle", (0.5, 6.5), (1.0, 9.8), (5.0, 34.0)),
        covers_m2=20.0,
        keeps_days=730.0,
    ),
    Product(
        "abrasive",
        "Abrasive sheets, 180",
        Use.ABRASIVE,
        packs("bundle", (5.0, 4.2), (25.0, 15.0)),
        covers_m2=1.5,
    ),
    Product(
        "primer",
        "Ebbstone bonding primer",
        Use.PRIMER,
        packs("tin", (0.5, 19.0), (1.0, 32.0), (4.0, 98.0)),
        covers_m2=10.0,
        keeps_days=365.0,
        on_shelf=0.5,
    ),
    Product(
        "tile-colour",
        "Ebbstone tile colour, slate blue",
        Use.COLOUR,
        packs("kit", (1.0, 84.0), (2.5, 189.0)),
        covers_m2=9.0,
        ratio=(4.0, 1.0),
        usable_h=2.0,
        keeps_days=180.0,
    ),
    Product(
        "bench-colour",
        "Larkmoor benchtop colour, sand",
        Use.COLOUR,
        packs("tin", (0.5, 34.0), (1.0, 58.0), (2.5, 126.0)),
        covers_m2=10.0,
        keeps_days=365.0,
    ),
    Product(
        "front-colour",
        "Larkmoor satin, sage",
        Use.COLOUR,
        packs("tin", (0.5, 29.5), (1.0, 48.0), (4.0, 149.0)),
        covers_m2=12.0,
        keeps_days=365.0,
        stands_for="satin, sage",
    ),
    Product(
        "front-colour-other",
        "Ebbstone satin, sage",
        Use.COLOUR,
        packs("tin", (0.75, 31.0), (2.5, 96.0)),
        covers_m2=10.0,
        keeps_days=365.0,
        stands_for="satin, sage",
    ),
    Product(
        "clear",
        "Larkmoor clear, two-part",
        Use.CLEAR,
        packs("kit", (0.75, 62.0), (1.5, 112.0)),
        solids=0.45,
        film_um=45.0,
        ratio=(4.0, 1.0),
        usable_h=4.0,
        keeps_days=180.0,
    ),
    Product(
        "silicone",
        "Ebbstone wet-area silicone, white",
        Use.SEALANT,
        packs("cartridge", (0.3, 11.9)),
        keeps_days=30.0,
        stands_for="wet-area silicone",
    ),
    Product(
        "paintable",
        "Ebbstone paintable sealant",
        Use.SEALANT,
        packs("cartridge", (0.3, 7.5)),
        keeps_days=30.0,
        stands_for="paintable sealant",
    ),
    Product(
        "tape",
        "Masking tape, 24 mm",
        Use.TAPE,
        packs("roll", (25.0, 4.9), (50.0, 8.4)),
        stands_for="masking tape",
    ),
    Product(
        "sleeve",
        "Small sleeve, 100 mm, 4 mm nap",
        Use.SLEEVE,
        packs("bag", (2.0, 5.6), (10.0, 22.0)),
    ),
)
