"""A plan changed by one tap: the wish behind it is changed and worked out again under the next number."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import timedelta
from typing import assert_never
from uuid import UUID

from tankside.core.agitation.patterns import Agitation
from tankside.core.planning.assumptions import Assumption, AssumptionCode
from tankside.core.planning.first_evening import PARTS_OF, default_tank
from tankside.core.planning.plan import Plan
from tankside.core.planning.wish import BathTimes, Supply, WantedRoll, Wish
from tankside.core.planning.work_out import work_out
from tankside.core.refusals import refuse
from tankside.core.run.instants import Instant
from tankside.workflows.keep_place import read_taps
from tankside.workflows.keep_rolls import NewRoll, add_roll
from tankside.workflows.moments import moment_of
from tankside.workflows.offer_stock import stocks_again, with_anyway
from tankside.workflows.ports import Desk, Dice
from tankside.workflows.supplies import again_from_shelf


@dataclass(frozen=True, slots=True)
class AnotherRoll:
    """Another roll like the last one of the plan."""


@dataclass(frozen=True, slots=True)
class SecondTank:
    """One more tank; as large as the first unless its volume is told."""

    volume_ml: float | None = None
    name: str = "second tank"


@dataclass(frozen=True, slots=True)
class LeaveOut:
    """Leave a roll for another evening."""

    roll: UUID


@dataclass(frozen=True, slots=True)
class TakeAnyway:
    """Take a precious roll that was held; the plan notes it."""

    roll: UUID


@dataclass(frozen=True, slots=True)
class StartLater:
    """Pour the first developer later (or, with a negative number, earlier)."""

    by_s: float


@dataclass(frozen=True, slots=True)
class DeveloperReads:
    """What the mixed developer reads now, the thermometer's offset added; None while it is not mixed."""

    temp_c: float | None


@dataclass(frozen=True, slots=True)
class RoomIs:
    """The room, and the empty tank with it."""

    temp_c: float


@dataclass(frozen=True, slots=True)
class AsKeptNow:
    """Take in what was kept since the plan was made: taps, tanks, thermometer, leaflets, bottles."""


@dataclass(frozen=True, slots=True)
class OwnTime:
    """Develop for a time of one's own; None takes the worked-out one again."""

    time_s: float | None


@dataclass(frozen=True, slots=True)
class OwnBaths:
    """Times of one's own for the baths after the developer."""

    times: BathTimes


@dataclass(frozen=True, slots=True)
class OtherSupply:
    """Another dilution, name or bottle for one bath."""

    supply: Supply


@dataclass(frozen=True, slots=True)
class OwnAgitation:
    """Agitate the developer otherwise than its time was printed for; None takes that again."""

    agitation: Agitation | None


@dataclass(frozen=True, slots=True)
class LargerTank:
    """A tank filled with so much in the place of every smaller one."""

    volume_ml: float
    name: str = "larger tank"


@dataclass(frozen=True, slots=True)
class TakeBottle:
    """Take a bottle of developer that something speaks against; the plan notes it."""

    code: str


OfWish = (
    LeaveOut
    | TakeAnyway
    | TakeBottle
    | StartLater
    | DeveloperReads
    | OwnTime
    | OwnBaths
    | OtherSupply
    | OwnAgitation
)
Change = AnotherRoll | SecondTank | LargerTank | RoomIs | AsKeptNow | OfWish


def change_plan(desk: Desk, dice: Dice, plan: UUID, change: Change, now: Instant) -> Plan:
    """Work the changed wish out under the next number and keep it; where it is refused nothing is kept."""
    before = desk.plans.by_key(plan)
    if before is None or before.wish is None:
        raise refuse("no-such-plan", ways_on=("plan",))
    with desk.together():
        wish = _changed(desk, dice, before.wish, change, now)
        after = work_out(wish, key=before.key, number=before.number + 1, made=moment_of(now))
        desk.plans.keep(after)
    return after


def _changed(desk: Desk, dice: Dice, wish: Wish, change: Change, now: Instant) -> Wish:
    """The wish after one change; what is new is kept on the desk."""
    if isinstance(change, AnotherRoll):
        return _with_roll(desk, dice, wish, now)
    if isinstance(change, SecondTank):
        return _with_tank(desk, dice, wish, change.volume_ml or wish.tanks[0].volume_ml, change.name)
    if isinstance(change, LargerTank):
        roomy = tuple(one for one in wish.tanks if one.volume_ml >= change.volume_ml)
        return _with_tank(desk, dice, replace(wish, tanks=roomy), change.volume_ml, change.name)
    if isinstance(change, RoomIs):
        place = read_taps(desk, wish.place.key, hot_c=None, cold_c=None, room_c=change.temp_c)
        return replace(wish, place=place, assumed=tuple(one for one in wish.assumed if one.code != "room"))
    if isinstance(change, AsKeptNow):
        return _as_kept(desk, wish, now)
    return wish_after(wish, change)


