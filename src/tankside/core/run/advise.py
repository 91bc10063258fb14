"""Where the sciences are asked while a run goes on: when development ends, and what too much of it makes."""

from __future__ import annotations

from dataclasses import dataclass, replace

from tankside.core.development.advice import (
    Size,
    end_of_development,
    made_by,
    reading_moves_the_end,
)
from tankside.core.development.rate import TimeRule
from tankside.core.doubt.estimate import Estimate
from tankside.core.doubt.groups import seed_of, uniform_draws
from tankside.core.planning.plan import Development
from tankside.core.run.standing import really
from tankside.core.run.state import Pass, RunState, TankfulState
from tankside.core.thermal.drift import Reading as TankReading
from tankside.core.thermal.expected_path import expected_path, reading_in_tank
from tankside.core.thermal.trace import Trace, record

DRAWS = 10_000
HORIZON = 1.6
"""How far beyond the planned time paths are followed; past that the last temperature holds."""


@dataclass(frozen=True, slots=True)
class EndAdvice:
    """When a development that is in the tank should be poured out, in seconds after its pour."""

    bath: str
    end_s: Estimate
    tank_c: float
    readings: int
    model: str


@dataclass(frozen=True, slots=True)
class ContrastAdvice:
    """What a development came to: percent of contrast missed, and seconds beyond the end told."""

    percent: Estimate
    size: Size
    over_s: float


def advise_end(state: RunState, letter: str) -> EndAdvice | None:
    """The end advised now from what was read in the tank; None where nothing was, or nothing may move it.

    Nor is there one where the tank reads outside what times are known for: `outside_times` says so.

    A function of what happened alone: not of what was told, nor of the order in which it was noted.
    Own model: docs/science/drift. Doubt: the interval holds reading, tank and factor per 10 K.
    """
    one = state.tankful(letter)
    plan, there = one.plan.development, developing(state, one)
    if there is None or not reading_moves_the_end(rule_of(plan)):
        return None
    readings = tank_readings(state, one, there)
    if not readings or not plan.rate.knows(readings[-1].temp_c):
        return None
    uniforms = uniform_draws(seed_of("end", plan, *readings), count=DRAWS, columns=3)
    path = expected_path(
        readings,
        room_c=plan.room_c,
        tau_min=_wide(plan.tau_min),
        until_s=HORIZON * plan.time_s.value,
        uniforms=uniforms[:, :2],
    )
    end = end_of_development(
        plan.time_s.value,
        times_s=path.times_s,
        temps_c=path.temps_c,
        drawn_temps_c=path.drawn_c,
        uniforms=uniforms[:, 2],
        rate=plan.rate,
    )
    return EndAdvice(there.bath, end, readings[-1].temp_c, len(readings), plan.model)


def advise_contrast(state: RunState, letter: str, *, until_s: float) -> ContrastAdvice | None:
    """What `until_s` seconds in the developer make of the contrast, against the end that was due.

    Own model: docs/science/contrast-and-time. Doubt: the interval, from how far the contrast could still go.
    """
    one = state.tankful(letter)
    plan, there = one.plan.development, developing(state, one)
    if there is None or until_s <= plan.induction_s or not reading_moves_the_end(rule_of(plan)):
        return None
    readings = tank_readings(state, one, there)
    path = _path_since(readings, plan, until_s)
    if not plan.rate.knows(path.mean_c(until_s)):
        return None
    made = made_by(
        path.times_s,
        path.temps_c,
        due_s=plan.time_s.value,
        rate=plan.rate,
        c_inf_over_ci=plan.c_inf_over_ci,
        induction_s=plan.induction_s,
    )
    return ContrastAdvice(made.deviation, made.size, until_s - one.told_end_s(there.bath))


def outside_times(state: RunState, letter: str) -> TankReading | None:
    """The last reading in a developer, where it lies outside what its times are known for.

    Own model: docs/science/rate-and-equivalent-time. Doubt: the reading's.
    """
    one = state.tankful(letter)
    plan, there = one.plan.development, developing(state, one)
    if there is None or not reading_moves_the_end(rule_of(plan)):
        return None
    readings = tank_readings(state, one, there)
    return readings[-1] if readings and not plan.rate.knows(readings[-1].temp_c) else None


def developing(state: RunState, one: TankfulState) -> Pass | None:
    """The latest time that a developer was in the tank, by what was really poured."""
    for there in reversed(one.passes):
        if one.bath(there.bath).kind == "develop" and really(state, one, there) == there.bath:
            return there
    return None


def tank_readings(state: RunState, one: TankfulState, there: Pass) -> list[TankReading]:
    """What was read in the tank while this bath was in it, true and with its sd, in order of time."""
    plan = one.plan.development
    step_k = plan.start_c - plan.jug_c if plan.jug_c is not None else 0.0
    ended_us = there.ended_us
    found: list[TankReading] = []
    for reading in state.readings:
        body, at_us = reading.body, reading.mark.at_us
        if body.of != "tank" or body.which != one.letter or at_us < there.poured.at_us:
            continue
        if ended_us is not None and at_us > ended_us:
            continue
        time_s = (at_us - there.poured.at_us) / 1e6
        found.append(reading_in_tank(time_s, body.raw_c, offset_k=body.offset_c, tank_step_k=step_k))
    return found


def _path_since(readings: list[TankReading], plan: Development, until_s: float) -> Trace:
    """Where the temperature was up to now: as read, or as planned where nobody read it."""
    tau_min = plan.tau_min.value
    return record(readings, room_c=plan.room_c, tau_min=tau_min, until_s=until_s, start_c=plan.start_c)


def rule_of(plan: Development) -> TimeRule:
    """The plan's time rule; one that this version does not know moves nothing."""
    match plan.time_rule:
        case "rate":
            return "rate"
        case "completion":
            return "completion"
        case _:
            return "table only"


def _wide(tau_min: Estimate) -> Estimate:
    """A tank's time constant with at least a percent of doubt, for the fit divides by it."""
    low, high = min(tau_min.low, 0.99 * tau_min.value), max(tau_min.high, 1.01 * tau_min.value)
    return replace(tau_min, low=low, high=high)
