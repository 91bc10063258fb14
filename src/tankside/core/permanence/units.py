"""Residual thiosulfate in the units that limits are printed in."""

from __future__ import annotations

ROLL_M2 = 0.0516128
"""One side of a roll, 80 square inches."""

IN2_M2 = 0.00064516


def mg_per_roll(residual_g_m2: float) -> float:
    """mg on one side of a roll (80 in2) for `residual_g_m2` (g/m2).

    Source: definition of the inch. Doubt: none.

    >>> round(mg_per_roll(0.014), 3)
    0.723
    """
    return 1000 * residual_g_m2 * ROLL_M2


def ug_per_cm2(residual_g_m2: float) -> float:
    """The same in micrograms a square centimetre.

    Source: definition. Doubt: none.

    >>> round(ug_per_cm2(0.014), 3)
    1.4
    """
    return 100 * residual_g_m2


def g_m2_from_mg_in2(mg_in2: float) -> float:
    """g/m2 from milligrams a square inch, the unit of older limits.

    Source: definition of the inch. Doubt: none.

    >>> round(g_m2_from_mg_in2(0.005), 5)
    0.00775
    """
    return mg_in2 / 1000 / IN2_M2
