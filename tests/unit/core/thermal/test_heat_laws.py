"""Laws of heat that hold whatever the numbers are: none is made or lost, and nothing drifts past its room."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tankside.core.thermal.drift import temp_at
from tankside.core.thermal.mixing import Jug, Water, hot_and_cold, mix
from tankside.core.thermal.tank import met_c
from tankside.core.thermal.water import enthalpy_kj_kg

WATERS = st.lists(
    st.builds(Water, st.floats(1, 1000), st.floats(1, 64), st.floats(0.9, 1.0)), min_size=1, max_size=6
)
ML, WORTH, TEMP = st.floats(200, 2000), st.floats(20, 300), st.floats(5, 40)
ROOM, TAU, TIME = st.floats(10, 30), st.floats(5, 300), st.floats(1, 3600)


@given(waters=WATERS, worth_ml=WORTH, jug_c=st.floats(1, 40))
def test_a_mixture_keeps_its_heat(waters: list[Water], worth_ml: float, jug_c: float) -> None:
    """What all brought, the jug too, is what all hold at the temperature they came to."""
    out = mix(waters, jug=Jug(worth_ml, jug_c))
    bodies = [*waters, Water(worth_ml, jug_c)]
    at_the_end = float(enthalpy_kj_kg(out.temp_c)) * sum(one.heat_g for one in bodies)

    assert sum(one.heat_j for one in bodies) == pytest.approx(at_the_end, rel=1e-6)


@given(waters=st.lists(st.builds(Water, st.floats(50, 1000), st.floats(1, 64)), min_size=3, max_size=5))
def test_the_order_of_pouring_does_not_matter(waters: list[Water]) -> None:
    """One after the other, or all at once: the same water."""
    one_by_one = waters[0]
    for water in waters[1:]:
        one_by_one = mix([one_by_one, water])
    at_once = mix(waters)

    assert at_once.temp_c == pytest.approx(one_by_one.temp_c, abs=1e-5)
    assert at_once.mass_g == pytest.approx(one_by_one.mass_g, rel=1e-9)


@given(target_c=st.floats(15, 49), by_k=st.floats(0.1, 2))
def test_warmer_takes_more_of_the_hot(target_c: float, by_k: float) -> None:
    """Of one volume, from the same taps."""
    cool, warm = (
        hot_and_cold(volume_ml=500, target_c=one, hot_c=52, cold_c=14) for one in (target_c, target_c + by_k)
    )

    assert warm.hot_ml > cool.hot_ml
    assert warm.cold_ml < cool.cold_ml


@given(liquid_ml=ML, liquid_c=TEMP, worth_ml=WORTH, tank_c=TEMP)
def test_what_the_liquid_loses_the_tank_gains(
    liquid_ml: float, liquid_c: float, worth_ml: float, tank_c: float
) -> None:
    """Degrees times millilitres of water, to the last one."""
    together_c = met_c(liquid_ml=liquid_ml, liquid_c=liquid_c, worth_ml=worth_ml, tank_c=tank_c)

    assert liquid_ml * (liquid_c - together_c) == pytest.approx(worth_ml * (together_c - tank_c), abs=1e-6)
    assert min(liquid_c, tank_c) - 1e-9 <= together_c <= max(liquid_c, tank_c) + 1e-9


@given(start_c=ROOM, room_c=ROOM, tau=TAU, first_s=TIME, then_s=TIME)
def test_drift_goes_to_the_room_and_never_past_it(
    start_c: float, room_c: float, tau: float, first_s: float, then_s: float
) -> None:
    """Always nearer, on the same side; two stretches one after the other are one."""
    soon, late = (
        float(temp_at(one, start_c=start_c, room_c=room_c, tau_min=tau))
        for one in (first_s, first_s + then_s)
    )
    again = float(temp_at(then_s, start_c=soon, room_c=room_c, tau_min=tau))

    assert abs(start_c - room_c) >= abs(soon - room_c) >= abs(late - room_c)
    assert (start_c - room_c) * (late - room_c) >= 0
    assert late == pytest.approx(again, abs=1e-9)
