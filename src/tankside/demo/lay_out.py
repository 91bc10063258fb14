"""The invented season laid out through the same workflows that a person's own goes through."""

from __future__ import annotations

from datetime import datetime, timedelta
from uuid import UUID
from zoneinfo import ZoneInfo

from tankside.core.planning.equipment import Place, Thermometer
from tankside.core.planning.plan import Plan
from tankside.core.run.instants import Instant
from tankside.demo.invented import (
    BOTTLE_ML,
    COLD_C,
    DEVELOPER,
    FERRY,
    HOT_C,
    LEAFLET,
    LEAST_STOCK_ML,
    PARTS,
    PLACE,
    ROOM_C,
    SEASON,
    SOURCE,
    TANKS,
    WAITING,
    Evening,
    Exposed,
)
from tankside.demo.pressing import AtTheSink, press_through
from tankside.demo.strips import ALONE, CONTROL, Invented, typed
from tankside.workflows.add_leaflet_row import add_leaflet_row, combination_for
from tankside.workflows.answer_next_morning import answer_next_morning
from tankside.workflows.get_ready import HaveAlready, Marks, liquid_made
from tankside.workflows.house import House
from tankside.workflows.keep_bottles import discard
from tankside.workflows.keep_place import add_tank, keep_thermometer
from tankside.workflows.keep_rolls import NewRoll, add_roll
from tankside.workflows.make_plan import Chosen, make_plan
from tankside.workflows.moments import EPOCH, moment_of
from tankside.workflows.open_run import open_run
from tankside.workflows.ports import Desk
from tankside.workflows.read_journal import Which
from tankside.workflows.read_step_strip import Alone, read_step_strip

MARKS = {"stop": Marks("green", "left of the tap"), "fix": Marks("white", "right of the tap")}
FULL = {"stop": HaveAlready(BOTTLE_ML), "fix": HaveAlready(BOTTLE_ML)}
TONIGHT_HOUR = 20
FRESH = timedelta(hours=12)


def lay_out(house: House, now: Instant) -> Plan:
    """Three past sessions, four rolls waiting, and the plan for tonight; returns that plan.

    All of it is one transaction, which only a file that nobody else has open may risk.
    """
    today = moment_of(now).astimezone(ZoneInfo(house.zone))
    with house.desk.together():
        _furnish(house, _at(today, days_ago=40, hour=10))
        _strips(house, today)
        for number, evening in enumerate(SEASON, 1):
            _lived(house, evening, number, today)
        rolls = [_added(house, one, today) for one in WAITING]
        return make_plan(house.desk, house.dice, Chosen(rolls, starts=_tonight(today)), now)


def _furnish(house: House, then: Instant) -> None:
    """Taps and room, tanks, a thermometer, and the leaflet's times."""
    desk, dice = house.desk, house.dice
    desk.places.keep(Place(dice.key(), PLACE, ROOM_C, HOT_C, COLD_C, zone=house.zone))
    keep_thermometer(desk, Thermometer(dice.key(), "rod with digits", offset_c=-0.3, step_c=0.1))
    for name, volume_ml in TANKS:
        add_tank(desk, dice, volume_ml=volume_ml, name=name)
    for row in LEAFLET:
        known = combination_for(
            desk, dice, film=row.film.name, developer=DEVELOPER, dilution=PARTS, least_stock_ml=LEAST_STOCK_ML
        )
        add_leaflet_row(
            desk, dice, known.key, then, time_s=row.time_s, temp_c=row.temp_c, index=row.index, words=SOURCE
        )


def _strips(house: House, today: datetime) -> None:
    """Step strips of no run, and a row of control strips."""
    desk, dice = house.desk, house.dice
    known = combination_for(desk, dice, film=FERRY.name, developer=DEVELOPER, dilution=PARTS)
    for seed, one in enumerate((*CONTROL, *ALONE), 100):
        then = _at(today, days_ago=one.days_ago, hour=18)
        time_s = 570.0 if one.control else one.time_s
        read_step_strip(desk, dice, typed(one, seed=seed), Alone(known.key, time_s, 20.0), then)


def _lived(house: House, evening: Evening, number: int, today: datetime) -> None:
    """One past session, from its rolls to the last film hung."""
    desk, dice = house.desk, house.dice
    begins = _at(today, days_ago=evening.days_ago, hour=evening.hour, boot=f"demo-{number}")
    rolls = [_added(house, one, today) for one in evening.rolls]
    plan = make_plan(desk, dice, Chosen(rolls, reads_c=evening.reads_c), begins)
    for key in [liquid.key for liquid in plan.liquids]:
        plan = liquid_made(
            desk, dice, plan.key, key, begins, already=FULL.get(key), marks=MARKS.get(key)
        ).plan
    opened = begins.before(seconds=-600.0)
    run = open_run(desk, house.live_runs, dice.key(), plan.key, opened, device="demo")
    there = AtTheSink(house.live_runs, run, opened.before(seconds=-10.0))
    press_through(there, evening)
    if evening.came_out is not None:
        morning = _at(today, days_ago=evening.days_ago - 1, hour=9)
        answer_next_morning(desk, dice, Which(run, "A"), evening.came_out, morning)
    if evening.strip_s is not None:
        read = _at(today, days_ago=evening.days_ago - 2, hour=18)
        strip = typed(Invented(evening.strip_s, evening.days_ago), seed=number)
        read_step_strip(desk, dice, strip, Which(run, "A"), read)
    for liquid in plan.liquids:
        if not liquid.reusable and liquid.bottle is not None:
            discard(desk, dice, liquid.bottle, there.now, words="used once")


def _added(house: House, one: Exposed, today: datetime) -> UUID:
    """A roll out of its camera, on the day it was exposed."""
    then = _at(today, days_ago=one.days_ago, hour=18)
    day = (today - timedelta(days=one.days_ago)).date()
    new = NewRoll(one.film, one.format, one.index, one.camera, exposed=day, notes=one.notes)
    return add_roll(house.desk, house.dice, new, then).key


def _tonight(today: datetime) -> datetime | None:
    """Eight o'clock if that is still to come, else as soon as may be."""
    eight = today.replace(hour=TONIGHT_HOUR, minute=0, second=0, microsecond=0)
    return eight if eight > today + timedelta(minutes=30) else None


def _at(today: datetime, *, days_ago: int, hour: int, boot: str = "demo") -> Instant:
    """A past hour by the clock of the place, as an instant of a boot of its own."""
    there = (today - timedelta(days=days_ago)).replace(hour=hour, minute=0, second=0, microsecond=0)
    wall_us = (there - EPOCH) // timedelta(microseconds=1)
    return Instant(wall_us, wall_us, boot)


def untouched(desk: Desk) -> bool:
    """Whether nobody has done anything in the demo since it was laid out."""
    plan = desk.plans.latest()
    return (
        plan is not None
        and plan.number == 1
        and len(SEASON) == len(desk.run_log.headings())
        and sum(len(one.rolls) for one in SEASON) + len(WAITING) == len(desk.rolls.all())
    )


def is_of_today(desk: Desk, now: Instant) -> bool:
    """Whether its evening is still to be had: laid out less than half a day ago, or begun by somebody."""
    plan = desk.plans.latest()
    if plan is None:
        return False
    return not untouched(desk) or moment_of(now) - plan.made < FRESH


def last_noted(desk: Desk) -> Instant | None:
    """The latest thing noted in any of its sessions; a paced evening runs ahead of the machine's clock."""
    noted = [event.recorded for one in desk.run_log.headings() for event in desk.run_log.after(one.run)]
    return max(noted, key=lambda instant: instant.wall_us, default=None)
