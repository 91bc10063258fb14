"""Published limits of monitored silver processes, to set one's own beside."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from tankside.core.sources import Provenance

Patch = Literal["base+fog", "mid-density", "density difference", "gamma", "mean density"]


@dataclass(frozen=True, slots=True)
class Limit:
    """How far a patch may rise above and fall below its established level."""

    above: float
    below: float
    process: str
    provenance: Provenance


CFR = Provenance("published", "cfr-21-900-12", "(e)(1)")
NAVY = Provenance("published", "navedtra-14208", "chapter 2")
LIMITS: dict[Patch, Limit] = {
    "base+fog": Limit(0.03, float("inf"), "mammography film processor, daily", CFR),
    "mid-density": Limit(0.15, 0.15, "mammography film processor, daily", CFR),
    "density difference": Limit(0.15, 0.15, "mammography film processor, daily", CFR),
    "gamma": Limit(0.05, 0.05, "aerial film processor, example at 1.50", NAVY),
    "mean density": Limit(0.07, 0.07, "aerial film processor, example at 1.65", NAVY),
}


def beyond_published(patch: Patch, reading: float, *, level: float) -> float:
    """By how much a reading is beyond the published limit about its level; 0 where it is within.

    Arguments: densities, or gammas for 'gamma'. Result: same unit, never below 0.
    Source: 21 CFR 900.12(e)(1) and NAVEDTRA 14208 ch. 2. Doubt: machines, not hand tanks.

    >>> beyond_published("base+fog", 0.29, level=0.25).__round__(6)
    0.01
    """
    limit = LIMITS[patch]
    moved = reading - level
    return max(0.0, moved - limit.above, -moved - limit.below)
