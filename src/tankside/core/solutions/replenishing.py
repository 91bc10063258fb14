"""A bath that is topped up after each roll: what builds up in it, and how fast it becomes another bath."""

from __future__ import annotations

from math import log

from tankside.core.refusals import refuse
from tankside.core.solutions.molar_mass import molar_mass

ROLL_M2 = 0.0516128
"""One side of a roll, 80 square inches."""


def built_up_g_l(rolls: float, *, bath_ml: float, top_up_ml: float, given_mg: float) -> float:
    """g/L of what each roll gives to the bath (`given_mg`), after `rolls` and the topping up that follows.

    Arguments: `top_up_ml` of fresh solution in place of as much old bath after each roll.
    Source: mass balance roll by roll, a geometric series. Doubt: that of what a roll gives, about a third.

    >>> round(built_up_g_l(10, bath_ml=1000, top_up_ml=70, given_mg=62), 3)
    0.425
    """
    share = _share(bath_ml, top_up_ml)
    left = float((1 - share) ** rolls)
    return given_mg / bath_ml * (1 - share) * (1 - left) / share


def steady_g_l(*, bath_ml: float, top_up_ml: float, given_mg: float) -> float:
    """What `built_up_g_l` comes to after many rolls, in g/L, just after topping up.

    Source: limit of that series, p/r - p/W. Doubt: as there.

    >>> round(steady_g_l(bath_ml=1000, top_up_ml=70, given_mg=62), 3)
    0.824
    """
    _share(bath_ml, top_up_ml)
    return given_mg / top_up_ml - given_mg / bath_ml


def rolls_until_half_new(*, bath_ml: float, top_up_ml: float) -> float:
    """Rolls after which half of the bath is what was topped up.

    Source: (1 - r/W)^n = 1/2. Doubt: none in the arithmetic.

    >>> round(rolls_until_half_new(bath_ml=1000, top_up_ml=70), 2)
    9.55
    """
    return log(0.5) / log(1 - _share(bath_ml, top_up_ml))


def original_left(rolls: float, *, bath_ml: float, top_up_ml: float) -> float:
    """Share of the first filling still in the bath after `rolls`.

    Source: (1 - r/W)^n. Doubt: none in the arithmetic.

    >>> round(original_left(10, bath_ml=1000, top_up_ml=70), 2)
    0.48
    """
    return float((1 - _share(bath_ml, top_up_ml)) ** rolls)


def top_up_ml_per_roll(volume_ml: float, *, area_m2: float) -> float:
    """mL for each roll (80 in2) where a leaflet tells `volume_ml` for `area_m2` of film (one side).

    Source: proportion by area, as leaflets print it. Doubt: that of the leaflet.

    >>> round(top_up_ml_per_roll(500, area_m2=1), 1)
    25.8
    """
    if area_m2 <= 0:
        raise refuse("nothing-to-share-over")
    return volume_ml * ROLL_M2 / area_m2


def bromide_mg(silver_mg: float) -> float:
    """mg of bromide that `silver_mg` of developed silver (mg) gives to the developer.

    Source: one bromide for each silver of silver bromide. Doubt: films also hold iodide, a few percent.

    >>> round(bromide_mg(80.0), 1)
    59.3
    """
    return silver_mg * molar_mass("Br") / molar_mass("Ag")


def _share(bath_ml: float, top_up_ml: float) -> float:
    """Share of the bath that each topping up renews."""
    if not 0 < top_up_ml < bath_ml:
        raise refuse("top-up-out-of-range", at="top_up_ml", top_up_ml=top_up_ml, bath_ml=bath_ml)
    return top_up_ml / bath_ml
