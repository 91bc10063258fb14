"""From the range of a subject to the contrast wanted, and from a negative's range to a paper grade."""

from __future__ import annotations

import numpy as np

from tankside.core.refusals import refuse

SUBJECT_LOG_RANGE, FLARE_LOG, PAPER_RANGE = 2.20, 0.40, 1.05
"""Mean outdoor scene (Jones and Condit, seen), flare it loses (from memory), range of a middle paper."""

GRADES = (
    (0, 1.41, 1.60),
    (1, 1.15, 1.40),
    (2, 0.95, 1.14),
    (3, 0.80, 0.94),
    (4, 0.65, 0.79),
    (5, 0.50, 0.64),
)
"""Density range of a negative by paper grade, diffusion enlarger: RIT course exercise (seen)."""


def wanted_contrast(
    subject_log_range: float = SUBJECT_LOG_RANGE,
    *,
    flare_log: float = FLARE_LOG,
    density_range: float = PAPER_RANGE,
) -> float:
    """Contrast that puts a subject onto a paper or a scan: density range over what reaches the film.

    Arguments: log10 of the subject's luminance range (0.6-4; 0.30 a stop); the part that flare takes (0-1);
    density range wanted (0.3-2). Result: average gradient, near contrast index.
    Source: Jones and Condit 1941 for the range (seen); gradient by division. Doubt: flare alone +-10 %.

    >>> round(wanted_contrast(2.20), 4), round(wanted_contrast(2.1, flare_log=0, density_range=1.2), 4)
    (0.5833, 0.5714)
    """
    left = subject_log_range - flare_log
    if not 0.6 <= subject_log_range <= 4 or left < 0.3:
        raise refuse("subject-range-out-of-range", at="subject_log_range", log_range=subject_log_range)
    return density_range / left


def negative_range(subject_log_range: float, *, flare_log: float, contrast: float) -> float:
    """Density range of the negative that a subject gives at a contrast; arguments as in `wanted_contrast`.

    Source: inverse of `wanted_contrast`. Doubt: as there.

    >>> round(negative_range(1.80, flare_log=0.30, contrast=0.50), 6)
    0.75
    """
    return (subject_log_range - flare_log) * contrast


def flare_from_veil(subject_log_range: float, *, veil: float) -> float:
    """Log range that an even veil takes, `veil` (0-20) being its light over that of the darkest image part.

    Source: light adds: range left = log10((R + v)/(1 + v)). Doubt: real flare is not even.

    >>> round(flare_from_veil(1.80, veil=1.028), 2)
    0.3
    """
    left = np.log10((10**subject_log_range + veil) / (1 + veil))
    return float(subject_log_range - left)


def paper_grade(density_range: float) -> int:
    """Grade (0-5) whose range a negative's density range falls into, the nearer one between two windows.

    Arguments: highlight less shadow density, 0.50-1.60, else refused. Result: grade for a diffusion enlarger.
    Source: RIT course exercise (seen). Doubt: half a grade between makers; a condenser wants about one less.

    >>> paper_grade(1.30 - 0.20)
    2
    """
    least, most = GRADES[-1][1], GRADES[0][2]
    if not least <= density_range <= most:
        raise refuse("no-grade-for-range", at="density_range", density=density_range, least=least, most=most)
    beyond = {grade: max(low - density_range, density_range - high, 0.0) for grade, low, high in GRADES}
    return min(beyond, key=lambda grade: beyond[grade])
