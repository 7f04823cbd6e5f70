"""Every code of a finding: where it is found, and what its row says of it."""

import msgspec
import pytest

from shared.findings import Code, Finding
from shared.job import Job
from shared.trade.products import Use
from takeoff.bill import make_bill
from takeoff.findings.mending import mended
from takeoff.tables.takeoff_json import takeoff_json
from takeoff.take_off import take_off
from tests.takeoff.odd_jobs import FOUND_IN, found_in

MENDED = [code for code in Code if code.mends]


def finding_of(code: Code, job: Job) -> Finding:
    return next(each for each in found_in(job) if each.code is code)


@pytest.mark.parametrize("code", Code)
def test_every_code_is_found_in_a_job(code: Code) -> None:
    assert code in [each.code for each in found_in(FOUND_IN[code])]


@pytest.mark.parametrize("code", Code)
def test_what_leaves_something_out_of_the_totals_is_told_with_them(code: Code) -> None:
    job = FOUND_IN[code]
    left_out = make_bill(job, take_off(job)).left_out
    assert (finding_of(code, job).message in left_out) is code.leaves_out


@pytest.mark.parametrize("code", [code for code, job in FOUND_IN.items() if job.products])
def test_only_a_code_that_leaves_something_out_lets_the_basket_lack_what_the_work_takes(code: Code) -> None:
    job = FOUND_IN[code]
    takeoff = take_off(job)
    totals = takeoff.totals
    sizes = {Use.COLOUR: totals.coated_mm2, Use.TAPE: totals.masking_mm, Use.SEALANT: totals.bead_mm}
    taken = {use for use, size in sizes.items() if size > 0}
    rows = {row.product for row in make_bill(job, takeoff).basket.rows}
    bought = {product.use for product in job.products if product.id in rows}
    assert bool(taken - bought) is any(each.code.leaves_out for each in found_in(job))


@pytest.mark.parametrize("code", Code)
def test_what_is_on_no_face_is_named_by_what_it_is_about(code: Code) -> None:
    finding = finding_of(code, FOUND_IN[code])
    assert bool(finding.face) is not bool(code.place.about)


@pytest.mark.parametrize("code", Code)
def test_a_mend_is_offered_in_the_words_of_its_code(code: Code) -> None:
    offered = [each.mend for each in found_in(FOUND_IN[code]) if each.code is code]
    assert set(offered) <= set(code.mends or ("",))


@pytest.mark.parametrize("code", MENDED)
def test_what_has_a_mend_is_gone_once_mended(code: Code) -> None:
    job = FOUND_IN[code]
    assert code not in [each.code for each in found_in(mended(job, finding_of(code, job)))]


@pytest.mark.parametrize("code", Code)
def test_the_published_file_names_a_finding_by_the_word_of_its_code(code: Code) -> None:
    job = FOUND_IN[code]
    takeoff = take_off(job)
    written = msgspec.json.decode(takeoff_json(takeoff, job, make_bill(job, takeoff)))["findings"]
    assert code.value in [each["code"] for each in written]
