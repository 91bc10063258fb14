"""Why so much hot and so much cold water."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import hypot
from typing import Literal

from tankside.core.doubt.distributions import Z95
from tankside.core.doubt.estimate import Estimate
from tankside.core.planning.get_ready import taps_of
from tankside.core.planning.liquids import mark_for
from tankside.core.planning.plan import Plan, PlannedTankful
from tankside.core.planning.tempering import Taps, tempered
from tankside.core.planning.why import Figure, Length, PartOfDoubt, Why, narrowings
from tankside.core.refusals import refuse
from tankside.core.thermal.drift import READING_SD_K
from tankside.core.thermal.mixing import Water, hot_and_cold

JUG_SHARE = 0.25
"""What a jug is worth is known to a quarter."""


def waters_of(plan: Plan, tankful: PlannedTankful, which: Literal["hot", "cold"]) -> Why:
    """Why so much hot, or cold, water makes a plan's developer right; refused until both taps are read."""
    liquid = plan.liquid(_developer_of(tankful))
    taps = taps_of(plan.place)
    if taps is None or liquid.mix_to_c is None:
        raise refuse("taps-not-read", at="hot_c", ways_on=("read-taps",))
    return why_waters(
        which,
        taps,
        stock_ml=liquid.stock_ml,
        volume_ml=liquid.volume_ml,
        target_c=liquid.mix_to_c.value,
        mark_ml=mark_for(liquid.water_ml / 4),
        tankful=tankful.letter,
    )


def why_waters(
    which: Literal["hot", "cold"],
    taps: Taps,
    *,
    stock_ml: float,
    volume_ml: float,
    target_c: float,
    mark_ml: float = 1.0,
    tankful: str | None = None,
) -> Why:
    """Why so much hot, or cold, water brings `stock_ml` to `volume_ml` at `target_c`.

    The answer is the amount at the mark of its measure, as it is measured out.
    """

    def at(read: Taps = taps) -> float:
        found = hot_and_cold(
            volume_ml=volume_ml,
            target_c=target_c,
            hot_c=read.hot_c,
            cold_c=read.cold_c,
            already=(Water(stock_ml, read.stock_c),),
            jug=read.jug,
        )
        return found.hot_ml if which == "hot" else found.cold_ml

    told = at()
    parts = _moved(told, taps, at, has_stock=stock_ml > 0)
    half = hypot(*(part.half_width for part in parts))
    marked = tempered(stock_ml=stock_ml, volume_ml=volume_ml, target_c=target_c, taps=taps, mark_ml=mark_ml)
    shown_ml = marked.hot_ml if which == "hot" else marked.cold_ml
    low, high = max(0.0, min(told - half, shown_ml)), max(told + half, shown_ml)
    answer = Estimate(shown_ml, low, high, "mL", "enthalpy balance of water")
    return Why(
        which,
        tankful,
        answer,
        (Length("taps", answer, (Figure("target_c", target_c, "C", "plan"),)),),
        parts,
        narrowings("read-taps", *(("weigh-jug",) if taps.jug is not None else ()), "hold-back"),
        (
            Figure("target_c", target_c, "C", "plan" if tankful else "asked"),
            Figure("hot_c", taps.hot_c, "C", "read"),
            Figure("cold_c", taps.cold_c, "C", "read"),
            Figure("stock_c", taps.stock_c, "C", "assumed at room" if tankful else "read"),
            Figure("stock_ml", stock_ml, "mL", "plan" if tankful else "asked"),
            Figure("volume_ml", volume_ml, "mL", "plan" if tankful else "asked"),
            Figure("jug_ml", taps.jug_worth_ml, "mL", "ours" if tankful else "told"),
        ),
        "enthalpy of stock, hot, cold and jug = enthalpy of the whole at the target",
        ("docs/science/mixing", "tanaka-2001"),
    )


def _moved(
    told: float, taps: Taps, at: Callable[[Taps], float], *, has_stock: bool
) -> tuple[PartOfDoubt, ...]:
    """What each reading, moved alone to its 95 % point, does to the amount; the largest first."""
    by_k = Z95 * READING_SD_K
    moved = {
        "hot-reading": replace(taps, hot_c=taps.hot_c + by_k),
        "cold-reading": replace(taps, cold_c=taps.cold_c + by_k),
    }
    if has_stock:
        moved["stock-reading"] = replace(taps, stock_c=taps.stock_c + by_k)
    if taps.jug is not None:
        moved["jug"] = replace(taps, jug_worth_ml=taps.jug_worth_ml * (1 + JUG_SHARE))
    parts = (PartOfDoubt(code, abs(at(where) - told)) for code, where in moved.items())
    return tuple(sorted(parts, key=lambda part: -part.half_width))


def _developer_of(tankful: PlannedTankful) -> str:
    """The liquid that its developer is poured from."""
    return next(bath.liquid or "" for bath in tankful.baths if bath.kind == "develop")
