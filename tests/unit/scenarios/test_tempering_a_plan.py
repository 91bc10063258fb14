"""Scenario S3 through the plan: all at 17 C, taps of 14 and 52, 9:30 at 20 C, half a litre at 1+1."""

from __future__ import annotations

from dataclasses import replace

import pytest
from planned import ANSWERS, evening, planned, with_rolls

from tankside.core.planning.explain import explain
from tankside.core.planning.get_ready import to_make
from tankside.core.planning.tempering import Taps, tempered, top_up
from tankside.core.planning.wish import Wish

TAPS = Taps(hot_c=52.0, cold_c=14.0, stock_c=17.0, jug_worth_ml=0.0)


def wish(*, room_c: float = 17.0, hot_c: float | None = 52.0) -> Wish:
    """The evening before the developer is mixed."""
    asked = evening(replace(ANSWERS, reads_c=None)).wish
    return replace(asked, place=replace(asked.place, room_c=room_c, hot_c=hot_c, cold_c=14.0))


def test_mix_to_20_8() -> None:
    """The plan says how warm to mix, and keeps the printed time."""
    plan = planned(wish())
    warm = plan.liquid("develop-A").mix_to_c

    assert warm is not None
    assert pytest.approx(20.8, abs=0.05) == warm.value
    assert 570.0 == plan.tankful("A").baths[0].times.aim_s


def test_71_hot_and_179_cold_without_a_jug() -> None:
    """The water is 24.7 C."""
    out = tempered(stock_ml=250.0, volume_ml=500.0, target_c=20.8, taps=TAPS, mark_ml=1.0)

    assert (71.0, 179.0) == (out.hot_ml, out.cold_ml)
    assert pytest.approx(24.7, abs=0.1) == out.water_c


def test_75_hot_and_175_cold_in_a_jug_worth_42() -> None:
    """The jug takes its share; this is what the page of making says."""
    made = next(one for one in to_make(planned(wish()), wish().place) if one.liquid.key == "develop-A")

    assert made.tempered is not None
    assert (75.0, 175.0) == (made.tempered.hot_ml, made.tempered.cold_ml)


def test_without_taps_only_the_target_stands() -> None:
    """Mix, hold back 50 mL, read."""
    place = replace(wish().place, hot_c=None)
    made = next(one for one in to_make(planned(wish()), place) if one.liquid.key == "develop-A")

    assert made.tempered is None
    assert 50.0 == made.hold_back_ml
    assert made.target_c == pytest.approx(20.8, abs=0.05)


def test_the_last_fifty() -> None:
    """450 mL at 19.5 in the jug: the last 50 are half hot, half cold."""
    out = top_up(in_jug_ml=450.0, reads_c=19.5, volume_ml=500.0, target_c=20.84, taps=TAPS, mark_ml=1.0)

    assert (25.0, 25.0) == (out.hot_ml, out.cold_ml)


def test_a_second_tankful_in_a_tank_at_wash_temperature() -> None:
    """The cold tap is tempered to within 5 K, so the tank is at 15 and its developer warmer."""
    plan = planned(with_rolls(wish(), 2))
    first, second = (plan.liquid(one).mix_to_c for one in ("develop-A", "develop-B"))

    assert first is not None
    assert second is not None
    # From 17 to 15 C a tank worth 112 mL takes 2 x 112 / 500 K more.
    assert pytest.approx(first.value + 2 * 112 / 500, abs=0.01) == second.value


def test_the_doubt_is_the_tanks_not_the_factors() -> None:
    """What the tank is worth makes the doubt of the temperature; the factor hardly counts."""
    parts = {one.code: one.half_width for one in explain(planned(wish()), "mix-to").parts}

    assert max(parts, key=lambda code: parts[code]) == "worth"
    assert parts.get("factor", 0.0) < 0.05


def test_a_warm_room_turns_it_round() -> None:
    """In a room of 24 one mixes cooler than 20."""
    warm = planned(wish(room_c=24.0)).liquid("develop-A").mix_to_c

    assert warm is not None
    assert warm.value < 20.0