def wish_after(wish: Wish, change: OfWish) -> Wish:
    """The wish after a change that touches nothing else."""
    match change:
        case LeaveOut(roll):
            after = replace(wish, rolls=tuple(one for one in wish.rolls if one.roll.key != roll))
        case TakeAnyway(roll):
            taken = (replace(one, released=True) if one.roll.key == roll else one for one in wish.rolls)
            after = replace(wish, rolls=tuple(taken))
        case TakeBottle(code):
            anyway = {code, *(one.code for one in wish.stocks if one.anyway)}
            after = replace(wish, stocks=with_anyway(wish.stocks, anyway))
        case StartLater(by_s):
            after = replace(wish, starts=wish.starts + timedelta(seconds=by_s))
        case DeveloperReads(temp_c):
            after = replace(wish, reads_c=temp_c)
        case OwnTime(time_s):
            after = replace(wish, own_time_s=time_s)
        case OwnBaths(times):
            after = replace(wish, times=times, assumed=_without(wish, *_told(times)))
        case OtherSupply(supply):
            kept = tuple(supply if one.kind == supply.kind else one for one in wish.supplies)
            after = replace(wish, supplies=kept, assumed=_without(wish, PARTS_OF.get(supply.kind)))
        case OwnAgitation(agitation):
            after = replace(wish, agitation=agitation, assumed=_without(wish, "agitation"))
        case _:
            assert_never(change)
    return after


def _without(wish: Wish, *told: AssumptionCode | None) -> tuple[Assumption, ...]:
    """What is still assumed once these were told."""
    return tuple(one for one in wish.assumed if one.code not in told)


def _told(times: BathTimes) -> Iterator[AssumptionCode]:
    """The baths whose times are one's own."""
    if times.stop_s is not None:
        yield "stop"
    if times.fix_s is not None:
        yield "fix"
    if times.wash_fill_s is not None or times.wash_fills is not None:
        yield "wash"
    if times.wetting_s is not None:
        yield "wetting"


def _as_kept(desk: Desk, wish: Wish, now: Instant) -> Wish:
    """The wish with everything that is kept under its keys as it now stands."""
    place = desk.places.by_key(wish.place.key) or wish.place
    least_ml, rolls = max(one.volume_ml for one in wish.tanks), [one.roll for one in wish.rolls]
    tanks = tuple(desk.tanks.by_key(one.key) or one for one in wish.tanks)
    thermometer = desk.thermometers.by_key(wish.thermometer.key) or wish.thermometer
    told = {
        *({"room"} if place.room_c != wish.place.room_c else ()),
        *({"tank-worth"} if tanks[0].worth_ml != wish.tanks[0].worth_ml else ()),
        *({"thermometer-true"} if thermometer != wish.thermometer else ()),
    }
    return replace(
        wish,
        rolls=tuple(
            replace(
                one,
                roll=desk.rolls.by_key(one.roll.key) or one.roll,
                combination=desk.combinations.by_key(one.combination.key) or one.combination,
            )
            for one in wish.rolls
        ),
        tanks=tanks,
        place=place,
        thermometer=thermometer,
        supplies=tuple(
            again_from_shelf(desk, one, least_ml=least_ml, rolls=rolls, today=moment_of(now).date())
            for one in wish.supplies
        ),
        assumed=tuple(one for one in wish.assumed if one.code not in told),
        stocks=stocks_again(desk, wish, moment_of(now)),
    )


def _with_roll(desk: Desk, dice: Dice, wish: Wish, now: Instant) -> Wish:
    """One more roll like the last, with a code of its own."""
    last = wish.rolls[-1]
    like = last.roll
    new = NewRoll(like.film, like.format, like.index, like.camera, like.owner)
    roll = add_roll(desk, dice, new, now)
    return replace(wish, rolls=(*wish.rolls, WantedRoll(roll, last.combination)))


def _with_tank(desk: Desk, dice: Dice, wish: Wish, volume_ml: float, name: str) -> Wish:
    """One more tank, known only by its volume."""
    tank = default_tank(dice.key(), volume_ml=volume_ml, name=name)
    desk.tanks.keep(tank)
    return replace(wish, tanks=(*wish.tanks, tank))
