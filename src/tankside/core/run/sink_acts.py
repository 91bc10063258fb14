"""The next thing to note, ready to be sent, and what else can be noted now."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

from tankside.core.run.anchors import hung
from tankside.core.run.commands import (
    Asked,
    DrainBath,
    EndTankful,
    HangFilm,
    NoteAgitation,
    PourBath,
)
from tankside.core.run.cues import Cue, Script
from tankside.core.run.standing import Standing
from tankside.core.run.state import TankfulState

OfferCode = Literal[
    "read-tank", "missed-one", "did-it-earlier", "measure-now", "another-bottle", "scan", "pour-now",
    "skip-next", "hang-now", "end-tankful", "more",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class ToDo:
    """The main act: its cue, the command to send, when it is due, whether it must be held for a second."""

    cue: Cue
    asked: Asked
    due_us: int | None
    hold: bool


@dataclass(frozen=True, slots=True)
class Offer:
    """Another act: ready to send where `asked` is given, else it asks for a number, a bottle or a reason."""

    code: OfferCode
    asked: Asked | None = None
    bath: str | None = None


def main_act(one: TankfulState, stands: Standing, script: Script, now_us: int) -> ToDo | None:
    """The next thing that must be noted of a tankful; None once it is done."""
    if one.ended is not None or hung(one.letter) in script.anchors.known_us:
        return None
    cue = _next_cue(one, stands, script, now_us)
    if cue is None or cue.command is None:
        return None
    due_us = script.at_us(cue)
    hold = cue.kind == "drain" and _before_least(script, cue, now_us)
    asked = cue.command
    if hold and isinstance(asked, DrainBath):
        asked = replace(asked, held=True)
    return ToDo(cue, asked, due_us, hold)


def offers(one: TankfulState, stands: Standing, main: ToDo | None, script: Script) -> tuple[Offer, ...]:
    """What else can be noted of a tankful, the likeliest first."""
    if main is None:
        return (Offer("more"),)
    found: list[Offer] = []
    there = one.in_tank
    if main.cue.kind == "measure":
        found.extend((Offer("scan", bath=main.cue.bath), Offer("another-bottle", bath=main.cue.bath)))
        if there is None and main.cue.bath is not None:
            found.append(Offer("pour-now", PourBath(main.cue.bath, main.cue.bottle), main.cue.bath))
    elif main.cue.kind == "pour" and main.cue.bottle is not None:
        found.append(Offer("another-bottle", bath=main.cue.bath))
    if there is not None:
        measure = _measure_of_next(stands, script)
        if measure is not None and main.cue.kind != "measure" and stands.stray is None:
            found.append(Offer("measure-now", measure.command, measure.bath))
        found.append(Offer("read-tank", bath=there.bath))
        if one.bath(there.bath).agitation is not None:
            found.append(Offer("missed-one", NoteAgitation(there.bath), there.bath))
    found.append(Offer("did-it-earlier", main.asked, main.cue.bath))
    if stands.next is not None and stands.next.kind != "develop":
        found.append(Offer("skip-next", bath=stands.next.id))
    if not stands.coming and there is not None:
        found.append(Offer("hang-now", HangFilm(one.letter)))
    found.append(Offer("end-tankful", EndTankful(one.letter, "given up")))
    return (*found, Offer("more"))


def _next_cue(one: TankfulState, stands: Standing, script: Script, now_us: int) -> Cue | None:
    """The first cue in the order of the plan that is to be noted and is not; measuring only at its ring."""
    own = [cue for cue in script.cues if cue.tankful == one.letter and cue.command is not None]
    if stands.stray is not None:
        return own[0]
    measure = _measure_of_next(stands, script)
    if measure is not None:
        at_us = script.at_us(measure)
        if one.in_tank is None or (at_us is not None and at_us <= now_us):
            return measure
    in_tank = one.in_tank.bath if one.in_tank else None
    for cue in own:
        if cue.kind == "measure" or script.done(cue):
            continue
        if cue.kind in ("drain", "water") and cue.bath != in_tank:
            continue
        return cue
    return None


def _measure_of_next(stands: Standing, script: Script) -> Cue | None:
    """The measuring of the bath to pour next, None where it is done or not needed."""
    coming = stands.next.id if stands.next else None
    found = next((cue for cue in script.cues if cue.kind == "measure" and cue.bath == coming), None)
    return None if found is None or script.done(found) else found


def _before_least(script: Script, cue: Cue, now_us: int) -> bool:
    anchor_us = script.anchors.at_us(cue.anchor)
    return anchor_us is not None and now_us < anchor_us + round(cue.least_s * 1e6)
