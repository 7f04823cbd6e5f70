import io
import zipfile
from contextlib import suppress
from pathlib import Path

import openpyxl
import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from shared.errors import FileError, JobError
from shared.job import Job, Unit
from shared.trade.products import Money, Pack, Product, Use
from takeoff.prices.listed import PriceList, Said, read_price_list
from takeoff.prices.pricing import with_prices

JOB = Job(
    "Quince Lane 2",
    products=(
        Product("satin", "Satin, sage", Use.COLOUR, (Pack(1), Pack(2.5, 60.0, "tin"))),
        Product("seal", "Sanitary sealant", Use.SEALANT, (Pack(0.3),)),
        Product("tape", "Tape 24 mm", Use.TAPE, (Pack(50),)),
        Product("discs", "Abrasive 120", Use.ABRASIVE, (Pack(15),)),
    ),
)

PLAIN = """product,size,price,currency
"Satin, sage",1 L,32.00,EUR
"Satin, sage",2.5 L,65,EUR
Sanitary  SEALANT,300 mL,14.5,EUR
tape,50 m,9,EUR
Abrasive 120,15 sheets,22,EUR
"""


def read(text: str, encoding: str = "utf-8", job: Job = JOB) -> PriceList:
    return read_price_list(text.encode(encoding), "prices.csv", job)


def prices(prices_of: PriceList) -> list[tuple[str, float, float]]:
    return [(row.product, row.size.amount, row.price) for row in prices_of.rows]


def spreadsheet(*rows: tuple[str | float | None, ...]) -> bytes:
    book = openpyxl.Workbook()
    for row in rows:
        book["Sheet"].append(row)
    content = io.BytesIO()
    book.save(content)
    return content.getvalue()


def said(prices_of: PriceList) -> list[str]:
    return [str(each) for each in prices_of.left_out]


def test_a_list_gives_its_prices_to_the_packs_of_the_job() -> None:
    priced = with_prices(JOB, read(PLAIN))
    assert priced.said == ()
    assert priced.packs == 5
    assert priced.job.money.currency == "EUR"
    assert priced.job.products[0].packs == (Pack(1, 32.0), Pack(2.5, 65.0, "tin"))
    assert [pack.price for product in priced.job.products[1:] for pack in product.packs] == [14.5, 9.0, 22.0]


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "cp1252"])
def test_any_usual_encoding_is_read_and_named(encoding: str) -> None:
    told = read("product;size;price\nGrün £;1 L;2,50\n", encoding)
    assert prices(told) == [("Grün £", 1.0, 2.5)]
    words = {"utf-8-sig": "UTF-8", "cp1252": "Windows-1252"}.get(encoding, encoding[:6].upper())
    assert told.read_as == f"{words}, separated by semicolons, decimal comma"


@pytest.mark.parametrize("separator", [",", ";", "\t"])
def test_any_usual_separator_is_seen(separator: str) -> None:
    assert prices(read(PLAIN.replace('"Satin, sage"', "satin").replace(",", separator)))[:2] == [
        ("satin", 1.0, 32.0),
        ("satin", 2.5, 65.0),
    ]


@pytest.mark.parametrize(
    ("price", "amount"),
    [
        ("24,90", 24.9),
        ("1.234,50", 1234.5),
        ("1 234,50", 1234.5),
        ("1'234,50", 1234.5),
        ("1.234", 1234.0),
        ("24", 24.0),
        ("24,-", 24.0),
        ("€ 24,90", 24.9),
        ("24,90 EUR", 24.9),
    ],
)
def test_prices_are_read_by_the_decimal_sign_of_the_list(price: str, amount: float) -> None:
    assert prices(read(f"product;size;price\nx;1 L;2,50\ny;1 L;{price}\n"))[1] == ("y", 1.0, amount)


def test_a_price_that_could_be_two_is_left_out_where_nothing_decides() -> None:
    told = read("product;size;price\nx;1 L;1.234\ny;1 L;24\n")
    assert [row.product for row in told.rows] == ["y"]
    assert "line 2: “1.234”: this could be meant in two ways" in said(told)[0]


def test_headings_may_stand_below_a_letterhead_in_any_order_and_name_unit_and_currency() -> None:
    told = read("Prices for spring\n\nPreis (EUR);Artikel;Inhalt (L)\n24,50;Satin, sage;2,5\n")
    assert prices(told) == [("Satin, sage", 2.5, 24.5)]
    assert told.currency == "EUR"
    assert with_prices(JOB, told).packs == 1


