"""Why development ends when it does: what was planned, and each reading that moved it since."""

from __future__ import annotations

from collections.abc import Iterator

from tankside.core.doubt.estimate import Estimate
from tankside.core.quantities.display import planned_time, temperature_text, time_text, to_step, told_end
from tankside.core.quantities.preferences import Preferences
from tankside.core.run.state import RunState, TankfulState, Told
from tankside.wording.sink_answers import clock_words

DOUBT = "Nine times in ten it lies inside."


def why_heading(end_s: float) -> str:
    """'Why 10:05?': an end is kept to the second and shown to five."""
    return f"Why {time_text(to_step(end_s, 5.0))}?"


def why_this_end(state: RunState, one: TankfulState, bath: str, preferences: Preferences) -> tuple[str, ...]:
    """What was planned for a developer, then what has moved its end, in the order it was told."""
    planned = one.plan.development
    time = planned.end_s or planned.time_s
    said = [f"Planned: {planned_time(time)}. {DOUBT}"]
    said.extend(_moved(state, one, bath, preferences))
    return tuple(said)


def _moved(state: RunState, one: TankfulState, bath: str, preferences: Preferences) -> Iterator[str]:
    for told in one.told:
        if told.bath == bath:
            low_s, high_s = told.interval_s
            to = told_end(Estimate(told.end_after_s, low_s, high_s, "s"))
            clock = clock_words(told.mark.at_us, state.zone)
            yield f"{clock}: {_cause(state, one, told, preferences)}, so it ends at {to}."


def _cause(state: RunState, one: TankfulState, told: Told, preferences: Preferences) -> str:
    """What the person was told it for."""
    read = [
        was.body.temp_c
        for was in state.readings
        if was.body.of == "tank" and was.body.which == one.letter and was.mark.at_us <= told.mark.at_us
    ]
    if told.because == "no reading" or not read:
        return "no reading counts"
    reading = f"the tank read {temperature_text(read[-1], preferences)}"
    return f"a note was put right, {reading}" if told.because == "put right" else reading
