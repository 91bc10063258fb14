"""Film speed from the speed point: ISO 6 where its condition holds, else an exposure index."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np

from tankside.core.doubt.estimate import Estimate
from tankside.core.refusals import refuse
from tankside.core.sensitometry.shape import SPEED_POINT_D, Shape

ISO_LOG_H, ISO_RISE, ISO_RISE_LIMIT = 1.30, 0.80, 0.05
"""Density must rise 0.80 over 1.30 from the speed point: ISO 6:1993; the limit of 0.05 is from memory."""

METERED_OVER_SPEED_POINT = np.log10(8.1 / 0.8)
"""Log exposure of what a meter measured above the speed point: 8.1/S against 0.8/S (ISO 2720: memory)."""

ARITHMETIC = (
    0.8, 1, 1.2, 1.6, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 32, 40, 50, 64, 80, 100, 125, 160, 200, 250,
    320, 400, 500, 640, 800, 1000, 1250, 1600, 2000, 2500, 3200, 4000, 5000, 6400,
)  # fmt: skip
"""Standard speeds, by their degrees from 0 on."""

Condition = Literal["met", "straddles", "not met"]


@dataclass(frozen=True, slots=True)
class Speed:
    """A speed with its interval, the standard pair it rounds to, and whether it may be called ISO."""

    kind: Literal["ISO speed", "exposure index"]
    value: Estimate
    arithmetic: float
    degrees: int
    condition: Condition


def speed_point(shape: Shape) -> float:
    """Log exposure where the density is 0.10 above base and fog.

    Source: ISO 6:1993, point m. Doubt: that of the curve: reading error over the slope there.

    >>> round(speed_point(Shape(np.array([-3.0, -2.0]), np.array([0.0, 0.4]))), 6)
    -2.75
    """
    return shape.log_h_at(SPEED_POINT_D)


def rise_over_1_30(shape: Shape) -> float:
    """Density gained over 1.30 of log exposure from the speed point; refused where the curve ends before.

    Source: ISO 6:1993, point n. Doubt: that of the curve.

    >>> round(rise_over_1_30(Shape(np.array([0.0, 2.0]), np.array([0.0, 1.2]))), 6)
    0.78
    """
    first = speed_point(shape)
    shape.reaches(first + ISO_LOG_H)
    return shape.net_at(first + ISO_LOG_H) - SPEED_POINT_D


def condition_of(rise: Estimate) -> Condition:
    """Whether the whole interval of the rise lies within 0.80 +- 0.05, in part, or not at all.

    Source: ISO 6:1993 (0.80 over 1.30; the limits from memory). Doubt: the interval.

    >>> condition_of(Estimate(0.80, 0.78, 0.82, "")), condition_of(Estimate(0.80, 0.74, 0.86, ""))
    ('met', 'straddles')
    """
    least, most = ISO_RISE - ISO_RISE_LIMIT, ISO_RISE + ISO_RISE_LIMIT
    if least <= rise.low and rise.high <= most:
        return "met"
    return "not met" if rise.high < least or rise.low > most else "straddles"


def speed_of(log_hm: Estimate, rise: Estimate, *, stated_light: bool) -> Speed:
    """Speed from the speed point in lux-seconds, S = 0.8/Hm, rounded to the standard pair.

    Arguments: `log_hm` log10 of lux-seconds; `rise` over 1.30; `stated_light` whether absolute exposure and
    light are those of the standard, as with a calibrated sensitometer. Result: an ISO speed only if so and if
    the condition is met with the reading error, else an exposure index.
    Source: ISO 6:1993 (formula from memory, rounding seen). Doubt: the interval; a standard asks for several
    batches.

    >>> steady = Estimate(0.80, 0.78, 0.82, "")
    >>> told = speed_of(Estimate(-2.0969, -2.11, -2.08, "log lx s"), steady, stated_light=True)
    >>> told.kind, told.arithmetic, told.degrees
    ('ISO speed', 100, 21)
    """
    condition = condition_of(rise)
    value = Estimate(_speed(log_hm.value), _speed(log_hm.high), _speed(log_hm.low), "", log_hm.source)
    degrees = degrees_of(value.value)
    kind: Literal["ISO speed", "exposure index"] = (
        "ISO speed" if stated_light and condition == "met" else "exposure index"
    )
    return Speed(kind, value, ARITHMETIC[degrees], degrees, condition)


def exposure_index(log_hm: Estimate, *, metered_index: float, metered_log_h: float = 0.0) -> Estimate:
    """Index at which the shadows would just begin, from exposures in a camera.

    Arguments: `log_hm` on the same relative scale as `metered_log_h`, the exposure that the meter told at
    `metered_index` (0.8-6400). Result: index, not a speed.
    Own model: docs/science/speed-and-contrast-index; a metered tone lies 1.01 of log exposure above the speed
    point (ISO 2720 constants, from memory). Doubt: the interval; a third of a stop from shutter and flare.

    >>> round(exposure_index(Estimate(-1.3, -1.35, -1.25, "log"), metered_index=400).value)
    788
    """
    if metered_index <= 0:
        raise refuse("index-out-of-range", at="metered_index", index=metered_index)
    found = [
        metered_index * 10 ** (metered_log_h - log_h - float(METERED_OVER_SPEED_POINT))
        for log_h in (log_hm.value, log_hm.high, log_hm.low)
    ]
    return Estimate(found[0], found[1], found[2], "", log_hm.source)


def degrees_of(speed: float) -> int:
    """Logarithmic speed of an arithmetic one (0.8-6400), to the nearest degree; refused outside.

    Source: S deg = 1 + 10 log10 S (formula from memory, rounding seen). Doubt: none.

    >>> degrees_of(100), degrees_of(125), degrees_of(0.8)
    (21, 22, 0)
    """
    degrees = round(1 + 10 * float(np.log10(speed))) if speed > 0 else -1
    if not 0 <= degrees < len(ARITHMETIC):
        raise refuse("speed-out-of-range", speed=speed)
    return degrees


def fractional_gradient_offset(rise: float) -> float:
    """Log exposure from the 0.10 point down to the fractional-gradient point, by the `rise` over 1.30.

    Arguments: `rise` 0.4-1.2. Result: log exposure, 0.296 at 0.80.
    Source: Nelson and Simonds, JOSA 46 (1956) no. 5: 0.296 at 0.80 seen, the polynomial from memory.
    Doubt: 0.01.

    >>> round(fractional_gradient_offset(0.80), 4)
    0.2956
    """
    return 0.83 - 0.86 * rise + 0.24 * rise**2


def _speed(log_hm: float) -> float:
    """S = 0.8/Hm."""
    return float(0.8 / 10**log_hm)
