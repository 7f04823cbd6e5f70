from collections.abc import Callable, Sequence

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from geometry.outlines.shapes import box
from geometry.parts.moves import moved
from geometry.seen.arrange import arrange
from geometry.seen.arrangement import Arrangement
from shared.edits.drawn import find_part, with_changed_face, with_changed_parts
from shared.job import Corner, Job, JointChoice, Part, Unit
from shared.trade.finishes import Finish
from shared.trade.kinds import Kind, Treatment
from shared.trade.products import Allowances, Money, Pack, Product, Use
from shared.trade.tape import TapeClass
from takeoff.figures.measured import Fronts, Takeoff
from takeoff.memory import Memory
from takeoff.take_off import take_off


class Counting:
    """Arranges, and keeps the first part of every face that it was asked for."""

    def __init__(self) -> None:
        self.asked: list[str] = []

    def __call__(self, parts: Sequence[Part]) -> Arrangement:
        self.asked.append(parts[0].id)
        return arrange(parts)


@pytest.fixture
def counting() -> Counting:
    return Counting()


def shifted(job: Job, part: str, dx: float) -> Job:
    return with_changed_parts(job, [moved(find_part(job, part)[1], dx, 0)])


def figures(takeoff: Takeoff) -> list[float]:
    rows = [(row.gross_mm2.amount, row.net_mm2.amount, row.coated_mm2.amount) for row in takeoff.parts]
    lengths = [row.length_mm.amount for row in takeoff.joints] + [row.length_mm.amount for row in takeoff.masking]
    return [*(amount for row in rows for amount in row), *lengths, *takeoff.totals]


def test_a_job_seen_before_is_not_arranged_again(kitchen: Job, counting: Counting) -> None:
    memory = Memory(counting)
    first = take_off(kitchen, memory)
    counting.asked.clear()
    assert take_off(kitchen, memory) == first
    assert counting.asked == []


def test_an_edit_to_one_face_measures_that_face_only(kitchen: Job, counting: Counting) -> None:
    memory = Memory(counting)
    take_off(kitchen, memory)
    counting.asked.clear()
    take_off(shifted(kitchen, "sink", 50), memory)
    assert counting.asked == ["top"]


def test_a_choice_about_a_joint_arranges_nothing(kitchen: Job, counting: Counting) -> None:
    memory = Memory(counting)
    before = take_off(kitchen, memory)
    counting.asked.clear()
    chosen = replace(kitchen, joints=(JointChoice("a", ("tiles", "edge"), sealed=False),))
    assert take_off(chosen, memory).totals.bead_mm < before.totals.bead_mm
    assert counting.asked == []


def test_a_new_name_of_a_face_arranges_nothing(kitchen: Job, counting: Counting) -> None:
    memory = Memory(counting)
    take_off(kitchen, memory)
    counting.asked.clear()
    take_off(with_changed_face(kitchen, replace(kitchen.faces[0], name="North")), memory)
    assert counting.asked == []


def test_what_is_remembered_never_shows(kitchen: Job) -> None:
    memory = Memory()
    take_off(kitchen, memory)
    other = replace(shifted(kitchen, "outlet1", 33), unit=Unit.INCH)
    assert figures(take_off(other, memory)) == pytest.approx(figures(take_off(other)))
    assert take_off(kitchen, memory) == take_off(kitchen)


def test_a_drag_is_followed_without_arranging_the_face_anew(kitchen: Job, counting: Counting) -> None:
    memory = Memory(counting)
    take_off(kitchen, memory)
    job = shifted(kitchen, "outlet1", 1)
    take_off(job, memory)
    counting.asked.clear()
    for _ in range(5):
        job = shifted(job, "outlet1", 7)
        followed = take_off(job, memory)
        assert figures(followed) == pytest.approx(figures(take_off(job)), rel=1e-9)
    assert counting.asked == []


def test_a_new_part_tried_out_again_and_again_is_followed_and_taken_back_for_nothing(
    kitchen: Job, counting: Counting
) -> None:
    memory = Memory(counting)
    face = kitchen.faces[0]
    take_off(kitchen, memory)
    for width in (9, 90, 900, 95):
        shelf = Part("shelf", Kind.SHELF, box(600, 1600, width, 18))
        job = with_changed_face(kitchen, replace(face, parts=(*face.parts, shelf)))
        assert figures(take_off(job, memory)) == pytest.approx(figures(take_off(job)), rel=1e-9)
        if width == 90:
            counting.asked.clear()
        memory.arrangement(kitchen, face, Fronts.HUNG)
    assert counting.asked == []


def test_a_part_that_goes_while_another_is_dragged_is_gone(kitchen: Job) -> None:
    memory = Memory()
    job = kitchen
    for step in range(4):
        job = shifted(job, "outlet1", 5)
        face = job.faces[0]
        if step == 2:
            job = with_changed_face(job, replace(face, parts=tuple(p for p in face.parts if p.id != "outlet2")))
        assert figures(take_off(job, memory)) == pytest.approx(figures(take_off(job)), rel=1e-9)


