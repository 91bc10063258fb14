"""What would narrow the time for a wanted contrast: the next step strip, and when to develop it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from tankside.core.development.belief import ROLL_SHARE, Belief, times_for
from tankside.core.development.contrast import contrast_at
from tankside.core.doubt.distributions import Z95, FloatArray

STRIP_SD = 0.015
"""Standard deviation of a contrast index from 21 densities read to 0.02 (docs/science/curves)."""


@dataclass(frozen=True, slots=True)
class NextStrip:
    """A step strip developed for `time_s`, and half the interval of the wanted time that it would leave."""

    time_s: float
    half_left_s: float


def next_strips(
    belief: Belief, wanted: float, *, times_s: Sequence[float], strip_sd: float = STRIP_SD
) -> tuple[NextStrip, ...]:
    """What a step strip at each of `times_s` would leave of the doubt of the time for `wanted`, best first.

    Arguments: a wanted contrast within reach; times above 0 in s at the reference temperature; `strip_sd`
    reading error of its contrast. Result: half intervals in s, smaller is better.
    Own model: docs/science/kinetics (the time regressed on what the strip would read, to first order).
    Doubt: a tenth of what is told; the reading itself may surprise.

    >>> from tankside.core.development.belief import INPUTS, believed
    >>> from tankside.core.doubt.groups import uniform_draws
    >>> before = believed(0.56, time_s=570, uniforms=uniform_draws(1, count=4000, columns=INPUTS))
    >>> [round(one.time_s) for one in next_strips(before, 0.56, times_s=(285, 570, 1140))][0]
    570
    """
    wanted_s = times_for(belief, wanted)
    reached = np.isfinite(wanted_s)
    found = []
    for time_s in times_s:
        read = contrast_at(time_s, c_inf=belief.c_inf, k_per_s=belief.k_per_s, induction_s=belief.induction_s)
        left = _left(belief.weight[reached], wanted_s[reached], read[reached], strip_sd)
        found.append(NextStrip(time_s, Z95 * left))
    return tuple(sorted(found, key=lambda one: one.half_left_s))


def _left(weight: FloatArray, wanted_s: FloatArray, read: FloatArray, strip_sd: float) -> float:
    """Standard deviation of the wanted time that remains once `read` is known to its error."""
    weight = weight / np.sum(weight)
    time_away, read_away = wanted_s - weight @ wanted_s, read - weight @ read
    mean_read = float(weight @ read)
    noise = strip_sd**2 + (ROLL_SHARE * mean_read) ** 2
    explained = (weight @ (time_away * read_away)) ** 2 / (weight @ read_away**2 + noise)
    return float(np.sqrt(max(0.0, float(weight @ time_away**2 - explained))))
