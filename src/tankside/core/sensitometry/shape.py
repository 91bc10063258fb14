"""The shape of a curve: density above base and fog against log exposure, tabled finely enough to be read."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from tankside.core.doubt.distributions import FloatArray
from tankside.core.refusals import refuse

SPEED_POINT_D = 0.10
"""Density above base and fog where the shadows begin; ISO 6:1993, clause on the speed point."""


@dataclass(frozen=True, slots=True, eq=False)
class Shape:
    """`net` density above base and fog (never falling) at rising `log_h`, straight in between."""

    log_h: FloatArray
    net: FloatArray

    def __post_init__(self) -> None:
        object.__setattr__(self, "net", np.maximum.accumulate(np.maximum(self.net, 0.0)))

    def net_at(self, log_h: float) -> float:
        """Density above base and fog at `log_h`, inside the table."""
        return float(np.interp(log_h, self.log_h, self.net))

    def log_h_at(self, net: float) -> float:
        """Log exposure that gives `net` above base and fog; refused where the curve does not reach it.

        Source: ISO 6:1993 reads its speed point so. Doubt: that of the curve.

        >>> Shape(np.array([0.0, 1.0]), np.array([0.0, 0.6])).log_h_at(0.3)
        0.5
        """
        least, most = float(self.net[0]), float(self.net[-1])
        if not least <= net <= most or most <= 0:
            raise refuse("density-not-reached", ways_on=("expose-more-steps",), density=round(net, 2),
                         least=round(least, 2), most=round(most, 2))  # fmt: skip
        rising = np.flatnonzero(self.net >= net)[0]
        if rising == 0:
            return float(self.log_h[0])
        below, above = self.net[rising - 1], self.net[rising]
        share = (net - below) / (above - below)
        return float(self.log_h[rising - 1] + share * (self.log_h[rising] - self.log_h[rising - 1]))

    def reaches(self, log_h: float) -> None:
        """Refuse a log exposure beyond the last step."""
        if log_h > self.log_h[-1] + 1e-9:
            raise refuse("exposure-not-reached", ways_on=("expose-more-steps",), log_h=round(log_h, 2),
                         most=round(float(self.log_h[-1]), 2))  # fmt: skip
