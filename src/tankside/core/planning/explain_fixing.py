"""Why film is fixed as long as it is: a multiple of the time in which it clears."""

from __future__ import annotations

from tankside.core.doubt.estimate import Estimate
from tankside.core.methods.baths import Times
from tankside.core.permanence.clearing import TIMES_CLEARING, TIMES_CLEARING_TABULAR, ClearingTest
from tankside.core.permanence.fixing_time import CEILING_S
from tankside.core.planning.plan import PlannedTankful
from tankside.core.planning.why import Figure, Length, Why, narrowings, rule
from tankside.core.planning.wish import Wish
from tankside.core.refusals import refuse

FIXING_PAGE = "docs/science/fixing"
CLEARING_SHARE = 0.05
"""A clearing time is read by eye to about 5 % (docs/science/fixing)."""


def fix_of(tankful: PlannedTankful, wish: Wish, clears: ClearingTest | None = None) -> Why:
    """Why a tankful of a plan is fixed as long as it is; refused where it has no fix."""
    bath = next((one for one in tankful.baths if one.kind == "fix"), None)
    if bath is None:
        raise refuse("no-why", about="fix")
    longer = any(roll.grain != "cubic" for roll in tankful.rolls)
    own = wish.times.fix_s is not None
    return why_fix(bath.times, longer=longer, own=own, clears=clears, tankful=tankful.letter)


def why_fix(
    times: Times,
    *,
    longer: bool,
    own: bool = False,
    clears: ClearingTest | None = None,
    tankful: str | None = None,
) -> Why:
    """Why film is fixed for `times`; `longer` for tabular or unknown grain, `clears` tonight's test piece."""
    multiple = _multiple(longer)
    aim_s = times.aim_s
    most_s = times.most_s or max(aim_s, CEILING_S)
    by_rule = (
        multiple,
        Figure("covered_s", aim_s / multiple.value, "s", "computed"),
        Figure("longer", float(longer), "", "grain"),
    )
    tested = () if clears is None else _tested(clears)
    return Why(
        "fix",
        tankful,
        rule(aim_s, "s", "common practice"),
        (
            Length("fix-own" if own else "fix-rule", rule(aim_s, "s", "yours" if own else "ours"), by_rule),
            Length("fix-allowed", Estimate(aim_s, times.least_s, most_s, "s", "common practice")),
            *(() if clears is None else (_clearing(clears, multiple),)),
        ),
        (),
        narrowings("test-piece") if clears is None else (),
        (
            Figure("fix_s", aim_s, "s", "yours" if own else "common practice"),
            multiple,
            Figure("ceiling_s", CEILING_S, "s", "common practice"),
            *tested,
        ),
        "time in the fixer = 2 x clearing time, 3 x for tabular or unknown grain, "
        "at the bath's own temperature",
        (FIXING_PAGE, "navedtra-14209", "tm-11-2323"),
        spread="rule",
        leaves_out=("fixer-within-limit",),
    )


def _multiple(longer: bool) -> Figure:
    """How many times the clearing time, by grain."""
    if longer:
        return Figure("multiple", TIMES_CLEARING_TABULAR, "", "common practice")
    return Figure("multiple", TIMES_CLEARING, "", "navedtra-14209")


def _tested(clears: ClearingTest) -> tuple[Figure, ...]:
    """A test piece as inputs."""
    return Figure("clears_s", clears.seconds, "s", "read"), Figure("clears_c", clears.temp_c, "C", "read")


def _clearing(clears: ClearingTest, multiple: Figure) -> Length:
    """What a test piece asks for, as well as it is read by eye."""
    needs_s = multiple.value * clears.seconds
    off_s = CLEARING_SHARE * needs_s
    asked = Estimate(needs_s, needs_s - off_s, needs_s + off_s, "s", "test piece")
    return Length("clearing", asked, (*_tested(clears), multiple))
