"""Least, aim and most end of a bath that is in the tank, in seconds after its pour."""

from __future__ import annotations

from tankside.core.run.state import Pass, TankfulState


def aim_end_s(one: TankfulState, there: Pass) -> float:
    """When a bath should be poured out; in a wash, when its present fill should."""
    planned = one.bath(there.bath)
    if planned.kind == "wash":
        return (there.filled_us - there.poured.at_us) / 1e6 + planned.times.aim_s
    return one.told_end_s(there.bath)


def least_end_s(one: TankfulState, there: Pass) -> float:
    """Before this a bath may not be ended by a mere touch; the told end moves it along."""
    planned = one.bath(there.bath)
    early_s = planned.drain_early_s if planned.kind == "develop" else 0.0
    slack_s = planned.times.aim_s - planned.times.least_s
    return max(0.0, aim_end_s(one, there) - slack_s - early_s)


def most_end_s(one: TankfulState, there: Pass) -> float | None:
    """After this a bath has lasted too long; None where longer does no harm."""
    planned = one.bath(there.bath)
    if planned.times.most_s is None:
        return None
    late_s = planned.drain_late_s if planned.kind == "develop" else 0.0
    return aim_end_s(one, there) + planned.times.most_s - planned.times.aim_s + late_s
