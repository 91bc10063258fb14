"""Where a run's temperature goes: the start fitted to what was read, the tank's time constant believed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

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
from tankside.core.thermal.trace import Trace, grid, record

LEAST_LOG_TAU_SD, LEAST_START_SD_K = 0.003, 0.01
"""Nothing is taken to be known better than this, also where no interval is told."""

MISFIT_SD = 3.0
"""Readings further than this many sd from the fitted drift: the record is followed instead."""


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


@dataclass(frozen=True, slots=True)
class Expected:
    """Where a run's temperature was and will be, every 15 s: told, and drawn (draws by times).

    `follows` is 'drift' where one drift explains all readings, else 'readings', straight between them.
    """

    times_s: FloatArray
    temps_c: FloatArray
    drawn_c: FloatArray
    follows: Literal["drift", "readings"]


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
    if readings:
        first_c = _back_to_start(readings, room_c, tau_min.value)
        start_row, used = None, list(readings)
    elif planned is not None:
        first_c, used = planned.value, []
        start_row = np.array([1 / max((planned.high - planned.low) / (2 * Z95), LEAST_START_SD_K), 0.0])
    else:
        raise refuse("nothing-read-yet", ways_on=("read-the-tank",))
    design, misfit = _straightened(used, first_c, room_c, tau_min)
    if start_row is not None:
        design, misfit = np.vstack([design, start_row]), np.append(misfit, 0.0)
    covariance = np.linalg.inv(design.T @ design)
    moved = covariance @ design.T @ misfit
    left_over = np.abs(misfit - design @ moved)[: len(used)]
    (a, b), (_, d) = covariance
    return StartFit(
        start_c=first_c + float(moved[0]),
        log_tau=float(np.log(tau_min.value) + moved[1]),
        covariance=((float(a), float(b)), (float(b), float(d))),
        room_c=room_c,
        worst_misfit_sd=float(np.max(left_over, initial=0.0)),
    )


def expected_path(
    readings: Sequence[Reading],
    *,
    room_c: float,
    tau_min: Estimate,
    until_s: float,
    uniforms: FloatArray,
    planned: Estimate | None = None,
) -> Expected:
    """Where the temperature was and will be to `until_s`, told and drawn, from all that was read so far.

    Arguments as in `fit_start`; `uniforms` draws by two columns, for start and tau. Result: C every 15 s.
    Own model: docs/science/drift. Doubt: the draws; where readings leave the drift, their spread is put about
    the recorded path instead.

    >>> tau = Estimate(106.0, 60.0, 180.0, "min")
    >>> path = expected_path([Reading(60, 19.2)], room_c=16, tau_min=tau, until_s=600,
    ...                      uniforms=np.full((1, 2), 0.5))
    >>> path.follows, round(float(path.temps_c[0]), 2)
    ('drift', 19.23)
    """
    fit = fit_start(readings, room_c=room_c, tau_min=tau_min, planned=planned)
    told, drawn = fit.trace(until_s), fit.drawn(until_s, uniforms)
    if fit.fits:
        return Expected(told.times_s, told.temps_c, drawn, "drift")
    read = record(readings, room_c=room_c, tau_min=tau_min.value, until_s=until_s)
    temps = np.interp(told.times_s, read.times_s, read.temps_c)
    return Expected(told.times_s, temps, drawn - told.temps_c + temps, "readings")


def _straightened(
    readings: Sequence[Reading], first_c: float, room_c: float, tau_min: Estimate
) -> tuple[FloatArray, FloatArray]:
    """Slopes of the readings by start and ln(tau), and their misfits, in sd; the belief in tau comes last."""
    times, temps, sds = (
        np.array([getattr(one, name) for one in readings]) for name in ("time_s", "temp_c", "sd_k")
    )
    gone = times / (60 * tau_min.value)
    by_start = np.exp(-gone)
    by_log_tau = (first_c - room_c) * gone * by_start
    log_tau_sd = max(np.log(tau_min.high / tau_min.low) / (2 * Z95), LEAST_LOG_TAU_SD)
    design = np.vstack([np.column_stack([by_start, by_log_tau]) / sds[:, None], [0.0, 1 / log_tau_sd]])
    return design, np.append((temps - room_c - (first_c - room_c) * by_start) / sds, 0.0)


def _back_to_start(readings: Sequence[Reading], room_c: float, tau_min: float) -> float:
    """Weighted mean of the starts that each reading says at the believed tau."""
    starts = [start_for(one.temp_c, time_s=one.time_s, room_c=room_c, tau_min=tau_min) for one in readings]
    return float(np.average(starts, weights=[one.sd_k**-2 for one in readings]))
