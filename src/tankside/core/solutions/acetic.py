"""Acetic acid: from glacial to the 28 % by weight that formulas call for."""

from __future__ import annotations

from dataclasses import dataclass

from tankside.core.solutions.molar_mass import molar_mass
from tankside.core.solutions.percent import Percent, strong_g_for

GLACIAL = Percent(99.8, "w/w")
STOCK = Percent(28.0, "w/w")
GLACIAL_G_ML = 1.0493
STOCK_G_ML = 1.0363
WATER_G_ML = 0.9982
"""g/mL at 20 C; those of the acids are from memory (a library gives 1.0471 for glacial)."""

ACETIC_ACID = "C2H4O2"


@dataclass(frozen=True, slots=True)
class FromGlacial:
    """What to measure for a solution of the acid: always the water first."""

    glacial_g: float
    glacial_ml: float
    water_g: float


def stock_from_glacial(volume_ml: float) -> FromGlacial:
    """Glacial acid and water for `volume_ml` (mL) of 28 % by weight.

    Source: mass balance. Doubt: 0.2 % by the densities (from memory).

    >>> made = stock_from_glacial(1000.0)
    >>> round(made.glacial_ml, 1), round(made.water_g, 1)
    (277.1, 745.6)
    """
    mass_g = volume_ml * STOCK_G_ML
    glacial_g = strong_g_for(mass_g, strong=GLACIAL, weak=STOCK)
    return FromGlacial(glacial_g, glacial_g / GLACIAL_G_ML, mass_g - glacial_g)


def strength_by_volumes(*, glacial_ml: float, water_ml: float) -> Percent:
    """Percent by weight of what `glacial_ml` of glacial acid and `water_ml` of water make (mL each).

    Source: mass balance. Doubt: 0.1 percentage points by the densities.

    >>> str(strength_by_volumes(glacial_ml=3.0, water_ml=8.0))
    '28.22 % w/w'
    """
    glacial_g = glacial_ml * GLACIAL_G_ML
    share = glacial_g / (glacial_g + water_ml * WATER_G_ML)
    return Percent(round(GLACIAL.value * share, 2), "w/w")


def stock_mol_per_l() -> float:
    """Moles of acetic acid in a litre of 28 % by weight.

    Source: definition, density `STOCK_G_ML`, molar mass. Doubt: 0.2 %.

    >>> round(stock_mol_per_l(), 2)
    4.83
    """
    return STOCK.value / 100 * STOCK_G_ML * 1000 / molar_mass(ACETIC_ACID)
