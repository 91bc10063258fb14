"""How the fixer stood when it fixed a tankful: by the bench as it stood, and what has happened since."""

from __future__ import annotations

from dataclasses import dataclass, replace

from tankside.core.permanence.fixer_standing import FixerKnown, FixerStanding, judge_fixer
from tankside.core.planning.fixer import tankful_wants
from tankside.core.planning.fixer_known import piece
from tankside.core.refusals import Refused
from tankside.core.run.charges import liquid_of, planned_bottle
from tankside.core.run.state import Pass, RunState, TankfulState


@dataclass(frozen=True, slots=True)
class FixerUsed:
    """The fixer of `bottle` that a tankful was in at `bath`, and how it stands with this film counted."""

    bottle: str
    bath: str
    at_us: int
    stands: FixerStanding


def fixer_used(state: RunState, letter: str) -> FixerUsed | None:
    """How the fixer of a tankful stands; None where it was not fixed, or nothing was known of its bottle.

    Its own film counts, and so does that of tankfuls fixed in it before. A test piece of this session judges
    every film of it. Own model: docs/science/fixing: count, test piece and look each end a fixer.
    Doubt: 20 to 25 rolls a litre between sources, the lower one planned on.
    """
    one = state.tankful(letter)
    there = _fix(one)
    if there is None:
        return None
    code = _bottle(state, one, there)
    known = next((each.fixer for each in state.bench if each.code == code), None)
    if known is None or code is None:
        return None
    through = sum(
        tankful_wants(each.plan)
        for each in state.tankfuls
        if (fix := _fix(each)) is not None
        and fix.poured.at_us <= there.poured.at_us
        and _bottle(state, each, fix) == code
    )
    now = _tested(state, code, replace(known, used_units=known.used_units + through))
    try:
        return FixerUsed(code, there.bath, there.poured.at_us, judge_fixer(now))
    except Refused:
        return None


def _fix(one: TankfulState) -> Pass | None:
    """The latest time that fixer was in the tank."""
    kinds = {bath.id: bath.kind for bath in (*one.plan.baths, *one.former)}
    return next((was for was in reversed(one.passes) if kinds.get(was.bath) == "fix"), None)


def _bottle(state: RunState, one: TankfulState, there: Pass) -> str | None:
    """The bottle that a bath came from, the planned one unless noted otherwise."""
    return there.bottle or planned_bottle(state, liquid_of(state, one, there.bath))


def _tested(state: RunState, code: str, known: FixerKnown) -> FixerKnown:
    """With the test pieces of this session, those of another film than the fresh one left out."""
    for one in state.tests:
        if one.body.bottle != code or one.body.test != "clearing":
            continue
        timed = piece(one.body.seconds, one.body.temp_c)
        alike = known.film in ("", one.body.film.casefold())
        if timed is None or not (alike or one.body.fresh):
            continue
        known = (
            replace(known, fresh=timed, film=one.body.film.casefold())
            if one.body.fresh
            else replace(known, latest=timed)
        )
    return known
