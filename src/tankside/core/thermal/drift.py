"""The room pulls: temperature of a filled tank as time goes by, and how fast one's own tank drifts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from tankside.core.doubt.distributions import Z95, FloatArray, LogNormal, Values, rounded
from tankside.core.doubt.estimate import Estimate
from tankside.core.doubt.groups import alone, draws_for, seed_of
from tankside.core.doubt.monte_carlo import propagate
from tankside.core.refusals import refuse

AIR_TAU_BELIEF = LogNormal(60.0, 180.0)
"""What is believed of a plastic tank in air before it is measured, in minutes."""

READING_SD_K = 0.1
WALL_SETTLED_S = 120.0
"""Readings before this are still cooled or warmed by the wall."""

WALL_LEFT_AT_ONE_MINUTE = 0.2
"""Share of the tank's step that is still to come one minute after the pour."""


@dataclass(frozen=True, slots=True)
class Reading:
    """What the liquid was at `time_s` after the pour, the thermometer's offset added, and its sd."""

    time_s: float
    temp_c: float
    sd_k: float = READING_SD_K


def temp_at(time_s: Values, *, start_c: Values, room_c: Values, tau_min: Values) -> FloatArray:
    """Temperature in C at `time_s` after the start, drifting from `start_c` to `room_c`.

    Arguments: `tau_min` 3 (water bath) to 300 (steel, dry); arrays broadcast.
    Source: Newton's law of cooling. Doubt: that of tau; hands and wet walls are left out.

    >>> round(float(temp_at(600, start_c=20, room_c=15, tau_min=106)), 4)
    19.5499
    """
    left = np.exp(-np.asarray(time_s) / (60 * np.asarray(tau_min)))
    return np.asarray(room_c + (np.asarray(start_c) - room_c) * left)


def mean_temp(time_s: float, *, start_c: float, room_c: float, tau_min: float) -> float:
    """Mean temperature in C over the first `time_s` (above 0) of a drift.

    Arguments as in `temp_at`. Source: its integral. Doubt: as there.

    >>> round(mean_temp(600, start_c=20, room_c=28, tau_min=106), 4)
    20.3658
    """
    x = time_s / (60 * tau_min)
    return float(room_c - (start_c - room_c) * np.expm1(-x) / x)


def start_for(temp_c: float, *, time_s: float, room_c: float, tau_min: float) -> float:
    """Temperature in C at the start, back along the drift from `temp_c` at `time_s`.

    Source: inverse of `temp_at`. Doubt: that of the reading, grown by exp(t/tau).

    >>> round(start_for(19.2, time_s=60, room_c=16, tau_min=106), 2)
    19.23
    """
    return float(room_c + (temp_c - room_c) * np.exp(time_s / (60 * tau_min)))


def tau_from_two_readings(
    first_c: float, second_c: float, *, apart_s: float, room_c: float, step_k: float = 0.2
) -> Estimate:
    """Time constant in minutes from two readings of one filled tank, and what rounding makes of it.

    Arguments: readings in C on one side of the room, the second nearer to it; `apart_s` above 0; `step_k` the
    width within which each reading may lie (0.2 for +-0.1).
    Source: tau = t / ln[(T0 - Tr)/(Tt - Tr)]. Doubt: 5-95 %, both readings uniform in their step.

    >>> found = tau_from_two_readings(19.2, 18.9, apart_s=240, room_c=16)
    >>> round(found.value), round(found.low), round(found.high, -1)
    (41, 28, 70.0)
    """
    far, near = first_c - room_c, second_c - room_c
    if far * near <= 0 or abs(near) >= abs(far):
        raise refuse(
            "readings-show-no-drift",
            ways_on=("wait-longer",),
            first_c=first_c,
            second_c=second_c,
            room_c=room_c,
        )
    groups = (alone("first", rounded(first_c, step=step_k)), alone("second", rounded(second_c, step=step_k)))
    draws = draws_for(groups, seed=seed_of("tau", first_c, second_c, apart_s, room_c, step_k), count=20_000)

    def rate(drawn: dict[str, FloatArray]) -> FloatArray:
        ratio = np.maximum((drawn["first"] - room_c) / (drawn["second"] - room_c), 1e-9)
        return np.asarray(np.log(ratio) / (apart_s / 60))

    out = propagate(lambda drawn: rate(dict(drawn)), groups, draws)
    slow, fast = out.interval()
    slowest_min = 1 / slow if slow > 0 else float("inf")
    return Estimate(1 / out.told, 1 / fast, slowest_min, "min", "two readings")


def own_tau(readings: Sequence[Reading], *, room_c: float, believed: LogNormal = AIR_TAU_BELIEF) -> Estimate:
    """Time constant in minutes of one's own tank: belief times readings, each in its due.

    The readings count as much as the interval that they were expected to give before they were taken, at the
    believed time constant; so a few early readings that happen to fall fast move little. Readings before
    2:00 are left out.
    Arguments: readings of one run; `room_c`; `believed` 5-95 % in minutes. Result: min, 5-95 %.
    Own model: docs/science/drift. Doubt: the interval; hands and wet walls shift it between evenings.

    >>> early = [Reading(120, 19.2, 0.082), Reading(360, 18.9, 0.082)]
    >>> round(own_tau(early, room_c=16).value) > 80
    True
    """
    settled = [one for one in readings if one.time_s >= WALL_SETTLED_S]
    if len(settled) < 2:
        return _estimate(float(np.log(believed.median)), believed.log_sd, "believed")
    times, temps, sds = (
        np.array([getattr(one, name) for one in settled]) for name in ("time_s", "temp_c", "sd_k")
    )
    found, expected_sd = _log_tau_read(times, temps - room_c, sds, believed.median)
    weights = np.array([believed.log_sd**-2, expected_sd**-2])
    middle = float(weights @ [np.log(believed.median), found] / weights.sum())
    return _estimate(middle, float(weights.sum() ** -0.5), "belief and readings")


def _estimate(log_middle: float, log_sd: float, source: str) -> Estimate:
    """A log-normal as an estimate in minutes."""
    low, value, high = np.exp(log_middle + log_sd * np.array([-Z95, 0.0, Z95]))
    return Estimate(float(value), float(low), float(high), "min", source)


def _log_tau_read(
    times_s: FloatArray, above_k: FloatArray, sds: FloatArray, believed_min: float
) -> tuple[float, float]:
    """ln tau that the readings alone say, and the sd they were expected to have at the believed tau.

    ln of the difference to the room is a line in time with slope -1/tau; a slope of the wrong sign says no
    more than 'very slow', so tau is capped at twenty times the belief.
    """
    minutes = times_s / 60
    usable = np.abs(above_k) > 3 * sds
    if usable.sum() < 2:
        return float(np.log(believed_min)), float("inf")
    minutes, above_k, sds = minutes[usable], above_k[usable], sds[usable]
    log_sd = sds / np.abs(above_k)
    weight = log_sd**-2
    mean = float(np.sum(weight * minutes) / np.sum(weight))
    spread = float(np.sum(weight * (minutes - mean) ** 2))
    if spread == 0:
        return float(np.log(believed_min)), float("inf")
    slope = float(np.sum(weight * (minutes - mean) * np.log(np.abs(above_k)))) / spread
    tau = 1 / max(-slope, 1 / (20 * believed_min))
    return float(np.log(tau)), believed_min * spread**-0.5
