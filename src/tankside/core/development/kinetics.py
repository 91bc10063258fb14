"""Contrast against time, fitted to several developments of one film."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from tankside.core.doubt.distributions import Z95, FloatArray
from tankside.core.doubt.estimate import Estimate
from tankside.core.fits.exponential import rise_through
from tankside.core.refusals import refuse


@dataclass(frozen=True, slots=True)
class Kinetics:
    """Contrast that long development leads to, velocity in 1/s and induction time, with intervals."""

    c_inf: Estimate
    k_per_s: Estimate
    induction_s: Estimate


def kinetics_of(times_s: FloatArray, contrasts: FloatArray, *, induction_s: float | None = 30.0) -> Kinetics:
    """Kinetics through contrasts measured at several times, all at the reference temperature.

    The velocity alone is searched, on a log scale, with `c_inf` (and a free induction time) eliminated.
    Arguments: three times or more with an `induction_s` given, four with a free one (None); contrast index
    or gamma alike. Result: intervals as the scatter of the readings tells them.
    Source: gamma = gamma_inf (1 - exp(-k (t - t_i))), Sheppard and Mees 1907; Nietz 1922 (form from memory).
    Doubt: the intervals; too narrow with one reading more than unknowns. Forgetting the induction time turns
    a k of 0.110 into 0.042.

    >>> minutes = np.array([4.0, 6.0, 8.0, 12.0])
    >>> found = kinetics_of(60 * minutes, 1.35 * (1 - np.exp(-0.11 * (minutes - 0.8))), induction_s=None)
    >>> round(found.c_inf.value, 6), round(60 * found.k_per_s.value, 6), round(found.induction_s.value, 3)
    (1.35, 0.11, 48.0)
    """
    rise = rise_through(np.asarray(times_s, float), np.asarray(contrasts, float), start=induction_s)
    sds = rise.fitted.sds
    spread = float(np.exp(Z95 * sds[1]))
    half = Z95 * float(sds[2]) if induction_s is None else 0.0
    return Kinetics(
        _estimate(rise.top, Z95 * float(sds[0]), "contrast"),
        Estimate(rise.rate, rise.rate / spread, rise.rate * spread, "1/s", "own step strips"),
        _estimate(rise.start, half, "s"),
    )


def by_doubled_time(contrast: float, contrast_at_double: float, *, time_s: float) -> tuple[float, float]:
    """`c_inf` and velocity in 1/s from the contrasts at a time and at twice that time, without induction.

    Arguments: both contrasts above 0; refused where the second is not between one and two times the first.
    Source: algebra of the law: k = -ln(g2/g1 - 1)/t, g_inf = g1^2/(2 g1 - g2). Doubt: large; 0.01 of density
    at 3 and 6 minutes left 7 % in k; an unknown induction time ruins it.

    >>> c_inf, k = by_doubled_time(0.60, 0.90, time_s=300)
    >>> round(c_inf, 9), round(60 * k, 9)
    (1.2, 0.138629436)
    """
    ratio = contrast_at_double / contrast
    if not 1 < ratio < 2:
        raise refuse("never-levels-off", ways_on=("read-later",), ratio=round(ratio, 3))
    return contrast**2 / (2 * contrast - contrast_at_double), float(-np.log(ratio - 1) / time_s)


def _estimate(value: float, half: float, unit: str) -> Estimate:
    """A value with a symmetric interval."""
    return Estimate(value, value - half, value + half, unit, "own step strips")
