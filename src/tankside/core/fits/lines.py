"""Lines by least squares: with a belief about the slope, through rounded values, for a calibration."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from tankside.core.doubt.distributions import FloatArray


@dataclass(frozen=True, slots=True)
class Line:
    """`level` at `x_ref` and `slope`, with their standard deviations and correlation."""

    level: float
    slope: float
    level_sd: float
    slope_sd: float
    correlation: float
    x_ref: float

    def at(self, x: float) -> float:
        """Height of the line at `x`."""
        return self.level + self.slope * (x - self.x_ref)

    def sd_at(self, x: float) -> float:
        """Standard deviation of the height at `x`."""
        lever = (x - self.x_ref) * self.slope_sd
        return float(np.sqrt(self.level_sd**2 + lever**2 + 2 * self.correlation * self.level_sd * lever))


@dataclass(frozen=True, slots=True)
class SlopeRange:
    """Least and largest slope of a line that passes through every given interval; crossed when none does."""

    low: float
    high: float

    @property
    def exists(self) -> bool:
        """Whether any line passes through all intervals."""
        return self.low <= self.high


def line_with_belief(
    x: FloatArray, y: FloatArray, y_sd: FloatArray, *, slope: float, slope_sd: float, x_ref: float
) -> Line:
    """Weighted least squares of a line, with a normal belief about the slope and none about the level.

    Arguments: at least one point; `y_sd` above 0; `slope` and `slope_sd` of the belief; units of the caller.
    Result: line with its covariance. Source: normal equations with one pseudo-observation (textbook).
    Doubt: the covariance, if `y_sd` is honest.

    >>> one = line_with_belief(np.array([20.0]), np.array([6.0]), np.array([0.1]), slope=-0.08, slope_sd=0.02,
    ...                        x_ref=20.0)
    >>> round(one.slope, 3), round(one.at(22.0), 3)
    (-0.08, 5.84)
    """
    design = np.column_stack([np.ones_like(x), x - x_ref]) / y_sd[:, None]
    design = np.vstack([design, [0.0, 1.0 / slope_sd]])
    right = np.append(y / y_sd, slope / slope_sd)
    covariance = np.linalg.inv(design.T @ design)
    level, found = covariance @ design.T @ right
    sds = np.sqrt(np.diag(covariance))
    return Line(
        float(level),
        float(found),
        float(sds[0]),
        float(sds[1]),
        float(covariance[0, 1] / (sds[0] * sds[1])),
        x_ref,
    )


def slopes_through(x: FloatArray, low: FloatArray, high: FloatArray) -> SlopeRange:
    """Slopes of all lines that pass between `low` and `high` at every `x`.

    Eliminating the level from the inequalities leaves one bound on the slope for each pair of points, so
    this small linear programme is solved exactly without iteration.
    Arguments: at least two distinct `x`; `low` at most `high`; units of the caller. Result: unit of y by x.
    Source: Fourier-Motzkin elimination (textbook). Doubt: none.

    >>> slopes_through(np.array([0.0, 1.0]), np.array([0.0, 1.0]), np.array([0.2, 1.2]))
    SlopeRange(low=0.8, high=1.2)
    """
    run = x[None, :] - x[:, None]
    ahead = run > 0
    steepest = (high[None, :] - low[:, None])[ahead] / run[ahead]
    shallowest = (low[None, :] - high[:, None])[ahead] / run[ahead]
    return SlopeRange(float(shallowest.max()), float(steepest.min()))


def line_through(x: FloatArray, y: FloatArray) -> tuple[Line, float]:
    """Ordinary least squares: the line with the covariance that its scatter tells, and the scatter (one sd).

    Arguments: three points or more at two different `x`; units of the caller. Result: line about the mean of
    `x`, standard deviation of the residuals. Source: normal equations (textbook); NIST/SEMATECH e-Handbook
    mpc3673 to 9E-07. Doubt: the covariance, if the scatter is the same everywhere.

    >>> line, scatter = line_through(np.array([0.0, 1.0, 2.0]), np.array([0.0, 1.0, 2.0]))
    >>> round(line.slope, 9), round(line.at(3.0), 9), round(scatter, 9)
    (1.0, 3.0, 0.0)
    """
    x_ref = float(np.mean(x))
    away = x - x_ref
    slope, level = float(away @ y / (away @ away)), float(np.mean(y))
    scatter = float(np.sqrt(np.sum((y - level - slope * away) ** 2) / (len(x) - 2)))
    line = Line(
        level, slope, scatter / float(np.sqrt(len(x))), scatter / float(np.sqrt(away @ away)), 0.0, x_ref
    )
    return line, scatter
