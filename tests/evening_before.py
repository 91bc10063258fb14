"""An invented evening led through to its close: two rolls in one tank, the baths back in bottles."""

from __future__ import annotations

from dataclasses import replace

from planned import ANSWERS

from tankside.core.planning.plan import Plan
from tankside.core.rolls.formats import Format
from tankside.core.rolls.roll import Film, Roll
from tankside.core.run.instants import Instant
from tankside.demo.invented import Evening
from tankside.demo.pressing import AtTheSink, press_through
from tankside.workflows.begin_first_evening import begin_first_evening
from tankside.workflows.change_plan import AnotherRoll, change_plan
from tankside.workflows.get_ready import HaveAlready, Marks, liquid_made
from tankside.workflows.house import House
from tankside.workflows.keep_rolls import NewRoll, add_roll
from tankside.workflows.open_run import open_run, run_for

TWO_REELS = replace(ANSWERS, tank_ml=600.0, reads_c=20.0)
BY_THE_BOOK = Evening(days_ago=1, hour=20, rolls=(), reads_c=20.0, late_s=(2.0,), besides=())
DAY_S = 86_400.0


def planned_before(house: House, then: Instant, *, rolls_through: float = 0.0) -> Plan:
    """Two rolls planned, fixer and stop bath a litre each, `rolls_through` the fixer before them."""
    desk, dice = house.desk, house.dice
    plan = begin_first_evening(desk, dice, TWO_REELS, then)
    plan = change_plan(desk, dice, plan.key, AnotherRoll(), then)
    full = {"fix": HaveAlready(1000.0, rolls_through), "stop": HaveAlready(1000.0)}
    marks = {"fix": Marks("white", "behind the tap")}
    for key in [one.key for one in plan.liquids]:
        plan = liquid_made(desk, dice, plan.key, key, then, already=full.get(key), marks=marks.get(key)).plan
    return plan


def lived_before(house: House, then: Instant, *, rolls_through: float = 0.0) -> Plan:
    """The same, developed and hung and closed."""
    plan = planned_before(house, then, rolls_through=rolls_through)
    run = open_run(house.desk, house.live_runs, run_for(plan.key), plan.key, then)
    press_through(AtTheSink(house.live_runs, run, then.before(seconds=-60.0)), BY_THE_BOOK)
    return plan


def waiting(house: House, now: Instant, count: int = 2, *, precious: bool = False) -> list[Roll]:
    """More rolls of the same film out of the camera."""
    new = NewRoll(Film("Ferry 125", "cubic"), Format("135-36"), 125.0, precious=precious)
    return [add_roll(house.desk, house.dice, new, now) for _ in range(count)]
