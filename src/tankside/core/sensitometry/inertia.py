"""Speeds of old plates: the straight part of the curve produced to the axis."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from tankside.core.doubt.distributions import FloatArray
from tankside.core.refusals import refuse


@dataclass(frozen=True, slots=True)
class StraightPart:
    """Slope of the straight part and the log exposure where it meets the axis of base and fog."""

    gamma: float
    log_inertia: float


def straight_part(log_h: FloatArray, net: FloatArray) -> StraightPart:
    """Least squares through the readings of the straight part, densities above base and fog.

    Arguments: two readings or more at different exposures, rising, else refused.
    Source: Hurter and Driffield 1890, as told by Ives, Airplane Photography (1920) ch. XVIII.
    Doubt: a few hundredths of log exposure from 0.01 of density.

    >>> found = straight_part(np.array([0.0, 0.5]), np.array([0.4, 1.2]))
    >>> round(found.gamma, 6), round(found.log_inertia, 6)
    (1.6, -0.25)
    """
    if len(np.unique(log_h)) < 2:
        raise refuse("too-few-readings", ways_on=("read-more",), count=len(log_h), least=2)
    slope, level = np.polyfit(log_h, net, 1)
    if slope <= 0:
        raise refuse("curve-does-not-rise", ways_on=("check-the-readings",))
    return StraightPart(float(slope), float(-level / slope))


def hd_speed(inertia_cms: float) -> float:
    """Hurter and Driffield's speed of a plate from its inertia in candle-metre-seconds (above 0).

    Source: 34 / inertia, Ives 1920 ch. XVIII; Martin 1921. Doubt: none.

    >>> round(hd_speed(0.2))
    170
    """
    return 34 / inertia_cms


def watkins_speed(inertia_cms: float) -> float:
    """Watkins number from the inertia in candle-metre-seconds (above 0).

    Source: 50 / inertia, M. J. Martin, The Wireless Transmission of Photographs (1921). Doubt: none.

    >>> round(watkins_speed(0.2))
    250
    """
    return 50 / inertia_cms


def wynne_speed(watkins: float) -> float:
    """Wynne number of a Watkins number (above 0).

    Source: 6.4 sqrt(Watkins), Martin 1921. Doubt: none.

    >>> round(wynne_speed(250))
    101
    """
    return float(6.4 * np.sqrt(watkins))
