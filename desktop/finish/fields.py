"""The fields of steps, products, packs, prices and allowances: their names, how they are read, what they mean."""

from collections.abc import Callable

from desktop.fields.form_rows import CheckRow, ChoiceRow, TextRow, words_of
from desktop.fields.grid import Lines
from desktop.fields.value_rows import MaterialsRow, TypedRow, always
from desktop.fields.words import FieldWords, MoneyWords, NumberWords, RatioWords, SizeWords, SpreadWords, StockWords
from desktop.state.shown import Shown
from shared.limits import GREATEST_ALLOWANCE, GREATEST_LOSS, MOST_COATS, MOST_HOURS
from shared.trade.finishes import Step, Work
from shared.trade.products import Allowances, Measure, Money, Pack, Product, Use
from takeoff.needs.spread import covers_m2

USE_OF = {
    Work.CLEAN: Use.CLEANER,
    Work.KEY: Use.ABRASIVE,
    Work.FILL: Use.FILLER,
    Work.PRIME: Use.PRIMER,
    Work.COLOUR: Use.COLOUR,
    Work.CLEAR: Use.CLEAR,
}
"""The use of the product that each kind of work takes. A rinse takes none."""

COATINGS = frozenset({Use.FILLER, Use.PRIMER, Use.COLOUR, Use.CLEAR})
COVERING = COATINGS | {Use.CLEANER, Use.ABRASIVE}

MEANS = {
    "Coats": "How many times this step is done",
    "Spread rate": "The area that a litre or a piece covers in one coat. Leave it empty to have it worked out",
    "Thinning": "How much thinner is added to each litre. There is more to spread, but it covers no more",
    "Applied with": "The roller sleeve or tool that this step wears out",
    "Recoat after": "The shortest wait before the next coat or step",
    "Recoat within": "The longest wait before the next coat. Leave it empty if there is no limit",
    "Touch dry": "How long until it can be touched",
    "In service": "How long until the surface can be used",
    "Only on": "The materials that need this step. If none is ticked, it is done on all",
    "Solids": "The share of the volume that stays when it is dry",
    "Dry film": "How thick one coat is when it is dry",
    "Mix ratio": "Base to hardener by volume for a two-part product, as in 4:1",
    "Pot life": "How long the product can be used once it is mixed",
    "Shelf life once opened": "How long an opened pack keeps",
    "Interchangeable with": "Products with the same word here can replace each other. "
    "Joints and masking find their sealant and tape by this word",
    "Needed anyway": "How many you need whatever is measured: masks, drop sheets, blades, days of hire, loads of waste",
    "On the shelf": "How much you have already. It is used first",
    "Pack size": "As the label says: 4 L, 300 mL, 1 gal, 50 m, 25 sheets",
    "Price": "What one pack costs. Leave it empty until you know",
    "Tax": "The rate that is added to a price without tax",
    "Budget": "The most that the job may cost, including tax. 0 means no budget",
    "Loss": "The share that never reaches the surface. 10 % means that 1 L on the surface takes 1.11 L",
    "Allowance": "How much more is bought than the sum says. 10 % means that 1 L becomes 1.1 L",
    "Left in the tray": "The litres that stay in tray and sleeve at each coat. They are added to the sum",
    "Tape allowance": "How much more tape is bought than the masking is long",
    "Sealant allowance": "How much more sealant is bought than the beads hold",
    "Coats per sleeve": "How many coats of one product a sleeve lasts",
}


def step_lines(product: ChoiceRow[Step], tool: ChoiceRow[Step]) -> Lines[Step]:
    """The fields of a step. The caller fills in the choices of its product and tool."""
    return (
        (ChoiceRow("Work", "work", words_of(Work)), TypedRow("Coats", "coats", always(_coats("number of coats")))),
        (product, tool),
        (
            TypedRow("Spread rate", "covers_m2", _step_spread, _product_covers),
            TypedRow("Thinning", "thinning", always(NumberWords("thinning", most=1.0, percent=True))),
        ),
        (
            TypedRow("Recoat after", "next_h", always(_hours("wait"))),
            TypedRow("Recoat within", "next_most_h", always(_hours("longest wait", empty=True)), _no_limit),
        ),
        (
            TypedRow("Touch dry", "touch_h", always(_hours("time"))),
            TypedRow("In service", "use_h", always(_hours("time"))),
        ),
        (MaterialsRow("Only on", "on"),),
    )


