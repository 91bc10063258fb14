"""Tank and liquid: forward, back, and the two-minute test."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tankside.core.refusals import Refused
from tankside.core.thermal.tank import liquid_for, met_c, worth_from_test

ML = st.floats(200, 2000)
WORTH = st.floats(20, 300)
TEMP = st.floats(5, 40)


@given(liquid_ml=ML, worth_ml=WORTH, tank_c=TEMP, start_c=TEMP)
def test_the_start_asked_for_is_met(liquid_ml: float, worth_ml: float, tank_c: float, start_c: float) -> None:
    """Liquid made for a start temperature meets the tank at it."""
    liquid_c = liquid_for(start_c=start_c, liquid_ml=liquid_ml, worth_ml=worth_ml, tank_c=tank_c)

    assert start_c == pytest.approx(
        met_c(liquid_ml=liquid_ml, liquid_c=liquid_c, worth_ml=worth_ml, tank_c=tank_c), abs=1e-9
    )


@given(liquid_ml=ML, worth_ml=WORTH)
def test_the_two_minute_test_finds_the_worth(liquid_ml: float, worth_ml: float) -> None:
    """What a tank of known worth would read gives that worth back."""
    read_c = met_c(liquid_ml=liquid_ml, liquid_c=40, worth_ml=worth_ml, tank_c=17)

    assert worth_ml == pytest.approx(
        worth_from_test(liquid_ml=liquid_ml, liquid_c=40, tank_c=17, read_c=read_c), rel=1e-6
    )


@pytest.mark.parametrize(("read_c", "worth_ml"), [(35.8, 112), (36.8, 81)])
def test_half_a_litre_at_forty(read_c: float, worth_ml: float) -> None:
    """500 mL at 40 C into a tank at 17 C: 35.8 means 112 mL, 36.8 means 81 mL (both to the 0.1 K read)."""
    found = worth_from_test(liquid_ml=500, liquid_c=40, tank_c=17, read_c=read_c)

    assert pytest.approx(worth_ml, abs=2) == found


@pytest.mark.parametrize(
    ("code", "asked"),
    [
        ("tank-test-too-near", {"liquid_c": 20.0, "tank_c": 17.0, "read_c": 19.0}),
        ("tank-test-not-between", {"liquid_c": 40.0, "tank_c": 17.0, "read_c": 41.0}),
        ("tank-test-not-between", {"liquid_c": 40.0, "tank_c": 17.0, "read_c": 17.0}),
    ],
)
def test_tests_that_say_nothing_are_refused(code: str, asked: dict[str, float]) -> None:
    """Too small a difference, or a reading outside the two, finds no worth."""
    with pytest.raises(Refused, match=code):
        worth_from_test(liquid_ml=500, **asked)
