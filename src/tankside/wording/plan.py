"""The plan page in words."""

from __future__ import annotations

from datetime import date, datetime, timedelta, tzinfo
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from tankside.core.planning.plan import Doubtful, Held, Plan, PlannedTankful
from tankside.core.planning.timetable import Timetable
from tankside.core.planning.wish import FirstUse
from tankside.core.quantities.display import planned_time, temperature_text, time_text, volume_text
from tankside.core.quantities.preferences import Preferences
from tankside.core.shelf.fitness import Reason
from tankside.wording.fixer import fixer_doubt
from tankside.wording.keeping import HELD_FOR
from tankside.wording.whys.amounts import day_of

DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
COUNTS = ("No", "One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine")
LOOK_FIRST = {
    "other-agitation": (
        "The time was printed for another agitation: take it as a first guess, 10 % either way. "
        "More agitation lifts highlights more than shadows."
    ),
    "table-only": (
        "No correction is offered: this time follows no rate. It is read from its printed rows, "
        "and no reading at the sink moves it."
    ),
    "completion": (
        "No correction is offered: this bath works to completion. The time is the least; "
        "longer does no harm, and warmth does not shorten it."
    ),
    "least-stock-unknown": "The least stock for one roll is not known; its leaflet may say.",
}
FIRST_USES: dict[FirstUse | Reason, str] = {
    "batch": "a new batch",
    "combination": "a new combination",
    "thermometer": "a new thermometer",
}


def heading(plan: Plan, today: date) -> str:
    """The heading, which says when: 'Plan: tonight', 'Plan: Saturday morning'.

    `today` is the day at the plan's place.
    """
    return f"Plan: {when(at_place(plan, plan.starts or plan.made), today)}"


def when(starts: datetime, today: date) -> str:
    """A time of one day as one says it from another.

    >>> when(datetime(2026, 10, 3, 20, 30), date(2026, 10, 3))
    'tonight'
    >>> when(datetime(2026, 10, 3, 9, 0), date(2026, 10, 1))
    'Saturday morning'
    """
    part = "morning" if starts.hour < 12 else "afternoon" if starts.hour < 18 else "evening"
    away = (starts.date() - today).days
    if away == 0:
        return "tonight" if part == "evening" else f"this {part}"
    if away == 1:
        return f"tomorrow {part}"
    if 1 < away < 7:
        return f"{DAYS[starts.weekday()]} {part}"
    return f"{starts.date().isoformat()}, {part}"


def at_place(plan: Plan, moment: datetime) -> datetime:
    """A moment on the clock of the plan's place."""
    return moment.astimezone(_zone(plan.place.zone, moment))


def clock_text(plan: Plan, table: Timetable, seconds: float) -> str:
    """The clock at the place, `seconds` after the first pour."""
    return f"{at_place(plan, table.clock(seconds)):%H:%M}"


def summary(plan: Plan, table: Timetable) -> str:
    """How many rolls and tankfuls, when it begins and when the last roll hangs."""
    rolls = sum(len(one.rolls) for one in plan.tankfuls)
    begins, ends = (f"{at_place(plan, one):%H:%M}" for one in (table.begins, _up_to_minute(table.ends)))
    last = "the roll hung" if rolls == 1 else "last roll hung"
    what = f"{_counted(rolls, 'roll')} in {_counted(len(plan.tankfuls), 'tankful').lower()}"
    return f"{what}. Begin {begins}, {last} {ends}."


def start_found(plan: Plan) -> str:
    """How the start of the second tankful was found; empty with one tankful."""
    if len(plan.tankfuls) < 2:
        return ""
    second = plan.tankfuls[1]
    later = time_text(second.starts_s)
    return f"{second.letter} is poured {later} after A, the earliest we found for one pair of hands."


def time_sentence(tankful: PlannedTankful) -> str:
    """The developing time with its doubt, and that a reading settles it.

    '9:00 (8:45 to 9:15); read the tank at one minute and I settle it.'
    """
    end = tankful.development.end_s
    if end is None:
        return time_text(tankful.baths[0].times.aim_s)
    if end.source == "own time":
        return f"{time_text(end.value)}, your own time."
    match tankful.development.time_rule:
        case "completion":
            return f"{time_text(end.value)} at least; it works to completion."
        case "table only":
            return f"{planned_time(end) if end.low < end.high else time_text(end.value)}, as its table says."
        case _:
            pass
    if end.low == end.high:
        return f"{time_text(end.value)}, as its rule says."
    return f"{planned_time(end)}; read the tank at one minute and I settle it."


def tank_sentence(tankful: PlannedTankful, preferences: Preferences) -> str:
    """What the developer is in the jug and what it comes to in the tank."""
    development = tankful.development
    in_tank = temperature_text(development.start_c, preferences)
    if development.jug_c is None:
        return f"{in_tank} in the tank."
    return f"{temperature_text(development.jug_c, preferences)} in the jug, {in_tank} in the tank."


def held_sentence(held: Held) -> str:
    """Why a precious roll is not in the plan."""
    uses = [FIRST_USES[one] for one in held.because if one in FIRST_USES]
    against = [HELD_FOR[one] for one in held.because if one in HELD_FOR]
    first = [f"it would be the first through {' and '.join(uses)}"] if uses else []
    return f"{held.code} is precious and is held: {', and '.join([*first, *against])}."


def _too_small(one: Doubtful, preferences: Preferences) -> str:
    """What a bottle holds beside what the tanks need; to wait helps only where each tank can be filled."""
    holds_ml, needs_ml = one.value or 0.0, one.limit or 0.0
    holds, needs, more = (
        volume_text(ml, preferences) for ml in (holds_ml, needs_ml, max(0.0, needs_ml - holds_ml))
    )
    bottle = one.about or "A bottle"
    short = f"{bottle} holds {holds} and the tanks need {needs} at once"
    if one.tankful is not None:
        return f"{short}, tankful {one.tankful} alone more than it holds. Mix {more} more."
    return f"{short}. Mix {more} more, or develop one tankful after the other."


def doubtful_sentence(one: Doubtful, preferences: Preferences) -> str:
    """What to look at first."""
    value, limit = time_text(one.value or 0), time_text(one.limit or 0)
    match one.code:
        case "short-time":
            return f"{value} is short: under {limit} it may come out uneven."
        case "bottle-too-small":
            return _too_small(one, preferences)
        case "fixer-spent" | "fixer-passed-over" | "fixer-test-due" | "fix-short":
            return fixer_doubt(one)
        case "past-its-date":
            until = date.fromordinal(int(one.value or 1))
            return f"{one.about} was good until {day_of(until)}. Test it, or mix fresh."
        case _:
            return LOOK_FIRST.get(one.code) or one.code.replace("-", " ").capitalize() + "."


def _counted(count: int, word: str) -> str:
    """A count in letters with its word."""
    said = COUNTS[count] if count < len(COUNTS) else str(count)
    return f"{said} {word}{'' if count == 1 else 's'}"


def _up_to_minute(moment: datetime) -> datetime:
    """Up to the next whole minute: an end is not promised early."""
    over = timedelta(seconds=moment.second, microseconds=moment.microsecond)
    return moment - over + (timedelta(minutes=1) if over else timedelta())


def _zone(name: str, moment: datetime) -> tzinfo | None:
    """The zone of that name; where this machine does not know it, the moment's own."""
    try:
        return ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError):
        return moment.tzinfo
