"""Where the rolls of a run stand: in the tank once a bath was poured, done once they hang."""

from __future__ import annotations

from uuid import UUID

from tankside.core.rolls.roll import Standing
from tankside.core.run.state import RunState, TankfulState


def roll_standings(state: RunState) -> dict[UUID, Standing]:
    """The standing of each roll of a run, as its settled notes have it; waiting before the first pour."""
    return {roll.key: _standing(one) for one in state.tankfuls for roll in one.plan.rolls}


def _standing(one: TankfulState) -> Standing:
    outcome = one.ended.outcome if one.ended is not None else None
    if one.hung or outcome == "hung":
        return "done"
    if outcome == "image lost":
        return "lost"
    return "in the tank" if one.passes else "waiting"
