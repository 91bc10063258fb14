"""Contrast against time: a rise that levels off, after an induction time."""

from __future__ import annotations

import numpy as np

from tankside.core.doubt.distributions import FloatArray, LogNormal, Triangular, Values
from tankside.core.doubt.estimate import Estimate
from tankside.core.refusals import refuse

C_INF = Estimate(0.95, 0.75, 1.30, "contrast index", "ours, for pictorial film")
C_INF_BELIEF = LogNormal(0.75, 1.30)
INDUCTION_S = Estimate(30.0, 0.0, 60.0, "s", "ours")
INDUCTION_BELIEF = Triangular(0.0, 30.0, 60.0)
C_INF_OVER_CI = Estimate(1.7, 1.34, 2.32, "", "ours, where no contrast is known (0.95 over 0.56)")
LEAFLET_TIME_SHARE = 0.10
"""Half of the 5-95 % interval of a leaflet's time for one's own film, tank and hands."""


def contrast_at(time_s: Values, *, c_inf: Values, k_per_s: Values, induction_s: Values = 30.0) -> FloatArray:
    """Contrast reached after `time_s` at the reference temperature.

    Arguments: `c_inf` 0.3-4 (contrast index or gamma alike); `k_per_s` above 0; `induction_s` 0 or more.
    Result: dimensionless, 0 before the induction time is over.
    Source: gamma = gamma_inf (1 - exp(-k t)), Sheppard and Mees 1907; Nietz 1922 (form from memory), with an
    induction time. Doubt: the form holds to a few percent up to two thirds of `c_inf`.

    >>> round(float(contrast_at(600, c_inf=1.2, k_per_s=np.log(2) / 300, induction_s=0)), 6)
    0.9
    """
    grown = np.maximum(np.asarray(time_s) - induction_s, 0.0)
    return np.asarray(-np.asarray(c_inf) * np.expm1(-np.asarray(k_per_s) * grown))


def rate_constant(
    contrast: Values, *, time_s: float, c_inf: Values, induction_s: Values = 30.0
) -> FloatArray:
    """Rate constant in 1/s that makes `contrast` in `time_s`.

    Arguments: `contrast` above 0 and below `c_inf`, else refused; `time_s` beyond the induction time.
    Source: inverse of `contrast_at`. Doubt: that of `c_inf`.

    >>> round(float(rate_constant(0.6, time_s=300, c_inf=1.2, induction_s=0) * 60), 6)
    0.138629
    """
    _within_reach(contrast, c_inf)
    return np.asarray(-np.log1p(-np.asarray(contrast) / c_inf) / (time_s - np.asarray(induction_s)))


def time_for_contrast(
    contrast: float, *, c_inf: Values, k_per_s: Values, induction_s: Values = 30.0
) -> FloatArray:
    """Time in s at the reference temperature that makes `contrast`; refused where `c_inf` cannot reach it.

    Source: inverse of `contrast_at`. Doubt: that of its arguments.

    >>> round(float(time_for_contrast(0.58, c_inf=1.0125, k_per_s=0.146946666 / 60, induction_s=0) / 60), 4)
    5.7885
    """
    _within_reach(contrast, c_inf)
    return np.asarray(np.asarray(induction_s) - np.log1p(-contrast / np.asarray(c_inf)) / k_per_s)


def contrast_ratio(
    counted_s: Values, *, due_s: Values, c_inf_over_ci: Values = 1.7, induction_s: Values = 30.0
) -> FloatArray:
    """Contrast made in `counted_s` over that made in the due time, both at the reference temperature.

    Arguments: times in s; `c_inf_over_ci` above 1; `induction_s` below `due_s`. Result: 1 where they agree.
    Source: `contrast_at`. Doubt: that of `c_inf_over_ci`.

    >>> round(float(contrast_ratio(700, due_s=570, c_inf_over_ci=0.95 / 0.56)), 3)
    1.134
    """
    steepness = -np.log1p(-1 / np.asarray(c_inf_over_ci)) / (np.asarray(due_s) - induction_s)
    return contrast_at(counted_s, c_inf=c_inf_over_ci, k_per_s=steepness, induction_s=induction_s)


