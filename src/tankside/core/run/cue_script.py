"""The rules of cues, once: the whole run as a list of things to do, each hung on an act that is noted.

No words here: `wording.cues` says them. Whoever shows a cue adds its offset to the time of its anchor.
"""

from __future__ import annotations

from collections.abc import Iterator

from tankside.core.agitation.hands import hand_movements, hands_free_s
from tankside.core.planning.plan import PlannedBath
from tankside.core.run.anchors import BEGINS, Anchors, drained, filled, hung, measured, poured, stray
from tankside.core.run.bath_ends import end_after_s, home_of, least_s, most_s
from tankside.core.run.charges import liquid_of
from tankside.core.run.commands import ChangeWater, ConfirmBottle, DrainBath, HangFilm, PourBath
from tankside.core.run.cues import Cue, CueKind, Script, links
from tankside.core.run.standing import Standing, bottle_for, standing
from tankside.core.run.state import Pass, RunState, TankfulState
from tankside.core.run.wrong_bottle import contaminated_bottles, offered_bottle

__all__ = ["Cue", "CueKind", "Script", "cue_script", "due", "end_after_s", "least_s"]

MEASURE_AHEAD_S = 30.0
"""How long a cue to measure is given before the hands must begin (ours)."""


def cue_script(state: RunState) -> Script:
    """Everything still to do and already done in a run, measured from the acts that are known."""
    cues: list[Cue] = []
    anchors, spoilt = Anchors.of(state), contaminated_bottles(state)
    for one in state.tankfuls:
        if one.ended is None:
            cues.extend(_tankful(state, one, standing(state, one), spoilt))
    return Script(tuple(cues), anchors.expecting(links(cues)))


def due(state: RunState, from_us: int, to_us: int) -> tuple[Cue, ...]:
    """The cues that are given after `from_us` and not after `to_us`, in order of time."""
    script = cue_script(state)
    timed = [(script.told_us(cue), cue) for cue in script.cues]
    inside = [
        (at, cue) for at, cue in timed if at is not None and from_us < at <= to_us and not script.done(cue)
    ]
    return tuple(cue for _, cue in sorted(inside, key=lambda pair: (pair[0], pair[1].id)))


def _tankful(state: RunState, one: TankfulState, stands: Standing, spoilt: frozenset[str]) -> Iterator[Cue]:
    if stands.stray is not None:
        yield _out_again(state, one, stands.stray)
    left = {bath.id for bath in stands.coming}
    before: PlannedBath | None = None
    for bath in one.plan.baths:
        if bath.id in left or stands.pass_of(bath.id) is not None:
            yield from _bath(state, one, bath, before, offered_bottle(state, one, bath.id, spoilt))
            before = bath
    if before is not None:
        yield _hang(state, one, before)


def _bath(
    state: RunState, one: TankfulState, bath: PlannedBath, before: PlannedBath | None, bottle: str | None
) -> Iterator[Cue]:
    liquid = liquid_of(state, one, bath.id)
    if before is not None and bottle is not None and liquid is not None and liquid.reusable:
        yield _measure(state, one, bath, before, bottle)
    yield _pour(state, one, bath, before, bottle)
    yield from _agitate(state, one, bath)
    if bath.kind == "wash":
        yield from _fills(state, one, bath)
    else:
        yield _drain(state, one, bath)


def _measure(state: RunState, one: TankfulState, bath: PlannedBath, before: PlannedBath, bottle: str) -> Cue:
    hands = state.plan.hands
    end_s = end_after_s(one, before)
    busy_s = hands_free_s(before.agitation, pour_s=hands.pour_s)
    planned = bottle_for(state, one, bath.id)
    return Cue(
        id=f"{bath.id}.measure",
        tankful=one.letter,
        bath=bath.id,
        bath_kind=bath.kind,
        kind="measure",
        anchor=_last_water(before),
        after_s=max(min(busy_s, end_s), end_s - hands.measure_s - MEASURE_AHEAD_S),
        lasts_s=hands.measure_s,
        most_s=max(0.0, end_s - hands.measure_s),
        bottle=bottle,
        liquid=bath.liquid,
        ml=one.plan.tank.volume_ml,
        command=ConfirmBottle(bath.id, bottle, knowingly=bottle != planned),
        gives=measured(bath.id),
    )


