"""The rules of cues, once: the whole run as a list of things to do, each hung on an act that is noted.

No words here: `wording.cues` says them. Whoever shows a cue adds its offset to the time of its anchor.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from typing import Literal

from tankside.core.methods.baths import BathKind
from tankside.core.planning.plan import PlannedBath
from tankside.core.run.anchors import BEGINS, Anchors, drained, filled, hung, measured, poured, stray
from tankside.core.run.charges import liquid_of
from tankside.core.run.commands import Asked, ChangeWater, ConfirmBottle, DrainBath, HangFilm, PourBath
from tankside.core.run.standing import Standing, bottle_for, standing
from tankside.core.run.state import Pass, RunState, TankfulState
from tankside.core.run.wrong_bottle import contaminated_bottles, offered_bottle

CueKind = Literal["measure", "pour", "invert", "rotate", "drain", "water", "hang"]
MEASURE_AHEAD_S = 30.0
"""How long a cue to measure is given before the hands must begin (ours)."""


@dataclass(frozen=True, slots=True)
class Cue:
    """One thing to do `after_s` seconds after `anchor` was noted, give or take `soft_s`.

    It may be done from `least_s` to `most_s` after the anchor (None: as late as one likes). `command` notes
    it (None: taken as done), `gives` is the anchor that noting it makes known. `n` counts fills and cycles.
    """

    id: str
    tankful: str
    bath: str | None
    bath_kind: BathKind | None
    kind: CueKind
    anchor: str
    after_s: float
    lasts_s: float
    soft_s: float = 0.0
    least_s: float = 0.0
    most_s: float | None = None
    bottle: str | None = None
    liquid: str | None = None
    ml: float | None = None
    to: str | None = None
    n: int = 0
    of: int = 0
    command: Asked | None = None
    gives: str | None = None

    @property
    def aim_s(self) -> float:
        """When it should be done, in seconds after its anchor."""
        return self.after_s


@dataclass(frozen=True, slots=True)
class Script:
    """The cues of a run in order of tankful and bath; `anchors` are the acts known so far, by name."""

    cues: tuple[Cue, ...]
    anchors: Anchors

    def done(self, cue: Cue) -> bool:
        """Whether what a cue asks for has been noted, or its bath has gone on without it."""
        known = self.anchors.known_us
        if cue.gives is not None and cue.gives in known:
            return True
        match cue.kind:
            case "measure":
                return poured(cue.bath or "") in known
            case "invert" | "rotate" | "water":
                return drained(cue.bath or "") in known
            case _:
                return False

    def at_us(self, cue: Cue) -> int | None:
        """When a cue falls due by what is known and expected, None where even its anchor is not expected."""
        anchor_us = self.anchors.at_us(cue.anchor)
        return None if anchor_us is None else anchor_us + round(cue.after_s * 1e6)

    def told_us(self, cue: Cue) -> int | None:
        """When a cue is given: only once its anchor has been noted."""
        anchor_us = self.anchors.known_us.get(cue.anchor)
        return None if anchor_us is None else anchor_us + round(cue.after_s * 1e6)

    def as_of(self, now_us: int) -> Script:
        """The same, expecting nothing that is not done before now."""
        return replace(self, anchors=self.anchors.expecting(_links(self.cues), from_us=now_us))


def cue_script(state: RunState) -> Script:
    """Everything still to do and already done in a run, measured from the acts that are known."""
    cues: list[Cue] = []
    anchors, spoilt = Anchors.of(state), contaminated_bottles(state)
    for one in state.tankfuls:
        if one.ended is None:
            cues.extend(_tankful(state, one, standing(state, one), spoilt))
    return Script(tuple(cues), anchors.expecting(_links(cues)))


def due(state: RunState, from_us: int, to_us: int) -> tuple[Cue, ...]:
    """The cues that are given after `from_us` and not after `to_us`, in order of time."""
    script = cue_script(state)
    timed = [(script.told_us(cue), cue) for cue in script.cues]
    inside = [
        (at, cue) for at, cue in timed if at is not None and from_us < at <= to_us and not script.done(cue)
    ]
    return tuple(cue for _, cue in sorted(inside, key=lambda pair: (pair[0], pair[1].id)))


def _links(cues: Iterable[Cue]) -> list[tuple[str, float, str | None]]:
    return [(cue.anchor, cue.after_s, cue.gives) for cue in cues]


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
    busy_s = hands.pour_s + (before.agitation.first_s if before.agitation else 0.0)
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
    planned = bath.agitation
    if planned is None or planned.movement in ("stand", "none"):
        return
    kind: CueKind = "invert" if planned.movement == "inversion" else "rotate"
    pour_s, end_s = state.plan.hands.pour_s, end_after_s(one, bath)
    times = [(0, pour_s, planned.first_s)]
    cycle = 1
    while planned.every_s > 0 and cycle * planned.every_s + planned.then_s <= end_s:
        if cycle * planned.every_s >= pour_s + planned.first_s:
            times.append((cycle, cycle * planned.every_s, planned.then_s))
        cycle += 1
    for n, after_s, lasts_s in times:
        if lasts_s > 0:
            yield Cue(
                id=f"{bath.id}.{kind}-{n}",
                tankful=one.letter,
                bath=bath.id,
                bath_kind=bath.kind,
                kind=kind,
                anchor=poured(bath.id),
                after_s=after_s,
                lasts_s=lasts_s,
                soft_s=planned.soft_s,
                least_s=max(0.0, after_s - planned.soft_s),
                most_s=after_s + planned.soft_s,
                n=n,
                of=times[-1][0],
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
    aim_s, times = end_after_s(one, bath), bath.times
    late_s = bath.drain_late_s if bath.kind == "develop" else 0.0
    to = home_of(state, one, bath.id)
    return Cue(
        id=f"{bath.id}.drain",
        tankful=one.letter,
        bath=bath.id,
        bath_kind=bath.kind,
        kind="drain",
        anchor=poured(bath.id),
        after_s=aim_s,
        lasts_s=state.plan.hands.drain_s,
        least_s=least_s(one, bath),
        most_s=None if times.most_s is None else aim_s + times.most_s - times.aim_s + late_s,
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


def home_of(state: RunState, one: TankfulState, bath: str) -> str:
    """Where a bath goes when it is drained: the code of a bottle, or 'drain'."""
    there = next((was for was in reversed(one.passes) if was.bath == bath), None)
    poured_from = there.bottle if there else None
    planned = bottle_for(state, one, bath)
    liquid = liquid_of(state, one, bath)
    if poured_from is not None and poured_from != planned:
        return _home_of_bottle(state, one, poured_from, bath)
    if one.bath(bath).destination == "drain" or liquid is None or not liquid.reusable:
        return "drain"
    return planned or "drain"


def _home_of_bottle(state: RunState, one: TankfulState, code: str, bath: str) -> str:
    """A bottle taken by mistake gets its liquid back by what that liquid is, not by what it was taken for."""
    for other in one.plan.baths:
        liquid = liquid_of(state, one, other.id)
        if liquid is not None and bottle_for(state, one, other.id) == code:
            return code if liquid.reusable else "drain"
    liquid = liquid_of(state, one, bath)
    return code if liquid is not None and liquid.reusable else "drain"


def end_after_s(one: TankfulState, bath: PlannedBath) -> float:
    """When a bath ends after its pour as told last; in a wash, one fill."""
    return bath.times.aim_s if bath.kind == "wash" else one.told_end_s(bath.id)


def least_s(one: TankfulState, bath: PlannedBath) -> float:
    """Before this, in seconds after its pour, a bath may not be ended by a mere touch."""
    early_s = bath.drain_early_s if bath.kind == "develop" else 0.0
    return max(0.0, end_after_s(one, bath) - (bath.times.aim_s - bath.times.least_s) - early_s)


def _last_water(bath: PlannedBath) -> str:
    """The anchor from which the end of a bath counts: its pour, or the last fill of a wash."""
    return filled(bath.id, bath.fills) if bath.kind == "wash" else poured(bath.id)