def test_a_unit_may_have_a_column_of_its_own() -> None:
    assert prices(read("name,pack size,unit,unit price\nx,300,mL,5\ny,2,,7\n")) == [("x", 0.3, 5.0), ("y", 2.0, 7.0)]


def test_a_size_may_stand_at_the_end_of_the_name() -> None:
    told = read('item,price\n"Satin, sage 2.5 L",65\n"Sanitary sealant, 10.1 US fl oz",14\nBrush,3\nTape 24,3\n')
    assert [row.product for row in told.rows] == ["Satin, sage", "Sanitary sealant"]
    assert [row.size.amount for row in told.rows] == [2.5, pytest.approx(0.29869, abs=1e-5)]
    assert said(told) == [f"line {line}: it has no size; write one such as 4 L" for line in (4, 5)]
    assert with_prices(JOB, told).packs == 2


def test_a_shops_own_codes_do_not_stand_in_the_way_of_names() -> None:
    told = read('code,product,size,price\n4711,"Satin, sage",1 L,32\ntape,Any,50 m,9\n')
    assert with_prices(JOB, told).packs == 2


def test_a_gallon_is_that_of_the_job_and_the_report_says_so() -> None:
    told = read("product,size,price\nx,1 gal,5\n", job=replace(JOB, unit=Unit.INCH))
    assert prices(told) == [("x", 3.785411784, 5.0)]
    assert "line 2: gal is taken for US gal, 3.78541 L, here and below." in told.report()


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("x,4 L,0", "a price must be above 0"),
        ("x,4 L,-3", "a price must be above 0"),
        ("x,4 L,call us", "this is not a price"),
        ("x,4 L,", "it has no price"),
        ("x,0 L,5", "a pack cannot be empty"),
        ("x,-4 L,5", "this is not a pack size"),
        ("x,4 kg,5", "“kg” is not a unit for packs"),
        ("x,,5", "it has no size"),
        (",4 L,5", "it has no product"),
        ("x", "it has no price"),
        ("x,4 L,99999999999", "far too high"),
        ("x,4 L,1" + " " * 100_000 + "1x", "this is not a price"),
        ("x,1" + " 1" * 50_000 + ",5", "this is not a pack size"),
    ],
)
def test_a_line_that_is_not_understood_is_left_out_and_told(line: str, words: str) -> None:
    told = read(f"product,size,price\n{line}\ny,1 L,5\n")
    assert [row.product for row in told.rows] == ["y"]
    assert said(told)[0].startswith("line 2: ")
    assert words in said(told)[0]
    assert told.report()[0].endswith("lines taken 1, left out 1.")


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "no column is headed product or price"),
        ("product,size\nx,1 L\n", "no column is headed price"),
        ('product,size,price\n"x,1 L,5\n', "cannot be split into cells"),
        ("product,size,price\nx,1 L,5 EUR\ny,1 L,6 GBP\n", "two currencies, EUR and GBP"),
        ("product,size,price\n" + "x,1 L,5\n" * 20_001, "more than 20000 lines"),
    ],
)
def test_a_list_that_cannot_be_read_is_told_in_one_sentence(text: str, words: str) -> None:
    with pytest.raises(FileError, match=words) as trouble:
        read(text)
    assert trouble.value.where == "prices.csv"


@pytest.mark.parametrize("content", [b"\x81\x8d\x8f", b"ab\x00c", b"PK\x03\x04 cut off", b"\xff\xfe\x00"])
def test_what_is_no_table_is_told_in_words(content: bytes) -> None:
    with pytest.raises(FileError, match=r"not a table of text|cut short or damaged"):
        read_price_list(content, "x", JOB)


def test_a_spreadsheet_is_read_with_its_numbers_as_they_are(tmp_path: Path) -> None:
    path = tmp_path / "prices.xlsx"
    path.write_bytes(
        spreadsheet(("Product", "Size", "Unit", "Price"), ("satin", 2.5, "L", 65.25), ("seal", "300 mL", None, 14))
    )
    told = read_price_list(path, "prices.xlsx", JOB)
    assert prices(told) == [("satin", 2.5, 65.25), ("seal", 0.3, 14.0)]
    assert told.read_as == "a spreadsheet"


def test_no_formula_of_a_spreadsheet_is_reckoned() -> None:
    told = read_price_list(spreadsheet(("product", "size", "price"), ("satin", "1 L", "=2+3")), "x", JOB)
    assert said(told) == ["line 2: it has no price; write one such as 24.90"]