def _pour(
    state: RunState, one: TankfulState, bath: PlannedBath, before: PlannedBath | None, bottle: str | None
) -> Cue:
    hands = state.plan.hands
    least = 0.0
    if before is None:
        anchor = one.plan.starts_after or BEGINS
        after_s = one.plan.starts_s
    elif before.kind == "wash":
        anchor, after_s, least = _last_water(before), before.times.aim_s + hands.drain_s, before.times.least_s
    else:
        anchor, after_s = drained(before.id), hands.drain_s
    return Cue(
        id=f"{bath.id}.pour",
        tankful=one.letter,
        bath=bath.id,
        bath_kind=bath.kind,
        kind="pour",
        anchor=anchor,
        after_s=after_s,
        lasts_s=hands.pour_s,
        least_s=least,
        bottle=bottle,
        liquid=bath.liquid,
        ml=one.plan.tank.volume_ml,
        n=1 if bath.kind == "wash" else 0,
        of=bath.fills if bath.kind == "wash" else 0,
        command=PourBath(bath.id, bottle, jug=bottle is None),
        gives=poured(bath.id),
    )


def _agitate(state: RunState, one: TankfulState, bath: PlannedBath) -> Iterator[Cue]:
    pattern = bath.agitation
    kind: CueKind = "rotate" if pattern is not None and pattern.movement == "rotation" else "invert"
    soft_s = pattern.soft_s if pattern is not None else 0.0
    moved = hand_movements(pattern, pour_s=state.plan.hands.pour_s, end_s=end_after_s(one, bath))
    for each in moved:
        yield Cue(
            id=f"{bath.id}.{kind}-{each.n}",
            tankful=one.letter,
            bath=bath.id,
            bath_kind=bath.kind,
            kind=kind,
            anchor=poured(bath.id),
            after_s=each.start_s,
            lasts_s=each.lasts_s,
            soft_s=soft_s,
            least_s=max(0.0, each.start_s - soft_s),
            most_s=each.start_s + soft_s,
            n=each.n,
            of=moved[-1].n,
        )


def _fills(state: RunState, one: TankfulState, bath: PlannedBath) -> Iterator[Cue]:
    for n in range(2, bath.fills + 1):
        yield Cue(
            id=f"{bath.id}.water-{n}",
            tankful=one.letter,
            bath=bath.id,
            bath_kind=bath.kind,
            kind="water",
            anchor=filled(bath.id, n - 1),
            after_s=bath.times.aim_s,
            lasts_s=state.plan.hands.drain_s + state.plan.hands.pour_s,
            least_s=bath.times.least_s,
            n=n,
            of=bath.fills,
            command=ChangeWater(bath.id, n),
            gives=filled(bath.id, n),
        )


def _drain(state: RunState, one: TankfulState, bath: PlannedBath) -> Cue:
    to = home_of(state, one, bath.id)
    return Cue(
        id=f"{bath.id}.drain",
        tankful=one.letter,
        bath=bath.id,
        bath_kind=bath.kind,
        kind="drain",
        anchor=poured(bath.id),
        after_s=end_after_s(one, bath),
        lasts_s=state.plan.hands.drain_s,
        least_s=least_s(one, bath),
        most_s=most_s(one, bath),
        liquid=bath.liquid,
        bottle=None if to == "drain" else to,
        to=to,
        command=DrainBath(bath.id, to),
        gives=drained(bath.id),
    )


def _out_again(state: RunState, one: TankfulState, there: Pass) -> Cue:
    """A bath that came out of order, or from a wrong bottle, comes out at once."""
    bath, to = one.bath(there.bath), home_of(state, one, there.bath)
    return Cue(
        id=f"{bath.id}.out-again",
        tankful=one.letter,
        bath=bath.id,
        bath_kind=bath.kind,
        kind="drain",
        anchor=stray(one.letter),
        after_s=0.0,
        lasts_s=state.plan.hands.drain_s,
        liquid=bath.liquid,
        bottle=None if to == "drain" else to,
        to=to,
        command=DrainBath(bath.id, to),
    )


def _hang(state: RunState, one: TankfulState, last: PlannedBath) -> Cue:
    wash = last.kind == "wash"
    return Cue(
        id=f"{one.letter}.hang",
        tankful=one.letter,
        bath=None,
        bath_kind=None,
        kind="hang",
        anchor=_last_water(last) if wash else drained(last.id),
        after_s=last.times.aim_s if wash else state.plan.hands.drain_s,
        lasts_s=0.0,
        command=HangFilm(one.letter),
        gives=hung(one.letter),
    )


def _last_water(bath: PlannedBath) -> str:
    """The anchor from which the end of a bath counts: its pour, or the last fill of a wash."""
    return filled(bath.id, bath.fills) if bath.kind == "wash" else poured(bath.id)
