"""The plots of docs/science on curves, speed, kinetics and process control, one function a page."""

from __future__ import annotations

import numpy as np
from matplotlib.axes import Axes

from tankside.core.development.belief import INPUTS, Belief, believed, of_strip
from tankside.core.development.contrast import contrast_at
from tankside.core.doubt.distributions import FloatArray
from tankside.core.doubt.groups import seed_of, uniform_draws
from tankside.core.sensitometry.contrast import INNER_RADIUS, OUTER_RADIUS, contrast_index
from tankside.core.sensitometry.control import individuals
from tankside.core.sensitometry.curve import Strip, curve_of, half_width
from tankside.core.sensitometry.shape import SPEED_POINT_D
from tankside.core.sensitometry.speed import ISO_LOG_H, speed_point
from tankside.figures.plain import DEVELOPER, INK, SECOND, field, name_end

INVENTED = (0.29, 0.27, 0.28, 0.31, 0.30, 0.36, 0.38, 0.47, 0.52, 0.65, 0.72, 0.84, 0.92, 1.05, 1.12, 1.25,
            1.33, 1.46, 1.53, 1.66, 1.75)  # fmt: skip
"""An invented strip of 21 steps, read to 0.02."""

STRIPS = ((400.0, 0.47), (570.0, 0.59), (900.0, 0.74))
"""Three invented step strips: time at 20 C, contrast index."""

CONTROL = (0.84, 0.86, 0.85, 0.83, 0.86, 0.84, 0.87, 0.85, 0.84, 0.86, 0.83, 0.85, 0.86, 0.84, 0.93, 0.85)
"""Invented density differences of sixteen control strips; the fifteenth was developed too warm."""


def invented_strip() -> Strip:
    """The strip of the pages on curves."""
    return Strip(np.linspace(-3.05, -0.05, 21), np.array(INVENTED), base_fog=0.28, reading_sd=0.02)


def curve() -> Axes:
    """Readings, the rising curve through them and its doubt."""
    strip, found = invented_strip(), curve_of(invented_strip())
    axes = field(across="log H", up="density", across_range=(-3.2, 0.0), up_range=(0, 2))
    base = found.base_fog.value
    low, high = (base + found.shape.net + side * half_width(found) for side in (-1, 1))
    seen = found.shape.log_h >= strip.log_h[0]
    axes.fill_between(
        found.shape.log_h[seen], low[seen], high[seen],
        facecolor="none", edgecolor=SECOND, hatch="////", linewidth=0,
    )  # fmt: skip
    axes.plot(found.shape.log_h[seen], base + found.shape.net[seen], color=INK, linewidth=1.8)
    axes.plot(strip.log_h, strip.density, "s", color=DEVELOPER, fillstyle="none", markersize=5)
    axes.plot([-3.2, 0], [base, base], color=SECOND, linewidth=0.9)
    name_end(axes, 0.0, base, "base and fog")
    name_end(axes, float(found.shape.log_h[-1]), float(base + found.shape.net[-1]), "curve and\nits doubt")
    return axes


def arcs() -> Axes:
    """The speed point, and the line that meets both arcs of the contrast index."""
    shape = curve_of(invented_strip()).shape
    axes = field(across="log H", up="density above base and fog", across_range=(-3.2, 0.1), up_range=(0, 2))
    axes.plot(shape.log_h, shape.net, color=INK, linewidth=1.8)
    angle = float(np.arctan(contrast_index(shape)))
    foot = shape.log_h_at(OUTER_RADIUS * np.sin(angle)) - OUTER_RADIUS * np.cos(angle)
    for radius in (INNER_RADIUS, OUTER_RADIUS):
        turned = np.linspace(0, 1.1 if radius == INNER_RADIUS else 0.85, 60)
        axes.plot(foot + radius * np.cos(turned), radius * np.sin(turned), color=SECOND, linewidth=0.9)
    reach = 2.35
    axes.plot(
        [foot, foot + reach * np.cos(angle)], [0, reach * np.sin(angle)], color=DEVELOPER, linewidth=3.4
    )
    name_end(axes, 0.1, float(reach * np.sin(angle)), "contrast index:\nslope of this", colour=DEVELOPER)
    first = speed_point(shape)
    last = first + ISO_LOG_H
    axes.plot([first, first, last], [0, SPEED_POINT_D, SPEED_POINT_D], color=SECOND, linewidth=0.9)
    axes.plot([last, last], [SPEED_POINT_D, shape.net_at(last)], color=SECOND, linewidth=0.9)
    name_end(axes, last, 0.45, "rise", colour=SECOND)
    name_end(axes, first + ISO_LOG_H / 3, 0.04, "over 1.30", colour=SECOND)
    name_end(axes, foot + OUTER_RADIUS * 0.64, OUTER_RADIUS * 0.76, "arc 2.2", colour=SECOND)
    return axes


