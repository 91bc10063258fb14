"""Sulfur dioxide that sulfites and thiosulfates can give off with acid: the most there can be."""

from __future__ import annotations

from typing import Literal

from tankside.core.refusals import refuse
from tankside.core.solutions.molar_mass import molar_mass

Salt = Literal["sodium sulfite", "sodium metabisulfite", "sodium thiosulfate", "ammonium thiosulfate"]
_GIVES = {
    "sodium sulfite": ("Na2SO3", 1),
    "sodium metabisulfite": ("Na2S2O5", 2),
    "sodium thiosulfate": ("Na2S2O3 . 5H2O", 1),
    "ammonium thiosulfate": ("(NH4)2S2O3", 1),
}
GAS_CONSTANT = 8.314462618
PRESSURE_PA = 101_325.0
ROOM_K = 293.15

SHORT_LIMIT_PPM = 1.0
"""EU short-term limit, 15 min. Source: Directive (EU) 2017/164."""


def sulfur_dioxide_g(mass_g: float, *, salt: Salt) -> float:
    """Grams of sulfur dioxide from `mass_g` of a salt, fully acidified (thiosulfate as pentahydrate).

    Source: moles of the reaction. Doubt: an upper bound; a stop bath sets free a small part.

    >>> round(sulfur_dioxide_g(1.0, salt="sodium sulfite"), 3)
    0.508
    """
    formula, moles = _GIVES[salt]
    return mass_g * moles * molar_mass("SO2") / molar_mass(formula)


def ppm_in_room(gas_g: float, *, room_m3: float) -> float:
    """Parts per million by volume of `gas_g` of sulfur dioxide in a still room of `room_m3` at 20 C.

    Source: ideal gas law. Doubt: a room is never still nor evenly mixed.

    >>> round(ppm_in_room(0.508, room_m3=10.0))
    19
    """
    if not 1 <= room_m3 <= 500:
        raise refuse("room-size-out-of-range", room_m3=room_m3)
    mg_m3_per_ppm = molar_mass("SO2") * PRESSURE_PA / (GAS_CONSTANT * ROOM_K) / 1000
    return 1000 * gas_g / room_m3 / mg_m3_per_ppm
