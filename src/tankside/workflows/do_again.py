"""Last time once more: planned, its one-shot liquids booked as made, and the run opened, in one go.

Whatever is not as last time refuses it with nothing kept, and the ordinary way leads on.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from uuid import UUID

from tankside.core.planning.fixer import fixer_takes, fixer_wanted
from tankside.core.planning.plan import Liquid, Plan
from tankside.core.planning.timetable import timetable
from tankside.core.planning.work_out import work_out
from tankside.core.refusals import refuse
from tankside.core.run.instants import Instant
from tankside.workflows.as_last_time import LastTime, check_waiting, last_time, wish_as_last
from tankside.workflows.get_ready import liquid_made
from tankside.workflows.moments import moment_of
from tankside.workflows.note_at_sink import Sink
from tankside.workflows.open_run import open_run, run_for
from tankside.workflows.ports import Desk, Dice

BY_HAND = ("plan-step-by-step",)


@dataclass(frozen=True, slots=True)
class Again:
    """The rolls to take and what the developer reads (C, the thermometer's offset added).

    `plan` is the key of the plan to be, drawn when the page was made, so that a second press opens no
    second run.
    """

    plan: UUID
    rolls: Sequence[UUID]
    reads_c: float


def do_again(desk: Desk, dice: Dice, sink: Sink, again: Again, now: Instant) -> UUID:
    """Make the plan, book what is made fresh each time, open the run; its key is the answer."""
    run = run_for(again.plan)
    if sink.look(run) is None:
        if desk.plans.by_key(again.plan) is None:
            _keep(desk, dice, _planned(desk, sink, again, now), now)
        open_run(desk, sink, run, again.plan, now)
    return run


def plan_again(desk: Desk, sink: Sink, again: Again, now: Instant) -> Plan:
    """The same plan kept alone, for whoever goes on step by step; nothing is booked and no run opened."""
    plan = _worked_out(desk, _last(desk, sink), again, now)
    desk.plans.keep(plan)
    return plan


def _last(desk: Desk, sink: Sink) -> LastTime:
    """Last time, refused where there was none."""
    last = last_time(desk, sink)
    if last is None:
        raise refuse("again-nothing-before", ways_on=("begin-first-evening",))
    return last


def _worked_out(desk: Desk, last: LastTime, again: Again, now: Instant) -> Plan:
    """The plan of last time for these rolls and this reading."""
    check_waiting(desk, last, again.rolls)
    moment = moment_of(now)
    wish = replace(wish_as_last(desk, last, again.rolls, moment), reads_c=again.reads_c)
    return work_out(wish, key=again.plan, number=1, made=moment)


SAID_ON_THE_PAGE = {"fixer-test-due"}
"""What the page says to the person and no plan can do for them."""


def _planned(desk: Desk, sink: Sink, again: Again, now: Instant) -> Plan:
    """The plan, refused where something in it is missing or was not there last time."""
    last = _last(desk, sink)
    plan = _worked_out(desk, last, again, now)
    for held in plan.held:
        raise refuse("again-roll-held", at="rolls", ways_on=BY_HAND, roll_code=held.code)
    for liquid in plan.liquids:
        _check_liquid(liquid, last)
    _check_fixer(plan)
    for one in plan.doubtful:
        if one.code == "bottle-too-small":
            raise refuse(
                "again-bottle-too-small",
                ways_on=BY_HAND,
                volume_ml=one.value or 0.0,
                needed_ml=one.limit or 0.0,
            )
    new = {one.code for one in plan.doubtful} - {one.code for one in last.plan.doubtful} - SAID_ON_THE_PAGE
    if new or plan.bottles or timetable(plan).clashes:
        raise refuse("again-look-first", ways_on=BY_HAND)
    return plan


def _check_liquid(liquid: Liquid, last: LastTime) -> None:
    """A reused one stands on the shelf; one made fresh is made as it was."""
    if liquid.bottle is not None:
        return
    if liquid.reusable:
        raise refuse(
            "again-no-bottle", ways_on=BY_HAND, liquid=liquid.name.lower(), needed_ml=liquid.volume_ml
        )
    if liquid.mix_to_c is not None:
        raise refuse("again-second-mix", ways_on=BY_HAND)
    made = {(one.kind, one.name, one.parts) for one in last.plan.liquids}
    if (liquid.kind, liquid.name, liquid.parts) not in made:
        raise refuse("again-other-liquid", ways_on=BY_HAND, liquid=liquid.name, parts=liquid.parts)


def _check_fixer(plan: Plan) -> None:
    """The fixer takes this film by the source that is planned on."""
    assert plan.wish is not None
    left = fixer_takes(plan.wish.supply("fixer"))
    wanted = fixer_wanted(one.roll for one in plan.wish.rolls)
    if left is not None and left.left_planned + 1e-9 < wanted:
        bottle = plan.wish.supply("fixer").bottle or ""
        raise refuse(
            "again-fixer-spent", ways_on=BY_HAND, bottle_code=bottle, left=left.ordinary_rolls,
            wanted=f"{wanted:.3g}",
        )  # fmt: skip


def _keep(desk: Desk, dice: Dice, plan: Plan, now: Instant) -> Plan:
    """Plan and fresh liquids, all of it or nothing; the run is opened after, for no run is noted inside."""
    with desk.together():
        desk.plans.keep(plan)
        for liquid in plan.liquids:
            if liquid.bottle is None:
                plan = liquid_made(desk, dice, plan.key, liquid.key, now).plan
    return plan
