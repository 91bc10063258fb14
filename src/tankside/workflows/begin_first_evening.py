"""From six answers to all that tonight needs: roll, leaflet, tank, thermometer, place, and the plan."""

from __future__ import annotations

from datetime import timedelta

from tankside.core.codes import COUNT, code_from
from tankside.core.planning.first_evening import FirstEvening, Keys, SixAnswers, first_evening
from tankside.core.planning.plan import Plan
from tankside.core.planning.timetable import GET_READY_S
from tankside.core.planning.work_out import work_out
from tankside.core.run.instants import Instant
from tankside.workflows.moments import moment_of
from tankside.workflows.ports import Desk, Dice


def begin_first_evening(desk: Desk, dice: Dice, answers: SixAnswers, *, now: Instant, zone: str) -> Plan:
    """Keep what the answers say and the plan they come to, all or nothing.

    The plan is worked out before anything is written, so that a refusal leaves nothing half kept.
    """
    moment = moment_of(now)
    keys = Keys(
        roll=dice.key(),
        code=_free_code(desk, dice),
        combination=dice.key(),
        row=dice.key(),
        tank=dice.key(),
        thermometer=dice.key(),
        place=dice.key(),
    )
    made = first_evening(answers, keys=keys, starts=moment + timedelta(seconds=GET_READY_S), zone=zone)
    plan = work_out(made.wish, key=dice.key(), number=1, made=moment)
    with desk.together():
        _keep(desk, made, now)
        desk.plans.keep(plan)
    return plan


def _keep(desk: Desk, made: FirstEvening, now: Instant) -> None:
    """Write down what a first evening makes."""
    desk.rolls.add(made.roll, moment_of(now))
    desk.combinations.keep(made.combination)
    desk.tanks.keep(made.tank)
    desk.thermometers.keep(made.thermometer)
    desk.places.keep(made.place)


def _free_code(desk: Desk, dice: Dice) -> str:
    """A code that is on no roll yet; the store itself refuses one that is on a bottle or tank."""
    while True:
        code = str(code_from(dice.below(COUNT)))
        if desk.rolls.by_code(code) is None:
            return code
