"""Which rolls can go as last time, and the wish that repeats last time with them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime
from uuid import UUID

from tankside.core.planning.equipment import Thermometer
from tankside.core.planning.plan import Plan
from tankside.core.planning.tankfuls import room_for
from tankside.core.planning.wish import Wish
from tankside.core.refusals import refuse
from tankside.core.rolls.roll import Roll
from tankside.workflows.change_plan import OtherSupply, OwnAgitation, OwnBaths, wish_after
from tankside.workflows.make_plan import Chosen, roll_without_time, wish_for
from tankside.workflows.note_at_sink import Sink
from tankside.workflows.open_runs import open_runs
from tankside.workflows.ports import Desk


@dataclass(frozen=True, slots=True)
class LastTime:
    """The plan made last with its wish, and what waits now and is in no run.

    `rolls` are those whose film has a time, the likest to last time first; `offered` of them share a tank
    and are as many as last time, at most. `timeless` wait without a time.
    """

    plan: Plan
    wish: Wish
    rolls: tuple[Roll, ...]
    offered: tuple[Roll, ...]
    timeless: tuple[Roll, ...]


def last_time(desk: Desk, sink: Sink) -> LastTime | None:
    """Last time and what waits, None in a house that has planned nothing."""
    plan = desk.plans.latest()
    wish = plan.wish if plan is not None else None
    if plan is None or wish is None:
        return None
    taken = frozenset[UUID]().union(*(one.rolls for one in open_runs(desk, sink)))
    waiting = [one for one in desk.rolls.all() if one.standing == "waiting" and one.key not in taken]
    timeless = tuple(one for one in waiting if roll_without_time(desk, [one]) is not None)
    timed = (one for one in waiting if one not in timeless)
    rolls = tuple(sorted(timed, key=lambda roll: _likeness(roll, wish)))
    return LastTime(plan, wish, rolls, _offered(rolls, wish), timeless)


def wish_as_last(desk: Desk, last: LastTime, rolls: Sequence[UUID], moment: datetime) -> Wish:
    """The wish for `rolls` at the place, in the tanks, by the baths and hands of last time.

    Bottles are taken from the shelf as it is now; a time of one's own is not taken over, for it was meant
    for the temperature of that evening.
    """
    tanks = [one.key for one in last.wish.tanks if desk.tanks.by_key(one.key) is not None]
    place = last.wish.place.key if desk.places.by_key(last.wish.place.key) is not None else None
    wish = wish_for(desk, Chosen(rolls, tanks=tanks, place=place), moment)
    wish = replace(wish, hands=last.wish.hands, thermometer=thermometer_of(desk, last))
    wish = wish_after(wish, OwnBaths(last.wish.times))
    if last.wish.agitation is not None:
        wish = wish_after(wish, OwnAgitation(last.wish.agitation))
    for now in wish.supplies:
        before = last.wish.supply(now.kind)
        if now.bottle is None and (now.name, now.dilution) != (before.name, before.dilution):
            made = replace(now, name=before.name, dilution=before.dilution)
            wish = wish_after(wish, OtherSupply(made))
    return wish


def thermometer_of(desk: Desk, last: LastTime) -> Thermometer:
    """The thermometer of last time, with what it is off by now."""
    return desk.thermometers.by_key(last.wish.thermometer.key) or last.wish.thermometer


def check_waiting(desk: Desk, last: LastTime, rolls: Sequence[UUID]) -> None:
    """Refuse a roll that waits no longer, or is in a run already."""
    waiting = {one.key for one in (*last.rolls, *last.timeless)}
    for key in rolls:
        roll = desk.rolls.by_key(key)
        if roll is not None and key not in waiting:
            raise refuse("again-roll-taken", at="rolls", ways_on=("choose-rolls",), roll_code=roll.code)


def _likeness(roll: Roll, wish: Wish) -> tuple[bool, bool, bool, date, str]:
    """Film, index and width as the first roll of last time come first, then the oldest exposure."""
    first = wish.rolls[0].roll
    return (
        roll.film.name.casefold() != first.film.name.casefold(),
        (roll.index, roll.format.kind) != (first.index, first.format.kind),
        roll.precious,
        roll.exposed or date.max,
        roll.code,
    )


def _offered(rolls: Sequence[Roll], wish: Wish) -> tuple[Roll, ...]:
    """As many of the likest as went last time and as one tank takes; nothing precious unasked."""
    if not rolls:
        return ()
    first = rolls[0]
    alike = [
        one
        for one in rolls
        if not one.precious
        and (one.film.name, one.index, one.format.kind) == (first.film.name, first.index, first.format.kind)
    ]
    room = max(room_for(tank, first.format) for tank in wish.tanks)
    return tuple(alike[: min(len(wish.rolls), room)])
