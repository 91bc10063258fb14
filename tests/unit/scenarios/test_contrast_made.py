"""What too long, or too warm, did to the contrast; and what to blame for it."""

from __future__ import annotations

import numpy as np
import pytest

from tankside.core.development.advice import made_by, size_of
from tankside.core.development.contrast import (
    C_INF_OVER_CI,
    c_inf_over,
    contrast_deviation,
    contrast_ratio,
    offered_of,
    time_correction,
)
from tankside.core.development.printed_rows import Row
from tankside.core.development.rate import rate_of, time_at
from tankside.core.doubt.estimate import Estimate
from tankside.core.refusals import Refused

DUE_S = 570.0
AIM = 0.56
BAND = c_inf_over(AIM)


def steady(temp_c: float, time_s: float = DUE_S) -> tuple[np.ndarray, np.ndarray]:
    """A path at one temperature."""
    return np.array([0.0, time_s]), np.array([temp_c, temp_c])


def test_two_minutes_ten_too_long() -> None:
    """9:30 due, poured out at 11:40: contrast 13 % up (10-17), which will show."""
    made = made_by(*steady(20.0, 700.0), due_s=DUE_S, c_inf_over_ci=BAND)

    assert [13, 10, 17] == [
        round(one) for one in (made.deviation.value, made.deviation.low, made.deviation.high)
    ]
    assert made.size == "will show"


def test_a_minute_less_is_less() -> None:
    """A minute too long shows just; on time nothing is off."""
    assert size_of(contrast_deviation(630, due_s=DUE_S, c_inf_over_ci=BAND).value) == "just"
    assert pytest.approx(0, abs=1e-9) == contrast_deviation(DUE_S, due_s=DUE_S, c_inf_over_ci=BAND).value


@pytest.mark.parametrize(
    ("temp_c", "predicted", "measured"), [(21.0, 0.589, 0.590), (20.8, 0.583, 0.585), (21.1, 0.592, 0.595)]
)
def test_the_log_explains_the_strips(temp_c: float, predicted: float, measured: float) -> None:
    """The logged temperatures alone predict what the step strips read, to less than one can see."""
    made = made_by(*steady(temp_c), due_s=DUE_S, c_inf_over_ci=BAND)
    found = AIM * (1 + made.deviation.value / 100)

    assert pytest.approx(predicted, abs=0.0006) == found
    assert size_of(100 * (measured / found - 1)) == "too small to see"


def test_temper_or_eight_forty_five() -> None:
    """Where temperature explains it the time that suits 21 C is 8:45, to the quarter minute."""
    assert 15 * round(time_at(rate_of([Row(20.0, DUE_S)]), 21.0).value / 15) == 525


def test_at_twenty_degrees_the_time_is_to_blame() -> None:
    """The same strips logged at 20.0: full correction -8 % (-10.5 to -6.5), offered -4 %."""
    full = time_correction(0.590, wanted=AIM, time_s=DUE_S)

    assert pytest.approx(-8, abs=0.5) == full.value
    assert pytest.approx((-10.5, -6.5), abs=0.1) == (full.low, full.high)
    assert offered_of(round(full.value)) == -4.0


def test_a_large_correction_is_taken_in_steps() -> None:
    """No step is larger than 10 %, either way."""
    assert [10.0, -10.0] == [offered_of(35.0), offered_of(-35.0)]


def test_without_a_known_contrast() -> None:
    """Then 1.7 (1.34-2.32) times the aim is what could be reached, and that is the known film's band."""
    known = c_inf_over(AIM)

    assert Estimate(1.7, 1.34, 2.32, "", C_INF_OVER_CI.source) == c_inf_over(None)
    assert (1.7, 1.34, 2.32) == pytest.approx((known.value, known.low, known.high), abs=0.006)


def test_a_push_beyond_reach_is_refused() -> None:
    """No time makes a contrast that the film cannot reach in that developer."""
    with pytest.raises(Refused) as told:
        time_correction(0.590, wanted=0.80, time_s=DUE_S)

    assert told.value.refusal.code == "contrast-out-of-reach"


def test_the_ratio_rises_with_time_and_levels_off() -> None:
    """More time is always more contrast, and each minute brings less."""
    ratios = contrast_ratio(np.arange(60.0, 1200.0, 60.0), due_s=DUE_S)

    assert np.all(np.diff(ratios) > 0)
    assert np.all(np.diff(ratios, 2) < 0)
