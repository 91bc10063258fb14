"""What film asks of the fixer, and what its bottle may still take, both as the fixer counts."""

from __future__ import annotations

from collections.abc import Iterable

from tankside.core.permanence.capacity import CapacityLeft, Fixed, capacity_left
from tankside.core.planning.wish import Supply
from tankside.core.rolls.roll import Roll


def fixer_wanted(rolls: Iterable[Roll]) -> float:
    """Units of 80 in2 that these rolls come to; tabular or unknown film counts half as much again.

    Source: `permanence.capacity`. Doubt: a test piece binds as well.
    """
    return sum(Fixed(one.format.area_units, one.film.grain != "cubic").counted_units for one in rolls)


def fixer_takes(supply: Supply) -> CapacityLeft | None:
    """What the fixer of a bottle may still take; None where it is to be mixed fresh.

    Source: `permanence.capacity`. Doubt: 20 to 25 rolls a litre between sources.
    """
    if supply.bottle is None or supply.volume_ml is None:
        return None
    return capacity_left([Fixed(supply.rolls_used)], working_ml=supply.volume_ml)
