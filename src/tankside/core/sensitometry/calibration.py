"""Readings against known densities: the line of a scanner or densitometer, with its band."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from tankside.core.doubt.distributions import FloatArray
from tankside.core.doubt.estimate import Estimate
from tankside.core.fits.lines import Line, line_through
from tankside.core.refusals import refuse


@dataclass(frozen=True, slots=True)
class Calibration:
    """Reading = level + slope x reference, the scatter about it, and over what references it was seen."""

    line: Line
    residual_sd: float
    degrees_of_freedom: int
    least: float
    most: float

    @property
    def intercept(self) -> float:
        """Reading at a reference of 0."""
        return self.line.at(0.0)

    def band(self, reference: float, *, coverage: float = 0.95) -> tuple[float, float]:
        """Interval of the mean reading at `reference`, by Student's t.

        Source: NIST/SEMATECH e-Handbook, mpc3673. Doubt: the interval.
        """
        from scipy.special import stdtrit  # noqa: PLC0415 - scipy is loaded only where it is used

        half = float(stdtrit(self.degrees_of_freedom, (1 + coverage) / 2)) * self.line.sd_at(reference)
        middle = self.line.at(reference)
        return middle - half, middle + half

    def true_of(self, reading: float) -> Estimate:
        """Reference value that gave a `reading`, with the doubt of one reading and of the line (5-95 %).

        Source: inverse of the line, errors to first order (NIST/SEMATECH e-Handbook, mpc3673).
        Doubt: the interval; refused beyond the references that were read.
        """
        from scipy.special import stdtrit  # noqa: PLC0415 - scipy is loaded only where it is used

        found = self.line.x_ref + (reading - self.line.level) / self.line.slope
        if not self.least <= found <= self.most:
            raise refuse("reading-beyond-calibration", at="reading", reading=round(reading, 3),
                         least=self.least, most=self.most)  # fmt: skip
        sd = np.hypot(self.residual_sd, self.line.sd_at(found)) / abs(self.line.slope)
        half = float(stdtrit(self.degrees_of_freedom, 0.95) * sd)
        return Estimate(found, found - half, found + half, "density", "own calibration")


def calibrate(reference: FloatArray, reading: FloatArray) -> Calibration:
    """The line of readings against references (a step tablet whose densities are known).

    Arguments: three pairs or more at two references or more. Result: line and scatter.
    Source: ordinary least squares, NIST/SEMATECH e-Handbook mpc3673. Doubt: its covariance; a scanner bends
    above a density of about 2, which the scatter shows.

    >>> found = calibrate(np.array([0.0, 1.0, 2.0, 3.0]), np.array([0.1, 1.0, 2.1, 3.0]))
    >>> round(found.line.slope, 3), round(found.intercept, 3)
    (0.98, 0.08)
    """
    if len(reference) < 3 or len(np.unique(reference)) < 2:
        raise refuse("too-few-readings", ways_on=("read-more",), count=len(reference), least=3)
    line, residual_sd = line_through(reference, reading)
    return Calibration(line, residual_sd, len(reference) - 2, float(reference.min()), float(reference.max()))


def density_of(transmittance: float) -> float:
    """Density of a transmittance (above 0, at most 1).

    Source: D = -log10 T; table of Radiography in Modern Industry p. 65. Doubt: that of the reading.

    >>> density_of(0.25).__round__(1)
    0.6
    """
    if not 0 < transmittance <= 1:
        raise refuse("transmittance-out-of-range", at="transmittance", share=transmittance)
    return float(-np.log10(transmittance))


def density_by_times(time_s: float, *, clear_time_s: float) -> float:
    """Density from two printing times that give the same grey, one through it and one through clear film.

    Source: log10 (t / t0): 13 s against 10 s is 0.114 (worked example seen). Doubt: 0.02.

    >>> round(density_by_times(13, clear_time_s=10), 3)
    0.114
    """
    return float(np.log10(time_s / clear_time_s))
