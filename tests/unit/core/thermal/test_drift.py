"""Drift, one's own time constant, and what few readings may say."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tankside.core.doubt.distributions import LogNormal
from tankside.core.refusals import Refused
from tankside.core.thermal.drift import Reading, mean_temp, own_tau, start_for, tau_from_two_readings, temp_at

READ_SD = 0.1 / np.sqrt(3)


def readings_of(
    tau_min: float, *minutes: float, start_c: float = 20.0, room_c: float = 16.0
) -> list[Reading]:
    """Readings without error of a tank with `tau_min`."""
    return [
        Reading(60 * m, float(temp_at(60 * m, start_c=start_c, room_c=room_c, tau_min=tau_min)), READ_SD)
        for m in minutes
    ]


@given(start_c=st.floats(10, 30), room_c=st.floats(10, 30), tau=st.floats(5, 300), time_s=st.floats(1, 3600))
def test_back_along_the_drift(start_c: float, room_c: float, tau: float, time_s: float) -> None:
    """The start is found again from where it drifted to; the mean lies between the two."""
    end = float(temp_at(time_s, start_c=start_c, room_c=room_c, tau_min=tau))
    mean = mean_temp(time_s, start_c=start_c, room_c=room_c, tau_min=tau)

    assert start_c == pytest.approx(start_for(end, time_s=time_s, room_c=room_c, tau_min=tau), abs=1e-5)
    assert min(start_c, end) - 1e-6 <= mean <= max(start_c, end) + 1e-6


def test_two_near_readings_say_little() -> None:
    """19.2 to 18.9 in 4 minutes, room 16, read to +-0.1: 41 min, and anything from 28 to 75."""
    found = tau_from_two_readings(19.2, 18.9, apart_s=240, room_c=16)

    assert (41, 28, 75) == pytest.approx((found.value, found.low, found.high), abs=1)


def test_an_hour_says_much() -> None:
    """A full tank over an hour: 106 min, 95 to 119."""
    found = tau_from_two_readings(19.2, 16 + 3.2 * np.exp(-60 / 106), apart_s=3600, room_c=16)

    assert (106, 95, 119) == pytest.approx((found.value, found.low, found.high), abs=1)


def test_no_drift_is_refused() -> None:
    """Readings that move away from the room tell no time constant."""
    with pytest.raises(Refused, match="readings-show-no-drift"):
        tau_from_two_readings(19.0, 19.1, apart_s=240, room_c=16)


def test_few_early_readings_hardly_move_the_belief() -> None:
    """The pair that alone says 41 min leaves the tank above 80, with hardly less doubt."""
    found = own_tau([Reading(120, 19.2, READ_SD), Reading(360, 18.9, READ_SD)], room_c=16)

    assert 80 < found.value < 104
    assert found.high / found.low > 2.5


@pytest.mark.parametrize("true_min", [70.0, 106.0, 150.0])
def test_an_hour_of_readings_settles_it(true_min: float) -> None:
    """Readings over an hour bring the value near the truth on either side of belief, and halve doubt."""
    found = own_tau(readings_of(true_min, 2, 10, 20, 40, 60), room_c=16)

    assert found.low <= true_min <= found.high
    assert found.value == pytest.approx(true_min, rel=0.06)
    assert found.high / found.low < 1.5


def test_readings_before_two_minutes_never_count() -> None:
    """While the wall still takes heat, a reading says nothing of the room."""
    later = readings_of(106, 10, 60)
    early = [Reading(30, 21.5), Reading(90, 20.9)]

    assert own_tau(later, room_c=16) == own_tau([*early, *later], room_c=16)
    assert own_tau(early, room_c=16).source == "believed"


def test_readings_at_room_temperature_say_nothing() -> None:
    """A tank at room temperature keeps its belief."""
    flat = [Reading(60 * m, 16.0) for m in (2, 20, 60)]
    belief = LogNormal(60.0, 180.0)

    assert pytest.approx(belief.median) == own_tau(flat, room_c=16, believed=belief).value


def test_a_wrong_way_pair_is_bounded() -> None:
    """Readings that rise away from the room, by error, cannot make the time constant endless."""
    found = own_tau([Reading(120, 18.9, READ_SD), Reading(360, 19.0, READ_SD)], room_c=16)

    assert 104 < found.value < 400
