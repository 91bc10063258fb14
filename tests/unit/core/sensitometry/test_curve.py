"""Laws of curves: they never fall, move with their exposures, and doubt grows with that of the readings."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tankside.core.refusals import Refused
from tankside.core.sensitometry.contrast import average_gradient, contrast_index, gamma, useful_range
from tankside.core.sensitometry.curve import Curve, Strip, curve_of, measured
from tankside.core.sensitometry.speed import speed_point

LOG_H = np.arange(-3.0, 0.05, 0.15)


def strip(*, slope: float = 0.6, noise: float = 0.0, shift: float = 0.0, reading_sd: float = 0.02) -> Strip:
    """A soft toe and a straight part, with readings off by a fixed pattern."""
    net = slope / 5 * np.log1p(np.exp(5 * (LOG_H + 2.2)))
    pattern = np.cos(2.4 * np.arange(len(LOG_H)))
    return Strip(LOG_H + shift, 0.3 + net + noise * pattern, 0.3, reading_sd)


@given(slope=st.floats(0.3, 1.2), noise=st.floats(0, 0.05))
@settings(max_examples=20)
def test_a_curve_never_falls(slope: float, noise: float) -> None:
    """However rough the readings are."""
    assert np.all(np.diff(curve_of(strip(slope=slope, noise=noise)).shape.net) >= 0)


@given(shift=st.floats(-2, 2))
@settings(max_examples=20)
def test_more_light_moves_the_speed_point_and_nothing_else(shift: float) -> None:
    """Exposures a constant farther to the right: contrast stays, the speed point moves with them."""
    here, there = curve_of(strip()), curve_of(strip(shift=shift))

    assert speed_point(here.shape) + shift == pytest.approx(speed_point(there.shape), abs=1e-3)
    assert contrast_index(here.shape) == pytest.approx(contrast_index(there.shape), abs=1e-3)


@given(slope=st.floats(0.35, 1.1), more=st.floats(0.02, 0.1))
@settings(max_examples=20)
def test_a_steeper_film_is_steeper_by_every_measure(slope: float, more: float) -> None:
    """Contrast index, average gradient and gamma agree on which of two is steeper."""
    flat, steep = curve_of(strip(slope=slope)).shape, curve_of(strip(slope=slope + more)).shape

    for measure in (contrast_index, average_gradient, gamma):
        assert measure(flat) < measure(steep)


def test_doubt_grows_with_the_reading_error() -> None:
    """Four times the error is about four times the interval."""
    curves = [curve_of(strip(reading_sd=sd)) for sd in (0.005, 0.02)]
    fine, coarse = (measured(one, contrast_index) for one in curves)

    assert 2.5 < (coarse.high - coarse.low) / (fine.high - fine.low) < 5


def test_the_scatter_is_told() -> None:
    """Readings worse than they were said to be show in the scatter."""
    assert curve_of(strip(noise=0.05)).scatter > 0.02 > curve_of(strip()).scatter


@pytest.mark.parametrize(
    ("bad", "code"),
    [
        (lambda: Strip(LOG_H[:3], np.zeros(3)), "too-few-readings"),
        (lambda: Strip(LOG_H, np.full(len(LOG_H), 7.0)), "step-density-out-of-range"),
        (lambda: Strip(LOG_H, np.full(len(LOG_H), np.nan)), "step-density-out-of-range"),
        (lambda: Strip(LOG_H, np.zeros(len(LOG_H)), reading_sd=0.0), "reading-error-out-of-range"),
    ],
)
def test_what_is_no_strip_is_refused(bad: object, code: str) -> None:
    """Too few steps, impossible densities, no reading error."""
    assert callable(bad)
    with pytest.raises(Refused) as no:
        bad()
    assert code == no.value.refusal.code


def short() -> Curve:
    """A curve that ends at 0.4 above base and fog."""
    whole = strip()
    return curve_of(Strip(whole.log_h[:9], whole.density[:9], 0.3, 0.01))


@pytest.mark.parametrize("measure", [contrast_index, average_gradient, useful_range])
def test_a_short_curve_is_not_stretched(measure: object) -> None:
    """Where the outer point was not exposed there is no number."""
    assert callable(measure)
    with pytest.raises(Refused):
        measure(short().shape)
