"""Stock and water for a volume, as the measure allows."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tankside.core.refusals import Refused
from tankside.core.solutions.dilution import StockAndWater, on_the_marks, stock_and_water, strength_error
from tankside.core.solutions.notation import Dilution


@given(st.floats(1, 20_000), st.integers(1, 20), st.integers(0, 200))
def test_stock_and_water_make_the_volume(volume_ml: float, stock: int, water: int) -> None:
    """Both together are the whole, in the proportion of the parts."""
    found = stock_and_water(volume_ml, Dilution(stock, water))

    assert pytest.approx(volume_ml) == found.volume_ml
    assert pytest.approx(found.stock_ml * water, abs=1e-6) == found.water_ml * stock


def test_stock_at_a_mark_and_water_to_the_whole() -> None:
    """1+14 in 500 mL with a measure marked every millilitre: 33 and 467, 1 % weaker."""
    marked = on_the_marks(stock_and_water(500, Dilution(1, 14)), mark_ml=1)

    assert StockAndWater(33.0, 467.0) == marked
    assert pytest.approx(-0.01) == strength_error(marked, Dilution(1, 14))


def test_a_mark_too_coarse_is_refused_with_its_error() -> None:
    """2.97 mL on a measure marked every 5 mL would be 68 % too strong."""
    with pytest.raises(Refused) as no:
        on_the_marks(stock_and_water(300, Dilution(1, 100)), mark_ml=5)

    assert "mark-too-coarse" == no.value.refusal.code
    assert ("finer-measure", "larger-volume") == no.value.refusal.ways_on
    assert 68 == no.value.refusal.numbers["error_percent"]


def test_undiluted_stock_needs_no_mark() -> None:
    """All of it is stock, whatever the marks."""
    assert 0 == on_the_marks(stock_and_water(300, Dilution(1, 0)), mark_ml=50).water_ml


def test_a_volume_of_nothing_is_refused() -> None:
    """There is nothing to dilute."""
    with pytest.raises(Refused):
        stock_and_water(0, Dilution(1, 1))
