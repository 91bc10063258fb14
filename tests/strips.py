"""Invented step strips, read off a curve whose contrast index and speed point are known beforehand."""

from __future__ import annotations

from math import atan, cos, exp, expm1, log, sin

import numpy as np
from scipy.optimize import brentq

from tankside.core.methods.step_strips import even_tablet
from tankside.workflows.read_step_strip import Typed

PATCHES = even_tablet()
BASE_FOG, SHARPNESS = 0.26, 5.0


def toe(gamma: float, x: float) -> float:
    """Density above base and fog of a toe that runs into a straight line of slope `gamma`."""
    return gamma / SHARPNESS * float(np.log1p(np.exp(SHARPNESS * x)))


def index_of(gamma: float) -> float:
    """The contrast index of that curve, from its two arcs solved together as circles about one foot."""

    def ends(angle: float) -> float:
        low, high = 0.2 * sin(angle), 2.2 * sin(angle)
        x_low, x_high = (log(expm1(SHARPNESS * d / gamma)) / SHARPNESS for d in (low, high))
        return (x_high - x_low) - 2.0 * cos(angle)

    return float(np.tan(brentq(ends, 0.05, atan(gamma) - 1e-9)))


def gamma_for(contrast: float) -> float:
    """The slope whose curve has that contrast index."""
    return float(brentq(lambda gamma: index_of(gamma) - contrast, 0.9 * contrast, 2.0 * contrast))


def densities(contrast: float, *, speed_point: float = -2.4) -> list[float]:
    """Exact densities behind the tablet, the clearest patch first; 0.10 net at log H `speed_point`."""
    gamma = gamma_for(contrast)
    shift = log(expm1(SHARPNESS * 0.10 / gamma)) / SHARPNESS - speed_point
    return [BASE_FOG + toe(gamma, shift - patch) for patch in PATCHES]


def typed(contrast: float, *, places: int = 4, reading_sd: float = 0.001, **more: object) -> Typed:
    """What a person types of such a strip."""
    words = " ".join(f"{one:.{places}f}" for one in densities(contrast))
    return Typed(words, "21 steps of 0.15", PATCHES, BASE_FOG, reading_sd, **more)  # type: ignore[arg-type]


def law(time_s: float, *, c_inf: float, k_per_s: float, induction_s: float = 30.0) -> float:
    """Contrast against time, written out here so that no code under test makes the truth."""
    return c_inf * (1 - exp(-k_per_s * (time_s - induction_s)))
