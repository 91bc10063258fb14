"""Rolls chosen from the list become a plan."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from uuid import UUID

from tankside.core.methods.combinations import Combination
from tankside.core.methods.known_time import rows_in_use
from tankside.core.planning.first_evening import assumed_for
from tankside.core.planning.plan import Plan
from tankside.core.planning.wish import FirstUse, Supply, WantedRoll, Wish
from tankside.core.planning.work_out import work_out
from tankside.core.refusals import refuse
from tankside.core.rolls.roll import Roll
from tankside.core.run.instants import Instant
from tankside.workflows.begin_first_evening import first_pour
from tankside.workflows.moments import moment_of
from tankside.workflows.offer_stock import stocks_on_the_shelf
from tankside.workflows.ports import Desk, Dice
from tankside.workflows.supplies import supplies_on_the_shelf


@dataclass(frozen=True, slots=True)
class Chosen:
    """What a person chose: rolls by key, and what they would rather not leave to us.

    `combinations` by roll; `tanks` and `place` default to those kept; `starts` to a quarter of an hour on.
    `released` are precious rolls taken all the same.
    """

    rolls: Sequence[UUID]
    combinations: Mapping[UUID, UUID] | None = None
    tanks: Sequence[UUID] = ()
    place: UUID | None = None
    starts: datetime | None = None
    reads_c: float | None = None
    released: frozenset[UUID] = frozenset()


def make_plan(desk: Desk, dice: Dice, chosen: Chosen, now: Instant) -> Plan:
    """Work out and keep a plan for the rolls chosen."""
    moment = moment_of(now)
    plan = work_out(wish_for(desk, chosen, moment), key=dice.key(), number=1, made=moment)
    desk.plans.keep(plan)
    return plan


def wish_for(desk: Desk, chosen: Chosen, moment: datetime) -> Wish:
    """What was chosen, with everything the desk knows beside it."""
    wanted = tuple(_wanted(desk, key, chosen) for key in chosen.rolls)
    if not wanted:
        raise refuse("no-rolls-chosen", at="rolls", ways_on=("choose-rolls",))
    tanks = tuple(one for one in desk.tanks.all() if not chosen.tanks or one.key in chosen.tanks)
    places = [one for one in desk.places.all() if chosen.place in (None, one.key)]
    thermometers = desk.thermometers.all()
    if not tanks or not places or not thermometers:
        raise refuse("no-tank-kept", at="tank", ways_on=("begin-first-evening",))
    supplies = supplies_on_the_shelf(
        desk,
        least_ml=max(tank.volume_ml for tank in tanks),
        rolls=[one.roll for one in wanted],
        today=moment.date(),
    )
    longer = any(one.roll.film.grain != "cubic" for one in wanted)
    return Wish(
        rolls=wanted,
        tanks=tanks,
        place=places[0],
        thermometer=thermometers[0],
        supplies=supplies,
        starts=chosen.starts or first_pour(moment),
        reads_c=chosen.reads_c,
        first_uses=_first_uses(desk, wanted, supplies),
        stocks=stocks_on_the_shelf(desk, wanted, places[0].zone, moment),
        assumed=assumed_for(
            tanks[0],
            places[0],
            thermometers[0],
            fix_longer=longer,
            supplies=supplies,
            agitation=wanted[0].combination.agitation,
        ),
    )


def _wanted(desk: Desk, key: UUID, chosen: Chosen) -> WantedRoll:
    """A roll with what it is developed by."""
    roll = desk.rolls.by_key(key)
    if roll is None:
        raise refuse("no-such-roll", at="rolls", roll_code=str(key), ways_on=("look-at-the-rolls",))
    named = (chosen.combinations or {}).get(key)
    combination = desk.combinations.by_key(named) if named else _combination(desk, roll)
    if combination is None:
        raise refuse("no-time-for-film", at="rolls", film=roll.film.name, ways_on=("add-leaflet-row",))
    return WantedRoll(roll, combination, key in chosen.released)


def _combination(desk: Desk, roll: Roll) -> Combination | None:
    """What this film was planned with last, else a combination with a time at its index, else any of it."""
    ours = [one for one in desk.combinations.all() if one.film.casefold() == roll.film.name.casefold()]
    latest = desk.plans.latest()
    last = {one.combination for one in latest.tankfuls} if latest else set()
    ours.sort(key=lambda one: (not rows_in_use(one, roll.index), one.key not in last))
    return ours[0] if ours else None


def roll_without_time(desk: Desk, rolls: Sequence[Roll]) -> Roll | None:
    """The first roll for whose film and index no time is kept."""
    for roll in rolls:
        combination = _combination(desk, roll)
        if combination is None or not rows_in_use(combination, roll.index):
            return roll
    return None


def _first_uses(
    desk: Desk, wanted: tuple[WantedRoll, ...], supplies: tuple[Supply, ...]
) -> tuple[FirstUse, ...]:
    """What no roll has gone through yet, as far as the rolls done and the ledger say."""
    done = [one for one in desk.rolls.all() if one.standing == "done"]
    films = {one.film.name.casefold() for one in done}
    uses: list[FirstUse] = []
    if any(one.rolls_used == 0 for one in supplies if one.kind == "fixer"):
        uses.append("batch")
    if any(one.combination.film.casefold() not in films for one in wanted):
        uses.append("combination")
    if not done:
        uses.append("thermometer")
    return tuple(uses)
