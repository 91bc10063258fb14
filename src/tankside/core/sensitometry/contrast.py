"""How steep a curve is: contrast index by its arcs, average gradient, gamma, and chords between densities."""

from __future__ import annotations

import numpy as np

from tankside.core.doubt.distributions import FloatArray
from tankside.core.refusals import refuse
from tankside.core.sensitometry.shape import SPEED_POINT_D, Shape

INNER_RADIUS, OUTER_RADIUS = 0.2, 2.2
GBAR_LOG_H = 1.50
STRAIGHT_LOG_H = 0.45
SHOULDER_SHARE = 0.3
"""Slope, as a share of the contrast index, below which a highlight no longer parts from the next."""


def contrast_index(shape: Shape) -> float:
    """Slope of the line from base and fog that meets the curve at distances 0.2 and 2.2 (dimensionless).

    Each point of the curve is tried as the outer one: its height alone fixes the angle and the height of the
    inner one, and the line is right where the inner one lies 2.0 closer.
    Arguments: a curve that reaches far enough, else refused. Result: 0.2-3.
    Source: contrast index, Kodak publication F-14 (method as described, both radii seen).
    Doubt: that of the curve.

    >>> straight = Shape(np.array([0.0, 4.0]), np.array([0.0, 2.4]))
    >>> round(contrast_index(Shape(np.linspace(0, 4, 4001), np.interp(np.linspace(0, 4, 4001), straight.log_h,
    ...                                                               straight.net))), 6)
    0.6
    """
    apart = _apart_less_line(shape)
    crossed = np.flatnonzero((apart[:-1] < 0) & (apart[1:] >= 0))
    if not len(crossed):
        raise refuse("too-short-for-contrast", ways_on=("expose-more-steps",),
                     most=round(float(shape.net[-1]), 2))  # fmt: skip
    first = int(crossed[0])
    share = -apart[first] / (apart[first + 1] - apart[first])
    height = shape.net[first] + share * (shape.net[first + 1] - shape.net[first])
    sine = height / OUTER_RADIUS
    return float(sine / np.sqrt(1 - sine**2))


def average_gradient(shape: Shape, *, over: float = GBAR_LOG_H) -> float:
    """Slope of the chord from the 0.10 point over `over` (0.5-2.5) of log exposure (dimensionless).

    Source: average gradient over 1.50, another maker's convention (seen). Doubt: that of the curve.

    >>> round(average_gradient(Shape(np.linspace(0, 3, 301), 0.6 * np.linspace(0, 3, 301))), 6)
    0.6
    """
    first = shape.log_h_at(SPEED_POINT_D)
    shape.reaches(first + over)
    return (shape.net_at(first + over) - SPEED_POINT_D) / over


def gamma(shape: Shape, *, window: float = STRAIGHT_LOG_H) -> float:
    """Slope of the straight part: the steepest chord over `window` (0.2-1.0) of log exposure.

    Source: gamma as the slope of the straight part, NAVEDTRA 14208 ch. 2; the window is ours (three steps).
    Doubt: that of the curve.

    >>> round(gamma(Shape(np.array([0.0, 1.0, 2.0, 3.0]), np.array([0.0, 0.2, 1.0, 1.2]))), 6)
    0.8
    """
    starts = shape.log_h[shape.log_h <= shape.log_h[-1] - window]
    if not len(starts):
        raise refuse("too-short-for-contrast", ways_on=("expose-more-steps",),
                     most=round(float(shape.net[-1]), 2))  # fmt: skip
    rises = np.interp(starts + window, shape.log_h, shape.net) - np.interp(starts, shape.log_h, shape.net)
    return float(np.max(rises) / window)


def gradient_between(shape: Shape, low: float, high: float) -> float:
    """Slope of the chord between two densities above base and fog, `low` below `high`.

    Source: average gradient of x-ray film, Radiography in Modern Industry ch. 16. Doubt: that of the curve.

    >>> round(gradient_between(Shape(np.array([2.2, 2.5]), np.array([2.0, 3.5])), 2.0, 3.5), 6)
    5.0
    """
    return (high - low) / (shape.log_h_at(high) - shape.log_h_at(low))


def useful_range(shape: Shape) -> tuple[float, float]:
    """Log exposures from the 0.10 point to where the slope has fallen to 0.3 of the contrast index.

    Arguments: a curve long enough for a contrast index. Result: first and last log exposure; the last is that
    of the last step where the shoulder was not reached.
    Own model: docs/science/speed-and-contrast-index; 0.3 of a mean gradient was the old criterion of the toe.
    Doubt: 0.1 of log exposure.

    >>> first, last = useful_range(Shape(np.linspace(0, 4, 401), 0.6 * np.linspace(0, 4, 401)))
    >>> round(first, 3), last
    (0.167, 4.0)
    """
    least_slope = SHOULDER_SHARE * contrast_index(shape)
    slope = np.gradient(shape.net, shape.log_h)
    return shape.log_h_at(SPEED_POINT_D), float(shape.log_h[np.flatnonzero(slope >= least_slope)[-1]])


def _apart_less_line(shape: Shape) -> FloatArray:
    """For each point as the outer one: how much farther than 2.0 along the line its inner one lies."""
    net = shape.net
    sine = np.minimum(net / OUTER_RADIUS, 1.0)
    inner = net * (INNER_RADIUS / OUTER_RADIUS)
    rising = np.concatenate([[True], np.diff(net) > 0])
    inner_log_h = np.interp(inner, net[rising], shape.log_h[rising], left=np.nan)
    across = (OUTER_RADIUS - INNER_RADIUS) * np.sqrt(1 - sine**2)
    return np.asarray(np.where(net > 0, shape.log_h - inner_log_h - across, -1.0))
