"""Six answers: film, roll, leaflet row, tank, thermometer and place are kept, and tonight is planned."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

from tankside.core.planning.equipment import Place, Tank, Thermometer
from tankside.core.planning.first_evening import Keys, SixAnswers, first_evening
from tankside.core.planning.plan import Plan
from tankside.core.planning.wish import FirstUse
from tankside.core.planning.work_out import work_out
from tankside.core.rolls.roll import Film
from tankside.core.run.instants import Instant
from tankside.workflows.keep_rolls import NewRoll, add_roll
from tankside.workflows.moments import moment_of
from tankside.workflows.ports import Desk, Dice

POUR_AFTER = timedelta(minutes=15)
TO_MINUTES = 5


def begin_first_evening(
    desk: Desk, dice: Dice, answers: SixAnswers, now: Instant, *, zone: str = "UTC", released: bool = False
) -> Plan:
    """Keep what six answers say and plan tonight; all of it or, where the plan is refused, nothing.

    `released` takes a precious roll all the same, which the plan notes.
    """
    moment = moment_of(now)
    with desk.together():
        uses = _first_uses(desk)
        film = Film(answers.film, answers.grain)
        new = NewRoll(film, answers.format, answers.index, precious=answers.precious)
        roll = add_roll(desk, dice, new, now)
        keys = Keys(roll.key, roll.code, *(dice.key() for _ in range(5)))
        made = first_evening(answers, keys=keys, starts=first_pour(moment), zone=zone)
        combination = desk.combinations.keep(made.combination)
        place, thermometer = _place(desk, made.place), _thermometer(desk, made.thermometer)
        tank = _tank(desk, made.tank)
        wanted = replace(made.wish.rolls[0], roll=roll, combination=combination, released=released)
        wish = replace(
            made.wish,
            rolls=(wanted,),
            tanks=(tank,),
            place=place,
            thermometer=thermometer,
            first_uses=uses,
        )
        plan = work_out(wish, key=dice.key(), number=1, made=moment)
        desk.plans.keep(plan)
    return plan


def first_pour(moment: datetime) -> datetime:
    """A quarter of an hour from now, up to the next five minutes."""
    later = moment + POUR_AFTER
    over = timedelta(minutes=later.minute % TO_MINUTES, seconds=later.second, microseconds=later.microsecond)
    return later - over + (timedelta(minutes=TO_MINUTES) if over else timedelta())


def _first_uses(desk: Desk) -> tuple[FirstUse, ...]:
    """What no roll has gone through yet; a combination and a batch of a first evening are always new."""
    return ("batch", "combination") if desk.thermometers.all() else ("batch", "combination", "thermometer")


def _place(desk: Desk, new: Place) -> Place:
    """The place that is known, or the new one, kept."""
    for known in desk.places.all():
        return known
    desk.places.keep(new)
    return new


def _thermometer(desk: Desk, new: Thermometer) -> Thermometer:
    """The thermometer that is known, or the new one, kept."""
    for known in desk.thermometers.all():
        return known
    desk.thermometers.keep(new)
    return new


def _tank(desk: Desk, new: Tank) -> Tank:
    """A known tank of this volume, or the new one, kept."""
    for known in desk.tanks.all():
        if known.volume_ml == new.volume_ml:
            return known
    desk.tanks.keep(new)
    return new
