"""Two fixing baths in series lose and make no silver."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad

from tankside.core.permanence.capacity import two_bath_silver_g_l


@settings(max_examples=25)
@given(
    silver_g=st.floats(0.05, 0.4),
    carry_l=st.floats(0.002, 0.02),
    bath_l=st.floats(0.3, 2),
    rolls=st.floats(1, 40),
)
def test_silver_is_kept(silver_g: float, carry_l: float, bath_l: float, rolls: float) -> None:
    """What the rolls brought is in the two baths or was carried out of the second."""

    def both(after: float) -> tuple[float, float]:
        return two_bath_silver_g_l(silver_g_roll=silver_g, carry_l=carry_l, bath_l=bath_l, rolls=after)

    carried_g, _ = quad(lambda after: carry_l * both(after)[1], 0, rolls)

    assert silver_g * rolls == pytest.approx(bath_l * sum(both(rolls)) + carried_g, rel=1e-6)


@given(rolls=st.integers(1, 60))
def test_the_second_bath_stays_cleaner(rolls: int) -> None:
    """Whatever the count; and both only fill up."""
    now, later = (
        two_bath_silver_g_l(silver_g_roll=0.2, carry_l=0.005, bath_l=1, rolls=n) for n in (rolls, rolls + 1)
    )

    assert now[1] < now[0]
    assert now[0] < later[0]
    assert now[1] < later[1]
