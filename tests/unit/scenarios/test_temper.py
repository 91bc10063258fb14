"""Tempering: 500 mL at 1+1, everything at 17 C, taps of 14 and 52 C, 9:30 at 20 C, a tank worth 112 mL."""

from __future__ import annotations

import numpy as np
import pytest

from tankside.core.development.equivalent_time import Path, start_that_makes_it_right
from tankside.core.rates import Q10
from tankside.core.refusals import Refused
from tankside.core.thermal.drift import temp_at
from tankside.core.thermal.mixing import Jug, Water, hot_and_cold, mix, rounded_to_marks
from tankside.core.thermal.tank import liquid_for
from tankside.core.thermal.trace import grid

DUE_S = 570.0
TAPS = {"hot_c": 52.0, "cold_c": 14.0}


def mix_to(*, q10: float = 2.2, tank_c: float = 17.0, room_c: float = 17.0, worth_ml: float = 112.0) -> float:
    """The temperature to mix to so that 9:30 on the clock counts 9:30 at 20 C."""

    def path(start_c: float) -> Path:
        return grid(DUE_S), temp_at(grid(DUE_S), start_c=start_c, room_c=room_c, tau_min=106)

    start_c = start_that_makes_it_right(path, time_s=DUE_S, needed_s=DUE_S, law=Q10(q10))
    return liquid_for(start_c=start_c, liquid_ml=500, worth_ml=worth_ml, tank_c=tank_c)


def test_mix_to_20_8() -> None:
    """The cold tank and the cool room are made up for beforehand."""
    assert pytest.approx(20.8, abs=0.05) == mix_to()


def test_the_answer_hardly_depends_on_the_factor() -> None:
    """Between 1.5 and 2.9 per 10 K the temperature to mix to moves by less than 0.05 K."""
    answers = [mix_to(q10=factor) for factor in (1.5, 2.2, 2.9)]

    assert max(answers) - min(answers) < 0.05


def test_second_tankful_in_a_rinsed_tank() -> None:
    """A tank at wash-water temperature, 14 C, asks for 21.5."""
    assert pytest.approx(21.5, abs=0.05) == mix_to(tank_c=14.0)


def test_a_warm_room_turns_it_round() -> None:
    """In a room and a tank of 26 C one mixes cooler than 20."""
    assert 18.0 < mix_to(tank_c=26.0, room_c=26.0) < 19.0


@pytest.mark.parametrize(
    ("jug", "hot_ml", "cold_ml", "water_c"),
    [(None, 71.0, 179.0, 24.7), (Jug(42.0, 17.0), 75.0, 175.0, 25.3)],
    ids=["no jug", "jug worth 42 mL"],
)
def test_hot_and_cold_for_the_water(jug: Jug | None, hot_ml: float, cold_ml: float, water_c: float) -> None:
    """The 250 mL of water, rounded to whole millilitres; they then bring 500 mL to the target."""
    stock = Water(250, 17.0)
    exact = hot_and_cold(volume_ml=500, target_c=20.8, already=[stock], jug=jug, **TAPS)
    marked = rounded_to_marks(exact, mark_ml=1, **TAPS)
    poured = [stock, Water(marked.hot_ml, 52.0), Water(marked.cold_ml, 14.0)]

    assert (hot_ml, cold_ml) == (marked.hot_ml, marked.cold_ml)
    assert pytest.approx(water_c, abs=0.05) == marked.water_c
    assert pytest.approx(20.8, abs=0.06) == mix(poured, jug=jug).temp_c


def test_the_last_fifty_millilitres() -> None:
    """450 mL in the jug read 19.5: the last 50 mL are 25 + 25, which give 32.9 C."""
    exact = hot_and_cold(volume_ml=500, target_c=20.8, already=[Water(450, 19.5)], **TAPS)
    marked = rounded_to_marks(exact, mark_ml=5, **TAPS)

    assert (25.0, 25.0) == (marked.hot_ml, marked.cold_ml)
    assert pytest.approx(32.9, abs=0.05) == marked.water_c


def test_taps_that_cannot_reach_it() -> None:
    """With 450 mL at 17 in the jug a tap of 52 C cannot make 500 mL of 20.8; the refusal says what it can."""
    with pytest.raises(Refused) as told:
        hot_and_cold(volume_ml=500, target_c=20.8, already=[Water(450, 17.0)], **TAPS)
    refusal = told.value.refusal

    assert (refusal.code, refusal.at) == ("water-too-cold", "hot_c")
    assert refusal.ways_on == ("hotter-water", "warm-the-stock")
    assert pytest.approx(55.0, abs=0.5) == refusal.numbers["needed_c"]
    assert pytest.approx(20.5, abs=0.05) == refusal.numbers["nearest_c"]


def test_a_summer_tap_is_too_warm() -> None:
    """Cold water of 26 C cannot make 20 C: ice is a way on, and 60 g a litre do it."""
    with pytest.raises(Refused) as told:
        hot_and_cold(volume_ml=1000, target_c=20.0, hot_c=52.0, cold_c=26.0)

    assert told.value.refusal.code == "water-too-warm"
    assert "ice" in told.value.refusal.ways_on
    assert 60.0 == told.value.refusal.numbers["ice_g"]
    assert pytest.approx(20.0, abs=0.05) == mix([Water(1000, 26.0)], ice_g=60).temp_c


def test_naive_twenty_degrees_comes_out_short() -> None:
    """Mixed to 20.0 in the same tank and room the film gets less than it should."""
    liquid_at_start = (500 * 20.0 + 112 * 17.0) / 612
    temps = temp_at(grid(DUE_S), start_c=liquid_at_start, room_c=17.0, tau_min=106)

    assert np.mean(temps) < 19.4
