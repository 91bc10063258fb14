"""Readings at the sink: 9:30 due at 20 C, room 16, tau 106 min, a thermometer that reads 0.3 high."""

from __future__ import annotations

import pytest

from tankside.core.development.advice import end_of_development, reading_moves_the_end, worth_telling
from tankside.core.development.equivalent_time import time_needed
from tankside.core.doubt.estimate import Estimate
from tankside.core.doubt.groups import seed_of, uniform_draws
from tankside.core.rates import Q10
from tankside.core.thermal.expected_path import expected_path, fit_start, reading_in_tank
from tankside.core.thermal.trace import record

DUE_S = 570.0
TAU = Estimate(106.0, 60.0, 180.0, "min")


def clock(text: str) -> float:
    """Seconds of 'm:ss'."""
    minutes, seconds = text.split(":")
    return 60 * int(minutes) + int(seconds)


def end_told(*raw: tuple[str, float], offset_k: float = -0.3) -> Estimate:
    """The end after raw readings at 'm:ss', and its interval."""
    readings = [reading_in_tank(clock(at), raw_c, offset_k=offset_k) for at, raw_c in raw]
    draws = uniform_draws(seed_of("end", raw, offset_k), count=4000, columns=3)
    path = expected_path(readings, room_c=16, tau_min=TAU, until_s=1200, uniforms=draws[:, :2])
    return end_of_development(
        DUE_S, times_s=path.times_s, temps_c=path.temps_c, drawn_temps_c=path.drawn_c, uniforms=draws[:, 2]
    )


def test_the_reading_at_one_minute() -> None:
    """Raw 19.5 at 1:00 ends development at 10:13 (9:52-10:29), to 5 s."""
    end = end_told(("1:00", 19.5))

    assert pytest.approx(clock("10:13"), abs=5) == end.value
    assert pytest.approx(clock("9:52"), abs=5) == end.low
    assert pytest.approx(clock("10:29"), abs=5) == end.high


def test_without_the_offset_it_would_be_wrong() -> None:
    """The thermometer's 0.3 K are worth more than ten seconds."""
    assert end_told(("1:00", 19.5), offset_k=0.0).value < clock("10:13") - 10


def test_a_like_reading_at_five_minutes_moves_nothing() -> None:
    """Raw 19.2 at 5:00 gives 10:17 to 10:19 whichever way it is followed: too little to tell."""
    told = end_told(("1:00", 19.5))
    found = end_told(("1:00", 19.5), ("5:00", 19.2))
    read = [reading_in_tank(60, 19.5, offset_k=-0.3), reading_in_tank(300, 19.2, offset_k=-0.3)]
    path = record(read, room_c=16, tau_min=106, until_s=1200)
    by_record_s = float(time_needed(DUE_S, path.times_s, path.temps_c, Q10()))

    assert pytest.approx(clock("10:17"), abs=2) == found.value
    assert pytest.approx(clock("10:19"), abs=2) == by_record_s
    assert not worth_telling(found.value, told_s=told.value)
    assert not worth_telling(by_record_s, told_s=told.value)


def test_a_far_reading_moves_the_end() -> None:
    """Raw 18.5 at 5:00 leaves the drift; the record is followed and the end is told anew."""
    told = end_told(("1:00", 19.5))
    readings = [reading_in_tank(60, 19.5, offset_k=-0.3), reading_in_tank(300, 18.5, offset_k=-0.3)]
    draws = uniform_draws(1, count=10, columns=2)
    path = expected_path(readings, room_c=16, tau_min=TAU, until_s=600, uniforms=draws)

    assert path.follows == "readings"
    assert worth_telling(end_told(("1:00", 19.5), ("5:00", 18.5)).value, told_s=told.value)


def test_the_tank_keeps_its_time_constant() -> None:
    """Two readings four minutes apart alone say 41 min; the fit stays within a fifth of the belief."""
    readings = [reading_in_tank(60, 19.5, offset_k=-0.3), reading_in_tank(300, 19.2, offset_k=-0.3)]

    assert fit_start(readings, room_c=16, tau_min=TAU).tau_min == pytest.approx(106, rel=0.2)


def test_the_same_question_has_the_same_digits() -> None:
    """A refresh of the page never moves the interval."""
    assert end_told(("1:00", 19.5)) == end_told(("1:00", 19.5))


def test_a_method_may_keep_its_end() -> None:
    """Stand and two-bath development are not moved by a reading."""
    assert [True, False, False] == [
        reading_moves_the_end(rule) for rule in ("rate", "table only", "completion")
    ]


def test_first_evening() -> None:
    """9:30 printed, developer at 21 into a tank at 20: about 9:00 (8:45 to 9:15)."""
    start = Estimate(20.817, 20.717, 20.917, "C")
    draws = uniform_draws(3, count=4000, columns=3)
    path = expected_path([], room_c=20, tau_min=TAU, until_s=900, uniforms=draws[:, :2], planned=start)
    end = end_of_development(
        DUE_S, times_s=path.times_s, temps_c=path.temps_c, drawn_temps_c=path.drawn_c, uniforms=draws[:, 2]
    )

    assert [clock("9:00"), clock("8:45"), clock("9:15")] == [
        15 * round(told / 15) for told in (end.value, end.low, end.high)
    ]
