"""What the range of a few normal values is worth in standard deviations: d2, d3, and limits made of them."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

import numpy as np

from tankside.core.doubt.distributions import FloatArray
from tankside.core.refusals import refuse

_REACH, _POINTS = 8.5, 1701


@dataclass(frozen=True, slots=True)
class RangeConstants:
    """Mean `d2` and standard deviation `d3` of the range of `count` standard normal values."""

    count: int
    d2: float
    d3: float

    @property
    def a2(self) -> float:
        """Limits of a mean, in mean ranges."""
        return float(3 / (self.d2 * np.sqrt(self.count)))

    @property
    def lower(self) -> float:
        """Lower limit of a range, in mean ranges (D3)."""
        return max(0.0, 1 - 3 * self.d3 / self.d2)

    @property
    def upper(self) -> float:
        """Upper limit of a range, in mean ranges (D4)."""
        return 1 + 3 * self.d3 / self.d2


@cache
def range_constants(count: int) -> RangeConstants:
    """Constants of the range of `count` (2-25) normal values, by integrating over both ends of it.

    Source: Tippett 1925 (form from memory): E(W) = integral of 1 - F^n - (1-F)^n; second moment alike.
    Doubt: 1e-6.

    >>> two = range_constants(2)
    >>> round(two.d2, 6), round(two.d3, 6)
    (1.128379, 0.852502)
    """
    from scipy.special import ndtr  # noqa: PLC0415 - scipy is loaded only where it is used

    if not 2 <= count <= 25:
        raise refuse("count-out-of-range", at="count", count=count, least=2, most=25)
    x = np.linspace(-_REACH, _REACH, _POINTS)
    step, below = x[1] - x[0], ndtr(x)
    mean = float(np.sum(1 - below**count - (1 - below) ** count) * step)
    low, high = below[:, None], below[None, :]
    joint = 1 - high**count - (1 - low) ** count + np.maximum(high - low, 0.0) ** count
    fine, coarse = _above_diagonal(joint) * step**2, _above_diagonal(joint[::2, ::2]) * (2 * step) ** 2
    second = 2 * (4 * fine - coarse) / 3
    return RangeConstants(count, mean, float(np.sqrt(second - mean**2)))


def _above_diagonal(joint: FloatArray) -> float:
    """Sum over the triangle above the diagonal, its edge counted by half."""
    return float(np.triu(joint, k=1).sum() + 0.5 * np.trace(joint))
