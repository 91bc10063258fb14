"""What happened, at its true time: the beads on the stripe."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from tankside.core.run.cues import Script
from tankside.core.run.state import RunState, TankfulState

BeadKind = Literal["measured", "poured", "invert", "rotate", "water", "read", "drained", "hung", "end-moved"]


@dataclass(frozen=True, slots=True)
class Bead:
    """Something done, or missed (`done` False); `n` counts fills and cycles."""

    kind: BeadKind
    bath: str | None
    at_us: int
    done: bool = True
    event: str | None = None
    n: int = 0
    temp_c: float | None = None


def beads(state: RunState, one: TankfulState, script: Script, now_us: int) -> tuple[Bead, ...]:
    """Everything that happened to a tankful up to now, in order of time; cues count as done unless missed."""
    found = [*_noted(one), *_passed(one), *_read(state, one), *_taken_as_done(one, script, now_us)]
    return tuple(sorted(found, key=lambda bead: (bead.at_us, bead.kind, bead.n)))


def _noted(one: TankfulState) -> Iterator[Bead]:
    for confirmed in one.confirmed:
        yield Bead("measured", confirmed.bath, confirmed.mark.at_us, event=confirmed.mark.event)
    for told in one.told:
        yield Bead("end-moved", told.bath, told.mark.at_us, event=told.mark.event)
    for was in one.hung:
        yield Bead("hung", None, was.mark.at_us, event=was.mark.event)


def _passed(one: TankfulState) -> Iterator[Bead]:
    for there in one.passes:
        if there.pour_noted:
            yield Bead("poured", there.bath, there.poured.at_us, event=there.poured.event)
        for fill in there.fills:
            if fill.n > 1:
                yield Bead("water", there.bath, fill.mark.at_us, event=fill.mark.event, n=fill.n)
        if there.drained is not None:
            yield Bead("drained", there.bath, there.drained.at_us, event=there.drained.event)


def _read(state: RunState, one: TankfulState) -> Iterator[Bead]:
    for reading in state.readings:
        if reading.body.of == "tank" and reading.body.which == one.letter:
            mark, temp_c = reading.mark, reading.body.temp_c
            yield Bead("read", None, mark.at_us, event=mark.event, temp_c=temp_c)


def _taken_as_done(one: TankfulState, script: Script, now_us: int) -> Iterator[Bead]:
    """Inversions whose cue has passed while their bath was in the tank, done unless a miss was noted."""
    missed = {(was.bath, was.cycle): was for was in one.cycles}
    ended = {there.bath: there.ended_us for there in one.passes}
    for cue in script.cues:
        at_us = script.at_us(cue)
        if cue.tankful != one.letter or cue.kind not in ("invert", "rotate") or at_us is None:
            continue
        if cue.anchor not in script.anchors.known_us or cue.bath is None:
            continue
        last_us = ended.get(cue.bath) or now_us
        if at_us > min(last_us, now_us):
            continue
        noted = missed.get((cue.bath, cue.n))
        kind: BeadKind = "invert" if cue.kind == "invert" else "rotate"
        done = noted is None or noted.done
        yield Bead(kind, cue.bath, at_us, done=done, event=noted.mark.event if noted else None, n=cue.n)
