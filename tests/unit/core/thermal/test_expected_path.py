"""A run's temperature from its readings: fitted, recorded, widened."""

from __future__ import annotations

import numpy as np
import pytest

from tankside.core.doubt.estimate import Estimate
from tankside.core.doubt.groups import uniform_draws
from tankside.core.refusals import Refused
from tankside.core.thermal.drift import Reading, temp_at
from tankside.core.thermal.expected_path import expected_path, fit_start, reading_in_tank
from tankside.core.thermal.trace import record

TAU = Estimate(106.0, 60.0, 180.0, "min")


def true_readings(*times_s: float) -> list[Reading]:
    """Readings without error of a start at 20 in a room of 16, tau 106."""
    return [Reading(t, float(temp_at(t, start_c=20, room_c=16, tau_min=106))) for t in times_s]


def test_readings_on_the_drift_give_its_start() -> None:
    """Without error the start is found and nothing is moved."""
    fit = fit_start(true_readings(60, 180, 420), room_c=16, tau_min=TAU)

    assert pytest.approx((20.0, 106.0), abs=1e-6) == (fit.start_c, fit.tau_min)
    assert fit.fits


def test_more_readings_narrow_the_start() -> None:
    """Four readings leave less doubt of the start than one, about half."""
    one = fit_start(true_readings(60), room_c=16, tau_min=TAU).start
    four = fit_start(true_readings(60, 120, 180, 240), room_c=16, tau_min=TAU).start

    assert 0.4 < (four.high - four.low) / (one.high - one.low) < 0.7


def test_before_any_reading_the_plan_is_believed() -> None:
    """Unread, the start is the planned one with its own interval; without a plan it is refused."""
    planned = Estimate(20.1, 19.7, 20.5, "C")
    fit = fit_start([], room_c=16, tau_min=TAU, planned=planned)

    assert pytest.approx((20.1, 19.7, 20.5)) == (fit.start.value, fit.start.low, fit.start.high)
    with pytest.raises(Refused, match="nothing-read-yet"):
        fit_start([], room_c=16, tau_min=TAU)


def test_once_read_the_plan_no_longer_counts() -> None:
    """A reading replaces the planned start."""
    planned = Estimate(24.0, 23.9, 24.1, "C")

    assert fit_start(true_readings(60), room_c=16, tau_min=TAU, planned=planned).start_c == pytest.approx(
        20.0
    )


def test_the_wall_widens_early_readings_only() -> None:
    """At one minute a fifth of the step is still to come; after two minutes none."""
    assert pytest.approx(np.hypot(0.1, 0.2 / np.sqrt(3))) == reading_in_tank(60, 20.0, tank_step_k=1.0).sd_k
    assert reading_in_tank(180, 20.0, tank_step_k=1.0).sd_k == 0.1


def test_the_record_goes_through_its_readings() -> None:
    """Back along the drift, straight between, relaxing after: and through each reading itself."""
    readings = [Reading(300, 18.5), Reading(60, 19.2), Reading(130, 19.4)]
    path = record(readings, room_c=16, tau_min=106, until_s=900)
    at = dict(zip(path.times_s.tolist(), path.temps_c.tolist(), strict=True))

    assert [19.2, 19.4, 18.5] == pytest.approx([at[60.0], at[130.0], at[300.0]])
    assert at[0.0] > 19.2
    assert at[900.0] == pytest.approx(float(temp_at(600, start_c=18.5, room_c=16, tau_min=106)))
    assert path.times_s[-1] == 900
    assert np.all(np.diff(path.times_s) > 0)


def test_a_record_without_readings_drifts_from_the_plan() -> None:
    """Nothing read: the drift from the planned start."""
    path = record([], room_c=16, tau_min=106, until_s=600, start_c=20.0)

    assert path.temps_c[-1] == pytest.approx(float(temp_at(600, start_c=20, room_c=16, tau_min=106)))
    assert 19.8 < path.mean_c(300) < 20


def test_draws_straddle_what_is_told() -> None:
    """Half of the drawn paths lie above the told one at any time, by 0.1 K near the reading."""
    path = expected_path(
        true_readings(60),
        room_c=16,
        tau_min=TAU,
        until_s=600,
        uniforms=uniform_draws(1, count=2000, columns=2),
    )

    assert path.drawn_c.shape == (2000, len(path.times_s))
    assert 0.45 < np.mean(path.drawn_c[:, 20] > path.temps_c[20]) < 0.55
    assert np.std(path.drawn_c[:, 4]) == pytest.approx(0.1, rel=0.05)


def test_values_told_without_an_interval_are_nearly_certain() -> None:
    """A start and a time constant without interval are used as they are, to a few thousandths."""
    certain = Estimate(20.0, 20.0, 20.0, "C")
    tau = Estimate(106.0, 106.0, 106.0, "min")
    fit = fit_start([], room_c=16, tau_min=tau, planned=certain)

    assert pytest.approx((20.0, 106.0)) == (fit.start_c, fit.tau_min)
    assert fit.start.high - fit.start.low < 0.05
