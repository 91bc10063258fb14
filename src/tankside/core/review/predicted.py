"""What the log of a run says of its development: temperature, time that counted, contrast."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import hypot

import numpy as np

from tankside.core.development.advice import Size, made_by, reading_moves_the_end, size_of
from tankside.core.doubt.distributions import Z95
from tankside.core.doubt.estimate import Estimate
from tankside.core.planning.plan import Development
from tankside.core.rates import RateLaw
from tankside.core.review.proposals import Developed
from tankside.core.run.advise import developing, rule_of, tank_readings
from tankside.core.run.state import Pass, RunState, TankfulState
from tankside.core.thermal.drift import READING_SD_K, temp_at
from tankside.core.thermal.trace import Trace, grid, record

UNREAD_SD_K = 0.5
"""How well a tank is known that nobody read. Own model: docs/science/review.md."""


@dataclass(frozen=True, slots=True)
class Counted:
    """What one development came to: `had_s` on the clock counted as `counted_s` where `due_s` was meant.

    `percent` is the contrast missed by time and temperature alone, with its doubt; `inside_s` half the
    interval that the plan gave its own end, None where it gave none.
    """

    had_s: float
    counted_s: float
    due_s: float
    ref_c: float
    mean_c: float
    percent: Estimate
    size: Size
    readings: int
    inside_s: float | None

    @property
    def inside(self) -> bool:
        """Whether it lies inside the doubt that the plan told."""
        return self.inside_s is not None and abs(self.counted_s - self.due_s) <= self.inside_s


def temperatures(state: RunState, letter: str) -> Trace | None:
    """T(t) of a development that is over, in C at s after its pour, from what was read in its tank.

    Source: the readings. Own model: docs/science/drift. Doubt: each reading's, else the plan's.
    """
    one = state.tankful(letter)
    there = _over(state, one)
    return None if there is None else _path(state, one, there)


def planned_temperatures(plan: Development, until_s: float) -> Trace:
    """T(t) that the plan expected, in C at s after the pour, to `until_s` (above 0).

    Own model: docs/science/drift. Doubt: that of the start.
    """
    times = grid(until_s)
    temps = temp_at(times, start_c=plan.start_c, room_c=plan.room_c, tau_min=plan.tau_min.value)
    return Trace(times, temps)


def counted(state: RunState, letter: str) -> Counted | None:
    """What the development of one tankful came to; None while it lasts, or where no rate is known.

    Own model: docs/science/review.md: equivalent time of T(t), then contrast and time. Doubt: the interval
    holds thermometer, factor per 10 K and how far the contrast could still go, combined as squares.
    """
    one = state.tankful(letter)
    plan, there = one.plan.development, _over(state, one)
    if there is None or not reading_moves_the_end(rule_of(plan)):
        return None
    path = _path(state, one, there)
    had_s = float(path.times_s[-1])
    if not plan.rate.knows(path.mean_c(had_s)):
        return None
    readings = tank_readings(state, one, there)
    sd_k = max(READING_SD_K, state.plan.thermometer.step_c / 12**0.5) if readings else UNREAD_SD_K
    made = _made(path, plan)
    percent = _with_doubt(path, plan, sd_k)
    return Counted(
        had_s=had_s,
        counted_s=made,
        due_s=plan.time_s.value,
        ref_c=plan.rate.ref_c,
        mean_c=path.mean_c(had_s),
        percent=percent,
        size=size_of(percent.value),
        readings=len(readings),
        inside_s=_half(plan),
    )


def developed_of(state: RunState, letter: str) -> Developed | None:
    """What the log of one tankful brings to a proposal; None where nothing can be counted.

    Source and doubt as in `counted`.
    """
    found, plan = counted(state, letter), state.tankful(letter).plan.development
    if found is None:
        return None
    return Developed(
        aimed_s=found.due_s,
        mean_c=found.mean_c,
        explained_percent=found.percent,
        rate=plan.rate,
        contrast=plan.contrast,
        induction_s=plan.induction_s,
    )


def together(developed: Sequence[Developed]) -> Developed:
    """Several developments (one or more) of one combination as one: means of what their logs say.

    Source: arithmetic mean. Doubt: the mean of the intervals, for thermometer and factor are shared.
    """
    count = len(developed)

    def mean(values: Sequence[float]) -> float:
        return sum(values) / count

    explained = [one.explained_percent for one in developed]
    return replace(
        developed[0],
        mean_c=mean([one.mean_c for one in developed]),
        explained_percent=Estimate(
            mean([one.value for one in explained]),
            mean([one.low for one in explained]),
            mean([one.high for one in explained]),
            "%",
            explained[0].source,
        ),
    )


def percent_of_extra(state: RunState, letter: str, *, told_s: float) -> Estimate | None:
    """By how many percent the contrast moved because it was drained at another time than `told_s` (s).

    Source and doubt as in `counted`; temperature alone is left out, for it is the same in both.
    """
    one = state.tankful(letter)
    plan, there = one.plan.development, _over(state, one)
    if there is None or told_s <= plan.induction_s or not reading_moves_the_end(rule_of(plan)):
        return None
    path = _path(state, one, there)
    if path.times_s[-1] <= plan.induction_s:
        return None
    due_s = _made(_until(path, told_s), plan)
    return made_by(
        path.times_s, path.temps_c, due_s=due_s, rate=plan.rate,
        c_inf_over_ci=plan.c_inf_over_ci, induction_s=plan.induction_s,
    ).deviation  # fmt: skip


def percent_of_warmth(state: RunState, letter: str, *, told_s: float) -> Estimate | None:
    """By how many percent the temperature moves the contrast of a tank poured out at `told_s` (s), as told.

    Source and doubt as in `counted`; an end that was moved for the temperature leaves little of it.
    """
    one = state.tankful(letter)
    plan, there = one.plan.development, _over(state, one)
    if there is None or told_s <= plan.induction_s or not reading_moves_the_end(rule_of(plan)):
        return None
    path = _until(_path(state, one, there), told_s)
    return made_by(
        path.times_s, path.temps_c, due_s=plan.time_s.value, rate=plan.rate,
        c_inf_over_ci=plan.c_inf_over_ci, induction_s=plan.induction_s,
    ).deviation  # fmt: skip


def _over(state: RunState, one: TankfulState) -> Pass | None:
    """The latest time that a developer was in the tank, once it is out again."""
    there = developing(state, one)
    return there if there is not None and (there.ended_us or 0) > there.poured.at_us else None


def _path(state: RunState, one: TankfulState, there: Pass) -> Trace:
    plan = one.plan.development
    assert there.ended_us is not None
    return record(
        tank_readings(state, one, there),
        room_c=plan.room_c,
        tau_min=plan.tau_min.value,
        until_s=(there.ended_us - there.poured.at_us) / 1e6,
        start_c=plan.start_c,
    )


def _until(path: Trace, until_s: float) -> Trace:
    """The path to `until_s`; beyond its end the last temperature holds."""
    times = np.append(path.times_s[path.times_s < until_s], until_s)
    return Trace(times, np.interp(times, path.times_s, path.temps_c))


def _made(path: Trace, plan: Development) -> float:
    return made_by(
        path.times_s, path.temps_c, due_s=plan.time_s.value, rate=plan.rate,
        c_inf_over_ci=plan.c_inf_over_ci, induction_s=plan.induction_s,
    ).counted_s  # fmt: skip


def _with_doubt(path: Trace, plan: Development, sd_k: float) -> Estimate:
    """The contrast missed, its causes of doubt combined as squares."""

    def percent(*, by_k: float = 0.0, law: RateLaw = plan.rate.law) -> Estimate:
        return made_by(
            path.times_s, path.temps_c + by_k, due_s=plan.time_s.value, rate=plan.rate, law=law,
            c_inf_over_ci=plan.c_inf_over_ci, induction_s=plan.induction_s,
        ).deviation  # fmt: skip

    told = percent()
    by_k = Z95 * sd_k
    others = [percent(by_k=-by_k).value, percent(by_k=by_k).value]
    factors = [percent(law=law).value for law in plan.rate.ends]
    down = hypot(*(max(0.0, told.value - min(ends)) for ends in (others, factors, [told.low])))
    up = hypot(*(max(0.0, max(ends) - told.value) for ends in (others, factors, [told.high])))
    return Estimate(told.value, told.value - down, told.value + up, "%", "the log of the run")


def _half(plan: Development) -> float | None:
    """Half the interval that the plan gave its end."""
    end = plan.end_s or plan.time_s
    return (end.high - end.low) / 2 if end.high > end.low else None
