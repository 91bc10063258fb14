"""Lines with a belief about their slope, and through intervals."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tankside.core.fits.lines import line_with_belief, slopes_through


def test_without_belief_it_is_ordinary_least_squares() -> None:
    """numpy's own fit gives the same line and covariance."""
    x, y = np.array([0.0, 1.0, 2.0, 4.0]), np.array([1.0, 2.2, 2.9, 5.1])
    line = line_with_belief(x, y, np.full(4, 0.1), slope=0.0, slope_sd=1e9, x_ref=0.0)
    (slope, level), covariance = np.polyfit(x, y, 1, w=np.full(4, 10.0), cov="unscaled")

    assert (slope, level) == pytest.approx((line.slope, line.level))
    assert np.sqrt(np.diag(covariance)) == pytest.approx([line.slope_sd, line.level_sd])
    assert np.polyval([slope, level], 3.0) == pytest.approx(line.at(3.0))


def test_one_point_keeps_the_belief() -> None:
    """A single point fixes the level; the slope and its doubt stay as believed, growing away from it."""
    line = line_with_belief(
        np.array([20.0]), np.array([6.3]), np.array([0.01]), slope=-0.08, slope_sd=0.02, x_ref=20.0
    )

    assert (-0.08, 0.02) == pytest.approx((line.slope, line.slope_sd))
    assert line.sd_at(20.0) == pytest.approx(0.01)
    assert line.sd_at(22.0) == pytest.approx(np.hypot(0.01, 0.04))


@given(slope=st.floats(-2, 2), level=st.floats(-5, 5), half=st.floats(0.01, 1))
def test_a_line_inside_its_intervals_is_found(slope: float, level: float, half: float) -> None:
    """The slope that made the intervals lies in the range told."""
    x = np.array([0.0, 0.5, 2.0, 3.5])
    found = slopes_through(x, level + slope * x - half, level + slope * x + half)

    assert found.exists
    assert found.low <= slope <= found.high
    assert 4 * half / 3.5 == pytest.approx(found.high - found.low)


def test_a_bend_has_no_line() -> None:
    """Three intervals in a bend are crossed by no straight line."""
    middle = np.array([0.0, 1.0, 0.0])

    assert not slopes_through(np.arange(3.0), middle - 0.2, middle + 0.2).exists
