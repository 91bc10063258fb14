"""Why a fixer may still take so many rolls."""

from __future__ import annotations

from tankside.core.doubt.estimate import Estimate
from tankside.core.permanence.capacity import (
    ROLLS_PER_L_NAMED,
    ROLLS_PER_L_PLANNED,
    CapacityLeft,
)
from tankside.core.planning.why import Figure, Length, Why, narrowings, rule

FIXING_PAGE = "docs/science/fixing"


def why_fixer_left(left: CapacityLeft, *, working_ml: float) -> Why:
    """Why `working_ml` of working fixer may still take so many rolls: two sources, planned on the lower."""
    low, high = max(0.0, left.left_planned), max(0.0, left.left_named)

    def source(per_l: float, rolls: float) -> tuple[Estimate, tuple[Figure, ...]]:
        figures = (
            Figure("per_l", per_l, "rolls", "anchell-2008"),
            Figure("used", left.used_units, "rolls", "counted by area"),
        )
        return rule(rolls, "rolls", "anchell-2008"), figures

    return Why(
        "fixer-left",
        None,
        Estimate(low, low, high, "rolls", "anchell-2008"),
        (
            Length("planned-count", *source(ROLLS_PER_L_PLANNED, low)),
            Length("named-count", *source(ROLLS_PER_L_NAMED, high)),
        ),
        (),
        narrowings("test-piece"),
        (
            Figure("working_ml", working_ml, "mL", "bottle"),
            Figure("used", left.used_units, "rolls", "counted by area"),
            Figure("per_l_planned", ROLLS_PER_L_PLANNED, "rolls", "anchell-2008"),
            Figure("per_l_named", ROLLS_PER_L_NAMED, "rolls", "anchell-2008"),
        ),
        "left = rolls a litre x litres - rolls used, each as its area of 80 in2; tabular film counts 1.5",
        (FIXING_PAGE, "docs/science/film-area", "anchell-2008", "navedtra-14209"),
        spread="sources",
        leaves_out=("test-piece-binds",),
    )
