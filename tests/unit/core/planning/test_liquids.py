"""Amounts add up and stand on marks."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st
from planned import ANSWERS, evening, planned, tankful, with_rolls, with_tanks

from tankside.core.methods.default_method import HANDS
from tankside.core.planning.liquids import mark_for, most_at_once_ml, to_the_marks
from tankside.core.solutions.notation import Dilution


@given(st.integers(min_value=50, max_value=400), st.integers(min_value=0, max_value=50))
def test_stock_and_water_make_the_volume(fives: int, water: int) -> None:
    """Whatever is rounded, the two add up to the volume, and the smaller is near its exact amount."""
    volume_ml, dilution = fives * 5.0, Dilution(1, water)
    out = to_the_marks(volume_ml, dilution)
    smaller_ml = min(volume_ml * dilution.stock_fraction, volume_ml * (1 - dilution.stock_fraction))

    assert abs(out.stock_ml + out.water_ml - volume_ml) < 1e-6
    assert abs(min(out.stock_ml, out.water_ml) - smaller_ml) <= mark_for(smaller_ml) / 2 + 1e-6


@given(st.integers(min_value=1, max_value=3))
def test_every_bath_has_its_liquid(rolls: int) -> None:
    """Each bath that is not water names a liquid of the plan, and each liquid is enough for its tanks."""
    plan = planned(with_tanks(with_rolls(evening(ANSWERS).wish, rolls), 500.0, 300.0))
    keys = {one.key for one in plan.liquids}

    for one in plan.tankfuls:
        for bath in one.baths:
            assert bath.liquid is None or bath.liquid in keys
            assert bath.liquid is None or plan.liquid(bath.liquid).volume_ml >= one.tank.volume_ml


def test_every_roll_is_in_exactly_one_tankful() -> None:
    """Nothing is lost and nothing is developed twice."""
    wish = with_tanks(with_rolls(evening().wish, 5), 600.0, 300.0)
    plan = planned(wish)
    placed = sorted(str(roll.key) for one in plan.tankfuls for roll in one.rolls)

    assert sorted(str(one.roll.key) for one in wish.rolls) == placed
    assert [one.starts_s for one in plan.tankfuls] == sorted(one.starts_s for one in plan.tankfuls)


def test_a_bath_shared_by_two_tanks_at_once_is_made_for_both() -> None:
    """Two half-litre tanks that are in the fixer together need a litre; one after the other, half."""
    both = tuple(replace(tankful(letter, 570.0), starts_s=at_s) for letter, at_s in (("A", 0.0), ("B", 75.0)))
    apart = (both[0], replace(both[1], starts_s=3000.0))

    assert 1000.0 == most_at_once_ml(both, "fix", HANDS)
    assert 500.0 == most_at_once_ml(apart, "fix", HANDS)
