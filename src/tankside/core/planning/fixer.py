"""What film asks of the fixer, and what its bottle may still take, both as the fixer counts."""

from __future__ import annotations

from collections.abc import Iterable

from tankside.core.permanence.capacity import CapacityLeft, Fixed, capacity_left
from tankside.core.planning.plan import PlannedTankful
from tankside.core.planning.wish import Supply
from tankside.core.rolls.roll import Grain, Roll


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


def _counted(area_units: float, grain: Grain) -> float:
    """Film area as a fixer counts it."""
    return Fixed(area_units, grain != "cubic").counted_units


def fixer_takes(supply: Supply) -> CapacityLeft | None:
    """What the fixer of a bottle may still take; None where it is to be mixed fresh.

    Source: `permanence.capacity`. Doubt: 20 to 25 rolls a litre between sources.
    """
    if supply.bottle is None or supply.volume_ml is None:
        return None
    return capacity_left([Fixed(supply.rolls_used)], working_ml=supply.volume_ml)
