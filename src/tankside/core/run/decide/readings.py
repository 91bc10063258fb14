"""Temperatures and test pieces, and whether what was read moves the end that was told."""

from __future__ import annotations

from math import isfinite

from tankside.core.development.advice import worth_telling
from tankside.core.refusals import refuse
from tankside.core.run.advise import EndAdvice, advise_end, developing
from tankside.core.run.commands import TakeReading, TimeTest
from tankside.core.run.decide.drafts import Draft, tankful_of
from tankside.core.run.decide.pours import readable_liquid
from tankside.core.run.events import EndMoved, ReadingTaken, TestTimed
from tankside.core.run.instants import Instant
from tankside.core.run.state import Run, TankfulState

ROOM_FROM_C, ROOM_TO_C = -30.0, 60.0
LEAST_MOVE_S = 1.0
"""After something is put right an end is told again for as little as this."""


def reading(run: Run, asked: TakeReading) -> list[Draft]:
    """A temperature as read; the plan's thermometer and its offset unless named."""
    if asked.of == "room":
        if not (isfinite(asked.raw_c) and ROOM_FROM_C <= asked.raw_c <= ROOM_TO_C):
            raise refuse("not-a-room", at="raw_c", temp_c=asked.raw_c)
    else:
        readable_liquid(asked.raw_c, "raw_c")
    thermometer = run.state.plan.thermometer
    offset_c = thermometer.offset_c if asked.offset_c is None else asked.offset_c
    if not isfinite(offset_c):
        raise refuse("not-a-number", at="offset_c")
    name = asked.thermometer or thermometer.name
    letter = tankful_of(run, asked.which).letter if asked.of == "tank" else None
    return [Draft(ReadingTaken(asked.of, asked.which, name, asked.raw_c, offset_c), letter)]


def timed(asked: TimeTest) -> list[Draft]:
    """A test piece was timed."""
    readable_liquid(asked.temp_c, "temp_c")
    if not 0 < asked.seconds < float("inf"):
        raise refuse("no-time", at="seconds", time_s=asked.seconds)
    told = TestTimed(asked.bottle, asked.film, asked.test, asked.seconds, asked.temp_c, asked.fresh)
    return [Draft(told)]


def ends_to_tell(before: Run, run: Run, now: Instant, *, put_right: bool) -> list[Draft]:
    """The ends that have moved, against those told last: by 10 s and 3 %, or at all after a putting right.

    Where nothing has changed since `before` that an end depends on, what there was to tell has been told.
    """
    drafts: list[Draft] = []
    for one in run.state.tankfuls:
        there = developing(run.state, one)
        if there is None or there.ended_us is not None:
            continue
        if not put_right and _ends_hang_on(before, one.letter) == _ends_hang_on(run, one.letter):
            continue
        advice = advise_end(run.state, one.letter)
        told_s = one.told_end_s(there.bath)
        if advice is None:
            back = _back_to_plan(one, there.bath, told_s) if put_right else None
            drafts.extend([Draft(back, one.letter, now, "advised")] if back else [])
            continue
        if put_right:
            tell = abs(advice.end_s.value - told_s) >= LEAST_MOVE_S
        else:
            tell = worth_telling(advice.end_s.value, told_s=told_s)
        if tell:
            because = "put right" if put_right else "reading"
            drafts.append(Draft(_moved(advice, because), one.letter, now, "advised"))
    return drafts


def _ends_hang_on(run: Run, letter: str) -> tuple[object, ...]:
    """All that the end advised for a tankful, and whether it is worth telling, may depend on."""
    state = run.state
    one = next((each for each in state.tankfuls if each.letter == letter), None)
    return (state.readings, state.prepared, state.plan, one and (one.plan, one.passes, one.told))


def _moved(advice: EndAdvice, because: str) -> EndMoved:
    """The event that tells an end, kept to a second."""
    end = advice.end_s
    return EndMoved(advice.bath, round(end.value), (round(end.low), round(end.high)), because, advice.model)


def _back_to_plan(one: TankfulState, bath: str, told_s: float) -> EndMoved | None:
    """Once every reading is taken back the end is the planned one again."""
    aim_s = one.bath(bath).times.aim_s
    if abs(told_s - aim_s) < LEAST_MOVE_S:
        return None
    planned = one.plan.development.end_s
    interval = (planned.low, planned.high) if planned else (aim_s, aim_s)
    return EndMoved(bath, aim_s, interval, "no reading", one.plan.development.model)
