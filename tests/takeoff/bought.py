"""A small invented job with products, and a basket for it that can be reckoned in the head."""

from shared.job import Job
from shared.trade.products import Money, Pack, Product, Use
from takeoff.figures.to_buy import Basket, BasketRow, Bought

TIN, LARGE = Pack(1.0, 32.0, "tin"), Pack(2.5, 65.0, "tin")
KIT, CARTRIDGE = Pack(1.0, None, "kit"), Pack(0.3, 14.5)

JOB = Job(
    "Quince Lane 2",
    products=(
        Product("satin", "Satin, sage", Use.COLOUR, (TIN, LARGE), stands_for="satin"),
        Product("clear", "=Clear", Use.CLEAR, (KIT,), ratio=(4.0, 1.0), usable_h=4.0),
        Product("seal", "Sanitary <sealant>", Use.SEALANT, (CARTRIDGE,)),
        Product("cleaner", "Cleaner", Use.CLEANER, (Pack(1.0, 5.0),)),
    ),
    money=Money("crowns", tax=0.1, budget=150.0),
)

BASKET = Basket(
    rows=(
        BasketRow("satin", "satin", 3.1, 0.0, (Bought(TIN, 1), Bought(LARGE, 1)), 97.0, 0.4, 32.0, 365.0),
        BasketRow("=Clear", "clear", 1.2, 0.0, (Bought(KIT, 2),), None, 0.8),
        BasketRow("Sanitary <sealant>", "seal", 0.7, 0.0, (Bought(CARTRIDGE, 3),), 43.5, 0.2, 14.5, 30.0),
        BasketRow("Cleaner", "cleaner", 0.5, 0.5, (), 0.0, 0.0, 5.0),
    ),
    cost=140.5,
    tax=12.77,
    budget=150.0,
    proved=True,
)
