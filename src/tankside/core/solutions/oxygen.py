"""Oxygen over and in a solution, and the most that it can use up: an upper bound, never what is left."""

from __future__ import annotations

from math import exp
from typing import Literal

from tankside.core.refusals import refuse
from tankside.core.solutions.molar_mass import molar_mass

Preserved = Literal["sulfite", "hydroquinone", "ascorbic acid"]

SHARE_OF_AIR = 0.20946
GAS_CONSTANT = 8.314462618
PRESSURE_PA = 101_325.0
VAPOUR_20_C_PA = 2_340.0
ZERO_C = 273.15
_USED = {"sulfite": ("Na2SO3", 2), "hydroquinone": ("C6H6O2", 1), "ascorbic acid": ("C6H8O6", 1)}
"""Formula, and moles that one mole of oxygen uses up at most."""


def oxygen_mg_per_ml(temp_c: float, *, vapour_pa: float = 0.0) -> float:
    """mg of oxygen in one mL of air at `temp_c` (0 to 40 C); `vapour_pa` is the share of water vapour.

    Source: ideal gas law; air holds 20.946 % of oxygen. Doubt: 3 % by the weather.

    >>> round(oxygen_mg_per_ml(20.0), 3)
    0.279
    """
    pressure = SHARE_OF_AIR * (PRESSURE_PA - vapour_pa)
    return pressure * molar_mass("O2") / (GAS_CONSTANT * (temp_c + ZERO_C)) / 1000


def dissolved_oxygen_mg_l(temp_c: float) -> float:
    """mg of oxygen in a litre of water at rest in air, at `temp_c` (0 to 40 C).

    Source: saturation formula of Benson and Krause as in the APHA Standard Methods; EN 25814 tabulates it.
    Doubt: 0.5 %, more in water that ran hard or was boiled.

    >>> round(dissolved_oxygen_mg_l(20.0), 2)
    9.09
    """
    if not 0 <= temp_c <= 40:
        raise refuse("water-oxygen-out-of-range", temp_c=temp_c)
    kelvin = temp_c + ZERO_C
    powers = (-139.34410, 1.575701e5, -6.642308e7, 1.243800e10, -8.621949e11)
    return exp(sum(factor / kelvin**power for power, factor in enumerate(powers)))


def used_g_per_g_oxygen(preserved: Preserved) -> float:
    """Grams of a substance that one gram of oxygen uses up at most.

    Source: moles of the reaction, two of sulfite or one of developer to one of oxygen. Doubt: an upper bound.

    >>> round(used_g_per_g_oxygen("sulfite"), 2)
    7.88
    """
    formula, moles = _USED[preserved]
    return moles * molar_mass(formula) / molar_mass("O2")


def most_lost_g(*, air_ml: float, openings: int, preserved: Preserved = "sulfite") -> float:
    """The most that `openings` fillings of `air_ml` over a solution at 20 C can use up, in g.

    Source: all the oxygen in the air over it, by `used_g_per_g_oxygen`. Doubt: an upper bound only: blind to
    how fast it goes, to what passes through the wall and to what becomes of hydroquinone.

    >>> round(most_lost_g(air_ml=500, openings=1), 2)
    1.1
    """
    if not 0 <= air_ml <= 20_000 or not 0 <= openings <= 1000:
        raise refuse("air-over-it-out-of-range", volume_ml=air_ml, openings=openings)
    return openings * air_ml * oxygen_mg_per_ml(20.0) * used_g_per_g_oxygen(preserved) / 1000


def most_lost_mixing_mg_l(temp_c: float, *, preserved: Preserved = "sulfite") -> float:
    """The most that oxygen dissolved in the mixing water uses up, in mg a litre.

    Source: `dissolved_oxygen_mg_l` times `used_g_per_g_oxygen`. Doubt: an upper bound.

    >>> round(most_lost_mixing_mg_l(20.0))
    72
    """
    return dissolved_oxygen_mg_l(temp_c) * used_g_per_g_oxygen(preserved)
