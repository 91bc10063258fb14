"""What every screen at the sink shows, from where the run stands and what time it is: a pure function.

The tankful that needs hands next stands first. No words here; `wording` says them.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import inf

from tankside.core.run.advise_wash import WashAdvice, advise_wash
from tankside.core.run.bath_ends import end_after_s, least_s, most_s
from tankside.core.run.commands import CloseRun
from tankside.core.run.consequences import Consequence, consequences
from tankside.core.run.cue_script import cue_script, due
from tankside.core.run.cues import Cue, Script
from tankside.core.run.doubts import Doubt, doubts
from tankside.core.run.fixer_used import fixer_used
from tankside.core.run.instants import Instant
from tankside.core.run.sink_acts import Offer, ToDo, main_act, offers
from tankside.core.run.sink_past import Bead, beads
from tankside.core.run.sink_stage import Stage, stage_of
from tankside.core.run.standing import Standing, standing
from tankside.core.run.state import Pass, RunState, TankfulState

RINGS_AHEAD_S = 3600.0


@dataclass(frozen=True, slots=True)
class BathView:
    """The bath in the tank: when it was poured and when it ends, as told, all on the run's timeline.

    `low_us` to `high_us` is the interval told with the end, None where the end is a rule. In a wash the end
    is that of the present fill, `fill` of `fills`.
    """

    id: str
    kind: str
    liquid: str | None
    bottle: str | None
    poured_us: int
    least_us: int
    end_us: int
    most_us: int | None
    low_us: int | None
    high_us: int | None
    temp_c: float | None
    fill: int = 0
    fills: int = 0
    wash: WashAdvice | None = None


@dataclass(frozen=True, slots=True)
class Ring:
    """A mark where hands are needed: a cue and when it falls due; `own` is False for another tankful's."""

    cue: Cue
    at_us: int
    own: bool


@dataclass(frozen=True, slots=True)
class TankfulView:
    """One tankful on the screen; `needs_us` is when it needs hands next."""

    letter: str
    stage: Stage
    bath: BathView | None
    next_bath: str | None
    main: ToDo | None
    others: tuple[Offer, ...]
    rings: tuple[Ring, ...]
    beads: tuple[Bead, ...]
    needs_us: int | None


@dataclass(frozen=True, slots=True)
class Away:
    """What was missed while nobody looked: from when to when, and the cues that fell due."""

    from_us: int
    to_us: int
    cues: tuple[Cue, ...]


@dataclass(frozen=True, slots=True)
class SinkView:
    """The whole sink at `now_us`; `close` is ready once nothing is left to do."""

    now_us: int
    last_plan: int
    tankfuls: tuple[TankfulView, ...]
    consequences: tuple[Consequence, ...]
    doubts: tuple[Doubt, ...]
    away: Away | None
    close: CloseRun | None
    closed: bool


def sink_view(state: RunState, now: Instant, *, away_since_us: int | None = None) -> SinkView:
    """The sink as it is at `now`; `away_since_us` is when anybody last looked, on the run's timeline."""
    now_us = state.timeline.at_us(now)
    script = cue_script(state).as_of(now_us)
    views = [_tankful(state, one, script, now_us) for one in state.tankfuls]
    views.sort(key=lambda view: (view.stage == "done", _urgency(view, now_us), view.letter))
    return SinkView(
        now_us=now_us,
        last_plan=state.plan_no,
        tankfuls=tuple(views),
        consequences=consequences(state, now_us),
        doubts=doubts(state),
        away=_away(state, away_since_us, now_us),
        close=CloseRun() if all(view.stage == "done" for view in views) and state.closed is None else None,
        closed=state.closed is not None,
    )


def _tankful(state: RunState, one: TankfulState, script: Script, now_us: int) -> TankfulView:
    stands = standing(state, one)
    stage = stage_of(state, one, stands, script, now_us)
    main = main_act(one, stands, script, now_us)
    rings = _rings(one, script, now_us)
    hands = [ring.at_us for ring in rings if ring.own]
    needs = [main.due_us] if main is not None and main.due_us is not None else []
    return TankfulView(
        letter=one.letter,
        stage=stage,
        bath=_bath(state, one, stands, now_us),
        next_bath=stands.next.id if stands.next else None,
        main=main,
        others=offers(one, stands, main, script),
        rings=rings,
        beads=beads(state, one, script, now_us),
        needs_us=min([*hands, *needs], default=None),
    )


