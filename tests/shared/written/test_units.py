import subprocess
import sys

import pytest

from shared.job import Unit
from shared.written.units import area_in, large_unit, length_in, show_area, show_length, show_total_length


@pytest.mark.parametrize(
    ("length_mm", "unit", "shown"),
    [
        (3600, Unit.MM, "3600"),
        (600.5, Unit.MM, "600.5"),
        (600.04, Unit.MM, "600"),
        (-38, Unit.MM, "-38"),
        (-0.01, Unit.MM, "0"),
        (2400.3, Unit.INCH, '94 1/2"'),
        (600.075, Unit.INCH, '23 5/8"'),
        (9.525, Unit.INCH, '3/8"'),
        (25.4 - 0.01, Unit.INCH, '1"'),
        (0, Unit.INCH, '0"'),
        (-12.7, Unit.INCH, '-1/2"'),
    ],
)
def test_a_length_is_shown_as_it_stands_on_a_tape(length_mm: float, unit: Unit, shown: str) -> None:
    assert show_length(length_mm, unit) == shown


def test_runs_and_areas_are_shown_in_the_large_unit() -> None:
    assert show_total_length(9800, Unit.MM) == "9.80 m"
    assert show_total_length(9800, Unit.INCH) == "32.2 ft"
    assert show_area(2_140_000, Unit.MM) == "2.14 m2"
    assert show_area(2_140_000, Unit.MM, decimal=",") == "2,14 m2"
    assert show_area(2_140_000, Unit.INCH) == "23.0 ft2"
    assert show_total_length(-0.001, Unit.MM) == "0.00 m"


def test_the_numbers_alone_are_not_rounded() -> None:
    assert length_in(304.8, Unit.INCH) == 1
    assert area_in(304.8**2, Unit.INCH) == pytest.approx(1, abs=1e-15)
    assert [large_unit(unit) for unit in Unit] == ["m", "ft"]


def test_metric_lengths_are_shown_and_read_without_importing_pint() -> None:
    script = (
        "import sys; from shared.job import Unit; from shared.written.units import show_area, show_length;"
        "from shared.typed.lengths import read_length; show_area(1.0, Unit.MM); show_length(1.0, Unit.MM);"
        "read_length('2.4 m + 3 cm', Unit.MM); print('pint' in sys.modules)"
    )
    run = subprocess.run((sys.executable, "-c", script), check=True, capture_output=True, text=True)
    assert run.stdout.strip() == "False"
