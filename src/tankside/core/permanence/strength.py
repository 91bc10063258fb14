"""Thiosulfate in a fixer by what it was mixed from, and silver in the rinses after it."""

from __future__ import annotations

from tankside.core.refusals import refuse

THIOSULFATE_G_MOL = 112.117
PENTAHYDRATE_G_MOL = 248.1715
AMMONIUM_SALT_G_MOL = 148.195


def from_crystals_g_l(crystals_g_l: float) -> float:
    """g/L of thiosulfate in a fixer of `crystals_g_l` of sodium thiosulfate pentahydrate (0 to 700 g/L).

    Source: molar masses. Doubt: under 0.1 % for dry crystals.

    >>> round(from_crystals_g_l(240), 1)
    108.4
    """
    if not 0 <= crystals_g_l <= 700:
        raise refuse("fixer-strength-out-of-range", strength_g_l=crystals_g_l)
    return crystals_g_l * THIOSULFATE_G_MOL / PENTAHYDRATE_G_MOL


def from_concentrate_g_l(
    *, parts_of_water: float, percent: float = 60.0, density_g_ml: float = 1.32
) -> float:
    """g/L of thiosulfate in ammonium thiosulfate concentrate (`percent` by weight) with `parts_of_water`.

    Source: molar masses. Doubt: 2 % by the density, which is from memory.

    >>> round(from_concentrate_g_l(parts_of_water=4), 1)
    119.8
    """
    if not 0 <= parts_of_water <= 20:
        raise refuse("fixer-dilution-out-of-range", parts=parts_of_water)
    salt_g_l = 10 * percent * density_g_ml / (1 + parts_of_water)
    return salt_g_l * THIOSULFATE_G_MOL / AMMONIUM_SALT_G_MOL


def silver_in_rinse_mg_l(*, fixer_silver_g_l: float, retained_ml: float, fill_ml: float, rinse: int) -> float:
    """Silver in mg/L of the first, second... rinse that takes up what `retained_ml` of fixer brought along.

    Source: serial dilution. Doubt: that of the silver in the fixer, about a half.

    >>> round(silver_in_rinse_mg_l(fixer_silver_g_l=4, retained_ml=10, fill_ml=500, rinse=1), 1)
    78.4
    """
    if rinse < 1 or retained_ml <= 0 or fill_ml <= 0:
        raise refuse("rinse-out-of-range", rinses=rinse, volume_ml=fill_ml)
    return float(1000 * fixer_silver_g_l * (retained_ml / (fill_ml + retained_ml)) ** rinse)
