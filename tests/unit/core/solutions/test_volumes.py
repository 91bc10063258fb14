"""Whether a tank holds enough stock for its film (scenario S1)."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tankside.core.refusals import Refusal, Refused
from tankside.core.solutions.dilution import stock_and_water
from tankside.core.solutions.notation import Dilution
from tankside.core.solutions.volumes import StockForFilm, check_stock, least_stock, stock_for_film

areas = st.lists(st.sampled_from((0.25, 0.7, 1.0)), min_size=1, max_size=6)


def refusal_of(areas: list[float], *, tank_ml: float, dilution: Dilution, least_stock_ml: float) -> Refusal:
    """The refusal that a tank meets."""
    with pytest.raises(Refused) as no:
        check_stock(areas, tank_ml=tank_ml, dilution=dilution, least_stock_ml=least_stock_ml)
    return no.value.refusal


def test_two_rolls_in_a_tank_that_holds_stock_for_one() -> None:
    """600 mL at 1+4, 80 mL a roll: 120 for 160; one roll, 800 mL, or 1+2 with 200."""
    no = refusal_of([1, 1], tank_ml=600, dilution=Dilution(1, 4), least_stock_ml=80)

    assert ("fewer-rolls", "more-volume", "stronger-dilution") == no.ways_on
    assert (120, 160) == (no.numbers["stock_ml"], no.numbers["needed_ml"])
    assert (1, 800) == (no.numbers["fits_rolls"], no.numbers["needs_ml"])
    assert ("1+2", 200) == (no.numbers["stronger"], no.numbers["stronger_ml"])


def test_a_shortfall_of_an_eighth_of_a_millilitre() -> None:
    """300 mL at 1+50 holds 5.88 of 6 mL: no, 306 mL are needed; 1+49 would do."""
    no = refusal_of([1], tank_ml=300, dilution=Dilution(1, 50), least_stock_ml=6)

    assert ("more-volume", "stronger-dilution") == no.ways_on
    assert pytest.approx(306) == no.numbers["needs_ml"]
    assert "1+49" == no.numbers["stronger"]


def test_exactly_enough_is_enough() -> None:
    """1 in 50 in 300 mL is 6.00 mL, and 800 mL at 1+4 is 160: binary fractions must not say no."""
    assert check_stock([1], tank_ml=300, dilution=Dilution(1, 49), least_stock_ml=6).enough
    assert check_stock([1, 1], tank_ml=800, dilution=Dilution(1, 4), least_stock_ml=80).enough


def test_stock_alone_may_be_too_little() -> None:
    """Where not even undiluted stock would do, a stronger dilution is not offered."""
    no = refusal_of([1], tank_ml=50, dilution=Dilution(1, 1), least_stock_ml=80)

    assert ("more-volume",) == no.ways_on


@given(areas, st.floats(100, 2000), st.integers(0, 100), st.floats(1, 200))
def test_every_way_on_is_one(areas: list[float], tank_ml: float, water: int, least_ml: float) -> None:
    """Tank, dilution and number of rolls that are named each do; a step less does not."""
    dilution = Dilution(1, water)
    found = stock_for_film(areas, tank_ml=tank_ml, dilution=dilution, least_stock_ml=least_ml)
    _ways_hold(found, areas, tank_ml, dilution, least_ml)


def _ways_hold(
    found: StockForFilm, areas: list[float], tank_ml: float, dilution: Dilution, least_ml: float
) -> None:
    """Each way on of `found` is tried out."""
    again = stock_for_film(areas, tank_ml=found.needs_ml, dilution=dilution, least_stock_ml=least_ml)
    assert again.enough
    if found.stronger is not None:
        assert stock_for_film(areas, tank_ml=tank_ml, dilution=found.stronger, least_stock_ml=least_ml).enough
        weaker = Dilution(1, found.stronger.water + 1)
        assert stock_and_water(tank_ml, weaker).stock_ml < found.needed_ml
    fits = found.fits_rolls or 0
    largest = sorted(areas, reverse=True)
    assert least_stock(largest[:fits], least_stock_ml=least_ml) <= found.stock_ml * (1 + 1e-6)
    if fits < len(areas):
        assert least_stock(largest[: fits + 1], least_stock_ml=least_ml) > found.stock_ml * (1 - 1e-6)
    assert found.enough == (fits == len(areas))
