"""Hot and cold water for one jug: mix to the mark, hold back a little, read, then top up."""

from __future__ import annotations

from dataclasses import dataclass

from tankside.core.thermal.mixing import HotAndCold, Jug, Water, hot_and_cold, mix, rounded_to_marks

HOLD_BACK_ML = 50.0
"""What is left out of the jug until it has been read; a tenth of what is mixed where that is less."""


@dataclass(frozen=True, slots=True)
class Taps:
    """What hot and cold water read, what the stock reads, and the jug one mixes in."""

    hot_c: float
    cold_c: float
    stock_c: float
    jug_worth_ml: float = 42.0
    jug_c: float | None = None

    @property
    def jug(self) -> Jug | None:
        """The jug, as warm as the stock unless told; None where it is worth nothing."""
        if self.jug_worth_ml <= 0:
            return None
        return Jug(self.jug_worth_ml, self.stock_c if self.jug_c is None else self.jug_c)


@dataclass(frozen=True, slots=True)
class Tempered:
    """What to measure: stock, hot and cold water (each as measured at its own temperature), to the marks.

    `gives_c` is what they come to in the jug, `hold_back_ml` the part of the water to add last.
    """

    stock_ml: float
    hot_ml: float
    cold_ml: float
    water_c: float
    target_c: float
    gives_c: float
    hold_back_ml: float


def tempered(*, stock_ml: float, volume_ml: float, target_c: float, taps: Taps, mark_ml: float) -> Tempered:
    """Hot and cold water that bring `stock_ml` to `volume_ml` at `target_c`, to the measure's marks.

    Arguments: `stock_ml` 0 to below `volume_ml`; `target_c` within what the taps can reach, else refused;
    `mark_ml` the finest mark. Result: mL and C.
    Own model: docs/science/tempering. Doubt: half a mark of hot water, and the temperatures read.
    """
    stock = Water(stock_ml, taps.stock_c)
    exact = hot_and_cold(
        volume_ml=volume_ml,
        target_c=target_c,
        hot_c=taps.hot_c,
        cold_c=taps.cold_c,
        already=(stock,),
        jug=taps.jug,
    )
    marked = rounded_to_marks(exact, mark_ml=mark_ml, hot_c=taps.hot_c, cold_c=taps.cold_c)
    waters = [stock, Water(marked.hot_ml, taps.hot_c), Water(marked.cold_ml, taps.cold_c)]
    gives_c = mix(waters, jug=taps.jug).temp_c
    hold_back_ml = min(HOLD_BACK_ML, volume_ml / 10, marked.water_ml)
    return Tempered(stock_ml, marked.hot_ml, marked.cold_ml, marked.water_c, target_c, gives_c, hold_back_ml)


def top_up(
    *, in_jug_ml: float, reads_c: float, volume_ml: float, target_c: float, taps: Taps, mark_ml: float
) -> HotAndCold:
    """The water held back, once the jug has been read: how much of it hot and how much cold.

    Arguments: `in_jug_ml` below `volume_ml` at `reads_c`; the jug itself is as warm as what is in it.
    Result: mL of each, to the marks. Refused where even all hot or all cold misses.
    Own model: docs/science/tempering. Doubt: that of the reading, a tenth of it for each tenth held back.
    """
    jug = Jug(taps.jug_worth_ml, reads_c) if taps.jug_worth_ml > 0 else None
    exact = hot_and_cold(
        volume_ml=volume_ml,
        target_c=target_c,
        hot_c=taps.hot_c,
        cold_c=taps.cold_c,
        already=(Water(in_jug_ml, reads_c),),
        jug=jug,
    )
    return rounded_to_marks(exact, mark_ml=mark_ml, hot_c=taps.hot_c, cold_c=taps.cold_c)
