"""How much film a fixer has taken and may still take: area binds, silver explains."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import exp, floor

from tankside.core.refusals import refuse

ROLLS_PER_L_PLANNED = 20.0
ROLLS_PER_L_NAMED = 25.0
"""Units of 80 in2 that a litre of working fixer takes, the pessimistic one planned on.

Source: Anchell, The Darkroom Cookbook, 3rd ed. (2008), p. 108: 20 (acid), 25 (alkaline).
"""

TABULAR_FACTOR = 1.5
"""Fixer that tabular film takes against ordinary film of the same area. Common practice: 50 to 70 % of the
normal capacity."""


COUNTED_WATER_PARTS = 4.0
"""The count of rapid fixer is printed for 1+4. Source: Personal FAQ, fixer capacity, as in the catalogue."""

MOST_WATER_PARTS = 9.0
"""Thinner than 1+9 film is not fixed (common practice)."""


@dataclass(frozen=True, slots=True)
class Fixed:
    """Film of `area_units` (80 in2 each) that went through; `tabular` film takes half as much again."""

    area_units: float
    tabular: bool = False

    @property
    def counted_units(self) -> float:
        """Units as the fixer counts them."""
        return self.area_units * (TABULAR_FACTOR if self.tabular else 1.0)


@dataclass(frozen=True, slots=True)
class CapacityLeft:
    """Units used, and left by the planned and by the named source: two sources, never a mean."""

    used_units: float
    left_planned: float
    left_named: float

    @property
    def ordinary_rolls(self) -> int:
        """Whole ordinary rolls to offer, by the pessimistic source."""
        return max(0, floor(self.left_planned + 1e-9))

    @property
    def tabular_rolls(self) -> int:
        """Whole tabular rolls to offer, by the pessimistic source."""
        return max(0, floor(self.left_planned / TABULAR_FACTOR + 1e-9))


def capacity_left(
    fixed: Iterable[Fixed], *, working_ml: float, water_parts: float = COUNTED_WATER_PARTS
) -> CapacityLeft:
    """What `working_ml` (50 to 20 000 mL) of working fixer, single bath, may still take.

    Arguments: `water_parts` (0 to 9) to one of rapid concentrate; thinner than 1+4 it counts for less, in
    proportion to the concentrate in it (ours), stronger for no more.
    Source: Anchell (2008) p. 108, see `ROLLS_PER_L_PLANNED`.
    Doubt: 20 to 25 rolls a litre between sources, kept as a range; the clearing test binds as well.

    >>> fixed = [Fixed(7), Fixed(2), Fixed(1.5), Fixed(3, tabular=True)]
    >>> left = capacity_left(fixed, working_ml=1000)
    >>> (left.used_units, left.left_planned, left.left_named, left.ordinary_rolls, left.tabular_rolls)
    (15.0, 5.0, 10.0, 5, 3)
    """
    if not 50 <= working_ml <= 20_000:
        raise refuse("fixer-volume-out-of-range", at="working_ml", volume_ml=working_ml)
    if not 0 <= water_parts <= MOST_WATER_PARTS:
        raise refuse("fixer-too-thin", at="water_parts", parts=water_parts, most=MOST_WATER_PARTS)
    used = sum(one.counted_units for one in fixed)
    litres = working_ml / 1000.0 * min(1.0, (1 + COUNTED_WATER_PARTS) / (1 + water_parts))
    return CapacityLeft(used, ROLLS_PER_L_PLANNED * litres - used, ROLLS_PER_L_NAMED * litres - used)


def silver_ceiling_rolls_per_l(
    *, coverage_g_m2: float, share_into_fixer: float, limit_g_l: float, area_m2: float = 0.0516128
) -> float:
    """Rolls a litre may take before its silver reaches `limit_g_l`: explains the count, never binds.

    Source: mass balance, N = c_lim / (sigma A phi); ceilings of 2 g/L (sodium) and 4 g/L (ammonium
    thiosulfate) from a published compliance note. Doubt: coverage 3-8 g/m2 and share 0.6-0.8 from memory.

    >>> round(silver_ceiling_rolls_per_l(coverage_g_m2=5, share_into_fixer=0.8, limit_g_l=4), 2)
    19.38
    """
    return limit_g_l / (coverage_g_m2 * area_m2 * share_into_fixer)


def two_bath_silver_g_l(
    *,
    silver_g_roll: float,
    carry_l: float,
    bath_l: float,
    rolls: float,
    first_g_l: float = 0.0,
    second_g_l: float = 0.0,
) -> tuple[float, float]:
    """Silver in the first and second fixing bath after `rolls`; a promoted bath starts at `first_g_l`.

    Source: mass balance of two baths in series with carry-over, solved continuously.
    Doubt: against a roll-by-roll balance about 5 % in the second bath.

    >>> [round(c, 3) for c in two_bath_silver_g_l(silver_g_roll=0.2, carry_l=0.005, bath_l=1, rolls=20)]
    [3.807, 0.187]
    """
    x = carry_l * rolls / bath_l
    gained = silver_g_roll / carry_l
    first = gained * (1 - exp(-x)) + first_g_l * exp(-x)
    second = gained * (1 - exp(-x) * (1 + x)) + first_g_l * x * exp(-x) + second_g_l * exp(-x)
    return first, second
