"""Wall and elapsed time watched at every decision: a jump is doubted once, and changes nothing."""

from __future__ import annotations

from tankside.core.run.decide.drafts import Draft
from tankside.core.run.events import ClockDoubted
from tankside.core.run.instants import Instant
from tankside.core.run.state import Run

APART_S = 2.0


def clocks_parted(run: Run, now: Instant) -> list[Draft]:
    """One ClockDoubted where the clocks have parted by more than 2 s since it was last said."""
    line = run.state.timeline
    across = now.boot not in line.offset_us
    if not across:
        doubts = [one for one in run.state.clock_doubts if one.boot == now.boot and not one.across]
        said = sum(one.by_s for one in doubts)
        apart_s = line.skew_s(now) + _shift_s(run, now.boot) - said
    else:
        last_us = max(line.at_us(event.recorded) for event in run.events)
        apart_s = min(0.0, (now.wall_us - last_us) / 1e6)
    if abs(apart_s) <= APART_S:
        return []
    return [Draft(ClockDoubted(apart_s, now.boot, across), happened=now, how="advised")]


def _shift_s(run: Run, boot: str) -> float:
    """How far the person has already moved that boot on the line."""
    first = next(event.recorded for event in run.events if event.recorded.boot == boot)
    return (run.state.timeline.offset_us[boot] - (first.wall_us - first.elapsed_us)) / 1e6
