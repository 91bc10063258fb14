"""Control strips of one combination on their chart, each with what is noted of its development."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import median
from uuid import UUID

from tankside.core.methods.step_strips import StepStrip
from tankside.core.refusals import refuse
from tankside.core.review.predicted import counted
from tankside.core.run.replay import replay
from tankside.core.sensitometry.control_strips import ControlChart, control_chart, two_steps
from tankside.workflows.ports import Desk
from tankside.workflows.read_densities import read_combination

WARM_K = 0.5


@dataclass(frozen=True, slots=True)
class Noted:
    """What is noted of the development of a control strip; empty or None where nothing is."""

    bottle: str
    thermometer: str
    instrument: str
    mean_c: float | None
    words: str


@dataclass(frozen=True, slots=True)
class OddOut:
    """What was unlike the others in one development: each None where it was alike or is not noted."""

    bottle: str | None = None
    thermometer: str | None = None
    instrument: str | None = None
    mean_c: float | None = None
    usual_c: float | None = None
    words: str = ""


@dataclass(frozen=True, slots=True)
class ReadControl:
    """The chart with its strips, oldest first, the two steps that it takes, and what was odd by number."""

    strips: tuple[StepStrip, ...]
    steps: tuple[int, int]
    chart: ControlChart
    differed: dict[int, OddOut]


def read_control(desk: Desk, key: UUID) -> ReadControl:
    """The control chart of a combination; refused where it has no control strip with steps to compare."""
    strips = read_combination(desk, key).control
    like = (
        tuple(one for one in strips if one.patches == strips[0].patches and one.log_h is None)
        if strips
        else ()
    )
    if not like:
        raise refuse("no-control-strip", ways_on=("read-a-strip",))
    low, high = two_steps([one.densities for one in like])
    values = [(one.densities[high] or 0.0) - (one.densities[low] or 0.0) for one in like]
    chart = control_chart(values)
    noted = [_noted(desk, one) for one in like]
    return ReadControl(like, (low, high), chart, {n: odd_out(noted, n) for n in chart.outside})


def odd_out(noted: Sequence[Noted], at: int) -> OddOut:
    """What the development `at` had unlike most of the others."""
    one, others = noted[at], [each for n, each in enumerate(noted) if n != at]
    warmths = [each.mean_c for each in others if each.mean_c is not None]
    usual_c = median(warmths) if warmths else None
    warm = one.mean_c is not None and usual_c is not None and abs(one.mean_c - usual_c) > WARM_K
    return OddOut(
        _unlike(one.bottle, [each.bottle for each in others]),
        _unlike(one.thermometer, [each.thermometer for each in others]),
        _unlike(one.instrument, [each.instrument for each in others]),
        one.mean_c if warm else None,
        usual_c if warm else None,
        one.words,
    )


def _unlike(own: str, others: Sequence[str]) -> str | None:
    """What one had, where at least half of the others had the same other thing."""
    usual, count = Counter(others).most_common(1)[0] if others else ("", 0)
    return own if own and own != usual and usual and 2 * count >= len(others) else None


def _noted(desk: Desk, strip: StepStrip) -> Noted:
    """What the run of a strip says of it, or what was typed with it."""
    events = desk.run_log.after(strip.run) if strip.run is not None else ()
    if not events or strip.tankful is None:
        return Noted("", "", strip.instrument, strip.temp_c, strip.words)
    state = replay(events).state
    bottle = next((one.bottle for one in state.plan.liquids if one.key == f"develop-{strip.tankful}"), None)
    found = counted(state, strip.tankful)
    return Noted(
        bottle or "",
        state.plan.thermometer.name,
        strip.instrument,
        found.mean_c if found else None,
        strip.words,
    )