def product_lines(name: TextRow[Product]) -> Lines[Product]:
    """The fields of a product. Some are shown only for the uses that need them."""
    solids = NumberWords("share of solids", most=1.0, above=True, empty=True, percent=True)
    film = NumberWords("dry film", above=True, empty=True, sign="µm")
    usable = NumberWords("pot life", above=True, empty=True, sign="h")
    keeps = NumberWords("shelf life once opened", empty=True, sign="days")
    return (
        (name,),
        (ChoiceRow("Used as", "use", words_of(Use)),),
        (TypedRow("Spread rate", "covers_m2", _spread, _covers_that_follows, _covers_something),),
        (
            TypedRow("Solids", "solids", always(solids), only=_is_coating),
            TypedRow("Dry film", "film_um", always(film), only=_is_coating),
        ),
        (
            TypedRow("Mix ratio", "ratio", always(RatioWords()), _one_part, _is_coating),
            TypedRow("Pot life", "usable_h", always(usable), only=_is_coating),
        ),
        (TypedRow("Shelf life once opened", "keeps_days", always(keeps)), TypedRow("On the shelf", "on_shelf", _stock)),
        (TypedRow("Needed anyway", "anyway", always(NumberWords("number needed")), only=_is_counted),),
        (TextRow("Interchangeable with", "stands_for"),),
    )


def pack_lines(measure: Callable[[], Measure]) -> Lines[Pack]:
    """The fields of a pack. `measure` gives the measure of its product at the time of reading."""

    def size(_pack: Pack, _shown: Shown) -> FieldWords:
        return SizeWords(measure())

    return (
        (TypedRow("Pack size", "size", size), TypedRow("Price", "price", always(MoneyWords("price")), _no_price)),
        (TextRow("Pack name", "name"),),
    )


def money_lines() -> Lines[Money]:
    """The fields of the currency, the budget and the tax."""
    return (
        (TextRow("Currency", "currency"), TypedRow("Budget", "budget", always(MoneyWords("budget", 0.0)), _none)),
        (
            TypedRow("Tax", "tax", always(NumberWords("tax", most=1.0, percent=True))),
            CheckRow("prices include tax", "tax_included"),
        ),
    )


def allowance_lines() -> Lines[Allowances]:
    """The fields of what is used and bought beyond the sum."""

    def beyond(what: str) -> Callable[[Allowances, Shown], FieldWords]:
        return always(NumberWords(what, most=GREATEST_ALLOWANCE, percent=True))

    loss = NumberWords("loss", most=GREATEST_LOSS, percent=True)
    tray = NumberWords("amount left behind", most=GREATEST_ALLOWANCE, sign="L")
    return (
        (TypedRow("Loss", "loss", always(loss)), TypedRow("Allowance", "allowance", beyond("allowance"))),
        (
            TypedRow("Tape allowance", "tape", beyond("allowance")),
            TypedRow("Sealant allowance", "sealant", beyond("allowance")),
        ),
        (
            TypedRow("Left in the tray", "tray_l", always(tray)),
            TypedRow("Coats per sleeve", "coats_a_sleeve", always(_coats("number of coats"))),
        ),
    )


def product_of(product_id: str, shown: Shown) -> Product | None:
    """The product of the job with this id; None if there is no such product."""
    return next((product for product in shown.job.products if product.id == product_id), None)


def spread_words(product: Product, shown: Shown) -> str:
    """How much a product covers in one coat, with its unit; "" if that is not known."""
    return SpreadWords(product.measure).show(covers_m2(product), shown.unit)


def _hours(what: str, *, empty: bool = False) -> NumberWords:
    return NumberWords(what, most=MOST_HOURS, empty=empty, sign="h")


def _coats(what: str) -> NumberWords:
    return NumberWords(what, least=1, most=MOST_COATS, whole=True)


def _step_spread(step: Step, shown: Shown) -> FieldWords:
    product = product_of(step.product, shown)
    return SpreadWords(product.measure if product else Measure.LITRES)


def _product_covers(step: Step, shown: Shown) -> str:
    product = product_of(step.product, shown)
    return spread_words(product, shown) if product else ""


def _spread(product: Product, _shown: Shown) -> FieldWords:
    return SpreadWords(product.measure)


def _covers_that_follows(product: Product, shown: Shown) -> str:
    return spread_words(product, shown) or SpreadWords(product.measure).sign(shown.unit)


def _stock(product: Product, _shown: Shown) -> FieldWords:
    return StockWords(product.measure)


def _covers_something(product: Product) -> bool:
    return product.use in COVERING


def _is_coating(product: Product) -> bool:
    return product.use in COATINGS


def _is_counted(product: Product) -> bool:
    return product.measure is Measure.PIECES


def _one_part(_product: Product, _shown: Shown) -> str:
    return "one part"


def _no_limit(_step: Step, _shown: Shown) -> str:
    return "no limit"


def _none(_money: Money, _shown: Shown) -> str:
    return "none"


def _no_price(_pack: Pack, _shown: Shown) -> str:
    return "none yet"
