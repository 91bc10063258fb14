"""Time against temperature: default, sharpened by rows, tables without one slope, and where it refuses."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tankside.core.development.printed_rows import Row
from tankside.core.development.rate import check_temperature, rate_of, time_at, uneven_if_short
from tankside.core.refusals import Refused

ONE = rate_of([Row(20.0, 570.0)])
STEADY = [Row(18.0, 600.0), Row(20.0, 510.0), Row(22.0, 435.0)]
BENT = [Row(18.0, 600.0, 15.0), Row(20.0, 590.0, 15.0), Row(22.0, 300.0, 15.0)]


def test_one_row_keeps_the_default() -> None:
    """A single printed time leaves 2.2 (1.5 to 2.9), and 18 to 24 C."""
    assert (2.2, 1.5, 2.9) == (ONE.q10.value, ONE.q10.low, ONE.q10.high)
    assert (570.0, 570.0, 570.0) == (ONE.time_s.value, ONE.time_s.low, ONE.time_s.high)


def test_rows_sharpen_the_default() -> None:
    """Three rows over 4 K, each good to 15 s, narrow the factor and still hold the one that made them."""
    rate = rate_of(STEADY)

    assert rate.q10.low <= 2.23 <= rate.q10.high
    assert rate.q10.high - rate.q10.low < 0.75 * (2.9 - 1.5)
    assert (16.0, 24.0) == (rate.least_c, rate.most_c)


def test_two_near_rows_say_almost_nothing() -> None:
    """Rows half a kelvin apart leave the default nearly as wide as it was."""
    q10 = rate_of([Row(20.0, 570.0), Row(20.5, 570.0)]).q10

    assert np.log(q10.high / q10.low) > 0.85 * np.log(2.9 / 1.5)


def test_a_bent_table_is_read_between_its_rows_only() -> None:
    """No one slope: interpolated on the logarithm of time, refused outside, however near."""
    rate = rate_of(BENT)

    assert rate.interpolates
    assert pytest.approx((590.0 * 300.0) ** 0.5) == time_at(rate, 21.0).value
    with pytest.raises(Refused, match="too-warm-to-time"):
        time_at(rate, 22.1)


@given(temp_c=st.floats(18, 24))
def test_warmer_is_never_longer(temp_c: float) -> None:
    """Told times and both ends fall with temperature, and meet at the printed row."""
    here, warmer = time_at(ONE, temp_c), time_at(ONE, min(24.0, temp_c + 0.5))

    assert warmer.value <= here.value
    assert here.low <= here.value <= here.high


@pytest.mark.parametrize(
    ("temp_c", "hydroquinone", "code", "way_on"),
    [
        (17.9, False, "too-cold-to-time", "warm"),
        (24.1, False, "too-warm-to-time", "cool"),
        (15.0, True, "hydroquinone-too-cold", "warm"),
        (17.0, True, "too-cold-to-time", "warm"),
    ],
)
def test_outside_the_range_no_number(temp_c: float, hydroquinone: bool, code: str, way_on: str) -> None:
    """Outside 18 to 24 C one is told to warm or to cool, not given a time."""
    with pytest.raises(Refused) as told:
        time_at(ONE, temp_c, hydroquinone=hydroquinone)

    assert (code, (way_on,)) == (told.value.refusal.code, told.value.refusal.ways_on)
    assert told.value.refusal.numbers["temp_c"] == temp_c


def test_no_table_takes_a_hydroquinone_developer_below_sixteen() -> None:
    """A table that reaches 13 C is cut at 16 where the developer holds hydroquinone."""
    cold = rate_of([Row(14.0, 900.0), Row(17.0, 720.0), Row(20.0, 570.0)])

    check_temperature(cold, 13.0)
    with pytest.raises(Refused, match="hydroquinone-too-cold"):
        check_temperature(cold, 15.9, hydroquinone=True)


def test_no_rows_and_short_times() -> None:
    """Without a row there is nothing to tell; under five minutes unevenness is warned of."""
    with pytest.raises(Refused, match="no-time-known"):
        rate_of([])
    assert [True, False] == [uneven_if_short(299.0), uneven_if_short(300.0)]


def test_a_row_elsewhere_is_carried_to_the_reference() -> None:
    """9:30 at 22 C is longer at 20 C, by the default factor and its band."""
    rate = rate_of([Row(22.0, 570.0)])

    assert pytest.approx(570 * 2.2**0.2) == rate.time_s.value
    assert pytest.approx((570 * 1.5**0.2, 570 * 2.9**0.2)) == (rate.time_s.low, rate.time_s.high)
