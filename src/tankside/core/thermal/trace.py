"""The record of one run's temperature: where it was, from what was read."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from tankside.core.doubt.distributions import FloatArray
from tankside.core.refusals import refuse
from tankside.core.thermal.drift import Reading, start_for, temp_at

GRID_S = 15.0


@dataclass(frozen=True, slots=True)
class Trace:
    """Temperatures in C at times in s after the pour, straight in between."""

    times_s: FloatArray
    temps_c: FloatArray

    def mean_c(self, until_s: float) -> float:
        """Mean temperature from the pour to `until_s`."""
        times = np.append(self.times_s[self.times_s < until_s], until_s)
        return float(np.trapezoid(np.interp(times, self.times_s, self.temps_c), times) / until_s)


def grid(until_s: float) -> FloatArray:
    """Times every 15 s from 0 to `until_s` and `until_s` itself.

    Own model: docs/science/drift: what drifts in a quarter of a minute is below a reading. Doubt: none.

    >>> grid(40.0).tolist()
    [0.0, 15.0, 30.0, 40.0]
    """
    steps = int(np.ceil(until_s / GRID_S))
    return np.asarray(np.minimum(np.arange(steps + 1) * GRID_S, until_s), dtype=np.float64)


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
