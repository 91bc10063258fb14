"""How well a tempered jug is known before it is read."""

from __future__ import annotations

from dataclasses import replace
from math import hypot, sqrt

from tankside.core.doubt.distributions import Z95
from tankside.core.doubt.estimate import Estimate
from tankside.core.planning.tempering import Taps, Tempered
from tankside.core.thermal.mixing import Water, mix


def jug_will_read(out: Tempered, taps: Taps, *, mark_ml: float, mark_k: float) -> Estimate:
    """What the jug will read once all is in, in C, with the doubt of marks and thermometer.

    Arguments: `out` and `taps` as tempered; marks of measure (mL) and thermometer (K), above 0.
    Result: C, 5-95 %. Own model: docs/science/tempering; half a mark either way of each volume and each
    temperature read, combined as squares. Doubt: what the jug is worth (25 %) and heat lost while pouring are
    left out, so hold some back and read.

    >>> taps = Taps(hot_c=52, cold_c=14, stock_c=17, jug_worth_ml=0)
    >>> out = Tempered(250, 71, 179, 24.7, 20.8, 20.8, 50)
    >>> jug = jug_will_read(out, taps, mark_ml=1, mark_k=0.1)
    >>> round(jug.value, 1), round(jug.high - jug.low, 1)
    (20.8, 0.1)
    """
    told = _reads(out, taps)
    moved = [
        _reads(replace(out, hot_ml=out.hot_ml + mark_ml / 2), taps) - told,
        _reads(replace(out, cold_ml=out.cold_ml + mark_ml / 2), taps) - told,
        _reads(out, replace(taps, hot_c=taps.hot_c - mark_k / 2)) - told,
        _reads(out, replace(taps, cold_c=taps.cold_c + mark_k / 2)) - told,
    ]
    if out.stock_ml > 0:
        moved.append(_reads(out, replace(taps, stock_c=taps.stock_c + mark_k / 2)) - told)
    half = Z95 * hypot(*moved) / sqrt(3)
    return Estimate(told, told - half, told + half, "C", "marks of measure and thermometer")


def _reads(out: Tempered, taps: Taps) -> float:
    """The mixture of what is measured out."""
    waters = (Water(out.hot_ml, taps.hot_c), Water(out.cold_ml, taps.cold_c))
    stock = (Water(out.stock_ml, taps.stock_c),) if out.stock_ml > 0 else ()
    return mix((*stock, *waters), jug=taps.jug).temp_c
