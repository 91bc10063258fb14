"""How far a run is, in planning's words."""

from __future__ import annotations

from tankside.core.planning.plan import PlannedBath
from tankside.core.planning.progress import BathProgress, Progress, TankfulProgress, Whereabouts
from tankside.core.run.bath_ends import end_after_s
from tankside.core.run.instants import Instant
from tankside.core.run.standing import Standing, standing
from tankside.core.run.state import RunState, TankfulState


def progress(state: RunState, now: Instant) -> Progress:
    """The run's present plan and where each tankful is, in seconds from `now`."""
    now_us = state.timeline.at_us(now)
    return Progress(state.plan, tuple(_tankful(state, one, now_us) for one in state.tankfuls))


def _tankful(state: RunState, one: TankfulState, now_us: int) -> TankfulProgress:
    stands = standing(state, one)
    baths = tuple(_bath(one, bath, stands, now_us) for bath in one.plan.baths)
    return TankfulProgress(one.letter, _where(one, stands), baths)


def _where(one: TankfulState, stands: Standing) -> Whereabouts:
    if one.ended is not None or (one.hung and not stands.coming):
        return "done"
    if one.in_tank is not None:
        return "in a bath"
    return "between baths" if one.passes else "not begun"


def _bath(one: TankfulState, bath: PlannedBath, stands: Standing, now_us: int) -> BathProgress:
    there = stands.pass_of(bath.id)
    if any(was.bath == bath.id for was in one.skipped):
        return BathProgress(bath.id, skipped=True)
    if there is None:
        return BathProgress(bath.id)
    ended_us = there.ended_us
    wash_left_s = bath.times.aim_s * (bath.fills - there.fills_done) if bath.kind == "wash" else 0.0
    due_us = there.filled_us + round((end_after_s(one, bath) + wash_left_s) * 1e6)
    return BathProgress(
        bath.id,
        poured_s=(there.poured.at_us - now_us) / 1e6,
        ends_s=((ended_us if ended_us is not None else due_us) - now_us) / 1e6,
        over=ended_us is not None,
        fills=there.fills_done if bath.kind == "wash" else 0,
    )
