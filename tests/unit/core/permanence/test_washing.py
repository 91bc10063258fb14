"""Laws of washing that hold whatever the numbers are."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tankside.core.permanence.washing import Held, enough_if_half_life_s, residual_after_fills
from tankside.core.refusals import Refused

soaks = st.lists(st.floats(1, 1800), min_size=1, max_size=8)


@given(soaks_s=soaks, fill_ml=st.floats(100, 2000), half_life_s=st.floats(5, 300))
def test_residual_never_rises(soaks_s: list[float], fill_ml: float, half_life_s: float) -> None:
    """Each further fill leaves no more than the one before."""
    left = residual_after_fills(soaks_s=soaks_s, fill_ml=fill_ml, half_life_s=half_life_s)

    assert list(left) == sorted(left, reverse=True)


@given(soaks_s=soaks, half_life_s=st.floats(5, 290))
def test_slower_film_keeps_more(soaks_s: list[float], half_life_s: float) -> None:
    """A longer half-life never leaves less in the film."""
    quick = residual_after_fills(soaks_s=soaks_s, fill_ml=300, half_life_s=half_life_s)[-1]
    slow = residual_after_fills(soaks_s=soaks_s, fill_ml=300, half_life_s=half_life_s + 10)[-1]

    assert quick <= slow


@given(
    soaks_s=soaks, fill_ml=st.floats(100, 1000), half_life_s=st.floats(5, 300), at=st.integers(0, 7),
    more=st.floats(1.01, 2),
)  # fmt: skip
def test_more_of_anything_never_leaves_more(
    soaks_s: list[float], fill_ml: float, half_life_s: float, at: int, more: float
) -> None:
    """Larger fills, one soak longer, or one more fill: no more is left in the film."""
    longer = [one * (more if n == at % len(soaks_s) else 1) for n, one in enumerate(soaks_s)]
    left, by_soak, by_fill, by_water = (
        residual_after_fills(soaks_s=soaked, fill_ml=ml, half_life_s=half_life_s)[-1]
        for soaked, ml in (
            (soaks_s, fill_ml), (longer, fill_ml), ([*soaks_s, 60.0], fill_ml), (soaks_s, fill_ml * more),
        )
    )  # fmt: skip

    assert max(by_soak, by_fill, by_water) <= left * (1 + 1e-9)


def test_gelatin_on_both_sides_holds_twice_the_liquid() -> None:
    """120 and sheet film carry a coated back, counted over the same one-side area."""
    assert Held(4.0, 8.0) == Held().for_units(1.0, both_sides=True)


def test_a_wash_of_moments_cannot_reach_the_limit() -> None:
    """A single fill for a second is refused with another fill as the way on."""
    with pytest.raises(Refused) as told:
        enough_if_half_life_s(soaks_s=(0.0,), fill_ml=300)

    assert told.value.refusal.code == "wash-cannot-reach"


@given(fill_ml=st.floats(100, 2000), film_ml=st.floats(0.5, 8), tank_ml=st.floats(1, 40))
def test_a_long_soak_keeps_the_mass(fill_ml: float, film_ml: float, tank_ml: float) -> None:
    """At rest all liquid is alike, and what was brought along is in the whole of it."""
    held = Held(film_ml, tank_ml)
    (left,) = residual_after_fills(soaks_s=(3600,), fill_ml=fill_ml, half_life_s=5, held=held)
    brought_g = held.start_g_l * (film_ml + tank_ml) / 1000
    at_rest_g_l = 1000 * left * held.area_m2 / film_ml

    assert brought_g == pytest.approx(at_rest_g_l * (film_ml + tank_ml + fill_ml) / 1000)
