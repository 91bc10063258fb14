"""After an outage: what has happened meanwhile and what is best now, as the first plate on the page."""

from __future__ import annotations

from tankside.core.quantities.preferences import Preferences
from tankside.core.run.sink_view import Away, SinkView
from tankside.core.run.state import Run
from tankside.web.screen.notices import happened
from tankside.web.screen.values import Notice
from tankside.wording.away import best_now, out_of_touch, what_happened

LEAST_S = 20.0
"""A shorter absence is no outage: a page that was turned over, a network that blinked (ours)."""


def meanwhile(run: Run, view: SinkView, preferences: Preferences, pace: float) -> Notice | None:
    """The plate of an outage; None where nobody was away, or no bath has been poured yet."""
    away = view.away
    if away is None or away.to_us - away.from_us < LEAST_S * pace * 1e6:
        return None
    if view.closed or not any(one.passes for one in run.state.tankfuls):
        return None
    told = what_happened(away.cues, _noted(run, away), several=len(view.tankfuls) > 1)
    gone = out_of_touch(away.from_us, away.to_us, run.state.zone)
    urgent = next((one for one in view.consequences if one.urgent), None)
    if urgent is None:
        main = view.tankfuls[0].main
        due = best_now(main.cue, main.due_us, view.now_us) if main is not None else ""
        return Notice("fact", gone, f"{told} {due}".strip())
    plate = happened(urgent, run.state, preferences)
    return Notice(plate.kind, plate.heading, f"{plate.sentence} {gone} {told}", plate.ways, plate.about)


def _noted(run: Run, away: Away) -> int:
    """How many presses from that time are kept; one press may be several notes."""
    inside = (note for note in run.settled.notes if away.from_us < note.at_us <= away.to_us)
    return len({note.id.rpartition("/")[0] for note in inside if note.how != "advised"})
