"""What a job needs and what is bought, as worksheets that work out packs and costs anew when a figure is changed."""

from collections import Counter
from collections.abc import Iterator, Mapping
from typing import NamedTuple

from shared.job import Job
from shared.trade.products import Measure, Pack, Product, Use
from shared.written.packs import amount_in, amount_unit, is_small
from takeoff.basket.cheapest import price_with_tax
from takeoff.basket.words import cost_words, has_prices, open_points
from takeoff.bill import Bill
from takeoff.figures.measured import Takeoff
from takeoff.figures.to_buy import BasketRow, Used
from takeoff.tables.need_sources import Source, Sources
from takeoff.tables.worksheets import Cell, Live, Row, Worksheet, told_apart
from takeoff.why.uses import use_sum

HALF_CENT = "+1E-9"
"""Added before a cost is rounded, so that half a cent is rounded up even if its float falls short of it."""

LOSS, ALLOWANCE, TRAY, TAPE, SEALANT, TAX, INCLUDED, BUDGET = (f"Allowances!$B${row}" for row in range(2, 10))


class _Named(NamedTuple):
    """The products of a job by id, and names by which a spreadsheet can tell them apart."""

    products: Mapping[str, Product]
    names: Mapping[str, str]


def bill_worksheets(takeoff: Takeoff, job: Job, bill: Bill) -> tuple[Worksheet, ...]:
    """The worksheets Allowances, Needs and Basket.

    The numbers of packs stay when a figure is changed; a cell says whether they are still enough. No two rooms, and no
    two finishes, of `job` have one name.
    """
    named = _Named(
        {product.id: product for product in job.products},
        told_apart({product.id: product.name for product in job.products}),
    )
    needs = _needs(takeoff, job, bill, named)
    return (_allowances(job), needs, _basket(job, bill, named, needs))


def _allowances(job: Job) -> Worksheet:
    share, money, litres = job.allowances, job.money, amount_unit(Measure.LITRES, job.unit)
    rows: tuple[Row, ...] = (
        ("Loss (share of what is used)", share.loss),
        ("Allowance (share added)", share.allowance),
        (f"Left in tray and sleeve at each coat, {litres}", amount_in(share.tray_l, Measure.LITRES, job.unit)),
        ("Allowance for tape (share added)", share.tape),
        ("Allowance for sealant (share added)", share.sealant),
        ("Tax (share added)", money.tax),
        ("Prices include tax", "yes" if money.tax_included else "no"),
        ("Budget", money.budget),
    )
    return Worksheet("Allowances", ("What", "Change it here"), (44, 14), rows)


NEEDS = ("Product", "Use", "Finish, sealant or room", "Size", "Unit", "Times", "One unit covers", "Loss", "Allowance",
         "Left behind", "Needed", "Unit")  # fmt: skip


def _needs(takeoff: Takeoff, job: Job, bill: Bill, named: _Named) -> Worksheet:
    """A row for every use of the products that are bought. Work without a purchase shows its first product."""
    sources = Sources(takeoff, job)
    rows: list[Row] = []
    for wanted in bill.needs.wanted:
        need = bill.chosen(wanted)
        product = named.products[need.product]
        for used in need.used:
            source = sources.of(used, product, wanted.name, len(rows) + 2)
            rows.append((named.names[product.id], *_use_cells(used, source, product, job, len(rows) + 2)))
    return Worksheet("Needs", NEEDS, (30, 44, 24, 10, 6, 6, 13, 8, 10, 11, 10, 8), tuple(rows))


def _use_cells(used: Used, source: Source | None, product: Product, job: Job, row: int) -> Row:
    numbers = use_sum(used, product, job.unit)
    return (
        used.what,
        source.chosen_by if source else "",
        source.size if source else numbers.size,
        numbers.size_unit,
        float(numbers.times),
        numbers.per,
        *_beyond(used, product, job, is_live=source is not None),
        Live(f"=D{row}*F{row}/G{row}/(1-H{row})*(1+I{row})+J{row}", numbers.amount),
        numbers.amount_unit,
    )


def _beyond(used: Used, product: Product, job: Job, *, is_live: bool) -> tuple[Cell, Cell, Cell]:
    """The cells of loss, allowance and what is left behind. A live row takes them from the worksheet Allowances."""
    left = use_sum(used, product, job.unit).left_behind
    if not is_live:
        return used.loss, used.allowance, left
    by_use = {Use.TAPE: TAPE, Use.SEALANT: SEALANT}
    allowance = Live(f"={by_use.get(product.use, ALLOWANCE)}", used.allowance)
    loss = Live(f"={LOSS}", used.loss) if used.finish else used.loss
    times = round(used.left_behind / job.allowances.tray_l) if used.left_behind else 0
    of_a_tray = left / (times * amount_in(job.allowances.tray_l, Measure.LITRES, job.unit)) if times else 1.0
    return loss, allowance, Live(f"={TRAY}*{times}{_times(of_a_tray)}", left) if times else left


def _times(factor: float) -> str:
    """The factor from the unit of the tray to that of small packs, as the end of a formula; "" for 1."""
    return "" if round(factor) == 1 else f"*{round(factor)}"


BASKET = ("Product", "Pack", "Pack size", "Unit", "Packs", "Price", "Price with tax", "Cost", "Needed", "On the shelf",
          "Bought", "Left over", "Enough", "Price known")  # fmt: skip


