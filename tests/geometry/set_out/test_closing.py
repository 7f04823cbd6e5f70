import pytest

from geometry.edits.setting_out import with_chain, with_overall, with_running
from geometry.outlines.shapes import box
from geometry.set_out.closing import Closing, closures
from shared.errors import JobError
from shared.job import END, START, Face, Job, Part, Room, Way
from shared.trade.kinds import Kind


@pytest.fixture
def wall() -> Job:
    """A wall 3600 x 2400 without readings."""
    face = Face("a", "A", parts=(Part("wall", Kind.WALL, box(0, 0, 3600, 2400)),))
    return Job("Quince Lane 2", rooms=(Room("r", "Kitchen", (face,)),))


def ends(job: Job, *lengths: float, chain_from: str | None = None, fresh: bool = False) -> list[tuple[str, float]]:
    """The line that each reading comes to, and by how much it misses it."""
    found = closures(job, "a", Way.ACROSS, lengths, chain_from, fresh=fresh)
    return [(reading.end, round(reading.off_mm, 6)) for reading in found.readings]


def test_readings_on_a_bare_face_make_lines_and_say_what_is_left(wall: Job) -> None:
    found = closures(wall, "a", Way.ACROSS, (600, 450), START)
    assert found.readings == (
        Closing(START, "1", 600, 600, joins=False, off_mm=0),
        Closing("1", "2", 450, 1050, joins=False, off_mm=0),
    )
    assert found.left_mm == 2550
    assert closures(wall, "a", Way.UP, (870,)).left_mm == 1530


def test_nothing_typed_leaves_the_whole_wall(wall: Job) -> None:
    assert closures(wall, "a", Way.ACROSS, ()).left_mm == 3600


def test_without_a_wall_nothing_is_said_to_be_left() -> None:
    bare = Job("Quince Lane 2", rooms=(Room("r", "Kitchen", (Face("a", "A"),)),))
    assert closures(bare, "a", Way.ACROSS, (600,)).left_mm is None


def test_an_end_that_was_read_counts_before_the_drawn_one(wall: Job) -> None:
    read = with_overall(wall, "a", Way.ACROSS, 3600)
    assert closures(read, "a", Way.ACROSS, (600,)).left_mm == pytest.approx(3000)


def test_a_chain_that_comes_near_the_end_closes_there(wall: Job) -> None:
    assert ends(wall, 600, 1200, 1806, chain_from=START) == [("1", 0), ("2", 0), (END, 6)]
    assert ends(wall, 600, 1200, 1740, chain_from=START) == [("1", 0), ("2", 0), ("3", 0)]


def test_further_readings_join_the_nearest_lines(wall: Job) -> None:
    job = with_running(wall, "a", Way.ACROSS, (600, 638, 1050))
    assert ends(job, 602, 40, 410, chain_from=START) == [("1", 2), ("2", 2), ("3", -2)]
    assert ends(job, 636, 604) == [("2", -2), ("1", 4)]


def test_of_two_running_readings_the_nearer_joins_a_line(wall: Job) -> None:
    job = with_running(wall, "a", Way.ACROSS, (600,))
    assert ends(job, 630, 602) == [("2", 0), ("1", 2)]


def test_a_small_part_in_a_chain_does_not_fall_back_on_the_line_before_it(wall: Job) -> None:
    assert ends(wall, 600, 38, chain_from=START) == [("1", 0), ("2", 0)]
    job = with_running(wall, "a", Way.ACROSS, (600,))
    assert ends(job, 600, 38, chain_from=START) == [("1", 0), ("2", 0)]


def test_a_chain_runs_on_from_the_line_it_joined(wall: Job) -> None:
    job = with_running(wall, "a", Way.ACROSS, (600,))
    assert closures(job, "a", Way.ACROSS, (606, 400), START).readings[1].at_mm == pytest.approx(1000)


def test_fresh_readings_join_nothing(wall: Job) -> None:
    job = with_running(wall, "a", Way.ACROSS, (600,))
    assert ends(job, 601, 3599, fresh=True) == [("2", 0), ("3", 0)]


def test_a_chain_starts_from_any_line_that_stands(wall: Job) -> None:
    job = with_chain(wall, "a", Way.ACROSS, (600,))
    assert ends(job, 450, chain_from="1") == [("2", 0)]
    for start in ("7", END):
        with pytest.raises(JobError, match="no chain can start from"):
            closures(job, "a", Way.ACROSS, (450,), start)


def test_what_goes_beyond_the_wall_is_told_while_it_is_typed(wall: Job) -> None:
    assert closures(wall, "a", Way.ACROSS, (600, 4000), START).left_mm == -1000
