"""All that one step strip tells, each with its doubt, or with the reason why it cannot be told."""

from __future__ import annotations

from dataclasses import dataclass

from tankside.core.doubt.estimate import Estimate
from tankside.core.refusals import Refusal, Refused
from tankside.core.sensitometry.contrast import average_gradient, contrast_index, gamma, useful_range
from tankside.core.sensitometry.curve import Curve, Measure, Strip, curve_of, measured
from tankside.core.sensitometry.shape import Shape
from tankside.core.sensitometry.speed import Speed, exposure_index, rise_over_1_30, speed_of, speed_point

Finding = Estimate | Refusal


@dataclass(frozen=True, slots=True)
class Findings:
    """Base and fog, speed point, rise over 1.30 and the measures of contrast; log exposures in log10."""

    curve: Curve
    speed_point: Finding
    rise: Finding
    contrast_index: Finding
    average_gradient: Finding
    gamma: Finding
    useful_log_h: Finding

    def speed(self, *, stated_light: bool) -> Speed | Refusal:
        """Speed, if the exposures were lux-seconds; `stated_light` if they were those of the standard."""
        if isinstance(self.speed_point, Refusal):
            return self.speed_point
        if isinstance(self.rise, Refusal):
            return self.rise
        try:
            return speed_of(self.speed_point, self.rise, stated_light=stated_light)
        except Refused as no:
            return no.refusal

    def index(self, *, metered_index: float, metered_log_h: float) -> Finding:
        """Exposure index from a camera, by what the meter told at `metered_index`."""
        if isinstance(self.speed_point, Refusal):
            return self.speed_point
        return exposure_index(self.speed_point, metered_index=metered_index, metered_log_h=metered_log_h)


def findings_of(strip: Strip) -> Findings:
    """Everything that the readings of one strip allow to be told.

    Arguments: as `Strip`. Result: estimates 5-95 %, or refusals where the strip is too short.
    Own model: docs/science/curves, docs/science/speed-and-contrast-index. Doubt: that of the readings alone.

    >>> import numpy as np
    >>> log_h = np.arange(-3.0, 0.1, 0.15)
    >>> told = findings_of(Strip(log_h, 0.25 + 0.12 * np.log1p(np.exp(5 * (log_h + 2.2)))))
    >>> round(told.contrast_index.value, 1)
    0.6
    """
    curve = curve_of(strip)
    return Findings(
        curve,
        _found(curve, speed_point, "log H"),
        _found(curve, rise_over_1_30, "density"),
        _found(curve, contrast_index, ""),
        _found(curve, average_gradient, ""),
        _found(curve, gamma, ""),
        _found(curve, _useful, "log H"),
    )


def _useful(shape: Shape) -> float:
    """Width of the useful range."""
    first, last = useful_range(shape)
    return last - first


def _found(curve: Curve, measure: Measure, unit: str) -> Finding:
    """The measure with its doubt, or why there is none."""
    try:
        return measured(curve, measure, unit)
    except Refused as no:
        return no.refusal
