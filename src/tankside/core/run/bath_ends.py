"""When a bath may, should and must end, and where it goes then."""

from __future__ import annotations

from tankside.core.planning.plan import PlannedBath
from tankside.core.run.charges import liquid_of
from tankside.core.run.standing import bottle_for
from tankside.core.run.state import RunState, TankfulState


def home_of(state: RunState, one: TankfulState, bath: str) -> str:
    """Where a bath goes when it is drained: the code of a bottle, or 'drain'."""
    there = next((was for was in reversed(one.passes) if was.bath == bath), None)
    poured_from = there.bottle if there else None
    planned = bottle_for(state, one, bath)
    liquid = liquid_of(state, one, bath)
    if poured_from is not None and poured_from != planned:
        return _home_of_bottle(state, one, poured_from, bath)
    if one.bath(bath).destination == "drain" or liquid is None or not liquid.reusable:
        return "drain"
    return planned or "drain"


def _home_of_bottle(state: RunState, one: TankfulState, code: str, bath: str) -> str:
    """A bottle taken by mistake gets its liquid back by what that liquid is, not by what it was taken for."""
    for other in one.plan.baths:
        liquid = liquid_of(state, one, other.id)
        if liquid is not None and bottle_for(state, one, other.id) == code:
            return code if liquid.reusable else "drain"
    liquid = liquid_of(state, one, bath)
    return code if liquid is not None and liquid.reusable else "drain"


def end_after_s(one: TankfulState, bath: PlannedBath) -> float:
    """When a bath ends after its pour as told last; in a wash, one fill."""
    return bath.times.aim_s if bath.kind == "wash" else one.told_end_s(bath.id)


def least_s(one: TankfulState, bath: PlannedBath) -> float:
    """Before this, in seconds after its pour, a bath may not be ended by a mere touch."""
    early_s = bath.drain_early_s if bath.kind == "develop" else 0.0
    return max(0.0, end_after_s(one, bath) - (bath.times.aim_s - bath.times.least_s) - early_s)


def most_s(one: TankfulState, bath: PlannedBath) -> float | None:
    """After this, in seconds after its pour, a bath has lasted too long; None where longer does no harm."""
    if bath.times.most_s is None:
        return None
    late_s = bath.drain_late_s if bath.kind == "develop" else 0.0
    return end_after_s(one, bath) + bath.times.most_s - bath.times.aim_s + late_s
