"""Where the rolls of a run stand: in the tank once a bath was poured, done once they hang, or left."""

from __future__ import annotations

from uuid import UUID

from tankside.core.rolls.roll import Standing
from tankside.core.run.standing import really, standing
from tankside.core.run.state import RunState, TankfulState


def roll_standings(state: RunState) -> dict[UUID, Standing]:
    """The standing of each roll of a run, as its settled notes have it; waiting before the first pour."""
    return {roll.key: _standing(state, one, roll.code) for one in state.tankfuls for roll in one.plan.rolls}


def _standing(state: RunState, one: TankfulState, code: str) -> Standing:
    outcome = one.ended.outcome if one.ended is not None else None
    if outcome == "hung" or any(was.roll == code for was in one.hung):
        return "done"
    if outcome == "image lost":
        return "lost"
    if one.passes and (outcome is not None or state.closed is not None):
        return _left(state, one)
    return "in the tank" if one.passes else "waiting"


def _left(state: RunState, one: TankfulState) -> Standing:
    """A film that nobody goes on with: fixed it is a negative, after mere water it waits, else it is lost."""
    stands = standing(state, one)
    if stands.image_gone:
        return "lost"
    if any(one.bath(was.bath).kind == "fix" for was in stands.counted):
        return "done"
    wet_only = all(one.bath(really(state, one, there)).liquid is None for there in one.passes)
    return "waiting" if wet_only else "lost"
