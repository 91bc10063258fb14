"""Control strips on a chart: no limits before twelve, one accident named, chance left alone."""

from __future__ import annotations

import numpy as np
import pytest

from tankside.core.refusals import Refused
from tankside.core.sensitometry.control_strips import control_chart, two_steps

TIRES = (0.84, 0.86, 0.85, 0.83, 0.86, 0.84, 0.87, 0.85, 0.84, 0.86, 0.83, 0.85)
FLOW = (49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1)


def test_eleven_points_draw_no_limits() -> None:
    """However odd one of them is."""
    chart = control_chart((*TIRES[:10], 1.5))

    assert (None, (), None, 1) == (chart.limits, chart.outside, chart.drifts, chart.still_needed)


@pytest.mark.checks(of=control_chart)
def test_limits_are_those_of_the_handbook() -> None:
    """Mean and three mean moving ranges over 1.128: the ten flow rates and two more at their printed mean.

    Source: NIST/SEMATECH e-Handbook 6.3.2.2; limits worked by hand from its formula.
    """
    values = np.array([*FLOW, 50.81, 50.81])
    by_hand = 3 * np.mean(np.abs(np.diff(values))) / 1.128
    chart = control_chart(values)

    assert chart.limits is not None
    assert values.mean() == pytest.approx(chart.limits.mean)
    assert values.mean() + by_hand == pytest.approx(chart.limits.upper, rel=1e-4)
    assert () == chart.outside


def test_one_accident_is_named_and_hides_nothing() -> None:
    """A strip far off is outside, moves neither limits nor averages, and the next accident still shows."""
    calm = control_chart(TIRES)
    chart = control_chart((*TIRES, 1.05, 0.85, 1.0))

    assert calm.limits is not None
    assert chart.limits is not None
    assert (12, 14) == chart.outside
    assert chart.drifts is None
    assert abs(chart.limits.sigma - calm.limits.sigma) < 0.5 * calm.limits.sigma


def test_a_lasting_small_shift_is_seen_by_the_second_look() -> None:
    """A standard deviation and a half upwards from point 13 on: no single point is outside, sums tell."""
    shifted = [one + 0.03 for one in TIRES[:7]]
    chart = control_chart((*TIRES, *shifted))

    assert chart.drifts is not None
    assert chart.drifts >= 12


def test_chance_alone_seldom_gives_an_alarm() -> None:
    """Of 200 steady charts of 14 points less than one in five names a point or a shift."""
    dice = np.random.default_rng(7)
    charts = [control_chart(0.85 + 0.013 * dice.standard_normal(14)) for _ in range(200)]

    assert sum(bool(one.outside) or one.drifts is not None for one in charts) < 40


def test_strips_all_alike_are_steady() -> None:
    """No spread at all is no alarm."""
    assert () == control_chart([0.85] * 12).outside


def test_the_two_steps_are_those_that_all_have() -> None:
    """A step that one strip lacks is none of them."""
    first = [1.9, 1.5, 1.26, 0.9, 0.56, 0.3, 0.26]

    assert (4, 2) == two_steps([first])
    assert (4, 1) == two_steps([first, [1.9, 1.5, None, None, 0.56, 0.3, 0.26]])


@pytest.mark.parametrize("strips", [[], [[0.3, 0.31, 0.32]], [[1.9, None], [None, 0.3]]])
def test_strips_without_two_steps_are_refused(strips: list[list[float | None]]) -> None:
    """None, flat ones, or none in common."""
    with pytest.raises(Refused) as caught:
        two_steps(strips)

    assert "no-like-steps" == caught.value.refusal.code
