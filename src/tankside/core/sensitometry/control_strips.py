"""Control strips on a chart: two fixed steps, limits from twelve on, and which points are odd."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from tankside.core.doubt.distributions import FloatArray
from tankside.core.refusals import refuse
from tankside.core.sensitometry.control import (
    LEAST_FOR_LIMITS,
    Individuals,
    cusum,
    ewma,
    individuals,
)
from tankside.core.sensitometry.run_rules import FOR_A_HOME_CHART, broken_rules

LOW_NET, HIGH_NET = 0.30, 1.00
"""Densities above base and fog next to which the two steps of the chart are chosen (ours)."""

FAR_RANGE = 3.5
SLACK_SIGMAS, LIMIT_SIGMAS = 0.5, 5.0


@dataclass(frozen=True, slots=True)
class ControlChart:
    """Density differences oldest first; `limits` from twelve points on, with what they make odd.

    `outside` are numbers (from 0) of points beyond the limits or the eighth on one side; `drifts` that of the
    first where averages or sums of those within see a lasting shift; `weighted` are the averages. None and
    empty without limits.
    """

    values: tuple[float, ...]
    limits: Individuals | None
    outside: tuple[int, ...]
    drifts: int | None
    weighted: tuple[tuple[int, float], ...]

    @property
    def still_needed(self) -> int:
        """How many more points until limits are drawn."""
        return max(0, LEAST_FOR_LIMITS - len(self.values))


def two_steps(strips: Sequence[Sequence[float | None]]) -> tuple[int, int]:
    """The two steps (from 0) whose difference is charted, next to 0.30 and 1.00 above the lowest density.

    Arguments: densities of like-exposed strips, a step a place, None where it was not read; the first decides
    among the steps that all have. Result: the lower and the higher step.
    Own model: docs/science/process-control. Doubt: none; other steps would chart the same process.

    >>> two_steps([[1.9, 1.5, 1.26, 0.9, 0.56, 0.3, 0.26]])
    (4, 2)
    """
    whole = [n for n in range(min((len(one) for one in strips), default=0))
             if all(one[n] is not None for one in strips)]  # fmt: skip
    read = {n: float(strips[0][n] or 0.0) for n in whole}
    base = min(read.values(), default=0.0)
    if len(read) < 2 or max(read.values()) - base < HIGH_NET / 2:
        raise refuse("no-like-steps", ways_on=("read-more",))
    low = min(read, key=lambda n: abs(read[n] - base - LOW_NET))
    high = min((n for n in read if n != low), key=lambda n: abs(read[n] - base - HIGH_NET))
    return low, high


def control_chart(values: Sequence[float]) -> ControlChart:
    """What a chart of single values tells, without crying wolf.

    Arguments: density differences, oldest first. Result: limits only from 12 points on, and by the first 12,
    so that a slow drift does not carry its own limits along; an odd one among these is left out of them once.
    Source: NIST/SEMATECH e-Handbook 6.3.2.2 to 6.3.2.4; moving ranges beyond 3.5 of their mean are dropped
    (Nelson 1982). Doubt: sigma to 22 % at 12 points.

    >>> control_chart([0.84, 0.86, 0.85]).still_needed
    9
    """
    told = tuple(float(one) for one in values)
    if len(told) < LEAST_FOR_LIMITS:
        return ControlChart(told, None, (), None, ())
    data = np.array(told)
    limits = _established(data[:LEAST_FOR_LIMITS])
    if limits.sigma <= 0:
        return ControlChart(told, limits, (), None, ())
    odd = broken_rules(data, mean=limits.mean, sigma=limits.sigma, numbers=FOR_A_HOME_CHART)
    kept = [n for n, one in enumerate(data) if limits.lower <= one <= limits.upper]
    averages = ewma(data[kept], target=limits.mean, sigma=limits.sigma)
    sums = cusum(
        data[kept], target=limits.mean, slack=SLACK_SIGMAS * limits.sigma, limit=LIMIT_SIGMAS * limits.sigma
    )
    shifts = [kept[one] for one in (averages.first_outside, sums.first_signal) if one is not None]
    return ControlChart(
        told,
        limits,
        tuple(n for n, rules in enumerate(odd) if rules),
        min(shifts, default=None),
        tuple((kept[n], float(one)) for n, one in enumerate(averages.points)),
    )


def _established(data: FloatArray) -> Individuals:
    """The level and limits that the first points set, odd ones among them left out once."""
    first = individuals(data, drop_beyond=FAR_RANGE)
    usual = data[(data >= first.lower) & (data <= first.upper)]
    odd = len(usual) < len(data) and len(usual) >= 2
    return individuals(usual, drop_beyond=FAR_RANGE) if odd else first
