"""An invented session carried out by pressing what the sink puts in front, each tap as late as one likes."""

from __future__ import annotations

from collections.abc import Callable

from unit.core.run.evening import Sink, at, opened, plan

from tankside.core.planning.plan import Plan
from tankside.core.run.commands import CloseRun
from tankside.core.run.sink_view import sink_view

LateBy = Callable[[str], float]


def on_time(_cue: str) -> float:
    """Every tap at its time."""
    return 0.0


def carried_out(
    late_by: LateBy = on_time, *, planned: Plan | None = None, letter: str = "A", sink: Sink | None = None
) -> Sink:
    """One tankful from first pour to hung; `late_by` tells how many seconds each act slips, by its cue."""
    sink = sink or opened(planned or plan("A"))
    seconds = 0.0
    for _ in range(80):
        one = next(each for each in sink_view(sink.state, at(seconds)).tankfuls if each.letter == letter)
        if one.main is None:
            return sink
        due_s = seconds if one.main.due_us is None else (one.main.due_us - at(0).wall_us) / 1e6
        rings = [ring for ring in one.rings if ring.cue.kind == "measure" and ring.own]
        if rings and one.main.cue.kind != "measure":
            due_s = min(due_s, (rings[0].at_us - at(0).wall_us) / 1e6)
        if due_s > seconds:
            seconds = due_s
            continue
        seconds += late_by(one.main.cue.id)
        sink.do(one.main.asked, seconds)
    raise AssertionError(seconds)


def closed(sink: Sink, seconds: float = 3000.0) -> Sink:
    """The same run, closed."""
    sink.do(CloseRun(), seconds, saw=sink.run.last_seq)
    return sink
