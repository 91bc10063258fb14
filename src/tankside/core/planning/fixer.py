"""What tonight asks of the fixer, and what its bottle may still take, both as the fixer counts."""

from __future__ import annotations

from collections.abc import Sequence

from tankside.core.permanence.capacity import Fixed, capacity_left
from tankside.core.planning.wish import Supply, WantedRoll


def fixer_wanted(rolls: Sequence[WantedRoll]) -> float:
    """Units of 80 in2 that these rolls come to; tabular or unknown film counts half as much again.

    Source: `permanence.capacity`. Doubt: a test piece binds as well.
    """
    films = (Fixed(one.roll.format.area_units, one.roll.film.grain != "cubic") for one in rolls)
    return sum(one.counted_units for one in films)


def fixer_takes(supply: Supply) -> float:
    """Units that the fixer of a bottle may still take, by the pessimistic source.

    Source: `permanence.capacity`. Doubt: 20 to 25 rolls a litre between sources.
    """
    working_ml = max(supply.volume_ml or 50.0, 50.0)
    return capacity_left([Fixed(supply.rolls_used)], working_ml=working_ml).left_planned
