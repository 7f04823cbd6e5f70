import csv
import io
import re
from html.parser import HTMLParser

from msgspec.structs import replace

from shared.job import Job, Unit
from takeoff.basket.groups import basket_groups
from takeoff.figures.to_buy import Basket
from takeoff.tables.basket_csv import basket_csv
from takeoff.tables.basket_text import basket_text
from takeoff.tables.shopping_list import basket_html
from tests.takeoff.bought import BASKET, JOB

NOTHING = Basket((), 0.0, 0.0, 0.0, proved=True)


def lines_of(text: str) -> list[str]:
    return [" ".join(line.split()) for line in text.splitlines()]


class Page(HTMLParser):
    """The tags of a page, and its text."""

    def __init__(self, content: bytes) -> None:
        super().__init__()
        self.tags: list[str] = []
        self.texts: list[str] = []
        self.sources: list[str] = []
        self.feed(content.decode("utf-8"))

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        self.sources += [name for name, _ in attrs if name in ("src", "href", "style", "onclick")]

    def handle_data(self, data: str) -> None:
        self.texts.append(data.strip())


def test_rows_stand_as_one_walks_through_a_shop() -> None:
    groups = basket_groups(BASKET, JOB)
    assert [(group.name, group.cost, [line.product.id for line in group.lines]) for group in groups] == [
        ("Coatings", 97.0, ["satin", "clear"]),
        ("Sealing and masking", 43.5, ["seal"]),
        ("Tools and cleaning", 0.0, ["cleaner"]),
    ]


def test_the_text_gives_what_is_needed_the_packs_what_is_left_and_the_cost() -> None:
    lines = lines_of(basket_text(BASKET, JOB))
    assert "Satin, sage 3.10 L 1 x 1 L tin, 1 x 2.5 L tin 400 mL 97.00" in lines
    assert "=Clear 1.20 L 2 x 1 L kit 0.80 L no price" in lines
    assert "Sanitary <sealant> 0.70 L 3 x 300 mL 200 mL 43.50" in lines
    assert "Cleaner 0.50 L none 0 mL 0.00" in lines
    assert {
        "for satin",
        "shelf life once opened 365 days",
        "pot life 4 h",
        "0.50 L comes from the shelf",
    } <= {*lines}


def priced(*, proved: bool) -> Basket:
    """The basket with a price for all that is in it."""
    rows = tuple(row._replace(cost=5.0) if row.cost is None else row for row in BASKET.rows)
    return BASKET._replace(rows=rows, proved=proved)


def test_the_text_ends_with_totals_and_how_many_products_have_no_price() -> None:
    lines = lines_of(basket_text(BASKET, JOB))
    assert lines[-6:-2] == [
        "Total so far crowns 140.50",
        "including tax, 10 % 12.77",
        "Budget 150.00",
        "Left of the budget so far 9.50",
    ]
    assert lines[-1] == "140.50 crowns so far, 1 product without a price."
    assert "Proved" not in basket_text(BASKET, JOB)


def test_the_text_says_that_no_set_is_cheaper_once_all_have_a_price() -> None:
    lines = lines_of(basket_text(priced(proved=True), JOB))
    assert lines[-1] == "Proved: no cheaper set of packs covers the job."


def test_a_basket_over_the_budget_says_by_how_much() -> None:
    lines = lines_of(basket_text(BASKET._replace(budget=100.0), JOB))
    assert "Over the budget 40.50" in lines


def test_where_nothing_has_a_price_no_cost_is_told() -> None:
    rows = tuple(row._replace(cost=None) for row in BASKET.rows)
    basket = BASKET._replace(rows=rows, cost=0.0, tax=0.0)
    text = basket_text(basket, JOB)
    assert "0.00" not in text
    assert "Budget" not in text
    assert text.splitlines()[-1] == "Nothing has a price yet, so these are the fewest packs that cover the job."
    assert "0.00" not in "".join(Page(basket_html(basket, JOB)).texts)
    assert b'"total"' not in basket_csv(basket, JOB)


def test_what_was_not_proved_is_not_said_to_be() -> None:
    text = basket_text(priced(proved=False), JOB)
    assert "Proved" not in text
    assert "There was no time to prove" in text


def test_the_text_fits_a_terminal_and_cannot_move_its_cursor() -> None:
    products = tuple(replace(product, name="x\x1b[2J" * 40) for product in JOB.products)
    text = basket_text(BASKET, replace(JOB, products=products))
    assert "\x1b" not in text
    assert max(map(len, text.splitlines())) <= 120
    assert max(map(len, basket_text(BASKET, JOB).splitlines())) <= 100


def test_an_inch_job_is_told_in_gallons() -> None:
    assert "Satin, sage 3.28 qt" in " ".join(lines_of(basket_text(BASKET, replace(JOB, unit=Unit.INCH))))


def test_an_empty_basket_is_told_in_words() -> None:
    job = Job("Empty")
    assert basket_text(NOTHING, job) == "Empty\nNothing to buy.\n"
    assert "Nothing to buy." in Page(basket_html(NOTHING, job)).texts
    assert basket_csv(NOTHING, job).count(b"\r\n") == 1


def test_the_csv_reads_back_with_its_sums() -> None:
    rows = list(csv.DictReader(io.StringIO(basket_csv(BASKET, JOB).decode("utf-8"), newline="")))
    costs = [float(row["cost"]) for row in rows if row["row"] == "pack" and row["cost"]]
    total = next(row for row in rows if row["row"] == "total" and row["product"] == "cost so far")
    assert sum(costs) == float(total["cost"]) == 140.5
    assert total["unit"] == "crowns"
    assert [row["needed"] for row in rows if row["row"] == "product"] == ["3.1", "1.2", "0.7", "0.5"]


# OWASP, CSV injection, as seen.
def test_a_product_that_looks_like_a_formula_stays_text_in_the_csv() -> None:
    assert b',"\'=Clear",' in basket_csv(BASKET, JOB)


def test_the_shopping_list_has_a_box_for_every_pack_and_loads_nothing() -> None:
    content = basket_html(BASKET, JOB)
    page = Page(content)
    assert page.tags.count("input") == 4
    assert page.sources == []
    assert not {"script", "link", "img", "iframe"} & set(page.tags)
    assert not re.search(rb"https?:|url\(|@import", content)
    assert "3 x 300 mL" in page.texts
    assert "Sanitary <sealant>" in page.texts
    assert "140.50" in page.texts


def test_no_name_can_bring_a_tag_into_the_shopping_list() -> None:
    products = tuple(replace(product, name="<script>alert(1)</script>") for product in JOB.products)
    assert "script" not in Page(basket_html(BASKET, replace(JOB, name="</title><script>", products=products))).tags


def test_what_could_not_be_reckoned_is_told_wherever_the_basket_is_written() -> None:
    words = "Primer & <clear> does not say how much it covers; set its spread rate, or its solids and film, above 0."
    text = basket_text(BASKET, JOB, (words,))
    assert words in " ".join(text.split())
    assert max(map(len, text.splitlines())) <= 100
    assert words in Page(basket_html(BASKET, JOB, (words,))).texts
    last = list(csv.DictReader(io.StringIO(basket_csv(BASKET, JOB, (words,)).decode("utf-8"), newline="")))[-1]
    assert (last["row"], last["product"], last["cost"]) == ("left out", words, "")


def test_an_empty_basket_tells_what_was_left_out() -> None:
    assert "no tape" in basket_text(NOTHING, Job("Empty"), ("Edges are masked, but there is no tape; add one.",))
