"""Rising splines, and how smooth the readings make it likely that a curve is."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from tankside.core.doubt.distributions import FloatArray

KNOT_LOG_H = 0.15
MOST_PIECES = 40
LEAST_PIECES = 6
FOOT_PIECES = 6
"""Pieces that lead down to a base and fog that was read by itself."""

_DEGREE = 3
_STRENGTHS = np.exp(np.linspace(np.log(0.003), np.log(3.0), 25))
"""Standard deviations, in density per knot, that the change of rise between two knots may have."""


@dataclass(frozen=True, slots=True, eq=False)
class Splines:
    """A constant and cubic splines that each rise from 0 to 1, on evenly spaced `knots`."""

    knots: FloatArray
    log_h_range: tuple[float, float]
    foot: bool

    def at(self, log_h: FloatArray) -> FloatArray:
        """Values (exposures by 1 + splines): the constant first."""
        from scipy.interpolate import BSpline  # noqa: PLC0415 - scipy is loaded only where it is used

        bells = BSpline.design_matrix(log_h, self.knots, _DEGREE).toarray()
        return np.asarray(np.cumsum(bells[:, ::-1], axis=1)[:, ::-1])

    def table(self, fineness: float) -> tuple[FloatArray, FloatArray]:
        """Log exposures about `fineness` apart and the values there."""
        low, high = self.log_h_range
        log_h = np.linspace(low, high, round((high - low) / fineness) + 1)
        return log_h, self.at(log_h)

    def roughness(self) -> FloatArray:
        """Rows that take the change of slope, in density per knot, from spline to spline.

        At a foot it starts from none. Splines at both ends are narrower, so the same rise is steeper there.
        """
        count = len(self.knots) - _DEGREE - 2
        widths = self.knots[1 + _DEGREE : 1 + _DEGREE + count] - self.knots[1 : 1 + count]
        slopes = np.diag(np.max(widths) / widths)
        changes = np.diff(slopes, axis=0)
        if self.foot:
            changes = np.vstack([slopes[:1], changes])
        return np.hstack([np.zeros((len(changes), 1)), changes])


@dataclass(frozen=True, slots=True, eq=False)
class Penalty:
    """Rows to put below the readings so that changes of rise cost what the readings make likely."""

    rows: FloatArray
    strength: float


def rising_splines(log_h: FloatArray, *, reach_below: bool) -> Splines:
    """Splines over the exposures of a strip, and down to a foot where base and fog were read apart.

    Own model: docs/science/curves. Doubt: none added.

    >>> rising_splines(np.linspace(-3.0, 0.0, 21), reach_below=False).log_h_range == (-3.0, 0.0)
    True
    """
    low, high = float(np.min(log_h)), float(np.max(log_h))
    pieces = int(np.clip(np.ceil((high - low) / KNOT_LOG_H), LEAST_PIECES, MOST_PIECES))
    step = (high - low) / pieces
    if reach_below:
        low, pieces = low - FOOT_PIECES * step, pieces + FOOT_PIECES
    inner = low + step * np.arange(pieces + 1)
    inner[-1] = high
    knots = np.concatenate([np.full(_DEGREE, low), inner, np.full(_DEGREE, high)])
    return Splines(knots, (low, high), reach_below)


def smoothest(rows: FloatArray, right: FloatArray, roughness: FloatArray) -> Penalty:
    """The strength of smoothing that makes the readings likeliest, everything else averaged out.

    Arguments: readings in units of their standard deviation; rows of roughness. Result: rows of the penalty.
    Own model: docs/science/curves: marginal likelihood of a Gaussian model (after Wahba 1985, from memory).
    Doubt: a factor of two in the strength, which moves a curve by less than its reading error.

    >>> rows, bend = np.eye(5), np.diff(np.eye(5), n=2, axis=0)
    >>> straight, bent = np.arange(5.0), np.array([0.0, 9, 0, 9, 0])
    >>> smoothest(rows, straight, bend).strength < smoothest(rows, bent, bend).strength
    True
    """
    inner, cross, rough = rows.T @ rows, rows.T @ right, roughness.T @ roughness
    precisions = inner + rough / _STRENGTHS[:, None, None] ** 2
    _, log_determinants = np.linalg.slogdet(precisions)
    explained = np.linalg.solve(precisions, np.broadcast_to(cross[:, None], (len(_STRENGTHS), len(cross), 1)))
    log_likelihoods = 0.5 * (explained[..., 0] @ cross - log_determinants) - len(roughness) * np.log(
        _STRENGTHS
    )
    best = float(_STRENGTHS[int(np.argmax(log_likelihoods))])
    return Penalty(roughness / best, best)
