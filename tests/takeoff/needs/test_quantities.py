"""What a job needs of its products, on the small kitchen of conftest.py and on a single wall counted by hand."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from geometry.outlines.shapes import box
from shared.job import Job, Part, Room, Unit
from shared.trade.finishes import Finish, Material, Step, Work
from shared.trade.kinds import Kind
from shared.trade.products import Allowances, Product, Use
from takeoff.figures.to_buy import Need, Needs, Wanted
from takeoff.needs.quantities import needs
from takeoff.take_off import take_off
from tests.takeoff.rows import face_of, job_of, part_row

BARE = Allowances(loss=0, allowance=0, tray_l=0, tape=0, sealant=0)

CLEANER = Product("cleaner", "Harbour cleaner", Use.CLEANER, covers_m2=20)
DISCS = Product("discs", "Grey discs 120", Use.ABRASIVE, covers_m2=2)
PRIMER = Product("primer", "Bonding primer", Use.PRIMER, covers_m2=10)
SATIN = Product("satin", "Tern satin", Use.COLOUR, covers_m2=12, stands_for="white satin")
OTHER_SATIN = Product("other", "Gannet satin", Use.COLOUR, solids=0.5, film_um=50, stands_for="white satin")
KIT = Product("kit", "Clear, two-part", Use.CLEAR, covers_m2=8, ratio=(4, 1))
SLEEVE = Product("sleeve", "Sleeve 100", Use.SLEEVE)
SILICONE = Product("silicone", "Wet-area silicone, white", Use.SEALANT, stands_for="wet-area silicone")
TAPE = Product("tape", "Tape 24", Use.TAPE)
PRODUCTS = (CLEANER, DISCS, PRIMER, SATIN, OTHER_SATIN, KIT, SLEEVE, SILICONE, TAPE)

TILED = Finish(
    "tiles",
    "Tiles",
    steps=(
        Step(Work.CLEAN, "cleaner"),
        Step(Work.RINSE, coats=2),
        Step(Work.KEY, "discs"),
        Step(Work.PRIME, "primer", on=(Material.LAMINATE,)),
        Step(Work.COLOUR, "satin", coats=2, tool="sleeve"),
        Step(Work.CLEAR, "kit", coats=2, tool="sleeve"),
    ),
)


def tiled_wall(width_mm: float = 3000, height_mm: float = 1000, *, made_of: str = "") -> Job:
    """A splashback by itself: of the usual size 3 m2."""
    part = Part("tiles", Kind.SPLASHBACK, box(0, 0, width_mm, height_mm), made_of=made_of)
    return replace(job_of(face_of(part)), products=PRODUCTS, finishes=(TILED,), allowances=BARE)


def needed(job: Job) -> Needs:
    return needs(job, take_off(job))


def wanted(found: Needs, name: str) -> Wanted:
    return next(each for each in found.wanted if each.name == name)


def need(found: Needs, product: str) -> Need:
    return next(each for each in all_needs(found) if each.product == product)


def all_needs(found: Needs) -> tuple[Need, ...]:
    return tuple(each for wanted in found.wanted for each in wanted.options)


def amounts(found: Needs) -> dict[str, float]:
    return {each.product: each.amount.amount for each in all_needs(found)}


def codes(found: Needs) -> list[str]:
    return [finding.code for finding in found.findings]


def test_a_coat_takes_its_area_by_its_spread_rate_and_two_coats_twice_that() -> None:
    found = amounts(needed(tiled_wall()))
    assert found["cleaner"] == pytest.approx(3 / 20)
    assert found["satin"] == pytest.approx(2 * 3 / 12)
    assert found["kit"] == pytest.approx(2 * 3 / 8)


def test_an_abrasive_is_counted_in_pieces_by_the_area_that_each_keys() -> None:
    assert amounts(needed(tiled_wall()))["discs"] == pytest.approx(1.5)


def test_a_step_is_done_only_on_the_materials_that_it_names() -> None:
    assert "primer" not in amounts(needed(tiled_wall()))
    assert amounts(needed(tiled_wall(made_of="laminate sheet")))["primer"] == pytest.approx(0.3)


def test_a_loss_divides_an_allowance_adds_and_the_tray_keeps_some_at_each_coat() -> None:
    job = replace(tiled_wall(), allowances=Allowances(loss=0.3, allowance=0.1, tray_l=0.05))
    figure = need(needed(job), "satin").amount
    assert figure.amount == pytest.approx(0.5 / 0.7 * 1.1 + 2 * 0.05)
    assert {term.what: term.amount for term in figure.reason.terms} == pytest.approx(
        {
            "Tiles: colour on tile, 2 coats at 12 m2/L": 0.5,
            "loss, 30 % of what is taken": 0.5 / 0.7 - 0.5,
            "allowance, 10 % more": 0.5 / 0.7 * 0.1,
            "left in tray and sleeve": 0.1,
        }
    )


def test_nothing_of_a_cleaner_stays_in_a_tray() -> None:
    job = replace(tiled_wall(), allowances=replace(BARE, tray_l=0.05))
    figure = need(needed(job), "cleaner").amount
    assert figure.amount == pytest.approx(3 / 20)
    assert "tray" not in figure.reason.rule


def test_rooms_alike_are_laid_one_by_one_and_different_rooms_together() -> None:
    job = replace(tiled_wall(), allowances=replace(BARE, tray_l=0.05))
    face = face_of(Part("more", Kind.SPLASHBACK, box(0, 0, 3000, 1000)))
    rooms = (replace(job.rooms[0], alike=3), Room("laundry", "Laundry", (replace(face, id="b", name="B"),), alike=2))
    found = needed(replace(job, rooms=rooms))
    assert need(found, "satin").amount.amount == pytest.approx(5 * 2 * 3 / 12 + 3 * 2 * 0.05)
    assert amounts(found)["sleeve"] == 3 * 4


def test_the_reason_leads_down_to_the_parts_and_names_its_source() -> None:
    reason = need(needed(tiled_wall()), "satin").amount.reason
    assert reason.parts == ("tiles",)
    assert reason.source == "common practice, no source"
    assert "coated area x coats / spread rate" in reason.rule


def test_a_spread_rate_from_solids_and_film_says_so() -> None:
    figure = need(needed(tiled_wall()), "other").amount
    assert figure.amount == pytest.approx(2 * 3 / 10)
    assert "10 x solids % / dry film um" in figure.reason.source


def test_what_stands_in_covers_as_it_says_itself_and_the_named_one_comes_first() -> None:
    options = wanted(needed(tiled_wall()), "white satin").options
    assert [each.product for each in options] == ["satin", "other"]


def test_a_steps_own_spread_rate_counts_for_the_product_that_it_names() -> None:
    steps = (Step(Work.COLOUR, "satin", covers_m2=6),)
    found = amounts(needed(replace(tiled_wall(), finishes=(replace(TILED, steps=steps),))))
    assert found["satin"] == pytest.approx(3 / 6)
    assert found["other"] == pytest.approx(3 / 10)


def test_a_stand_in_does_all_the_work_of_its_word() -> None:
    steps = (Step(Work.COLOUR, "satin"), Step(Work.COLOUR, "other"))
    found = needed(replace(tiled_wall(), finishes=(replace(TILED, steps=steps),)))
    assert amounts(found)["satin"] == pytest.approx(2 * 3 / 12)
    assert amounts(found)["other"] == pytest.approx(2 * 3 / 10)
    assert [each.name for each in found.wanted] == ["white satin", "Tape 24"]


def test_thinner_adds_no_cover() -> None:
    steps = (Step(Work.COLOUR, "satin", thinning=0.1),)
    figure = need(needed(replace(tiled_wall(), finishes=(replace(TILED, steps=steps),))), "satin").amount
    assert figure.amount == pytest.approx(3 / 12)
    assert figure.reason.terms[0].what.endswith("at 12 m2/L (thinned by 10 %: 10.91 m2/L as laid)")


def test_a_job_in_inches_reads_its_spread_rates_in_square_feet() -> None:
    found = needed(replace(tiled_wall(), unit=Unit.INCH))
    assert need(found, "satin").amount.reason.terms[0].what == "Tiles: colour on tile, 2 coats at 489 ft2/gal"
    assert need(found, "discs").amount.reason.terms[0].what == "Tiles: key on tile, 1 coat at 21.53 ft2 each"


def test_a_two_part_product_says_its_base_and_its_hardener() -> None:
    each = need(needed(tiled_wall()), "kit")
    assert each.mixed == pytest.approx((0.75 * 0.8, 0.75 * 0.2))
    assert "mixed 4:1 by volume" in each.amount.reason.rule


def test_a_sleeve_lays_one_product_in_so_many_coats() -> None:
    assert amounts(needed(tiled_wall()))["sleeve"] == 4
    job = replace(tiled_wall(), allowances=replace(BARE, coats_a_sleeve=2))
    assert amounts(needed(job))["sleeve"] == 2


def test_sealant_is_metres_by_section(kitchen: Job) -> None:
    job = replace(kitchen, products=PRODUCTS, allowances=replace(BARE, sealant=0.1))
    takeoff = take_off(job)
    sections = {"benchtop to splashback": 18, "benchtop to wall": 18, "inside corner": 25, "rim to benchtop": 8}
    metres = {name: sum(row.length_mm.amount for row in takeoff.joints if row.name == name) / 1000 for name in sections}
    by_hand = sum(metres[name] * sections[name] / 1000 for name in sections)
    figure = need(needs(job, takeoff), "silicone").amount
    assert figure.amount == pytest.approx(1.1 * by_hand)
    assert figure.reason.terms[0].what == "benchtop to splashback, fillet 6"


def test_a_joint_that_is_switched_off_takes_nothing(kitchen: Job) -> None:
    job = replace(kitchen, products=PRODUCTS)
    takeoff = take_off(job)
    none = takeoff._replace(joints=tuple(row._replace(sealed=False) for row in takeoff.joints))
    assert "silicone" not in amounts(needs(job, none))


def test_tape_is_the_metres_of_masking(kitchen: Job) -> None:
    job = replace(kitchen, products=PRODUCTS, allowances=replace(BARE, tape=0.1))
    takeoff = take_off(job)
    assert amounts(needs(job, takeoff))["tape"] == pytest.approx(1.1 * takeoff.totals.masking_mm / 1000)


def test_of_several_tapes_that_for_masking_counts(kitchen: Job) -> None:
    floor = replace(TAPE, id="floor", name="Floor tape")
    found = needed(replace(kitchen, products=(*PRODUCTS, floor)))
    assert "tape" not in amounts(found)
    assert "no-tape" in codes(found)
    masking = replace(TAPE, stands_for="masking tape")
    found = needed(replace(kitchen, products=(floor, masking)))
    assert ("floor" in amounts(found), "tape" in amounts(found), "no-tape" in codes(found)) == (False, True, False)


def test_an_empty_job_needs_nothing() -> None:
    found = needed(Job("Empty"))
    assert (found.wanted, found.findings) == ((), ())
    assert {figure.amount for figure in found.hardware} == {0}


@pytest.mark.parametrize("covers", [0, -3])
def test_a_product_that_covers_nothing_is_left_out_with_a_finding(covers: float) -> None:
    bad = replace(KIT, covers_m2=covers)
    found = needed(replace(tiled_wall(), products=(*(each for each in PRODUCTS if each is not KIT), bad)))
    assert "kit" not in amounts(found)
    assert codes(found).count("spread-rate") == 1


def test_a_step_that_covers_nothing_is_named() -> None:
    steps = (Step(Work.CLEAN, "cleaner"), Step(Work.CLEAR, "kit", covers_m2=0))
    found = needed(replace(tiled_wall(), finishes=(replace(TILED, steps=steps),)))
    assert "kit" not in amounts(found)
    assert found.findings[0].message.startswith("Finish Tiles, step 2 (clear): the spread rate of Clear, two-part is 0")


@pytest.mark.parametrize("ratio", [(0, 1), (4, 0), (4, -1)])
def test_a_kit_that_cannot_be_mixed_is_left_out_with_a_finding(ratio: tuple[float, float]) -> None:
    bad = replace(KIT, ratio=ratio)
    found = needed(replace(tiled_wall(), products=(*(each for each in PRODUCTS if each is not KIT), bad)))
    assert "kit" not in amounts(found)
    assert codes(found).count("ratio") == 1


def test_a_finish_without_coats_is_a_finding() -> None:
    found = needed(replace(tiled_wall(), finishes=(Finish("tiles", "Tiles"),)))
    assert [finding.message for finding in found.findings] == ["Finish Tiles has no coat; add its coats."]


def test_a_material_that_gets_no_coat_is_a_finding() -> None:
    steps = (Step(Work.COLOUR, "satin", on=(Material.TIMBER,)),)
    found = needed(replace(tiled_wall(), finishes=(replace(TILED, steps=steps),)))
    assert "Finish Tiles has no coat on tile; add its coats." in {each.message for each in found.findings}


@pytest.mark.parametrize(
    ("step", "code"),
    [
        (Step(Work.COLOUR), "no-product"),
        (Step(Work.COLOUR, "gone"), "no-product"),
        (Step(Work.COLOUR, "satin", tool="gone"), "no-product"),
        (Step(Work.COLOUR, "tape"), "measure"),
        (Step(Work.COLOUR, "satin", tool="primer"), "measure"),
    ],
)
def test_a_step_whose_product_does_not_serve_is_a_finding(step: Step, code: str) -> None:
    found = needed(replace(tiled_wall(), finishes=(replace(TILED, steps=(step,)),)))
    assert code in codes(found)


def test_products_of_different_measures_do_not_stand_in_for_each_other() -> None:
    tape = replace(TAPE, stands_for="white satin")
    found = needed(replace(tiled_wall(), products=(*PRODUCTS[:-1], tape)))
    assert [each.product for each in wanted(found, "white satin").options] == ["satin", "other"]
    assert "stand-in" in codes(found)


def test_a_sealant_that_nothing_stands_for_is_a_finding(kitchen: Job) -> None:
    found = needed(replace(kitchen, products=(TAPE,)))
    assert any("sealed with wet-area silicone" in finding.message for finding in found.findings)


def test_words_that_name_no_material_are_a_finding() -> None:
    found = needed(tiled_wall(made_of="river stone"))
    assert [(each.face, each.parts) for each in found.findings if each.code == "material"] == [("a", ("tiles",))]


SIZES = st.integers(2, 60).map(lambda steps: steps * 50.0)


@given(SIZES, SIZES, st.integers(1, 40))
def test_needs_are_linear_in_areas(width: float, height: float, times: int) -> None:
    once, many = (amounts(needed(tiled_wall(width * factor, height))) for factor in (1, times))
    for product in ("cleaner", "discs", "satin", "other", "kit"):
        assert many[product] == pytest.approx(times * once[product])


@given(st.integers(1, 300))
def test_needs_are_linear_in_rooms_alike(alike: int) -> None:
    job = replace(tiled_wall(), allowances=Allowances())
    many = replace(job, rooms=tuple(replace(room, alike=alike) for room in job.rooms))
    assert amounts(needed(many)) == {
        product: pytest.approx(alike * amount) for product, amount in amounts(needed(job)).items()
    }


@given(SIZES, SIZES)
def test_a_finish_split_in_two_equal_ones_takes_more_only_in_trays_and_sleeves(width: float, height: float) -> None:
    parts = (
        Part("left", Kind.SPLASHBACK, box(0, 0, width, height)),
        Part("right", Kind.SPLASHBACK, box(width + 100, 0, width, height)),
    )
    whole = replace(job_of(face_of(*parts)), products=PRODUCTS, finishes=(TILED,), allowances=Allowances())
    again = replace(TILED, id="again")
    split = replace(
        job_of(face_of(parts[0], replace(parts[1], finish="again"))),
        products=PRODUCTS,
        finishes=(TILED, again),
        allowances=Allowances(),
    )
    one, two = amounts(needed(whole)), amounts(needed(split))
    for product in ("cleaner", "discs"):
        assert two[product] == pytest.approx(one[product])
    for product in ("satin", "kit"):
        assert two[product] == pytest.approx(one[product] + 2 * 0.05)


@given(st.permutations(PRODUCTS))
def test_the_order_of_products_changes_no_amount(products: list[Product]) -> None:
    job = tiled_wall(made_of="laminate")
    assert amounts(needed(replace(job, products=tuple(products)))) == amounts(needed(job))


def test_the_terms_of_every_need_sum_to_it(kitchen: Job) -> None:
    finishes = (TILED, replace(TILED, id="benchtop"), replace(TILED, id="fronts"))
    rooms = (*kitchen.rooms, Room("empty", "Laundry"))
    found = needed(replace(kitchen, rooms=rooms, products=PRODUCTS, finishes=finishes))
    for each in all_needs(found):
        terms = each.amount.reason.terms
        assert sum(term.amount for term in terms) == pytest.approx(each.amount.amount)
        assert sum(use.amount for use in each.used) == pytest.approx(each.amount.amount)


def test_the_area_of_a_use_is_that_of_its_parts(kitchen: Job) -> None:
    job = replace(kitchen, products=PRODUCTS, finishes=(TILED, replace(TILED, id="benchtop"), Finish("fronts", "F")))
    takeoff = take_off(job)
    for use in need(needs(job, takeoff), "satin").used:
        areas = (part_row(takeoff, part).coated_mm2.amount for part in use.parts)
        assert use.size == pytest.approx(sum(areas) / 1e6)


NUMBERS = st.sampled_from((None, -1.0, 0.0, 0.5))
ANY_PRODUCT = st.builds(
    Product,
    id=st.just(""),
    name=st.just(""),
    use=st.sampled_from(Use),
    covers_m2=NUMBERS,
    solids=NUMBERS,
    film_um=NUMBERS,
    ratio=st.sampled_from((None, (4.0, 1.0), (0.0, 1.0))),
    stands_for=st.sampled_from(("", "white satin", "masking tape", "wet-area silicone")),
)
IDS = st.sampled_from(("", "paint 0", "paint 1", "paint 2", "gone"))
ANY_STEP = st.builds(
    Step,
    st.sampled_from(Work),
    IDS,
    coats=st.integers(0, 2),
    on=st.sampled_from(((), (Material.TILE,), (Material.METAL,))),
    covers_m2=NUMBERS,
    thinning=st.sampled_from((0.0, 0.1)),
    tool=IDS,
)


@given(st.lists(ANY_PRODUCT, max_size=3), st.lists(ANY_STEP, max_size=4))
def test_whatever_is_left_out_is_said_and_the_rest_is_reckoned(some: list[Product], steps: list[Step]) -> None:
    products = tuple(replace(each, id=f"paint {number}") for number, each in enumerate(some))
    job = replace(tiled_wall(), products=products, finishes=(Finish("tiles", "Tiles", tuple(steps)),))
    found = needed(job)
    assert all(0 < each.amount.amount < 1e6 for each in all_needs(found))
    done = [step for step in steps if step.coats and step.on != (Material.METAL,)]
    messages = [finding.message for finding in found.findings]
    for asked in {step.product for step in done if step.product} - set(amounts(found)):
        assert any(asked in message for message in messages)
    assert done or "no-coats" in codes(found)
