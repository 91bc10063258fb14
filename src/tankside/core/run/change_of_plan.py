"""Changes of plan that are ready to be taken with one command."""

from __future__ import annotations

from dataclasses import replace

from tankside.core.methods.baths import Times
from tankside.core.planning.plan import PlannedBath, PlannedTankful
from tankside.core.run.commands import ChangePlan
from tankside.core.run.state import RunState, TankfulState

RINSE_FILLS = 3
RINSE = Times(10.0, 20.0, None)
"""Three fills of water, each inverted a few times, take an acid or a trace out of film and tank (ours)."""


def rinse_first(state: RunState, one: TankfulState, owed: str) -> ChangePlan:
    """The plan with three fills of water before the bath that is owed, which then has its full time."""
    bath = PlannedBath(_free_id(one), "wash", None, RINSE, "drain", None, RINSE_FILLS)
    at = next(n for n, planned in enumerate(one.plan.baths) if planned.id == owed)
    baths = (*one.plan.baths[:at], bath, *one.plan.baths[at:])
    return ChangePlan(
        plan=replace(
            state.plan, number=state.plan_no + 1, tankfuls=_with(state, replace(one.plan, baths=baths))
        ),
        because="poured out of order",
        changes=(f"{one.letter}: {RINSE_FILLS} fills of water before {owed}",),
    )


def with_bottle(state: RunState, liquid: str, bottle: str) -> ChangePlan:
    """The plan with another bottle for one of its liquids."""
    liquids = tuple(replace(one, bottle=bottle) if one.key == liquid else one for one in state.plan.liquids)
    return ChangePlan(
        plan=replace(state.plan, number=state.plan_no + 1, liquids=liquids),
        because="another bottle",
        changes=(f"{liquid}: {bottle}",),
    )


def _with(state: RunState, changed: PlannedTankful) -> tuple[PlannedTankful, ...]:
    return tuple(changed if one.letter == changed.letter else one for one in state.plan.tankfuls)


def _free_id(one: TankfulState) -> str:
    taken = {bath.id for bath in (*one.plan.baths, *one.former)}
    names = (f"{one.letter}.rinse{'' if n == 1 else f'-{n}'}" for n in range(1, len(taken) + 2))
    return next(name for name in names if name not in taken)
