"""Sizes far from those published: EN 1116 and AS 4386 (checks page, "Sizes"), and the US 15 in."""

import pytest
from msgspec.structs import replace

from geometry.outlines.shapes import box
from shared.job import Job, Part, Unit, View
from shared.trade.kinds import Kind
from takeoff.findings.sizes import usual_sizes
from takeoff.take_off import take_off
from tests.takeoff.rows import face_of, job_of

WALL = Part("wall", Kind.WALL, box(0, 0, 3000, 2400))
BENCH = Part("bench", Kind.BENCHTOP, box(0, 870, 1200, 38))


def unusual(*parts: Part, unit: Unit = Unit.MM, view: View = View.ELEVATION) -> list[str]:
    job: Job = replace(job_of(replace(face_of(*parts), view=view)), unit=unit)
    return [finding.message for finding in take_off(job).findings if finding.code == "unusual-size"]


def test_every_row_names_its_source() -> None:
    published = ("EN 1116", "AS 4386", "US")
    assert all(size.source.endswith(published) for size in usual_sizes().values())


def cabinet(y: float, height: float, x: float = 0) -> Part:
    return Part(f"c{x}-{y}", Kind.CABINET, box(x, y, 600, height), name=f"base at {x:g}")


@pytest.mark.parametrize("top", [820, 870, 920, 876.3])
def test_published_base_units_are_usual(top: float) -> None:
    assert unusual(WALL, cabinet(150, top - 150)) == []


@pytest.mark.parametrize(("top", "words"), [(720, "720 mm"), (1000, "1000 mm")])
def test_a_base_unit_far_from_them_is_told(top: float, words: str) -> None:
    (message,) = unusual(WALL, cabinet(0, top))
    assert message == (
        f"base at 0 ends {words} above the floor, which is unusual; 820 to 920 mm is usual. "
        "Measure it again, unless it is meant to be so."
    )


def test_tall_units_wall_cabinets_and_cabinets_that_carry_others_are_no_base_units() -> None:
    assert unusual(WALL, cabinet(150, 2078)) == []
    assert unusual(WALL, cabinet(1500, 720)) == []
    assert unusual(WALL, cabinet(150, 400), cabinet(550, 320)) == []


def test_of_many_only_the_farthest_is_told() -> None:
    (message,) = unusual(WALL, cabinet(0, 720), cabinet(0, 650, x=600), cabinet(0, 760, x=1200))
    assert message.startswith("base at 600 ends 650 mm")


@pytest.mark.parametrize("top", [858, 880, 908, 914.4, 920, 958])
def test_published_benches_are_usual(top: float) -> None:
    assert unusual(WALL, Part("b", Kind.BENCHTOP, box(0, top - 38, 900, 38))) == []


@pytest.mark.parametrize("top", [700, 1050])
def test_a_bench_far_from_them_is_told(top: float) -> None:
    (message,) = unusual(WALL, Part("b", Kind.BENCHTOP, box(0, top - 38, 900, 38)))
    assert message.startswith(f"benchtop ends {top} mm above the floor, which is unusual; 880 to 920 mm is usual.")


def test_a_low_kickboard_is_told() -> None:
    assert unusual(WALL, Part("k", Kind.KICKBOARD, box(0, 0, 900, 100))) == []
    (message,) = unusual(WALL, Part("k", Kind.KICKBOARD, box(0, 0, 900, 60)))
    assert message.startswith("kickboard is 60 mm high, which is unusual; at least 100 mm is usual.")


@pytest.mark.parametrize(("gap", "told"), [(600, False), (450, False), (300, True), (0, False)])
def test_a_wall_cabinet_low_over_the_bench_is_told(gap: float, told: bool) -> None:
    found = unusual(WALL, BENCH, cabinet(908 + gap, 720))
    expected = f"base at 0 hangs {gap:g} mm over benchtop, which is unusual; at least 450 mm is usual."
    assert [message.startswith(expected) for message in found] == [True] * told


def test_a_cabinet_beside_the_bench_hangs_over_nothing() -> None:
    assert unusual(WALL, BENCH, cabinet(1100, 720, x=1200)) == []


def test_in_inches_15_in_over_the_bench_is_usual() -> None:
    assert unusual(WALL, BENCH, cabinet(908 + 15 * 25.4, 720), unit=Unit.INCH) == []
    (message,) = unusual(WALL, BENCH, cabinet(908 + 12 * 25.4, 720), unit=Unit.INCH)
    assert message.startswith('base at 0 hangs 12" over benchtop, which is unusual; at least 15" is usual.')


@pytest.mark.parametrize(("depth", "told"), [(600, False), (560, False), (450, True)])
def test_a_shallow_benchtop_on_a_plan_is_told(depth: float, told: bool) -> None:
    found = unusual(Part("b", Kind.BENCHTOP, box(0, 0, 2400, depth)), view=View.PLAN)
    assert len(found) == told


def test_benchtops_that_follow_on_each_other_count_as_one() -> None:
    benches = [Part(f"b{x}", Kind.BENCHTOP, box(x, 870, 600, 38), name=f"top {x}") for x in (1200, 600, 0)]
    (message,) = unusual(WALL, *benches, cabinet(1100, 720, x=900))
    assert message.startswith("base at 900 hangs 192 mm over top 0")
