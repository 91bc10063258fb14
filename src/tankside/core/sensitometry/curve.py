"""The curve through the readings of one step strip: smooth, never falling, with its doubt."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from tankside.core.doubt.distributions import Z95, FloatArray
from tankside.core.doubt.estimate import Estimate
from tankside.core.refusals import refuse
from tankside.core.sensitometry.shape import Shape
from tankside.core.sensitometry.smoothing import rising_splines, smoothest

READING_SD = 0.02
"""Standard deviation of a density read at home, by scanner or simple densitometer (hobby reports, seen)."""

MOST_DENSITY = 5.0
LEAST_STEPS = 5
FINENESS = 0.002
FLAT_SHARE = 0.1
"""Slope at the lowest step, as a share of the steepest, up to which that step may stand for base and fog."""

Measure = Callable[[Shape], float]


@dataclass(frozen=True, slots=True, eq=False)
class Strip:
    """Densities (0-5, base and fog included) read at log exposures, as a step strip gives them.

    `base_fog` is the density of unexposed developed film where it was read too; `reading_sd` that of one
    reading, 0.001-0.2.
    """

    log_h: FloatArray
    density: FloatArray
    base_fog: float | None = None
    reading_sd: float = READING_SD

    def __post_init__(self) -> None:
        if len(self.log_h) != len(self.density) or len(np.unique(self.log_h)) < LEAST_STEPS:
            raise refuse("too-few-readings", at="density", ways_on=("read-more",),
                         count=len(np.unique(self.log_h)), least=LEAST_STEPS)  # fmt: skip
        read = self.density if self.base_fog is None else np.append(self.density, self.base_fog)
        if not np.all((read >= 0) & (read <= MOST_DENSITY)):
            strange = read[~((read >= 0) & (read <= MOST_DENSITY))][0]
            raise refuse("step-density-out-of-range", at="density", density=float(strange), most=MOST_DENSITY)
        if not 0.001 <= self.reading_sd <= 0.2:
            raise refuse("reading-error-out-of-range", at="reading_sd", sd=self.reading_sd)


@dataclass(frozen=True, slots=True, eq=False)
class Curve:
    """The fitted curve: `shape` above base and fog, and what it would be half a deviation each way.

    `apart` holds pairs of shapes, one for each independent direction of the doubt; `scatter` is the standard
    deviation of the readings about the curve.
    """

    base_fog: Estimate
    shape: Shape
    apart: tuple[tuple[Shape, Shape], ...]
    scatter: float


def curve_of(strip: Strip) -> Curve:
    """The smooth, never falling curve through a strip, base and fog and the doubt of both.

    Arguments: five different exposures or more. Without a reading of base and fog the curve's own foot stands
    for it, so the lowest steps should be flat. Result: density above base and fog, tabled every 0.002.
    Own model: docs/science/curves (rising cubic splines, as smooth as the readings make likely).
    Doubt: 0.024 of log exposure at the speed point and 0.014 of contrast index for densities read to 0.01.

    >>> log_h = np.arange(-3.0, 0.1, 0.15)
    >>> strip = Strip(log_h, 0.25 + 0.12 * np.log1p(np.exp(5 * (log_h + 2.2))), reading_sd=0.01)
    >>> round(curve_of(strip).base_fog.value, 1)
    0.3
    """
    from scipy.optimize import nnls  # noqa: PLC0415 - scipy is loaded only where it is used

    splines = rising_splines(strip.log_h, reach_below=strip.base_fog is not None)
    design = splines.at(strip.log_h)
    read = strip.density
    if strip.base_fog is not None:
        design = np.vstack([design, np.eye(1, design.shape[1])])
        read = np.append(read, strip.base_fog)
    rows, right = design / strip.reading_sd, read / strip.reading_sd
    penalty = smoothest(rows, right, splines.roughness())
    stacked = np.vstack([rows, penalty.rows])
    found, _ = nnls(stacked, np.append(right, np.zeros(len(penalty.rows))))
    curve = _told(splines.table(FINENESS), found, _deviations(stacked, found), design @ found - read)
    if strip.base_fog is None:
        _flat_at_its_foot(curve.shape)
    return curve


def measured(curve: Curve, measure: Measure, unit: str = "") -> Estimate:
    """What `measure` finds on the curve, with the interval that the reading errors leave.

    Arguments: a function of the shape such as `contrast_index`. Result: in its unit, 5-95 %.
    Source: JCGM 100:2008, 5.1 (law of propagation, differences over one standard deviation).
    Doubt: the interval; light, exposure and the roll's own development are not in it.

    >>> log_h = np.arange(-3.0, 0.1, 0.15)
    >>> strip = Strip(log_h, 0.25 + 0.12 * np.log1p(np.exp(5 * (log_h + 2.2))), reading_sd=0.01)
    >>> from tankside.core.sensitometry.speed import speed_point
    >>> told = measured(curve_of(strip), speed_point, "log lx s")
    >>> round(told.value, 2), round(told.high - told.low, 1)
    (-2.15, 0.1)
    """
    value = measure(curve.shape)
    sd = float(np.sqrt(sum((measure(more) - measure(less)) ** 2 for less, more in curve.apart)))
    return Estimate(value, value - Z95 * sd, value + Z95 * sd, unit, "this strip")


def half_width(curve: Curve) -> FloatArray:
    """Half of the 5-95 % interval of the density above base and fog, at every log exposure of the curve.

    Source: JCGM 100:2008, 5.1 (law of propagation, as in `measured`). Doubt: that of the readings.

    >>> log_h = np.arange(-3.0, 0.1, 0.15)
    >>> strip = Strip(log_h, 0.25 + 0.12 * np.log1p(np.exp(5 * (log_h + 2.2))), reading_sd=0.01)
    >>> round(float(np.max(half_width(curve_of(strip)))), 2)
    0.02
    """
    return np.asarray(Z95 * np.sqrt(sum((more.net - less.net) ** 2 for less, more in curve.apart)))


def _flat_at_its_foot(shape: Shape) -> None:
    """Refuse a curve whose lowest steps still rise where nothing else tells base and fog."""
    slope = np.gradient(shape.net, shape.log_h)
    if slope[0] > FLAT_SHARE * np.max(slope):
        raise refuse("base-fog-not-read", at="base_fog", ways_on=("read-unexposed-film",))


def _deviations(stacked: FloatArray, found: FloatArray) -> FloatArray:
    """Independent directions of one standard deviation (one a row), those held at zero left out."""
    free = found > 0
    covariance = np.linalg.inv(stacked[:, free].T @ stacked[:, free])
    variances, directions = np.linalg.eigh(covariance)
    whole = np.zeros((int(free.sum()), len(found)))
    whole[:, free] = (directions * np.sqrt(np.maximum(variances, 0.0))).T
    return whole


def _told(
    table: tuple[FloatArray, FloatArray], found: FloatArray, deviations: FloatArray,
    left: FloatArray,
) -> Curve:  # fmt: skip
    """The curve as values: shapes of the fit and of half a deviation each way."""
    log_h, rows = table
    above = rows[:, 1:]
    apart = tuple(
        (Shape(log_h, above @ (found - one / 2)[1:]), Shape(log_h, above @ (found + one / 2)[1:]))
        for one in deviations
    )
    sd = float(np.sqrt(np.sum(deviations[:, 0] ** 2)))
    base = float(found[0])
    return Curve(
        Estimate(base, max(0.0, base - Z95 * sd), base + Z95 * sd, "density", "this strip"),
        Shape(log_h, above @ found[1:]),
        apart,
        float(np.sqrt(np.sum(left**2) / max(1, len(left) - 1))),
    )
