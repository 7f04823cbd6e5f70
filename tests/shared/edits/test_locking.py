import pytest

from shared.edits.locking import refuse_locked
from shared.errors import JobError
from shared.job import Part
from shared.trade.kinds import Kind

FREE = Part("a", Kind.CABINET, ())
LOCKED = Part("b", Kind.DOOR, (), locked=True)


def test_a_locked_part_is_refused_by_name() -> None:
    with pytest.raises(JobError, match="door: it is locked; unlock it, or leave it out"):
        refuse_locked((FREE, LOCKED))


def test_parts_that_are_not_locked_pass() -> None:
    refuse_locked((FREE,))
    refuse_locked(())
