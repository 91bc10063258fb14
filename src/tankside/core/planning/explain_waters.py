"""Why so much hot and so much cold water."""

from __future__ import annotations

from dataclasses import replace
from math import hypot
from typing import Literal

from tankside.core.doubt.distributions import Z95
from tankside.core.doubt.estimate import Estimate
from tankside.core.planning.get_ready import taps_of
from tankside.core.planning.plan import Plan, PlannedTankful
from tankside.core.planning.tempering import Taps
from tankside.core.planning.why import Figure, Length, PartOfDoubt, Why
from tankside.core.refusals import refuse
from tankside.core.thermal.drift import READING_SD_K
from tankside.core.thermal.mixing import Water, hot_and_cold

JUG_SHARE = 0.25
"""What a jug is worth is known to a quarter."""


def why_waters(plan: Plan, tankful: PlannedTankful, which: Literal["hot", "cold"]) -> Why:
    """Why so much hot, or cold, water makes the developer right; refused until both taps are read."""
    liquid = plan.liquid(_developer_of(tankful))
    taps = taps_of(plan.place)
    if taps is None or liquid.mix_to_c is None:
        raise refuse("taps-not-read", at="hot_c", ways_on=("read-taps",))
    target_c = liquid.mix_to_c.value

    def at(read: Taps = taps) -> float:
        found = hot_and_cold(
            volume_ml=liquid.volume_ml,
            target_c=target_c,
            hot_c=read.hot_c,
            cold_c=read.cold_c,
            already=(Water(liquid.stock_ml, read.stock_c),),
            jug=read.jug,
        )
        return found.hot_ml if which == "hot" else found.cold_ml

    by_k = Z95 * READING_SD_K
    told = at()
    moved = {
        "hot-reading": at(replace(taps, hot_c=taps.hot_c + by_k)),
        "cold-reading": at(replace(taps, cold_c=taps.cold_c + by_k)),
        "stock-reading": at(replace(taps, stock_c=taps.stock_c + by_k)),
        "jug": at(replace(taps, jug_worth_ml=taps.jug_worth_ml * (1 + JUG_SHARE))),
    }
    parts = sorted(((code, abs(value - told)) for code, value in moved.items()), key=lambda one: -one[1])
    half = hypot(*(width for _, width in parts))
    answer = Estimate(told, max(0.0, told - half), told + half, "mL", "balance of heat")
    return Why(
        which,
        tankful.letter,
        answer,
        (Length("taps", answer, (Figure("target_c", target_c, "C", "plan"),)),),
        tuple(PartOfDoubt(code, width) for code, width in parts),
        ("read-taps", "weigh-jug", "hold-back"),
        (
            Figure("hot_c", taps.hot_c, "C", "read"),
            Figure("cold_c", taps.cold_c, "C", "read"),
            Figure("stock_c", taps.stock_c, "C", "assumed at room"),
            Figure("stock_ml", liquid.stock_ml, "mL", "plan"),
            Figure("volume_ml", liquid.volume_ml, "mL", "plan"),
            Figure("jug_ml", taps.jug_worth_ml, "mL", "ours"),
        ),
        "enthalpy of stock, hot, cold and jug = enthalpy of the whole at the target",
        ("docs/science/mixing", "tanaka-2001"),
    )


def _developer_of(tankful: PlannedTankful) -> str:
    """The liquid that its developer is poured from."""
    return next(bath.liquid or "" for bath in tankful.baths if bath.kind == "develop")
