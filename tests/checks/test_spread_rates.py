"""How far a litre goes. Sources as named; *exact* follows by arithmetic from the definitions."""

import pytest

from shared.trade.products import Product, Use
from takeoff.figures.to_buy import Used
from takeoff.needs.spread import applied_m2_per_l, covers_m2, spread_m2_per_l

FOOT_M = 0.3048  # exact
US_GALLON_L = 3.785411784  # exact: 231 in3
MIL_UM = 25.4  # exact
SQUARE_FEET_A_GALLON = US_GALLON_L / FOOT_M**2
"""So many for each m2 a litre."""


# Seen: tables of spread rates; m2 a litre, printed to a tenth. 80 % at 150 um is 5.33, 65 % at 125 um 5.2.
@pytest.mark.parametrize(
    ("solids", "film_um", "printed"),
    [(0.65, 125, 5.2), (0.50, 50, 10.0), (0.80, 150, 5.3), (0.45, 100, 4.5), (0.60, 75, 8.0)],
)
def test_solids_and_dry_film_give_the_spread_rate(solids: float, film_um: float, printed: float) -> None:
    assert spread_m2_per_l(solids, film_um) == pytest.approx(printed, abs=0.05)
    product = Product("p", "P", Use.COLOUR, solids=solids, film_um=film_um)
    assert covers_m2(product) == pytest.approx(printed, abs=0.05)


def test_a_gallon_of_65_per_cent_at_5_mil_covers_208_5_square_feet() -> None:
    # Seen.
    assert spread_m2_per_l(0.65, 5 * MIL_UM) * SQUARE_FEET_A_GALLON == pytest.approx(208.5, abs=0.05)


def test_a_gallon_without_solvent_covers_9625_sixths_square_feet_at_one_mil() -> None:
    # Exact: 231 in3 spread 1/1000 in thick.
    assert spread_m2_per_l(1, MIL_UM) * SQUARE_FEET_A_GALLON == pytest.approx(9625 / 6, rel=1e-12)


def test_thinned_by_a_tenth_a_litre_of_the_mixture_covers_less() -> None:
    # Seen: 50 % thinned by 10 % is 500/11 %, at 60 um 7.57 m2/L (exactly 250/33), with a loss of 30 % 5.299. It is
    # printed from rounded steps, so the exact 5.30303 is followed.
    applied = applied_m2_per_l(spread_m2_per_l(0.5, 60), 0.1)
    assert applied == pytest.approx(spread_m2_per_l(5 / 11, 60))
    assert applied == pytest.approx(250 / 33)
    assert Used("coat", size=5.303030303, times=1, per=applied, loss=0.3).amount == pytest.approx(1)


@pytest.mark.parametrize(("wet_um", "solids", "dry_um", "m2_per_l"), [(200, 0.6, 120, 5.0), (100, 0.5, 50, 10.0)])
def test_a_wet_film_and_what_it_dries_to_come_from_the_same_litre(
    wet_um: float, solids: float, dry_um: float, m2_per_l: float
) -> None:
    # A wet film of 200 um at 60 % dries to 120 um (seen). By hand: a litre is 1 000 000 mm3, which spread 0.2 mm thick
    # covers 5 000 000 mm2, 5 m2. The second: 0.1 mm thick 10 m2, of which half is left, 50 um.
    assert spread_m2_per_l(solids, dry_um) == pytest.approx(m2_per_l)
    assert spread_m2_per_l(1, wet_um) == pytest.approx(m2_per_l)
    assert covers_m2(Product("p", "P", Use.COLOUR, solids=solids, film_um=dry_um)) == pytest.approx(m2_per_l)


def test_a_loss_of_30_per_cent_is_not_an_allowance_of_30_per_cent() -> None:
    # Exact: 1 / 0.7 is 42.9 % more. Brush and roller losses of 10 to 15 % are usual (seen, one table).
    assert Used("coat", size=10, times=1, per=10, loss=0.3).amount == pytest.approx(1.428571, abs=1e-6)
    assert Used("coat", size=10, times=1, per=10, allowance=0.3).amount == pytest.approx(1.3)


@pytest.mark.parametrize(
    ("covers", "solids", "film_um"),
    [
        (None, None, None),
        (0.0, None, None),
        (-2.0, 0.5, 50.0),
        (None, 0.5, None),
        (None, 0.5, 0.0),
        (None, -0.5, 50.0),
    ],
)
def test_what_does_not_say_how_far_it_goes_has_no_spread_rate(
    covers: float | None, solids: float | None, film_um: float | None
) -> None:
    assert covers_m2(Product("p", "P", Use.COLOUR, covers_m2=covers, solids=solids, film_um=film_um)) is None
