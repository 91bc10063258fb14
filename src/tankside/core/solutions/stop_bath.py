"""Stop bath: what carried-in developer does to its acid. The count on the label is the rule."""

from __future__ import annotations

from math import log

from tankside.core.refusals import refuse
from tankside.core.solutions.molar_mass import molar_mass

PKA_ACETIC = 4.756
PKA_SULFITE = 7.2
PKA_CARBONATE = 6.35
"""Acid constants at 25 C, from memory."""

PH_END = 5.0
"""A stop bath that has risen to this is done (its indicator turns near it)."""

PUBLISHED_ROLLS_PER_L = 12
"""Source: Anchell (2008), p. 268: 12 rolls a litre of a bath with 32 mL of 28 % acid a litre, not revived."""


def acid_taken_mol_l(
    *, sulfite_g_l: float, carbonate_g_l: float = 0.0, borax_g_l: float = 0.0, ph_end: float = PH_END
) -> float:
    """Acid in mol that one litre of carried-in developer takes until the bath has risen to `ph_end`.

    Arguments: anhydrous sulfite and carbonate, borax decahydrate, in g/L of the developer as used.
    Source: acid-base equilibria; constants from memory. Doubt: about 10 %, more for developers not known.

    >>> round(acid_taken_mol_l(sulfite_g_l=100, borax_g_l=2), 3)
    0.799
    """
    sulfite = sulfite_g_l / molar_mass("Na2SO3") * _protonated(PKA_SULFITE, ph_end)
    carbonate = carbonate_g_l / molar_mass("Na2CO3") * (1 + _protonated(PKA_CARBONATE, ph_end))
    return sulfite + carbonate + 2 * borax_g_l / molar_mass("Na2B4O7 . 10H2O")


def rolls_per_litre(
    *, acid_mol_l: float, taken_mol_l: float, carried_ml: float, ph_end: float = PH_END
) -> float:
    """Rolls until a litre of acetic stop bath has risen to `ph_end`: an explanation, never the count.

    Arguments: `acid_mol_l` of the fresh bath (0.02 to 1), `carried_ml` with each roll (1 to 50 mL).
    Source: mass balance with acid-base equilibrium. Doubt: fourfold by the developer alone, twofold by what
    is carried in.

    >>> round(rolls_per_litre(acid_mol_l=0.1546, taken_mol_l=0.799, carried_ml=10), 1)
    12.3
    """
    _check(acid_mol_l, carried_ml)
    return acid_mol_l * _given_up(ph_end) / (taken_mol_l * carried_ml / 1000)


def acid_left_share(
    rolls: float, *, volume_ml: float, acid_mol_l: float, taken_mol_l: float, carried_ml: float
) -> float:
    """Share of the usable acid left after `rolls` in `volume_ml`; 0 where the bath is done.

    Each roll carries out as much bath as it carries in developer.
    Source: mass balance roll by roll. Doubt: as `rolls_per_litre`; the strip or the indicator decides.

    >>> round(acid_left_share(6, volume_ml=1000, acid_mol_l=0.1546, taken_mol_l=0.799, carried_ml=10), 2)
    0.47
    """
    _check(acid_mol_l, carried_ml)
    if not 50 <= volume_ml <= 20_000:
        raise refuse("stop-volume-out-of-range", at="volume_ml", volume_ml=volume_ml)
    kept = float((1 - carried_ml / volume_ml) ** rolls)
    usable = acid_mol_l * _given_up(PH_END)
    left = usable * kept - taken_mol_l * (1 - kept)
    return max(0.0, left / usable)


def rolls_until_done(*, volume_ml: float, acid_mol_l: float, taken_mol_l: float, carried_ml: float) -> float:
    """Rolls until `acid_left_share` has come to 0: an explanation, never the count.

    Arguments: `volume_ml` 50 to 20,000, the others as there.
    Source: mass balance roll by roll, solved for the end. Doubt: fourfold by the developer alone, twofold by
    what is carried in.

    >>> round(rolls_until_done(volume_ml=1000, acid_mol_l=0.1546, taken_mol_l=0.799, carried_ml=10), 1)
    11.6
    """
    _check(acid_mol_l, carried_ml)
    if not 50 <= volume_ml <= 20_000:
        raise refuse("stop-volume-out-of-range", at="volume_ml", volume_ml=volume_ml)
    usable = acid_mol_l * _given_up(PH_END)
    return log(taken_mol_l / (usable + taken_mol_l)) / log(1 - carried_ml / volume_ml)


def implied_carry_ml(count_per_l: float, *, acid_mol_l: float, taken_mol_l: float) -> float:
    """mL of developer that each roll would carry in for the model to give `count_per_l` rolls a litre.

    The one published count is consistent with about 10 mL, which is what a wet roll and its tank were
    measured to hold; this validates nothing. Source: `rolls_per_litre` solved for the volume. Doubt: 15 %.

    >>> round(implied_carry_ml(12, acid_mol_l=0.1546, taken_mol_l=0.799))
    10
    """
    return 1000 * acid_mol_l * _given_up(PH_END) / (taken_mol_l * count_per_l)


def _protonated(pka: float, ph: float) -> float:
    """Share of a base that has taken its proton at `ph`."""
    return float(1 / (1 + 10 ** (ph - pka)))


def _given_up(ph: float) -> float:
    """Share of acetic acid that has given its proton at `ph`."""
    return float(1 / (1 + 10 ** (PKA_ACETIC - ph)))


def _check(acid_mol_l: float, carried_ml: float) -> None:
    """Refuse what is no stop bath."""
    if not 0.02 <= acid_mol_l <= 1:
        raise refuse("stop-strength-out-of-range", acid_mol_l=acid_mol_l)
    if not 1 <= carried_ml <= 50:
        raise refuse("carried-out-of-range", carried_ml=carried_ml)
