"""One tap or one field of the Change page, read as a change of plan."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime, timedelta
from uuid import UUID
from zoneinfo import ZoneInfo

from tankside.core.agitation.patterns import ROTARY, Agitation
from tankside.core.planning.fixer import fix_by_test_s
from tankside.core.planning.plan import Plan
from tankside.core.planning.wish import BathTimes, Wish
from tankside.core.quantities.entry import read_temperature, read_time, read_volume
from tankside.core.quantities.limits import ROOM_C
from tankside.core.quantities.preferences import Preferences
from tankside.core.refusals import refuse
from tankside.core.solutions.kinds import SolutionKind
from tankside.core.solutions.notation import read_dilution
from tankside.web.forms import Form, number_of, read_all
from tankside.workflows.change_plan import (
    AnotherRoll,
    AsKeptNow,
    Change,
    LargerTank,
    LeaveOut,
    OtherSupply,
    OwnAgitation,
    OwnBaths,
    RoomIs,
    SecondTank,
    StartLater,
    TakeAnyway,
    TakeBottle,
)
from tankside.workflows.supplies import fresh

SUPPLY_OF: dict[str, SolutionKind] = {
    "fixer-parts": "fixer",
    "stop-parts": "stop bath",
    "wetting-parts": "wetting agent",
}
FIELDS = (
    "tank_ml", "name", "starts", "first", "then", "every", "stop", "fix", "wash", "fills", "wetting",
    *SUPPLY_OF, "room",
)  # fmt: skip
LONGEST_EVERY_S, MOST_FILLS = 600.0, 40.0


def read_change(form: Form, plan: Plan, wish: Wish, preferences: Preferences) -> Change:
    """The change that was asked for; what cannot be read is refused at its field."""
    what, _, of = form.text("change").partition(":")
    made: dict[str, Callable[[], Change]] = {
        "another-roll": AnotherRoll,
        "as-kept": AsKeptNow,
        "fresh-fixer": lambda: OtherSupply(fresh("fixer")),
        "fix-by-test": lambda: OwnBaths(replace(wish.times, fix_s=_by_test_piece_s(wish))),
        "second-tank": lambda: _second_tank(form, preferences),
        "larger-tank": lambda: LargerTank(_volume(form, preferences)),
        "leave-out": lambda: LeaveOut(_key(of)),
        "take-anyway": lambda: TakeAnyway(_key(of)),
        "take-bottle": lambda: TakeBottle(of),
        "later": lambda: StartLater(float(of) if of.lstrip("-").isdigit() else 0.0),
        "starts": lambda: _starts(form, plan, wish),
        "room": lambda: RoomIs(_room(form, preferences)),
        "agitation": lambda: _agitation(form),
        "stop": lambda: OwnBaths(replace(wish.times, stop_s=_time(form, "stop"))),
        "fix": lambda: OwnBaths(replace(wish.times, fix_s=_time(form, "fix"))),
        "wetting": lambda: OwnBaths(replace(wish.times, wetting_s=_time(form, "wetting"))),
        "wash": lambda: OwnBaths(_wash(form, wish.times)),
    }
    if what in SUPPLY_OF:
        return _supply(form, what, wish)
    if what not in made:
        raise refuse("no-such-change", ways_on=("plan",))
    return made[what]()


def _by_test_piece_s(wish: Wish) -> float:
    """As long as the fixer's test piece asks, for the film that asks most."""
    needed_s = fix_by_test_s(wish.supply("fixer").fixer, [one.roll.film.grain for one in wish.rolls])
    if needed_s is None:
        raise refuse("no-such-change", ways_on=("plan",))
    return needed_s


def _key(text: str) -> UUID:
    """A key of a roll; anything else is none of this plan."""
    try:
        return UUID(text)
    except ValueError:
        raise refuse("no-such-change", ways_on=("plan",)) from None


def _second_tank(form: Form, preferences: Preferences) -> SecondTank:
    """As large as the first unless its volume was typed."""
    volume_ml = _volume(form, preferences) if form.text("tank_ml") else None
    return SecondTank(volume_ml, form.text("name") or "second tank")


def _volume(form: Form, preferences: Preferences) -> float:
    """The volume of a tank."""
    told: float = read_all({"tank_ml": lambda: read_volume(form.text("tank_ml"), preferences)})["tank_ml"]
    return told


def _room(form: Form, preferences: Preferences) -> float:
    """The temperature of the room, within what a room can be worked in."""
    told: float = read_all({"room": lambda: read_temperature(form.text("room"), preferences, limits=ROOM_C)})[
        "room"
    ]
    return told


def _time(form: Form, name: str) -> float:
    """A time of one bath."""
    told: float = read_all({name: lambda: read_time(form.text(name))})[name]
    return told


def _wash(form: Form, times: BathTimes) -> BathTimes:
    """Fills and the soak of each."""
    told = read_all(
        {"wash": lambda: read_time(form.text("wash")), "fills": lambda: _within(form, "fills", 1, MOST_FILLS)}
    )
    return replace(times, wash_fill_s=told["wash"], wash_fills=int(told["fills"]))


def _agitation(form: Form) -> OwnAgitation:
    """How long at the start, then how long how often, all in seconds; or rolling without a stop."""
    if form.text("moved") == "rotary":
        return OwnAgitation(ROTARY)
    told = read_all(
        {
            "first": lambda: _within(form, "first", 0, LONGEST_EVERY_S),
            "then": lambda: _within(form, "then", 0, LONGEST_EVERY_S),
            "every": lambda: _within(form, "every", 15, LONGEST_EVERY_S),
        }
    )
    if told["then"] > told["every"]:
        raise refuse("number-out-of-range", at="then", least=0, most=told["every"])
    return OwnAgitation(Agitation("inversion", told["first"], told["then"], told["every"]))


def _within(form: Form, name: str, least: float, most: float) -> float:
    """A number between two others."""
    told = number_of(form, name, least - 1)
    if not least <= told <= most:
        raise refuse("number-out-of-range", at=name, least=least, most=most)
    return told


def _supply(form: Form, name: str, wish: Wish) -> OtherSupply:
    """Another dilution of one bath, which is then made anew."""
    told = read_all({name: lambda: read_dilution(form.text(name))})
    return OtherSupply(
        replace(wish.supply(SUPPLY_OF[name]), dilution=told[name], bottle=None, volume_ml=None)
    )


def _starts(form: Form, plan: Plan, wish: Wish) -> StartLater:
    """The first pour at a time of day at the place: the one nearest to what was planned."""
    zone = ZoneInfo(plan.place.zone)
    planned = wish.starts.astimezone(zone)
    wanted = read_all({"starts": lambda: _clock(form)})["starts"]
    at = planned.replace(hour=wanted.hour, minute=wanted.minute, second=0, microsecond=0)
    days = (-1, 0, 1)
    later = min(((at + timedelta(days=day)) - planned for day in days), key=abs)
    return StartLater(later.total_seconds())


def _clock(form: Form) -> datetime:
    """A time of day as typed."""
    typed = form.text("starts").replace(".", ":")
    try:
        return datetime.strptime(typed, "%H:%M")  # noqa: DTZ007 - only hour and minute are read
    except ValueError:
        raise refuse("clock-unreadable", at="starts", ways_on=("type-again",), typed=typed[:20]) from None