def _bath(state: RunState, one: TankfulState, stands: Standing, now_us: int) -> BathView | None:
    there = one.in_tank
    if there is None:
        return None
    bath = one.bath(there.bath)
    wash = bath.kind == "wash"
    from_us = there.filled_us if wash else there.poured.at_us
    end_s = 0.0 if stands.stray is there else end_after_s(one, bath)
    low_us, high_us = _interval(one, there)
    most = 0.0 if stands.stray is there else most_s(one, bath)
    return BathView(
        id=bath.id,
        kind=bath.kind,
        liquid=bath.liquid,
        bottle=there.bottle,
        poured_us=there.poured.at_us,
        least_us=from_us + round((0.0 if stands.stray is there else least_s(one, bath)) * 1e6),
        end_us=from_us + round(end_s * 1e6),
        most_us=None if most is None else from_us + round(most * 1e6),
        low_us=low_us,
        high_us=high_us,
        temp_c=_last_temp(state, one, there),
        fill=there.fills_done if wash else 0,
        fills=bath.fills if wash else 0,
        wash=advise_wash(one, there, now_us) if wash and _after_fixer(state, one, stands) else None,
    )


def _after_fixer(state: RunState, one: TankfulState, stands: Standing) -> bool:
    """Only a wash after a fixer washes fixer out, and none is told after one that was past its limit."""
    used = fixer_used(state, one.letter)
    if used is not None and used.stands.past:
        return False
    return any(one.bath(was.bath).kind == "fix" for was in stands.counted)


def _interval(one: TankfulState, there: Pass) -> tuple[int | None, int | None]:
    """The interval told with the end of development: the last told one, else the plan's."""
    if one.bath(there.bath).kind != "develop":
        return None, None
    told = [was for was in one.told if was.bath == there.bath]
    planned = one.plan.development.end_s
    if told:
        low, high = told[-1].interval_s
    elif planned is not None:
        low, high = planned.low, planned.high
    else:
        return None, None
    return there.poured.at_us + round(low * 1e6), there.poured.at_us + round(high * 1e6)


def _last_temp(state: RunState, one: TankfulState, there: Pass) -> float | None:
    """What was last read in the tank, or in the water of a wash, while this bath was in it."""
    read = [
        (was.mark.at_us, was.body.temp_c)
        for was in state.readings
        if was.body.of == "tank" and was.body.which == one.letter and was.mark.at_us >= there.poured.at_us
    ]
    read.extend((fill.mark.at_us, fill.temp_c) for fill in there.fills if fill.temp_c is not None)
    return max(read)[1] if read else None


def _rings(one: TankfulState, script: Script, now_us: int) -> tuple[Ring, ...]:
    """Cues still to come, those of other tankfuls too, in order of time."""
    until_us = now_us + round(RINGS_AHEAD_S * 1e6)
    found = []
    for cue in script.cues:
        at_us = script.at_us(cue)
        ends_us = None if at_us is None else at_us + round(cue.lasts_s * 1e6)
        if at_us is None or ends_us is None or script.done(cue) or at_us > until_us or ends_us < now_us:
            continue
        found.append(Ring(cue, at_us, own=cue.tankful == one.letter))
    return tuple(sorted(found, key=lambda ring: (ring.at_us, ring.cue.id)))


def _urgency(view: TankfulView, now_us: int) -> float:
    """Earlier needs come first; a bath that may stay longer yields to whatever needs hands within 10 s."""
    if view.needs_us is None:
        return inf
    if view.stage in ("at least", "wash", "hang") and view.needs_us < now_us:
        return now_us + 10e6
    return view.needs_us


def _away(state: RunState, from_us: int | None, now_us: int) -> Away | None:
    if from_us is None:
        return None
    return Away(from_us, now_us, due(state, from_us, now_us))
