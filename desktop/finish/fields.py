"""The fields of steps, products, packs, prices and allowances: how they are called and read, and what they mean."""

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
"""What a step of work uses up; a rinse uses nothing."""

COATINGS = frozenset({Use.FILLER, Use.PRIMER, Use.COLOUR, Use.CLEAR})
COVERING = COATINGS | {Use.CLEANER, Use.ABRASIVE}

MEANS = {
    "Coats": "How often it is done",
    "Covers": "How much a litre or a piece covers in one coat; empty where it follows",
    "Thinning": "What is added to a litre, as a share of it: it makes more of the mixture, but covers no more",
    "Laid with": "The roller sleeve or tool that is used up with it",
    "Next after": "How long it dries before the next coat or step",
    "At most": "The longest that it may wait for the next coat; empty where there is no limit",
    "Touch after": "How long until it may be touched",
    "Use after": "How long until the surface may be used",
    "Only on": "The materials that ask for this step; none marked: it is done on all",
    "Solids": "What stays of the volume when it is dry",
    "Dry film": "How thick one coat is when it is dry",
    "Mixed": "Base to hardener by volume, for a two-part product: 4:1",
    "Usable for": "How long its mix can be used",
    "Keeps": "How long what is left of an opened pack keeps",
    "Stands for": "Products with the same word here may stand in for each other; sealants and tape are found by it",
    "On the shelf": "What is there already; it is used first",
    "Holds": "As its label says: 4 L, 300 mL, 1 gal, 50 m, 25 sheets",
    "Price": "What one pack costs; empty while nobody knows",
    "Tax": "The share that is added to a price without tax",
    "Budget": "What may be spent in all, with tax; 0 where there is none",
    "Loss": "The share of what is taken that is lost: it divides what is needed by what is left of one",
    "Allowance": "What is taken beyond the sum, as a share of it",
    "In the tray": "Litres that stay in tray and sleeve each time a product is laid",
    "Tape": "What is taken beyond the metres of masking",
    "Sealant": "What is taken beyond the litres of the beads",
    "Coats a sleeve": "How many coats of one product a sleeve lays before it is thrown away",
}


def step_lines(product: ChoiceRow[Step], tool: ChoiceRow[Step]) -> Lines[Step]:
    """The fields of a step; those of its product and tool offer what the job has."""
    return (
        (ChoiceRow("Work", "work", words_of(Work)), TypedRow("Coats", "coats", always(_coats("number of coats")))),
        (product, tool),
        (
            TypedRow("Covers", "covers_m2", _step_spread, _product_covers),
            TypedRow("Thinning", "thinning", always(NumberWords("thinning", most=1.0, percent=True))),
        ),
        (
            TypedRow("Next after", "next_h", always(_hours("least time"))),
            TypedRow("At most", "next_most_h", always(_hours("greatest time", empty=True)), _no_limit),
        ),
        (
            TypedRow("Touch after", "touch_h", always(_hours("time"))),
            TypedRow("Use after", "use_h", always(_hours("time"))),
        ),
        (MaterialsRow("Only on", "on"),),
    )


def product_lines(name: TextRow[Product]) -> Lines[Product]:
    """The fields of a product, those that its use asks for."""
    solids = NumberWords("share of solids", most=1.0, above=True, empty=True, percent=True)
    film = NumberWords("dry film", above=True, empty=True, sign="µm")
    usable = NumberWords("usable life", above=True, empty=True, sign="h")
    keeps = NumberWords("keeping time", empty=True, sign="days")
    return (
        (name,),
        (
            ChoiceRow("Used as", "use", words_of(Use)),
            TypedRow("Covers", "covers_m2", _spread, _covers_that_follows, _covers_something),
        ),
        (
            TypedRow("Solids", "solids", always(solids), only=_is_coating),
            TypedRow("Dry film", "film_um", always(film), only=_is_coating),
        ),
        (
            TypedRow("Mixed", "ratio", always(RatioWords()), _one_part, _is_coating),
            TypedRow("Usable for", "usable_h", always(usable), only=_is_coating),
        ),
        (TypedRow("Keeps", "keeps_days", always(keeps)), TypedRow("On the shelf", "on_shelf", _stock)),
        (TextRow("Stands for", "stands_for"),),
    )


def pack_lines(measure: Callable[[], Measure]) -> Lines[Pack]:
    """The fields of a pack of a product that is counted so."""

    def size(_pack: Pack, _shown: Shown) -> FieldWords:
        return SizeWords(measure())

    return (
        (TypedRow("Holds", "size", size), TypedRow("Price", "price", always(MoneyWords("price")), _no_price)),
        (TextRow("Called", "name"),),
    )


def money_lines() -> Lines[Money]:
    """How prices are meant, and what may be spent."""
    return (
        (TextRow("Currency", "currency"), TypedRow("Budget", "budget", always(MoneyWords("budget", 0.0)), _none)),
        (
            TypedRow("Tax", "tax", always(NumberWords("tax", most=1.0, percent=True))),
            CheckRow("prices have tax in them", "tax_included"),
        ),
    )


def allowance_lines() -> Lines[Allowances]:
    """What is used beyond the bare sum."""

    def beyond(what: str) -> Callable[[Allowances, Shown], FieldWords]:
        return always(NumberWords(what, most=GREATEST_ALLOWANCE, percent=True))

    loss = NumberWords("loss", most=GREATEST_LOSS, percent=True)
    tray = NumberWords("amount left behind", most=GREATEST_ALLOWANCE, sign="L")
    return (
        (TypedRow("Loss", "loss", always(loss)), TypedRow("Allowance", "allowance", beyond("allowance"))),
        (TypedRow("Tape", "tape", beyond("allowance")), TypedRow("Sealant", "sealant", beyond("allowance"))),
        (
            TypedRow("In the tray", "tray_l", always(tray)),
            TypedRow("Coats a sleeve", "coats_a_sleeve", always(_coats("number of coats"))),
        ),
    )


def product_of(product_id: str, shown: Shown) -> Product | None:
    """The product of the job with this id; None where it has none."""
    return next((product for product in shown.job.products if product.id == product_id), None)


def spread_words(product: Product, shown: Shown) -> str:
    """How much a product covers, with its unit; "" where that is not known."""
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


def _one_part(_product: Product, _shown: Shown) -> str:
    return "one part"


def _no_limit(_step: Step, _shown: Shown) -> str:
    return "no limit"


def _none(_money: Money, _shown: Shown) -> str:
    return "none"


def _no_price(_pack: Pack, _shown: Shown) -> str:
    return "none yet"