def contrast_deviation(
    counted_s: float, *, due_s: float, c_inf_over_ci: Estimate = C_INF_OVER_CI, induction_s: float = 30.0
) -> Estimate:
    """By how many percent the contrast will miss its aim, with the interval that `c_inf` leaves.

    Arguments: `counted_s` the equivalent time developed, `due_s` that which was due; as in `contrast_ratio`.
    Result: percent, above 0 for too much; the ratio rises with `c_inf`, so their ends correspond.
    Own model: docs/science/contrast-and-time. Doubt: the interval, and the leaflet's own 10 % beside it.

    >>> band = c_inf_over(0.56)
    >>> over = contrast_deviation(700, due_s=570, c_inf_over_ci=band)
    >>> round(over.value), round(over.low), round(over.high)
    (13, 10, 17)
    """
    ends = np.array([c_inf_over_ci.low, c_inf_over_ci.value, c_inf_over_ci.high])
    percent = 100 * (contrast_ratio(counted_s, due_s=due_s, c_inf_over_ci=ends, induction_s=induction_s) - 1)
    return Estimate(float(percent[1]), float(percent.min()), float(percent.max()), "%", c_inf_over_ci.source)


def c_inf_over(contrast: float | None, c_inf: Estimate = C_INF) -> Estimate:
    """How far the contrast could still go: `c_inf` over the contrast aimed at, or the belief without one.

    Arguments: `contrast` 0.3-1.2, below `c_inf.low`, else refused. Result: dimensionless, 5-95 %.
    Own model: docs/science/contrast-and-time. Doubt: the interval.

    >>> round(c_inf_over(0.56).value, 3)
    1.696
    """
    if contrast is None:
        return C_INF_OVER_CI
    _within_reach(contrast, c_inf.low)
    return Estimate(c_inf.value / contrast, c_inf.low / contrast, c_inf.high / contrast, "", c_inf.source)


def time_correction(
    measured: float, *, wanted: float, time_s: float, c_inf: Estimate = C_INF, induction_s: float = 30.0
) -> Estimate:
    """By how many percent to change the time so that the next roll makes `wanted` instead of `measured`.

    Arguments: contrasts of like kind below `c_inf.low`; `time_s` the equivalent time that made `measured`.
    Result: percent of `time_s`, full correction. Own model: docs/science/contrast-and-time.
    Doubt: the interval from `c_inf`; the measured contrast's own doubt comes on top.

    >>> full = time_correction(0.59, wanted=0.56, time_s=570)
    >>> round(full.value), round(full.low, 1), round(full.high, 1)
    (-8, -10.5, -6.5)
    """
    ends = np.array([c_inf.low, c_inf.value, c_inf.high])
    k = rate_constant(measured, time_s=time_s, c_inf=ends, induction_s=induction_s)
    percent = 100 * (time_for_contrast(wanted, c_inf=ends, k_per_s=k, induction_s=induction_s) / time_s - 1)
    return Estimate(float(percent[1]), float(percent.min()), float(percent.max()), "%", c_inf.source)


def offered_of(full_percent: float) -> float:
    """The part of a full correction that is offered: half of it, at most 10 % of the time at a step.

    Own model: docs/science/contrast-and-time; one roll's contrast is not known better. Doubt: a choice.

    >>> offered_of(-8.0), offered_of(30.0)
    (-4.0, 10.0)
    """
    return max(-10.0, min(10.0, full_percent / 2))


def _within_reach(contrast: Values, c_inf: Values) -> None:
    """Refuse a contrast that no time can make."""
    if np.any(np.asarray(contrast) >= np.asarray(c_inf)) or np.any(np.asarray(contrast) <= 0):
        raise refuse(
            "contrast-out-of-reach", at="contrast", ways_on=("lower-contrast", "another-developer"),
            contrast=float(np.max(contrast)), c_inf=float(np.min(c_inf)),
        )  # fmt: skip
