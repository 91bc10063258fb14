"""Stock and water for a volume, exact and as the measure allows."""

from __future__ import annotations

from dataclasses import dataclass

from tankside.core.quantities.display import to_step
from tankside.core.quantities.limits import check_volume
from tankside.core.refusals import refuse
from tankside.core.solutions.notation import Dilution

MOST_ERROR = 0.05
"""Rounding to a mark may change the strength by this much; more asks for a finer measure (ours)."""


@dataclass(frozen=True, slots=True)
class StockAndWater:
    """What to measure for one liquid, in mL."""

    stock_ml: float
    water_ml: float

    @property
    def volume_ml(self) -> float:
        """Both together, mixing taken to add volumes."""
        return self.stock_ml + self.water_ml


def stock_and_water(volume_ml: float, dilution: Dilution) -> StockAndWater:
    """Stock and water that make `volume_ml` (mL, above 0) of `dilution`, exact.

    Source: definition of parts by volume. Doubt: volumes are taken to add, within 0.5 % for photographic
    concentrates (common practice: fill up to the mark).

    >>> stock_and_water(500.0, Dilution(1, 4))
    StockAndWater(stock_ml=100.0, water_ml=400.0)
    """
    whole = check_volume(volume_ml)
    stock_ml = whole * dilution.stock / (dilution.stock + dilution.water)
    return StockAndWater(stock_ml, whole - stock_ml)


def on_the_marks(wanted: StockAndWater, *, mark_ml: float) -> StockAndWater:
    """The same whole with its stock at a mark of the measure; refused where that changes the strength.

    Arguments: `mark_ml` the finest mark of the measure that the stock is taken with, above 0.
    Result: mL. Own model: docs/science/least-stock; at most 5 % of strength may go by rounding.
    Doubt: half a mark of stock.

    >>> on_the_marks(StockAndWater(5.88, 294.12), mark_ml=0.5)
    StockAndWater(stock_ml=6.0, water_ml=294.0)
    """
    stock_ml = to_step(wanted.stock_ml, mark_ml)
    error = abs(stock_ml / wanted.stock_ml - 1)
    if error > MOST_ERROR and wanted.water_ml > 0:
        raise refuse(
            "mark-too-coarse",
            at="mark_ml",
            ways_on=("finer-measure", "larger-volume"),
            exact_ml=round(wanted.stock_ml, 2),
            mark_ml=mark_ml,
            error_percent=round(100 * error),
        )
    return StockAndWater(stock_ml, round(wanted.volume_ml - stock_ml, 9))


def strength_error(marked: StockAndWater, dilution: Dilution) -> float:
    """By what share the strength measured differs from the dilution wanted; above 0 is stronger.

    Source: definition. Doubt: none.

    >>> round(strength_error(StockAndWater(6.0, 294.0), Dilution(1, 50)), 4)
    0.02
    """
    return marked.stock_ml / marked.volume_ml / dilution.stock_fraction - 1
