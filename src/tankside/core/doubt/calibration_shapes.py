"""Distributions that certificates of calibration call for, each read through its quantile function."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from tankside.core.doubt.distributions import FloatArray, Values


@dataclass(frozen=True, slots=True)
class Student:
    """Scaled and shifted Student's t: a best estimate `mean`, its standard uncertainty `scale`, and the
    degrees of `freedom` that this uncertainty was found with (`scale` and `freedom` above 0).

    Source: JCGM 101:2008, 6.4.9. Doubt: none beyond rounding. Its own standard deviation is
    `scale * sqrt(freedom / (freedom - 2))`.

    >>> round(float(Student(215.0, 6.0, freedom=24).at(0.975)), 1)
    227.4
    """

    mean: float
    scale: float
    freedom: float

    def __post_init__(self) -> None:
        if self.scale <= 0 or self.freedom <= 0:
            raise ValueError("Student's t needs a scale and degrees of freedom above 0")

    @property
    def median(self) -> float:
        """The middle."""
        return self.mean

    def at(self, uniform: Values) -> FloatArray:
        """Values at the probabilities `uniform`."""
        from scipy.special import stdtrit  # noqa: PLC0415 - scipy is loaded only where it is used

        return np.asarray(self.mean + self.scale * stdtrit(self.freedom, uniform))


@dataclass(frozen=True, slots=True)
class Arcsine:
    """What cycles as a sine between `low` and `high`, seen at any moment: likeliest at its ends.

    Source: JCGM 101:2008, 6.4.6 (U-shaped). Doubt: none beyond rounding. Standard deviation: half the width
    over the root of 2.

    >>> [round(float(Arcsine(-0.5, 0.5).at(p)), 3) for p in (0.25, 0.5, 0.75)]
    [-0.354, -0.0, 0.354]
    """

    low: float
    high: float

    def __post_init__(self) -> None:
        if self.low >= self.high:
            raise ValueError("an arcsine distribution runs from low to high")

    @property
    def median(self) -> float:
        """The middle."""
        return (self.low + self.high) / 2

    def at(self, uniform: Values) -> FloatArray:
        """Values at the probabilities `uniform`."""
        return self.median - (self.high - self.low) / 2 * np.cos(np.pi * np.asarray(uniform))


@dataclass(frozen=True, slots=True)
class CurvedTrapezoid:
    """Anything from `low` to `high`, where these ends themselves are known only to within `give`.

    The width between the ends is itself uniform and the middle is exact, so that the flanks fall as a
    logarithm. `give` is above 0 and below half the width.
    Source: JCGM 101:2008, 6.4.3. Doubt: none beyond rounding. Variance: width squared over 12, and `give`
    squared over 9.

    >>> [round(float(CurvedTrapezoid(-0.05, 0.05, give=0.025).at(p)), 3) for p in (0.001, 0.5, 0.999)]
    [-0.071, 0.0, 0.071]
    """

    low: float
    high: float
    give: float

    def __post_init__(self) -> None:
        if not 0 < self.give < (self.high - self.low) / 2:
            raise ValueError("a curved trapezoid needs a give above 0 and below half its width")

    @property
    def median(self) -> float:
        """The middle."""
        return (self.low + self.high) / 2

    def at(self, uniform: Values) -> FloatArray:
        """Values at the probabilities `uniform`."""
        chance = np.asarray(uniform, dtype=np.float64)
        tail = np.minimum(chance, 1 - chance)
        return self.median + np.sign(chance - 0.5) * self._out(tail)

    def _out(self, tail: FloatArray) -> FloatArray:
        """How far from the middle a value lies that leaves `tail` (0 to a half) of the chance outside it."""
        half = (self.high - self.low) / 2
        inner, outer = half - self.give, half + self.give
        outside = (outer - inner * (1 + np.log(outer / inner))) / (2 * (outer - inner))
        slope = np.log(outer / inner) / (2 * (outer - inner))
        flat = inner - (tail - outside) / slope
        return np.where(tail > outside, flat, outer * _flank(1 - 2 * (outer - inner) * tail / outer))


def _flank(rest: FloatArray) -> FloatArray:
    """The y in 0 to 1 with y (1 - ln y) = `rest`, on the lower branch of Lambert's function."""
    from scipy.special import lambertw  # noqa: PLC0415 - scipy is loaded only where it is used

    return np.asarray(np.exp(1 + np.real(lambertw(-np.clip(rest, 0.0, 1.0) / np.e, -1))))
