"""T(t) of one run from what was read: the drift that says where it goes, the record of where it was."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from tankside.core.doubt.distributions import Z95, FloatArray, standard_normal
from tankside.core.doubt.estimate import Estimate
from tankside.core.refusals import refuse
from tankside.core.thermal.drift import (
    READING_SD_K,
    WALL_LEFT_AT_ONE_MINUTE,
    WALL_SETTLED_S,
    Reading,
    start_for,
    temp_at,
)

GRID_S = 15.0
MISFIT_SD = 3.0
"""Readings further than this many sd from the fitted drift: the record is followed instead."""


@dataclass(frozen=True, slots=True)
class Trace:
    """Temperatures in C at times in s after the pour, straight in between."""

    times_s: FloatArray
    temps_c: FloatArray

    def mean_c(self, until_s: float) -> float:
        """Mean temperature from the pour to `until_s`."""
        times = np.append(self.times_s[self.times_s < until_s], until_s)
        return float(np.trapezoid(np.interp(times, self.times_s, self.temps_c), times) / until_s)


@dataclass(frozen=True, slots=True)
class StartFit:
    """Start temperature and ln(tau) fitted to a run's readings, with their covariance."""

    start_c: float
    log_tau: float
    covariance: tuple[tuple[float, float], tuple[float, float]]
    room_c: float
    worst_misfit_sd: float

    @property
    def start(self) -> Estimate:
        """Temperature at the start, C, 5-95 %."""
        half = Z95 * float(np.sqrt(self.covariance[0][0]))
        return Estimate(self.start_c, self.start_c - half, self.start_c + half, "C", "readings of this run")

    @property
    def tau_min(self) -> float:
        """Time constant used for this run only; never the tank's."""
        return float(np.exp(self.log_tau))

    @property
    def fits(self) -> bool:
        """Whether one drift explains every reading to three of its standard deviations."""
        return self.worst_misfit_sd <= MISFIT_SD

    def trace(self, until_s: float) -> Trace:
        """The fitted drift to `until_s`."""
        times = grid(until_s)
        return Trace(times, temp_at(times, start_c=self.start_c, room_c=self.room_c, tau_min=self.tau_min))

    def drawn(self, until_s: float, uniforms: FloatArray) -> FloatArray:
        """Drifts (draws by times of the grid) that the readings allow; `uniforms` has two columns."""
        lower = np.linalg.cholesky(np.asarray(self.covariance))
        start, log_tau = (np.array([self.start_c, self.log_tau]) + standard_normal(uniforms) @ lower.T).T
        return temp_at(
            grid(until_s)[None, :],
            start_c=start[:, None],
            room_c=self.room_c,
            tau_min=np.exp(log_tau)[:, None],
        )


def grid(until_s: float) -> FloatArray:
    """Times every 15 s from 0 to `until_s` and `until_s` itself."""
    steps = int(np.ceil(until_s / GRID_S))
    return np.asarray(np.minimum(np.arange(steps + 1) * GRID_S, until_s), dtype=np.float64)


def reading_in_tank(
    time_s: float,
    raw_c: float,
    *,
    offset_k: float = 0.0,
    sd_k: float = READING_SD_K,
    tank_step_k: float = 0.0,
) -> Reading:
    """A reading made true by the thermometer's offset, and widened while the wall still takes heat.

    Arguments: `raw_c` as read; `offset_k` is added; `sd_k` above 0; `tank_step_k` by how much the tank was
    expected to change the liquid (either sign). Result: reading with its sd in K.
    Own model: docs/science/drift: a fifth of the step is still to come at 1:00, none after 2:00.
    Doubt: the sd.

    >>> reading_in_tank(60, 19.5, offset_k=-0.3).temp_c
    19.2
    >>> round(reading_in_tank(60, 19.5, tank_step_k=-1.0).sd_k, 3)
    0.153
    """
    still = WALL_LEFT_AT_ONE_MINUTE ** (time_s / 60) if time_s < WALL_SETTLED_S else 0.0
    wall_sd = still * abs(tank_step_k) / np.sqrt(3)
    return Reading(time_s, raw_c + offset_k, float(np.hypot(sd_k, wall_sd)))