def before_and_after() -> tuple[Belief, Belief]:
    """Belief in contrast and time from 9:30 for 0.56 alone, and after three step strips."""
    draws = uniform_draws(seed_of("docs", "kinetics"), count=4000, columns=INPUTS)
    seen = [of_strip(contrast, sd=0.01, time_s=time_s) for time_s, contrast in STRIPS]
    before = believed(0.56, time_s=570, uniforms=draws)
    return before, believed(0.56, time_s=570, uniforms=draws, evidence=seen)


def kinetics() -> Axes:
    """Contrast against time as believed, and as three step strips sharpen it."""
    axes = field(across="min at 20 °C", up="contrast index", across_range=(0, 20), up_range=(0, 1))
    time_s = np.linspace(0, 1200, 61)
    before, after = before_and_after()
    outer, inner = (np.array([_band(one, float(t)) for t in time_s]) for one in (before, after))
    for ends in (outer[:, 0], outer[:, 2]):
        axes.plot(time_s / 60, ends, color=SECOND, linewidth=0.9)
    axes.fill_between(
        time_s / 60, inner[:, 0], inner[:, 2], facecolor="none", edgecolor=SECOND, hatch="////", linewidth=0
    )
    axes.plot(time_s / 60, inner[:, 1], color=DEVELOPER, linewidth=3.4)
    axes.set_xticks([0, 5, 10, 15, 20])
    axes.plot([t / 60 for t, _ in STRIPS], [c for _, c in STRIPS], "s", color=INK, markersize=5)
    name_end(axes, 20, float(outer[-1, 2]), "leaflet alone")
    name_end(axes, 20, float(inner[-1, 1]), "three strips", colour=DEVELOPER)
    return axes


def control() -> Axes:
    """Sixteen control strips and the limits that their neighbours tell."""
    found = individuals(np.array(CONTROL[:-2]))
    axes = field(across="control strip", up="density difference", across_range=(0, 17), up_range=(0.75, 0.95))
    for level, name in ((found.lower, "limit"), (found.mean, "mean"), (found.upper, "limit")):
        axes.plot([0, 17], [level, level], color=SECOND, linewidth=0.9)
        name_end(axes, 17, level, name, colour=SECOND)
    axes.set_yticks([0.75, 0.80, 0.85, 0.90, 0.95])
    axes.set_xticks([1, 5, 10, 15])
    numbers = np.arange(1, len(CONTROL) + 1)
    axes.plot(numbers, CONTROL, color=INK, linewidth=1.2, marker="s", markersize=4)
    axes.annotate(
        "developed too warm", (15, CONTROL[14]), xytext=(-8, 0), textcoords="offset points",
        ha="right", va="center", fontsize=10, color=INK,
    )  # fmt: skip
    return axes


def _band(belief: Belief, time_s: float) -> FloatArray:
    """5, 50 and 95 % of the contrast after a time."""
    made = contrast_at(time_s, c_inf=belief.c_inf, k_per_s=belief.k_per_s, induction_s=belief.induction_s)
    return belief.quantiles(made)
