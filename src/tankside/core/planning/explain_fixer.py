"""Why a fixer may still take so many rolls."""

from __future__ import annotations

from tankside.core.doubt.estimate import Estimate
from tankside.core.permanence.capacity import ROLLS_PER_L_PLANNED, CapacityLeft
from tankside.core.planning.why import Figure, Length, Why, narrowings, rule

FIXING_PAGE = "docs/science/fixing"
LEAST_THINNER = 1e-6


def why_fixer_left(left: CapacityLeft, *, working_ml: float) -> Why:
    """Why `working_ml` of working fixer may still take so many rolls: two sources, planned on the lower.

    A thinner bath takes fewer a litre than the sources print, and is told with what it takes.
    """
    low, high = max(0.0, left.left_planned), max(0.0, left.left_named)
    litres = working_ml / 1000
    planned_l, named_l = ((one + left.used_units) / litres for one in (left.left_planned, left.left_named))
    thinner = planned_l < ROLLS_PER_L_PLANNED * (1 - LEAST_THINNER)
    origin = "anchell-2008, less as the bath is thinner" if thinner else "anchell-2008"

    def source(per_l: float, rolls: float) -> tuple[Estimate, tuple[Figure, ...]]:
        figures = (
            Figure("per_l", per_l, "rolls", origin),
            Figure("used", left.used_units, "rolls", "counted by area"),
        )
        return rule(rolls, "rolls", "anchell-2008"), figures

    return Why(
        "fixer-left",
        None,
        Estimate(low, low, high, "rolls", "anchell-2008"),
        (
            Length("planned-count", *source(planned_l, low)),
            Length("named-count", *source(named_l, high)),
        ),
        (),
        narrowings("test-piece"),
        (
            Figure("working_ml", working_ml, "mL", "bottle"),
            Figure("used", left.used_units, "rolls", "counted by area"),
            Figure("per_l_planned", planned_l, "rolls", origin),
            Figure("per_l_named", named_l, "rolls", origin),
        ),
        "left = rolls a litre x litres - rolls used, each as its area of 80 in2; tabular film counts 1.5",
        (FIXING_PAGE, "docs/science/film-area", "anchell-2008", "navedtra-14209"),
        spread="sources",
        leaves_out=("test-piece-binds",),
    )
