"""Is the process still what it was? Individuals with their moving range, EWMA and CUSUM."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from tankside.core.doubt.distributions import FloatArray
from tankside.core.refusals import refuse
from tankside.core.sensitometry.range_constants import range_constants

LEAST_FOR_LIMITS = 12
"""Points below which a page draws no limits: a home chart must not cry wolf (ours)."""


@dataclass(frozen=True, slots=True)
class Individuals:
    """Mean, mean moving range, the standard deviation it stands for, and limits three of them away."""

    mean: float
    mean_range: float
    sigma: float
    lower: float
    upper: float
    range_upper: float
    count: int

    @property
    def enough_for_limits(self) -> bool:
        """Whether there are points enough to draw limits by."""
        return self.count >= LEAST_FOR_LIMITS


@dataclass(frozen=True, slots=True, eq=False)
class Ewma:
    """Weighted averages point by point, with the limits of each."""

    points: FloatArray
    lower: FloatArray
    upper: FloatArray

    @property
    def first_outside(self) -> int | None:
        """Number (from 0) of the first point outside its limits."""
        return _first((self.points > self.upper) | (self.points < self.lower))


@dataclass(frozen=True, slots=True, eq=False)
class Cusum:
    """One-sided sums of what lies beyond the slack, and the plain sum of deviations."""

    high: FloatArray
    low: FloatArray
    plain: FloatArray
    first_signal: int | None


def individuals(
    values: FloatArray, *, d2: float | None = None, drop_beyond: float | None = None
) -> Individuals:
    """Limits of single values from the mean distance of neighbours.

    Arguments: two values or more, oldest first; `d2` computed unless given; `drop_beyond` (3.5 after Nelson
    1982) leaves out moving ranges that many times their mean. Result: in the unit of the values.
    Source: NIST/SEMATECH e-Handbook 6.3.2.2: mean +- 3 MR / d2. Doubt: sigma to 1/sqrt(1.7 n), so 22 % at 12.

    >>> flow = np.array([49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1])
    >>> round(individuals(flow, d2=1.128).upper, 4)
    55.8041
    """
    if len(values) < 2:
        raise refuse("too-few-readings", ways_on=("read-more",), count=len(values), least=2)
    two = range_constants(2)
    ranges = np.abs(np.diff(values))
    if drop_beyond is not None:
        ranges = ranges[ranges <= drop_beyond * np.mean(ranges)]
    mean, mean_range = float(np.mean(values)), float(np.mean(ranges))
    sigma = mean_range / (two.d2 if d2 is None else d2)
    return Individuals(
        mean, mean_range, sigma, mean - 3 * sigma, mean + 3 * sigma, mean_range * two.upper, len(values)
    )


def ewma(
    values: FloatArray,
    *,
    target: float,
    sigma: float,
    weight: float = 0.2,
    width: float = 3.0,
    settled: bool = False,
) -> Ewma:
    """Exponentially weighted averages and their limits; `settled` takes the limits of a long series at once.

    Arguments: `sigma` above 0 in the unit of the values; `weight` of the newest 0.05-1; `width` in sigmas.
    Source: NIST/SEMATECH e-Handbook 6.3.2.4, variance s^2 w/(2-w) (1-(1-w)^2i). Doubt: that of sigma.

    >>> told = ewma(np.array([52.0, 47.0]), target=50, sigma=2.0539, weight=0.3)
    >>> [round(float(one), 2) for one in told.points]
    [50.6, 49.52]
    """
    _positive(sigma)
    if not 0 < weight <= 1:
        raise refuse("weight-out-of-range", at="weight", weight=weight)
    points, last = np.empty(len(values)), target
    for i, value in enumerate(values):
        last = weight * float(value) + (1 - weight) * last
        points[i] = last
    grown = 1.0 if settled else 1 - (1 - weight) ** (2 * np.arange(1, len(values) + 1))
    half = width * sigma * np.sqrt(weight / (2 - weight) * grown) * np.ones(len(values))
    return Ewma(points, target - half, target + half)


def cusum(values: FloatArray, *, target: float, slack: float, limit: float) -> Cusum:
    """One-sided cumulative sums: what each value goes beyond `target` by more than `slack`.

    Arguments: all in the unit of the values; `slack` half the shift to be found, `limit` 4-5 sigmas (both
    above 0). Result: sums and the number (from 0) of the first point where one exceeds the limit.
    Source: NIST/SEMATECH e-Handbook 6.3.2.3; Montgomery and Runger, tables 16-7 and 16-8. Doubt: none.

    >>> told = cusum(np.array([102.0, 94.8]), target=99, slack=1, limit=10)
    >>> [round(float(one), 6) for one in (*told.high, *told.low)]
    [2.0, 0.0, 0.0, 3.2]
    """
    high, low, up, down = np.empty(len(values)), np.empty(len(values)), 0.0, 0.0
    for i, value in enumerate(values):
        up = max(0.0, up + float(value) - target - slack)
        down = max(0.0, down + target - float(value) - slack)
        high[i], low[i] = up, down
    return Cusum(high, low, np.cumsum(values - target), _first((high > limit) | (low > limit)))


def lag_one(values: FloatArray) -> float:
    """How much each value follows the one before it: autocorrelation at lag one (-1 to 1).

    Arguments: three values or more, not all alike. Source: NIST StRD, univariate summary statistics.
    Doubt: 1/sqrt(n); well above 0 the limits of `individuals` are far too tight.

    >>> round(lag_one(np.array([1.0, 2.0, 3.0, 4.0])), 2)
    0.25
    """
    away = values - np.mean(values)
    if len(values) < 3 or not np.any(away):
        raise refuse("too-few-readings", ways_on=("read-more",), count=len(np.unique(values)), least=3)
    return float(away[1:] @ away[:-1] / (away @ away))


def _first(outside: np.ndarray) -> int | None:
    """Number of the first true one."""
    return int(np.argmax(outside)) if np.any(outside) else None


def _positive(sigma: float) -> None:
    """Refuse a standard deviation that is none."""
    if sigma <= 0:
        raise refuse("no-spread", at="sigma", ways_on=("read-more",))
