"""Which finish a part gets: its own, else the job's for its kind; what is usual only where the job says nothing."""

from msgspec.structs import replace

from geometry.outlines.shapes import box
from shared.job import Job, KindChoice, Part, usual_kinds
from shared.trade.kinds import Kind, Treatment
from takeoff.surfaces.treatments import Treated, Treatments

DOOR = Part("p", Kind.DOOR, box(0, 0, 450, 700))
NO_FINISH = KindChoice(Kind.DOOR, Treatment.TAKEN_OFF)


def test_a_part_gets_its_own_finish_before_its_kinds() -> None:
    treatments = Treatments(usual_kinds())
    assert treatments.of(DOOR) == Treated(Treatment.TAKEN_OFF, "fronts")
    assert treatments.of(replace(DOOR, finish="gold")).finish == "gold"


def test_a_kind_without_a_finish_gets_none_though_one_is_usual() -> None:
    assert treatments_of(Job("Small", kinds=(NO_FINISH,))).of(DOOR) == Treated(Treatment.TAKEN_OFF, "")
    assert treatments_of(Job("Small", kinds=())).of(DOOR) == Treated(Treatment.TAKEN_OFF, "fronts")


def test_a_kind_of_which_the_job_says_nothing_gets_no_finish_where_the_job_has_not_got_the_usual_one() -> None:
    bare = Job("Small", kinds=(), finishes=())
    assert treatments_of(bare).of(DOOR) == Treated(Treatment.TAKEN_OFF, "")


def treatments_of(job: Job) -> Treatments:
    return Treatments(job.kind_choices)