def test_a_spreadsheet_packed_to_do_harm_is_refused() -> None:
    content = io.BytesIO(spreadsheet(("product", "size", "price")))
    with zipfile.ZipFile(content, "a", zipfile.ZIP_DEFLATED) as packed:
        packed.writestr("xl/more.xml", b" " * 20_000_000)
    with pytest.raises(FileError, match="far too large when unpacked"):
        read_price_list(content.getvalue(), "x", JOB)


def test_a_currency_other_than_the_jobs_is_refused_with_both_named() -> None:
    with pytest.raises(JobError, match="its prices are in EUR, and the job's in GBP"):
        with_prices(replace(JOB, money=Money("GBP")), read(PLAIN))


def test_a_sign_and_its_code_are_one_currency() -> None:
    assert read("product,size,price\nx,1 L,€5\ny,1 L,6 EUR\n").currency == "EUR"


def test_what_the_job_does_not_have_is_told_and_not_added() -> None:
    told = with_prices(
        JOB, read("product,size,price\nGloss,1 L,5\nsatin,4 L,6\nsatin,50 m,6\ntape,50 m,7\ntape,50 m,8\n")
    )
    assert [str(each) for each in told.said] == [
        "line 2: “Gloss”: the job has no such product; add it, or leave it out",
        "line 3: “satin”: it has no pack of 4 L; add one, or leave it out",
        "line 4: “satin”: it is counted in L, and the list gives m; write its size so",
        "line 6: “tape”: 50 m has its price from line 5 already; that price stays",
    ]
    assert told.packs == 1
    assert [product.id for product in told.job.products] == ["satin", "seal", "tape", "discs"]


def test_the_report_counts_what_the_job_has_no_place_for_among_the_lines_left_out() -> None:
    listed = read("product,size,price\nGloss,1 L,5\nsatin,4 L,6\nBrush,,3\ntape,50 m,7\ntape,50 m,8\n")
    told = with_prices(JOB, listed)
    # By hand: of five lines, one gives the tape its price. Gloss and 4 L are not in the job, a brush has no size, and
    # the second price of the tape is not taken.
    assert listed.report(told.said)[0].endswith("; lines taken 1, left out 4.")
    assert (told.packs, told.left_out) == (1, 4)
    added = with_prices(JOB, listed, add=True)
    assert listed.report(added.said)[0].endswith("; lines taken 3, left out 2.")
    assert (added.packs, added.left_out) == (3, 2)


def test_what_the_job_does_not_have_is_added_where_asked() -> None:
    told = with_prices(JOB, read("product,size,price\nGloss,1 L,5\nGloss,4 L,15\nsatin,4 L,6\n"), add=True)
    assert told.job.products[-1] == Product("listed-1", "Gloss", Use.COLOUR, (Pack(1.0, 5.0), Pack(4.0, 15.0)))
    assert told.job.products[0].packs[-1] == Pack(4.0, 6.0)
    assert len(told.said) == 3


def test_no_more_is_added_than_a_job_holds() -> None:
    lines = "".join(f"Gloss {number},1 L,5\n" for number in range(3_000))
    told = with_prices(JOB, read(f"product,size,price\n{lines}"), add=True)
    assert sum(len(product.packs) for product in told.job.products) == 2_000
    assert str(told.said[-1]) == "line 3001: a job holds at most 2000 packs; keep those that you buy in the list"


def test_two_products_of_one_name_are_told_apart_by_id_only() -> None:
    job = replace(JOB, products=(*JOB.products, Product("other", "Tape 24 mm", Use.TAPE, (Pack(50),))))
    told = with_prices(job, read("product,size,price\nTape 24 mm,50 m,5\nother,50 m,6\n"))
    assert "two products have this name" in str(told.said[0])
    assert told.packs == 1


def test_a_heading_that_speaks_of_tax_is_told_beside_what_the_job_takes() -> None:
    told = read("product,size,price without tax\nx,1 L,5\n")
    assert "the job takes prices with tax" in told.report()[1]


@given(st.binary(max_size=200) | st.text(max_size=200).map(lambda text: f"product,size,price\n{text}".encode()))
def test_any_bytes_are_a_list_or_refused_in_words(content: bytes) -> None:
    with suppress(FileError):
        for row in read_price_list(content, "x", JOB).rows:
            assert row.price > 0
            assert row.size.amount > 0


def test_the_report_goes_by_lines_and_tells_of_very_many_only_the_first() -> None:
    told = read("product,size,price\n" + "Satin,1 L,none\n" * 150)
    report = told.report((Said(2, "one thing more"),))
    assert report[1:3] == ("line 2: “none”: this is not a price; write one such as 24.90.", "line 2: one thing more.")
    assert len(report) == 1 + 100 + 1
    assert report[-1] == "And 51 more of its lines."
