"""Non-linear least squares to the last digits: exact derivatives by the complex step, then polished."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tankside.core.doubt.distributions import FloatArray
from tankside.core.refusals import refuse

ComplexArray = NDArray[np.complex128]
Curve = Callable[[ComplexArray], ComplexArray]
"""The values of a curve at the given points, from its parameters; it must take complex parameters."""

TOLERANCE = 1e-15
POLISHING_STEPS = 8
_COMPLEX_STEP = 1e-30


@dataclass(frozen=True, slots=True)
class Fitted:
    """Parameters of least squares with their standard deviations, covariance and what the fit leaves over."""

    parameters: FloatArray
    sds: FloatArray
    covariance: FloatArray
    sum_of_squares: float
    degrees_of_freedom: int

    @property
    def residual_sd(self) -> float:
        """Standard deviation of the residuals, as the fit leaves them."""
        return float(np.sqrt(self.sum_of_squares / self.degrees_of_freedom))


def fit(curve: Curve, y: FloatArray, start: Sequence[float]) -> Fitted:
    """Parameters of `curve` that come closest to `y`, from a `start`.

    Arguments: `curve` analytic in its parameters (no abs, no branches); more values `y` than parameters;
    `start` none of them infinite; units of the caller. Result: parameters with the covariance that the
    residuals tell.
    Source: a trust region (scipy) with Jacobian scaling and tolerances of 1e-15, derivatives by the complex
    step (Squire and Trapp, SIAM Review 40 (1998) 110, from memory), then at most 8 scaled Gauss-Newton steps.
    Doubt: NIST's reference sets agree to 7 digits or more from far starts; a bad start can still
    end in another valley.

    >>> t = np.array([1.0, 2.0, 4.0, 8.0])
    >>> found = fit(lambda b: b[0] * np.exp(-b[1] * t), 3 * np.exp(-0.25 * t), [1.0, 1.0])
    >>> [round(float(one), 12) for one in found.parameters]
    [3.0, 0.25]
    """
    from scipy.optimize import least_squares  # noqa: PLC0415 - scipy is loaded only where it is used

    free = len(y) - len(start)
    if free < 1:
        raise refuse("too-few-readings", ways_on=("read-more",), count=len(y), least=len(start) + 1)

    def residuals(b: FloatArray) -> FloatArray:
        return np.asarray(curve(b.astype(complex)).real - y)

    def slopes(b: FloatArray) -> FloatArray:
        return jacobian(curve, b)

    with np.errstate(over="ignore", invalid="ignore"):
        found = least_squares(
            residuals, np.asarray(start, dtype=float), slopes,
            (-np.inf, np.inf), "trf", TOLERANCE, TOLERANCE, TOLERANCE, "jac", max_nfev=20_000,
        )  # fmt: skip
    return _told(curve, y, _polished(curve, y, found.x), free)


def jacobian(curve: Curve, parameters: FloatArray) -> FloatArray:
    """Derivatives of the curve (points by parameters), exact to rounding because nothing is subtracted.

    Source: Im f(b + ih) / h (Squire and Trapp 1998, from memory). Doubt: none beyond rounding.

    >>> jacobian(lambda b: b**3, np.array([2.0]))
    array([[12.]])
    """
    columns = []
    for i in range(len(parameters)):
        moved = parameters.astype(complex)
        moved[i] += 1j * _COMPLEX_STEP
        columns.append(curve(moved).imag / _COMPLEX_STEP)
    return np.column_stack(columns)


def _polished(curve: Curve, y: FloatArray, parameters: FloatArray) -> FloatArray:
    """Scaled Gauss-Newton steps for as long as they grow shorter and leave the fit no worse.

    Close to the least sum of squares that sum no longer tells two points apart, but the length of the
    next step still does.
    """
    worst = _sum_of_squares(curve, y, parameters) * (1 + 1e-6)
    best, shortest = parameters, np.inf
    for _ in range(POLISHING_STEPS):
        slopes = jacobian(curve, parameters)
        scale = np.linalg.norm(slopes, axis=0)
        left = y - curve(parameters.astype(complex)).real
        step, *_ = np.linalg.lstsq(slopes / scale, left, rcond=None)
        length = float(np.linalg.norm(step))
        if not length < shortest:
            break
        best, shortest = parameters, length
        parameters = parameters + step / scale
        if not _sum_of_squares(curve, y, parameters) <= worst:
            break
    return best


def _sum_of_squares(curve: Curve, y: FloatArray, parameters: FloatArray) -> float:
    """What the curve leaves over, squared and summed."""
    return float(np.sum((curve(parameters.astype(complex)).real - y) ** 2))


def _told(curve: Curve, y: FloatArray, parameters: FloatArray, free: int) -> Fitted:
    """The parameters with their covariance, from the triangle of the scaled Jacobian."""
    left = _sum_of_squares(curve, y, parameters)
    slopes = jacobian(curve, parameters)
    scale = np.linalg.norm(slopes, axis=0)
    inverse = np.linalg.pinv(np.linalg.qr(slopes / scale, mode="r"))
    covariance = inverse @ inverse.T / np.outer(scale, scale) * left / free
    return Fitted(parameters, np.sqrt(np.diag(covariance)), covariance, left, free)
