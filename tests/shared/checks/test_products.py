"""Products, finishes, money and allowances hold together or are refused in words that say where."""

import pytest
from msgspec.structs import replace

from shared.checks.job import check_job
from shared.errors import JobError
from shared.files.job import job_from_json, job_to_json
from shared.job import Job, Room
from shared.trade.finishes import Finish, Material, Step, Work
from shared.trade.products import Allowances, Measure, Money, Pack, Product, Use

PRIMER = Product(
    "primer", "Grip primer", Use.PRIMER, (Pack(1.0, 24.0), Pack(4.0)), covers_m2=10.0, ratio=(4.0, 1.0), usable_h=2.0
)
STEP = Step(Work.PRIME, "primer", on=(Material.LAMINATE,), next_h=6.0)
JOB = Job(
    "Test",
    (Room("r1", "Kitchen", alike=3),),
    finishes=(Finish("f", "Fronts", (STEP,), "#AABBCC"),),
    products=(PRIMER,),
    money=Money("crowns", 0.2, budget=1400.0),
    kinds=tuple(replace(choice, finish="") for choice in Job("x").kinds),
)


def test_a_job_with_products_holds_together_and_is_read_back() -> None:
    check_job(JOB)
    assert job_from_json(job_to_json(JOB), "test") == JOB


def test_what_is_used_up_is_counted_in_its_own_measure() -> None:
    assert PRIMER.measure is Measure.LITRES
    assert replace(PRIMER, use=Use.TAPE).measure is Measure.METRES
    assert replace(PRIMER, use=Use.ABRASIVE).measure is Measure.PIECES


@pytest.mark.parametrize(
    ("job", "words"),
    [
        (replace(JOB, products=(PRIMER, PRIMER)), "two products have the id"),
        (
            replace(JOB, products=tuple(replace(PRIMER, id=str(each), stands_for="primer") for each in range(51))),
            "51 products are interchangeable with primer, and at most 50",
        ),
        (
            replace(JOB, products=(replace(PRIMER, covers_m2=float("nan")),)),
            "Grip primer: the spread rate is nan",
        ),
        (replace(JOB, products=(replace(PRIMER, packs=(Pack(float("inf")),)),)), "size of a pack is inf"),
        (replace(JOB, products=(replace(PRIMER, packs=(Pack(1.0, -1.0),)),)), "price of a pack is -1"),
        (replace(JOB, products=(replace(PRIMER, name="a\nb"),)), "contains a control character"),
        (replace(JOB, finishes=(replace(JOB.finishes[0], shade="red"),)), 'its shade is "red"'),
        (replace(JOB, finishes=(replace(JOB.finishes[0], steps=(replace(STEP, coats=99),)),)), "number of coats is 99"),
        (replace(JOB, money=Money(tax=7.0)), "the tax is 7"),
        (replace(JOB, allowances=Allowances(loss=1.0)), "the loss is 1"),
        (replace(JOB, rooms=(Room("r1", "Kitchen", alike=0),)), "Kitchen: the number of rooms alike is 0"),
    ],
)
def test_what_cannot_be_is_refused_in_words(job: Job, words: str) -> None:
    with pytest.raises(JobError, match=words):
        check_job(job)
