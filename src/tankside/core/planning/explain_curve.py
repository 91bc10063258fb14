"""Why a step strip tells this contrast: its curve with the doubt that the readings leave."""

from __future__ import annotations

from collections.abc import Sequence
from math import sqrt

import numpy as np

from tankside.core.doubt.estimate import Estimate
from tankside.core.planning.why import Figure, Length, LengthCode, Mark, PartOfDoubt, Plot, Why, narrowings
from tankside.core.refusals import Refusal, Refused
from tankside.core.sensitometry.contrast import INNER_RADIUS, OUTER_RADIUS
from tankside.core.sensitometry.curve import Curve, half_width
from tankside.core.sensitometry.findings import Finding, Findings

PLOT_POINTS = 25


def why_curve(found: Findings, *, reading_sd: float) -> Why:
    """Why a strip has its contrast index; refused with the index where the strip is too short for it."""
    index = found.contrast_index
    if isinstance(index, Refusal):
        raise Refused(index)
    half = (index.high - index.low) / 2
    others: tuple[tuple[LengthCode, Finding], ...] = (
        ("strip-gradient", found.average_gradient),
        ("strip-gamma", found.gamma),
    )
    return Why(
        "curve",
        None,
        _as_contrast(index),
        (
            Length("strip-index", _as_contrast(index)),
            *(Length(code, _as_contrast(one)) for code, one in others if isinstance(one, Estimate)),
        ),
        (PartOfDoubt("densities", half),),
        narrowings("read-twice"),
        (
            Figure("reading_sd", reading_sd, "density", "told"),
            Figure("scatter", found.curve.scatter, "density", "this strip"),
            Figure("base_fog", found.curve.base_fog.value, "density", found.curve.base_fog.source),
            *_speed_point(found.speed_point),
            Figure("inner_radius", INNER_RADIUS, "", "publication F-14"),
            Figure("outer_radius", OUTER_RADIUS, "", "publication F-14"),
        ),
        "a smooth curve that never falls, fitted to the readings; contrast index: the slope between two arcs "
        "of radii 0.2 and 2.2 about base and fog; doubt: reading errors propagated (JCGM 100, 5.1)",
        ("docs/science/curves", "docs/science/speed-and-contrast-index", "iso-6"),
        leaves_out=("light-and-roll",),
        plot=curve_plot(found.curve, code="curve", marks=_arcs(index.value, found.curve)),
    )


def _as_contrast(of: Estimate) -> Estimate:
    """The same with contrast's own unit, which says to how many digits it is told."""
    return Estimate(of.value, of.low, of.high, "contrast index", of.source)


def _speed_point(point: Finding) -> tuple[Figure, ...]:
    """Where density first stands 0.1 above base and fog."""
    if isinstance(point, Refusal):
        return ()
    return (Figure("speed_point", point.value, "log H", point.source),)


def curve_plot(curve: Curve, *, code: str, marks: Sequence[Mark] = (), level: float | None = None) -> Plot:
    """Density above base and fog against log exposure, with the band of the readings.

    Arguments: `code` of its words; `level` a density. Source: `half_width`. Doubt: that of the readings.
    """
    shape = curve.shape
    log_h = np.linspace(shape.log_h[0], shape.log_h[-1], PLOT_POINTS)
    told = np.interp(log_h, shape.log_h, shape.net)
    half = np.interp(log_h, shape.log_h, half_width(curve))
    return Plot(
        code,
        "log H",
        "density",
        tuple(float(one) for one in log_h),
        tuple(float(one) for one in np.maximum(told - half, 0.0)),
        tuple(float(one) for one in told + half),
        tuple(float(one) for one in told),
        level=level,
        marks=tuple(marks),
        rows=tuple(range(0, PLOT_POINTS, 3)),
    )


def _arcs(index: float, curve: Curve) -> tuple[Mark, ...]:
    """Where the line of the contrast index meets the curve on its two arcs."""
    sine = index / sqrt(1 + index**2)
    arcs = (("inner-arc", INNER_RADIUS * sine), ("outer-arc", OUTER_RADIUS * sine))
    return tuple(Mark(code, curve.shape.log_h_at(net), net) for code, net in arcs)
