"""Plans put right while the session runs: what happened stands, what comes is changed."""

from __future__ import annotations

from dataclasses import replace

from tankside.core.methods.baths import Times
from tankside.core.planning.plan import Plan, PlannedBath

RINSE = Times(15.0, 30.0, None)
RINSE_FILLS = 3


def rinsed_before_developer(plan: Plan, letter: str) -> Plan:
    """The plan for a tankful whose stop bath was poured first: drain, three fills of water, then develop.

    The film is unharmed; the developer keeps its full time, which runs from its own pour.
    Own model: docs/science/planning (common practice). Doubt: none on the time; the fills are a rule.
    """
    tankful = plan.tankful(letter)
    rinse = PlannedBath(f"{letter}.rinse", "wash", None, RINSE, "drain", None, RINSE_FILLS)
    at = next(number for number, bath in enumerate(tankful.baths) if bath.kind == "develop")
    if any(bath.id == rinse.id for bath in tankful.baths):
        return plan
    changed = replace(tankful, baths=(*tankful.baths[:at], rinse, *tankful.baths[at:]))
    return replace(
        plan,
        number=plan.number + 1,
        tankfuls=tuple(changed if one.letter == letter else one for one in plan.tankfuls),
    )
