"""Amounts as they are shown: no more digits than their doubt allows."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tankside.core.doubt.estimate import Estimate
from tankside.core.quantities.display import (
    plain_number,
    planned_time,
    shown,
    temperature_text,
    time_and_doubt,
    time_step_s,
    time_text,
    to_step,
    told_end,
    volume_text,
)
from tankside.core.quantities.preferences import Preferences


def spread(value: float, low: float, high: float) -> Estimate:
    """An estimate in seconds."""
    return Estimate(value, low, high, "s")


@pytest.mark.parametrize(
    ("low", "value", "high", "text"),
    [
        (555, 570, 585, "9:30 (9:15 to 9:45)"),
        (556, 566, 581, "9:30 (9:15 to 9:45)"),
        (510, 527, 547, "8:45 (8:30 to 9:15)"),
        (560, 566, 572, "9:25 (9:20 to 9:35)"),
        (570, 570, 570, "9:30"),
        (568, 570, 572, "9:30 (9:28 to 9:32)"),
    ],
)
def test_planned_times(low: float, value: float, high: float, text: str) -> None:
    """To 15 s where the doubt exceeds 20 s, bands outwards; else to 5 s or 1 s (practice 1.17)."""
    assert text == planned_time(spread(value, low, high))


def test_an_end_that_a_reading_moved_is_shown_to_five_seconds() -> None:
    """10:13 (9:52 to 10:29) of the live scenario S4."""
    assert "10:15 (9:50 to 10:30)" == told_end(spread(613, 592, 629))


def test_a_time_with_its_doubt() -> None:
    """As the why page heads it."""
    assert "9:20 ± 0:25" == time_and_doubt(561, doubt_s=23)


@given(st.floats(60, 3600), st.floats(0, 300), st.floats(0, 300))
def test_a_band_is_never_narrowed(value: float, below: float, above: float) -> None:
    """Shown ends lie outside the true ones, but for a sixth of the step; the value lies between them.

    What has no width is told as one number, half a step off at most.
    """
    true = spread(value, value - below, value + above)
    step = time_step_s(true.high - true.low)
    told = shown(true, step)

    assert told.low <= told.value <= told.high
    slack = step / 6 if true.low < true.high else step / 2
    assert true.low + slack >= told.low - 1e-9
    assert true.high - slack <= told.high + 1e-9
    assert abs(told.value - value) <= step / 2 + 1e-6


@pytest.mark.parametrize(
    ("time_s", "text"),
    [(0, "0:00"), (59.4, "0:59"), (59.5, "1:00"), (570, "9:30"), (3600, "60:00"), (-50, "-0:50")],
)
def test_minutes_and_seconds(time_s: float, text: str) -> None:
    """Rounded once, to the whole second; never 0:60."""
    assert text == time_text(time_s)


@pytest.mark.parametrize(
    ("temp_c", "mark", "celsius", "fahrenheit"),
    [
        (20.0, 0.1, "20.0 °C", "68.0 °F"),
        (20.84, 0.1, "20.8 °C", "69.5 °F"),
        (20.84, 0.5, "21.0 °C", "69.5 °F"),
    ],
)
def test_temperatures_to_the_mark(temp_c: float, mark: float, celsius: str, fahrenheit: str) -> None:
    """To 0.1 with digits, to 0.5 on glass, in either degrees."""
    assert celsius == temperature_text(temp_c, Preferences("C"), mark=mark)
    assert fahrenheit == temperature_text(temp_c, Preferences("F"), mark=mark)


def test_zero_has_no_sign() -> None:
    """A freezing room is 0.0, not -0.0."""
    assert "0.0 °C" == temperature_text(-0.01, Preferences())


@pytest.mark.parametrize(
    ("volume_ml", "mark_ml", "text"),
    [
        (71.4, 1, "71 mL"),
        (71.4, 5, "70 mL"),
        (71.4, 0.5, "71.5 mL"),
        (9.804, 0.1, "9.8 mL"),
        (9.8, 0.25, "9.75 mL"),
    ],
)
def test_volumes_to_the_mark(volume_ml: float, mark_ml: float, text: str) -> None:
    """As many decimals as the mark needs and no more."""
    assert text == volume_text(volume_ml, Preferences(), mark_ml=mark_ml)


@given(st.floats(-1e4, 1e4), st.sampled_from((0.01, 0.05, 0.1, 0.25, 0.5, 1.0, 5.0, 15.0)))
def test_rounding_stays_within_half_a_step(value: float, step: float) -> None:
    """And what is printed is what was rounded to."""
    assert abs(to_step(value, step) - value) <= step / 2 + 1e-5
    assert pytest.approx(to_step(value, step), abs=1e-9) == float(plain_number(value, step))
