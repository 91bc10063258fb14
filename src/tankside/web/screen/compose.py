"""From where a run stands to what its screens show."""

from __future__ import annotations

from tankside.core.quantities.display import DIGITAL_MARK, to_step
from tankside.core.quantities.preferences import Preferences
from tankside.core.run.cue_script import cue_script
from tankside.core.run.instants import Instant
from tankside.core.run.sink_view import SinkView, TankfulView, sink_view
from tankside.core.run.state import Run, RunState, TankfulState
from tankside.web.drawing.kinds import sign_of_solution
from tankside.web.screen.acts import acts
from tankside.web.screen.baths import baths
from tankside.web.screen.doubted import doubted_s
from tankside.web.screen.meanwhile import meanwhile
from tankside.web.screen.notes import earlier_notes
from tankside.web.screen.notices import endings, notices
from tankside.web.screen.values import BenchBottle, Screen, TankfulFace
from tankside.web.screen.why import why_here, working
from tankside.wording.cues import BATHS
from tankside.wording.refusals import PLAIN
from tankside.wording.sink_phrases import PHRASES

NUMBERS = ("no", "one", "two", "three", "four", "five", "six")
SOLUTIONS = {
    "developer": "Developer",
    "stop bath": "Stop bath",
    "fixer": "Fixer",
    "washing aid": "Washing aid",
    "wetting agent": "Wetting agent",
    "water": "Water",
}


def screen(
    run: Run,
    now: Instant,
    *,
    preferences: Preferences = PLAIN,
    pace: float = 1.0,
    watching: int = 0,
    since_us: int | None = None,
) -> Screen:
    """Everything that a browser needs to show this run and to lead it alone.

    `since_us` is when it last looked, None where it has looked all the while.
    """
    state = run.state
    view = sink_view(state, now, away_since_us=since_us)
    script = cue_script(state)
    return Screen(
        run=str(run.key),
        seq=run.last_seq,
        now_us=view.now_us,
        zone=state.zone,
        tankfuls=tuple(
            _tankful(run, one, _seen(view, one), view.now_us, preferences) for one in state.tankfuls
        ),
        acts=acts(state, script.cues),
        anchors=dict(script.anchors.known_us),
        bench=_bench(state),
        notices=notices(state, view, preferences),
        notes=earlier_notes(run),
        endings=endings(run, view),
        away=meanwhile(run, view, preferences, pace),
        pace=pace,
        watching=watching,
        fahrenheit=preferences.temperature == "F",
        closed=view.closed,
        phrases=PHRASES,
    )


def _seen(view: SinkView, one: TankfulState) -> TankfulView:
    return next(seen for seen in view.tankfuls if seen.letter == one.letter)


def _tankful(
    run: Run, one: TankfulState, view: TankfulView, now_us: int, preferences: Preferences
) -> TankfulFace:
    state = run.state
    count = len(one.plan.rolls)
    rolls = f"{NUMBERS[count] if count < len(NUMBERS) else count} roll{'' if count == 1 else 's'}"
    film = one.plan.rolls[0].film if len({roll.film for roll in one.plan.rolls}) == 1 else ""
    tank = f"{one.plan.tank.name}, {rolls}"
    return TankfulFace(
        letter=one.letter,
        tank=tank,
        tank_long=f"{tank} of {film}" if film else tank,
        baths=baths(state, one, view, now_us),
        missed=tuple(f"{bead.bath}.{bead.kind}-{bead.n}" for bead in view.beads if not bead.done),
        noted=tuple(
            f"{bead.bath}.{bead.kind}-{bead.n}"
            for bead in view.beads
            if bead.done and bead.event and bead.kind in ("invert", "rotate")
        ),
        tank_c=_tenths(view.bath.temp_c if view.bath is not None else one.plan.development.start_c),
        next_bath=view.next_bath,
        next_words=BATHS[one.bath(view.next_bath).kind] if view.next_bath else "No bath is left.",
        ended=f"Tankful {one.letter} is done." if view.stage == "done" else "",
        doubted_s=doubted_s(run, one),
        why=why_here(state, one, preferences),
        working=working(state, one),
    )


def _tenths(temp_c: float | None) -> float | None:
    return None if temp_c is None else to_step(temp_c, DIGITAL_MARK)


def _bench(state: RunState) -> tuple[BenchBottle, ...]:
    return tuple(
        BenchBottle(one.code, sign_of_solution(one.kind), SOLUTIONS[one.kind], one.cap) for one in state.bench
    )