def _basket(job: Job, bill: Bill, named: _Named, needs: Worksheet) -> Worksheet:
    """A row for every pack that the bought products come in, then the totals and what is in no total."""
    packs = sum(len(_packs(row, named)) for row in bill.basket.rows)
    rows: list[Row] = []
    for row in bill.basket.rows:
        for place, pack in enumerate(_packs(row, named)):
            cells = _pack_cells(row, pack, job, named, len(rows) + 2)
            whole = _whole_cells(row, job, named, needs, _Place(len(rows) + 2, packs + 1)) if place == 0 else ()
            rows.append((*cells, *whole))
    rows += _total_rows(job, bill, packs + 1)
    rows += ((f"Left out: {words}",) for words in bill.left_out)
    widths = (30, 14, 10, 6, 7, 10, 13, 10, 10, 12, 10, 10, 12, 12)
    return Worksheet("Basket", BASKET, widths, tuple(rows), money=frozenset((5, 6, 7)))


class _Place(NamedTuple):
    """The number of a row of the worksheet Basket, and that of the last row that has packs."""

    row: int
    last: int


def _packs(row: BasketRow, named: _Named) -> tuple[tuple[Pack | None, int], ...]:
    """The packs of a row's product that hold something, and how many of each are bought. None stands for no pack."""
    many: Counter[Pack] = Counter()
    for pack, number in row.packs:
        many[pack] += number
    known = tuple((pack, many.pop(pack, 0)) for pack in named.products[row.product].packs if pack.size > 0)
    return known or ((None, 0),)


def _pack_cells(row: BasketRow, pack_and_many: tuple[Pack | None, int], job: Job, named: _Named, at: int) -> Row:
    pack, many = pack_and_many
    product = named.products[row.product]
    size = _shown(pack.size, product, job) if pack else 0.0
    price = pack.price if pack else None
    with_tax = "" if price is None else price_with_tax(price, job.money)
    taxed = f'=IF(F{at}="","",ROUND(F{at}*IF({INCLUDED}="yes",1,1+{TAX}){HALF_CENT},2))'
    return (
        named.names[product.id],
        pack.name if pack else "",
        size,
        amount_unit(product.measure, job.unit, small=is_small(product)),
        float(many),
        "" if price is None else price,
        Live(taxed, with_tax),
        Live(f'=IF(F{at}="","",E{at}*G{at})', many * with_tax if isinstance(with_tax, float) else ""),
    )


def _whole_cells(row: BasketRow, job: Job, named: _Named, needs: Worksheet, place: _Place) -> Row:
    """The cells of what is needed of a product, what there is of it, whether that is enough, and has a price."""
    product = named.products[row.product]
    at, last = place
    shelf, need, left = (_shown(amount, product, job) for amount in (product.on_shelf, row.need, row.left_over))
    of_product = f"($A$2:$A${last}=A{at})"
    chosen = f"{of_product}*$C$2:$C${last}*$E$2:$E${last}"
    unpriced = f'{of_product}*($E$2:$E${last}>0)*($F$2:$F${last}="")'
    return (
        Live(f"=SUMPRODUCT(({needs.cells('A')}=A{at})*{needs.cells('K')})", need),
        shelf,
        Live(f"=SUMPRODUCT({chosen})", need + left - shelf),
        Live(f"=J{at}+K{at}-I{at}", left),
        Live(f'=IF(ROUND(L{at},6)>=0,"enough","not enough")', "enough"),
        Live(f'=IF(SUMPRODUCT({unpriced})=0,"yes","no")', "no" if row.cost is None else "yes"),
    )


def _shown(amount: float, product: Product, job: Job) -> float:
    """The number of an amount of a product, in the unit that the worksheets give for it."""
    return amount_in(amount, product.measure, job.unit, small=is_small(product))


def _total_rows(job: Job, bill: Bill, last: int) -> Iterator[Row]:
    """The rows of totals. They are empty if nothing has a price, as nobody knows the cost.

    Beside the total stand what it does not hold: "so far, 4 products without a price".
    """
    basket, total = bill.basket, last + 1
    blank = ("",) * 6
    known = has_prices(basket)
    rest = basket.budget - basket.cost if basket.budget else ""
    tax = f"ROUND(H{total}*{TAX}/(1+{TAX}){HALF_CENT},2)"
    left = f'IF({BUDGET}=0,"",{BUDGET}-H{total})'
    so_far = _so_far(bill, last)
    for name, formula, value, beside in (
        (f"Total {job.money.currency}".strip(), f"SUM(H2:H{last})", basket.cost, (so_far,)),
        ("including tax", tax, basket.tax, ()),
        ("Budget", BUDGET, basket.budget, ()),
        ("Left of the budget", left, rest, ()),
    ):
        yield (name, *blank, Live(f'=IF(COUNT(F2:F{last})=0,"",{formula})', value if known else ""), *beside)


def _so_far(bill: Bill, last: int) -> Live:
    """What the total does not hold: "so far, 4 products without a price"; it goes by the prices typed there."""
    unpriced = f'COUNTIF(N2:N{last},"no")'
    products = f'IF({unpriced}=0,"",", "&{unpriced}&IF({unpriced}=1," product"," products")&" without a price")'
    left_out = open_points(bill.basket._replace(rows=()), bill.left_out)
    formula = f'=IF({unpriced}+{len(bill.left_out)}=0,"","so far"&{products}&"{f", {left_out}" if left_out else ""}")'
    return Live(formula, cost_words("", bill.basket, bill.left_out).strip())