def test_after_a_drag_the_job_can_go_back_at_once(kitchen: Job) -> None:
    memory = Memory()
    job = kitchen
    for _ in range(4):
        job = shifted(job, "door1", 5)
        take_off(job, memory)
    assert figures(take_off(kitchen, memory)) == pytest.approx(figures(take_off(kitchen)), rel=1e-9)


def test_both_arrangements_of_a_face_can_be_drawn(kitchen: Job) -> None:
    memory = Memory()
    face = kitchen.faces[0]
    hung = {region.part for region in memory.arrangement(kitchen, face, Fronts.HUNG).regions}
    off = {region.part for region in memory.arrangement(kitchen, face, Fronts.OFF).regions}
    assert hung - off == {"door1", "door2"}


def test_faces_that_are_gone_are_forgotten(kitchen: Job, counting: Counting) -> None:
    memory = Memory(counting)
    take_off(kitchen, memory)
    take_off(replace(kitchen, rooms=()), memory)
    counting.asked.clear()
    take_off(kitchen, memory)
    assert len(counting.asked) == 4  # the wall twice, with its fronts hung and off


PRICED = Product("clear", "Clear", Use.CLEAR, packs=(Pack(1.0, price=20.0),))


def test_a_price_typed_gives_the_takeoff_that_there_was(kitchen: Job) -> None:
    memory = Memory()
    before = take_off(kitchen, memory)
    dearer = replace(kitchen, products=(PRICED,), money=Money("AUD"))
    assert take_off(dearer, memory) is before
    assert take_off(kitchen, memory) is before


def test_a_price_typed_after_a_dropped_drag_gives_the_takeoff_before_it(kitchen: Job) -> None:
    memory = Memory()
    before = take_off(kitchen, memory)
    take_off(shifted(kitchen, "sink", 50), memory, sure=False)
    assert take_off(replace(kitchen, products=(PRICED,)), memory) is before


def test_another_measuring_rule_counts_anew(kitchen: Job) -> None:
    memory = Memory()
    take_off(kitchen, memory)
    assert take_off(kitchen, memory, "is-1200-13").rule == "is-1200-13"


def edited_wall(job: Job, **fields: object) -> Job:
    return with_changed_face(job, replace(job.faces[0], **fields))


def edited_tiles(job: Job, **fields: object) -> Job:
    return with_changed_parts(job, [replace(find_part(job, "tiles")[1], **fields)])


def treated(job: Job, treatment: Treatment) -> Job:
    kinds = (replace(row, treatment=treatment) if row.kind is Kind.CABINET else row for row in job.kinds)
    return replace(job, kinds=tuple(kinds))


EDITS: dict[str, tuple[Callable[[Job], Job], ...]] = {
    "name": (lambda job: replace(job, name="Elm Street 3"),),
    "rooms": (
        lambda job: edited_wall(job, name="B"),
        lambda job: edited_wall(job, corner=Corner.NONE),
        lambda job: edited_wall(job, corner=Corner.OUTSIDE),
        lambda job: edited_tiles(job, profile_factor=1.5),
        lambda job: edited_tiles(job, finish="fronts"),
        lambda job: edited_tiles(job, name="Tiled"),
        lambda job: replace(job, rooms=tuple(replace(room, alike=2) for room in job.rooms)),
    ),
    "unit": (lambda job: replace(job, unit=Unit.INCH), lambda job: replace(job, unit=Unit.MM)),
    "kinds": (lambda job: treated(job, Treatment.LEFT), lambda job: treated(job, Treatment.IN_PLACE)),
    "finishes": (lambda job: replace(job, finishes=(*job.finishes[:2], Finish("fronts", "Fronts, white"))),),
    "joints": (
        lambda job: replace(job, joints=(JointChoice("a", ("tiles", "edge"), sealed=False),)),
        lambda job: replace(job, joints=()),
    ),
    "tape": (lambda job: replace(job, tape=TapeClass.FIRST), lambda job: replace(job, tape=TapeClass.THIRD)),
    "products": (lambda job: replace(job, products=(PRICED,)),),
    "money": (lambda job: replace(job, money=Money(budget=900.0)),),
    "allowances": (lambda job: replace(job, allowances=Allowances(tray_l=0.2)),),
    "handle_centres_mm": (lambda job: replace(job, handle_centres_mm=128.0),),
    "version": (),
}
"""For every field of a job some edits to it."""


def test_the_edits_touch_every_field_of_a_job() -> None:
    assert tuple(sorted(EDITS)) == tuple(sorted(Job.__struct_fields__))


@settings(max_examples=40, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.lists(st.sampled_from([edit for edits in EDITS.values() for edit in edits]), max_size=6), st.data())
def test_no_edits_to_whatever_field_show_what_is_remembered(
    kitchen: Job, edits: list[Callable[[Job], Job]], data: st.DataObject
) -> None:
    memory, jobs = Memory(), [kitchen]
    for edit in edits:
        jobs.append(edit(data.draw(st.sampled_from(jobs))))
        assert take_off(jobs[-1], memory) == take_off(jobs[-1])
