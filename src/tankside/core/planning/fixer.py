"""What film asks of the fixer, what its bottle may still take, and how long it fixes by its test piece."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import ceil

from tankside.core.methods.baths import Times
from tankside.core.permanence.capacity import CapacityLeft, Fixed, capacity_left
from tankside.core.permanence.clearing import ClearingTest
from tankside.core.permanence.fixer_standing import FixerKnown, FixerStanding, judge_fixer
from tankside.core.permanence.fixing_time import fixing_time
from tankside.core.planning.plan import PlannedTankful
from tankside.core.planning.wish import Supply
from tankside.core.refusals import Refused
from tankside.core.rolls.roll import Grain, Roll

STEP_S = 15.0
"""Planned times are told to so much (ours)."""


def fixer_wanted(rolls: Iterable[Roll]) -> float:
    """Units of 80 in2 that these rolls come to; tabular or unknown film counts half as much again.

    Source: `permanence.capacity`. Doubt: a test piece binds as well.
    """
    return sum(_counted(one.format.area_units, one.film.grain) for one in rolls)


def tankful_wants(tankful: PlannedTankful) -> float:
    """Units that the film of one tankful comes to, as `fixer_wanted`.

    Source: `permanence.capacity`. Doubt: a test piece binds as well.
    """
    return sum(_counted(one.area_units, one.grain) for one in tankful.rolls)


def fixer_takes(supply: Supply) -> CapacityLeft | None:
    """What the fixer of a bottle may still take; None where it is to be mixed fresh.

    Source: `permanence.capacity`. Doubt: 20 to 25 rolls a litre between sources.
    """
    if supply.fixer is not None:
        return judge_fixer(supply.fixer).left
    if supply.bottle is None or supply.volume_ml is None:
        return None
    return capacity_left([Fixed(supply.rolls_used)], working_ml=supply.volume_ml)


def fix_times(usual: Times, supply: Supply, grains: Sequence[Grain]) -> Times:
    """Least, aim and most time of the fix (s): the method's, or longer where the test piece asks for it.

    Arguments: `usual` of the method; `grains` of the film in the tank. Refused past the ceiling of fixing.
    Source: `permanence.fixing_time`, the real clearing time at its own temperature. Doubt: about 5 %.
    """
    needed_s = fix_by_test_s(supply.fixer, grains)
    if needed_s is None or needed_s <= usual.aim_s:
        return usual
    return Times(needed_s, needed_s, max(needed_s, usual.most_s or needed_s))


def fix_needed_s(known: FixerKnown | None, grains: Sequence[Grain]) -> float | None:
    """How long (s) the test piece asks to fix such film; None where the bottle has no test piece.

    Source: `permanence.fixing_time`. Doubt: about 5 % of a clearing time by eye.
    """
    if known is None or known.latest is None:
        return None
    slow = next((one for one in grains if one != "cubic"), None)
    return fixing_time(known.latest.seconds, grain=slow or "ordinary").whole_s


def fix_by_test_s(known: FixerKnown | None, grains: Sequence[Grain]) -> float | None:
    """The same as it is planned, up to the next 15 s.

    Source: `fix_needed_s`. Doubt: as there.
    """
    needed_s = fix_needed_s(known, grains)
    return None if needed_s is None else STEP_S * ceil(needed_s / STEP_S)


def latest_piece(supply: Supply) -> ClearingTest | None:
    """The test piece that the fixer of a wish is timed by, None where it has none.

    Source: the ledger, as it stood when the wish was made. Doubt: about 5 % of a clearing time by eye.
    """
    return supply.fixer.latest if supply.fixer else None


def may_fix(known: FixerKnown, grains: Sequence[Grain]) -> FixerStanding | None:
    """How a fixer stands, None where no film is fixed in it: past its test or look, or past the ceiling.

    Source: `judge_fixer`, `fixing_time`. Doubt: as there.
    """
    stands = judge_fixer(known)
    try:
        fix_needed_s(known, grains)
    except Refused:
        return None
    return None if stands.done else stands


def _counted(area_units: float, grain: Grain) -> float:
    """Film area as a fixer counts it."""
    return Fixed(area_units, grain != "cubic").counted_units
