"""Distributions of what is not known exactly, each read through its quantile function."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Protocol

import numpy as np
from numpy.typing import NDArray

FloatArray = NDArray[np.float64]
Values = float | FloatArray


class Distribution(Protocol):
    """What an input may be: every shape of this folder has a middle and a quantile function."""

    @property
    def median(self) -> float:
        """The middle."""
        ...

    def at(self, uniform: Values) -> FloatArray:
        """Values at the probabilities `uniform`, strictly between 0 and 1."""
        ...


Z95 = 1.6448536269514722
"""Standard normal deviate below which 95 % lies."""


def standard_normal(uniform: Values) -> FloatArray:
    """Standard normal deviates at the probabilities `uniform`.

    Arguments: probabilities strictly between 0 and 1. Result: dimensionless.
    Source: inverse of the normal integral, scipy.special.ndtri. Doubt: none beyond rounding.

    >>> round(float(standard_normal(0.95)), 4)
    1.6449
    """
    from scipy.special import ndtri  # noqa: PLC0415 - scipy is loaded only where it is used

    return np.asarray(ndtri(uniform), dtype=np.float64)


@dataclass(frozen=True, slots=True)
class Normal:
    """Normal with `mean` and standard deviation `sd`, in the unit of the quantity."""

    mean: float
    sd: float

    @property
    def median(self) -> float:
        """The middle."""
        return self.mean

    def at(self, uniform: Values) -> FloatArray:
        """Values at the probabilities `uniform`."""
        return self.mean + self.sd * standard_normal(uniform)


@dataclass(frozen=True, slots=True)
class LogNormal:
    """Log-normal given by its 5 % point `low` and its 95 % point `high`, both above 0.

    >>> band = LogNormal(1.5, 2.9)
    >>> [round(float(band.at(p)), 3) for p in (0.05, 0.5, 0.95)]
    [1.5, 2.086, 2.9]
    """

    low: float
    high: float

    def __post_init__(self) -> None:
        if not 0 < self.low < self.high:
            raise ValueError(f"a log-normal needs 0 < low < high, not {self.low} and {self.high}")

    @property
    def median(self) -> float:
        """The middle: the geometric mean of the two points."""
        return float(np.sqrt(self.low * self.high))

    @property
    def log_sd(self) -> float:
        """Standard deviation of the natural logarithm."""
        return float(np.log(self.high / self.low) / (2 * Z95))

    def at(self, uniform: Values) -> FloatArray:
        """Values at the probabilities `uniform`."""
        return np.asarray(self.median * np.exp(self.log_sd * standard_normal(uniform)))


@dataclass(frozen=True, slots=True)
class Uniform:
    """Anything from `low` to `high`, all equally likely."""

    low: float
    high: float

    def __post_init__(self) -> None:
        if self.low > self.high:
            raise ValueError("a uniform distribution runs from low to high")

    @property
    def median(self) -> float:
        """The middle."""
        return (self.low + self.high) / 2

    def at(self, uniform: Values) -> FloatArray:
        """Values at the probabilities `uniform`."""
        return np.asarray(self.low + (self.high - self.low) * np.asarray(uniform))


@dataclass(frozen=True, slots=True)
class Triangular:
    """From `low` to `high`, likeliest at `mode`.

    >>> float(Triangular(0.0, 30.0, 60.0).at(0.5))
    30.0
    """

    low: float
    mode: float
    high: float

    def __post_init__(self) -> None:
        if not self.low <= self.mode <= self.high or self.low == self.high:
            raise ValueError("a triangle needs low <= mode <= high, low below high")

    @property
    def median(self) -> float:
        """The middle."""
        return float(self.at(0.5))

    def at(self, uniform: Values) -> FloatArray:
        """Values at the probabilities `uniform`."""
        width, rise, fall = self.high - self.low, self.mode - self.low, self.high - self.mode
        below = self.low + np.sqrt(np.asarray(uniform) * width * rise)
        above = self.high - np.sqrt((1 - np.asarray(uniform)) * width * fall)
        return np.where(np.asarray(uniform) * width < rise, below, above)


def rounded(read: float, *, step: float) -> Uniform:
    """What a value may have been that was written as `read`, to the nearest `step` (same unit, above 0).

    Source: JCGM 101:2008, 6.4.2 (rectangular distribution). Doubt: assumes honest rounding to the nearest.

    >>> rounded(9.5, step=0.5)
    Uniform(low=9.25, high=9.75)
    """
    return Uniform(read - step / 2, read + step / 2)
