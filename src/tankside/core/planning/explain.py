"""The why of each computed number of a plan, worked out again from its wish."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from types import MappingProxyType

from tankside.core.development.belief import Evidence
from tankside.core.planning.explain_contrast import contrast_of
from tankside.core.planning.explain_fixing import fix_of
from tankside.core.planning.explain_order import why_end, why_start
from tankside.core.planning.explain_stock import stock_of
from tankside.core.planning.explain_timing import mix_to_of, time_of
from tankside.core.planning.explain_washing import wash_of
from tankside.core.planning.explain_waters import waters_of
from tankside.core.planning.fixer import latest_piece
from tankside.core.planning.plan import Plan, PlannedTankful
from tankside.core.planning.why import AboutPlan, Why
from tankside.core.planning.wish import Wish
from tankside.core.refusals import refuse

Builder = Callable[[Plan, PlannedTankful, Wish, Sequence[Evidence]], Why]

BUILDERS: Mapping[AboutPlan, Builder] = MappingProxyType(
    {
        "time": lambda _, one, wish, evidence: time_of(one, wish, evidence),
        "contrast": lambda _, one, wish, evidence: contrast_of(one, wish, evidence),
        "mix-to": lambda _, one, wish, *__: mix_to_of(one, wish),
        "hot": lambda plan, one, *_: waters_of(plan, one, "hot"),
        "cold": lambda plan, one, *_: waters_of(plan, one, "cold"),
        "end": lambda plan, *_: why_end(plan),
        "second-start": lambda plan, one, *_: why_start(plan, one),
        "fix": lambda _, one, wish, *__: fix_of(one, wish, latest_piece(wish.supply("fixer"))),
        "wash": lambda _, one, wish, *__: wash_of(one, wish),
        "least-stock": lambda _, one, wish, *__: stock_of(one, wish),
    }
)
"""One builder for each number of a plan."""


def explain(
    plan: Plan, about: AboutPlan, tankful: str | None = None, evidence: Sequence[Evidence] = ()
) -> Why:
    """Why the number `about` is what it is; `tankful` names its letter (the first unless told).

    `evidence` is what step strips and answers have told of its combination.

    Refused where the plan holds no such number, or was not worked out from a wish.
    """
    wish = plan.wish
    if wish is None:
        raise refuse("no-why", about=about)
    letter = tankful or plan.tankfuls[-1 if about == "second-start" else 0].letter
    one = next((each for each in plan.tankfuls if each.letter == letter), None)
    if one is None:
        raise refuse("no-such-tankful", letter=letter)
    return BUILDERS[about](plan, one, wish, evidence)