def fit_start(
    readings: Sequence[Reading], *, room_c: float, tau_min: Estimate, planned: Estimate | None = None
) -> StartFit:
    """Least squares of the start temperature, ln(tau) held by what is believed of the tank.

    The drift is made straight about the believed tau, so that readings count as much as they were expected to
    and a fast fall in few readings is not taken for a new time constant.
    Arguments: readings of this run, offset added; `tau_min` 5-95 %; `planned` start, used only unread.
    Result: fit in C and ln(min). Own model: docs/science/drift. Doubt: its covariance.

    >>> tau = Estimate(106.0, 60.0, 180.0, "min")
    >>> fit = fit_start([Reading(60, 19.2)], room_c=16, tau_min=tau)
    >>> round(fit.start_c, 2), round(fit.tau_min)
    (19.23, 106)
    """
    if not readings and planned is None:
        raise refuse("nothing-read-yet", ways_on=("read-the-tank",))
    log_tau = float(np.log(tau_min.value))
    log_tau_sd = float(np.log(tau_min.high / tau_min.low)) / (2 * Z95)
    first_c = (
        planned.value if planned is not None and not readings else _back_to_start(readings, room_c, tau_min)
    )
    times = np.array([one.time_s for one in readings])
    sds = np.array([one.sd_k for one in readings])
    left = np.exp(-times / (60 * tau_min.value))
    rows = [*np.column_stack([left, (first_c - room_c) * left * times / (60 * tau_min.value)]) / sds[:, None]]
    misfit = [*((np.array([one.temp_c for one in readings]) - room_c - (first_c - room_c) * left) / sds)]
    rows.append(np.array([0.0, 1 / log_tau_sd]))
    misfit.append(0.0)
    if not readings and planned is not None:
        rows.append(np.array([2 * Z95 / (planned.high - planned.low), 0.0]))
        misfit.append(0.0)
    design, right = np.array(rows), np.array(misfit)
    covariance = np.linalg.inv(design.T @ design)
    moved = covariance @ design.T @ right
    worst = float(np.max(np.abs(right - design @ moved)[: len(readings)], initial=0.0))
    (a, b), (_, d) = covariance
    return StartFit(
        first_c + float(moved[0]),
        log_tau + float(moved[1]),
        ((float(a), float(b)), (float(b), float(d))),
        room_c,
        worst,
    )


def record(
    readings: Sequence[Reading],
    *,
    room_c: float,
    tau_min: float,
    until_s: float,
    start_c: float | None = None,
) -> Trace:
    """Where the temperature was: back along the drift, straight between readings, then relaxing to the room.

    Arguments: readings in any order; `until_s` above 0; `start_c` used only where nothing was read.
    Result: trace from 0 to `until_s`. Own model: docs/science/drift. Doubt: that of each reading.

    >>> one = record([Reading(60, 19.2), Reading(300, 18.9)], room_c=16, tau_min=106, until_s=600)
    >>> round(float(np.interp(180, one.times_s, one.temps_c)), 2)
    19.05
    """
    if not readings and start_c is None:
        raise refuse("nothing-read-yet", ways_on=("read-the-tank",))
    ordered = sorted(readings, key=lambda one: one.time_s) or [Reading(0.0, start_c or 0.0)]
    knots = np.array([one.time_s for one in ordered])
    temps = np.array([one.temp_c for one in ordered])
    times = np.union1d(grid(until_s), knots[knots < until_s])
    before = start_for(temps[0], time_s=knots[0], room_c=room_c, tau_min=tau_min)
    path = np.interp(times, knots, temps)
    path = np.where(times < knots[0], temp_at(times, start_c=before, room_c=room_c, tau_min=tau_min), path)
    after = temp_at(np.maximum(times - knots[-1], 0), start_c=temps[-1], room_c=room_c, tau_min=tau_min)
    return Trace(times, np.where(times > knots[-1], after, path))


def _back_to_start(readings: Sequence[Reading], room_c: float, tau_min: Estimate) -> float:
    """Weighted mean of the starts that each reading says at the believed tau."""
    starts = [
        start_for(one.temp_c, time_s=one.time_s, room_c=room_c, tau_min=tau_min.value) for one in readings
    ]
    return float(np.average(starts, weights=[one.sd_k**-2 for one in readings]))
