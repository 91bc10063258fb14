"""The one rise that levels off, `top (1 - exp(-rate (t - start)))`, found without any start value."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from tankside.core.doubt.distributions import FloatArray
from tankside.core.fits.nonlinear import ComplexArray, Fitted, fit
from tankside.core.refusals import refuse

_SEARCHED = np.linspace(np.log(1e-3), np.log(30.0), 241)
"""ln of the rate times the longest time: from nearly straight to levelled off at once."""


@dataclass(frozen=True, slots=True)
class Rise:
    """`top`, `rate` (in one over the unit of time) and the `start` of the rise; sds in `fitted`.

    The parameters of `fitted` are top and ln rate, and start as the third where it was free.
    """

    top: float
    rate: float
    start: float
    fitted: Fitted


def rise_through(t: FloatArray, y: FloatArray, *, start: float | None = 0.0) -> Rise:
    """The rise that comes closest to `y`, from `start` on, or from wherever it fits best (None).

    The top is linear once the rate is known, and with a free start so is what is missing at t = 0; both are
    eliminated and ln rate alone is searched, so no start value can lead into a false valley.
    Arguments: times with at least two (start given) or three (free) different values after the start, and
    one reading more than parameters; units of the caller. Result: as `Rise`; refused where the readings
    bend upwards or do not level off at all.
    Source: separable least squares (Golub and Pereyra 1973, from memory); NIST Misra1a, BoxBOD to 9 digits.
    Doubt: the covariance; the top is poorly known unless one reading is well past half of it.

    >>> t = np.array([2.5, 5.0, 10.0, 20.0])
    >>> found = rise_through(t, 1.2 * (1 - np.exp(-0.14 * t)))
    >>> round(found.top, 9), round(found.rate, 9)
    (1.2, 0.14)
    """
    _enough(t, free=2 if start is None else 1)
    longest = float(np.max(t))
    left = np.array([_left_over(np.exp(one) / longest, t, y, start) for one in _SEARCHED])
    best = int(np.argmin(left))
    if best in (0, len(_SEARCHED) - 1):
        raise refuse("never-levels-off", ways_on=("read-later",), longest=longest)
    log_rate = float(_SEARCHED[best] - np.log(longest))
    linear = _linear_part(float(np.exp(log_rate)), t, y, start)[0]
    if start is not None:
        found = fit(lambda b: b[0] * _risen(b[1], t, start), y, [linear[0], log_rate])
        return Rise(float(found.parameters[0]), float(np.exp(found.parameters[1])), start, found)
    begins = float(np.log(linear[1] / linear[0]) / np.exp(log_rate)) if linear[1] * linear[0] > 0 else 0.0
    found = fit(lambda b: b[0] * _risen(b[1], t, b[2]), y, [linear[0], log_rate, begins])
    return Rise(
        float(found.parameters[0]), float(np.exp(found.parameters[1])), float(found.parameters[2]), found
    )


def _risen(log_rate: complex, t: FloatArray, start: complex) -> ComplexArray:
    """Share of the top reached."""
    return np.asarray(1 - np.exp(-np.exp(log_rate) * (t - start)))


def _linear_part(
    rate: float, t: FloatArray, y: FloatArray, start: float | None
) -> tuple[FloatArray, FloatArray]:
    """What is linear at a given rate, and the residuals."""
    if start is None:
        design = np.column_stack([np.ones_like(t), -np.exp(-rate * t)])
    else:
        design = -np.expm1(-rate * (t - start))[:, None]
    linear, *_ = np.linalg.lstsq(design, y, rcond=None)
    return linear, y - design @ linear


def _left_over(rate: float, t: FloatArray, y: FloatArray, start: float | None) -> float:
    """Sum of squares at a given rate; a rise with a top below 0 is none."""
    linear, left = _linear_part(rate, t, y, start)
    return float(np.sum(left**2)) if linear[0] > 0 else np.inf


def _enough(t: FloatArray, *, free: int) -> None:
    """Refuse fewer times than the rise has unknowns."""
    if len(np.unique(t)) < free + 1 or len(t) < free + 2:
        raise refuse("too-few-readings", ways_on=("read-more",), count=len(t), least=free + 2)
