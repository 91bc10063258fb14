"""An invented first evening, and tankfuls put together by hand for the order of an evening."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, date, datetime
from uuid import UUID

from tankside.core.agitation.patterns import Agitation
from tankside.core.doubt.estimate import Estimate
from tankside.core.methods.combinations import Combination, TimeRow
from tankside.core.methods.default_method import default_method
from tankside.core.planning.equipment import Tank
from tankside.core.planning.first_evening import FirstEvening, Keys, SixAnswers, default_tank, first_evening
from tankside.core.planning.plan import Development, Plan, PlannedBath, PlannedRoll, PlannedTankful
from tankside.core.planning.wish import WantedRoll, Wish
from tankside.core.planning.work_out import work_out
from tankside.core.rates import BelievedRate
from tankside.core.rolls.formats import Format
from tankside.core.rolls.roll import Film, Roll
from tankside.core.solutions.notation import Dilution

STARTS = datetime(2026, 10, 3, 19, 10, tzinfo=UTC)
ANSWERS = SixAnswers(
    film="Ferry 125",
    format=Format("135-36"),
    index=125.0,
    developer="Umber",
    dilution=Dilution(1, 1),
    time_s=570.0,
    temp_c=20.0,
    tank_ml=500.0,
    reads_c=21.0,
    grain="cubic",
)

TYPED = {
    "film": "Ferry 200",
    "format": "135-36",
    "index": "200",
    "developer": "Umber",
    "dilution": "1+1",
    "time": "9:30",
    "temp": "20",
    "tank": "500",
    "reads": "21.0",
    "answered": "reads",
}
"""The six answers as they are typed on the first evening's pages; 9:30 at 20 C, and 21.0 C read now."""


def key(number: int) -> UUID:
    """A key that a failing test shows as a small number."""
    return UUID(int=number)


def evening(answers: SixAnswers = ANSWERS) -> FirstEvening:
    """What six answers make."""
    keys = Keys(key(1), "7MPA-4", *(key(number) for number in range(2, 7)))
    return first_evening(answers, keys=keys, starts=STARTS, zone="Europe/Berlin")


def planned(wish: Wish) -> Plan:
    """A wish worked out."""
    return work_out(wish, key=key(9), number=1, made=STARTS)


def with_rolls(wish: Wish, count: int) -> Wish:
    """The same wish with `count` rolls like its first."""
    first = wish.rolls[0]
    rolls = (
        replace(first, roll=replace(first.roll, key=key(100 + n), code=f"{n:04d}-X")) for n in range(count)
    )
    return replace(wish, rolls=tuple(rolls))


def with_tanks(wish: Wish, *volumes_ml: float) -> Wish:
    """The same wish with tanks of these volumes."""
    tanks = (default_tank(key(200 + n), volume_ml=ml, name=f"tank {n}") for n, ml in enumerate(volumes_ml))
    return replace(wish, tanks=tuple(tanks))


ONE_TO_FOUR = Dilution(1, 4)


def combination(
    *rows: TimeRow, dilution: Dilution = ONE_TO_FOUR, least_ml: float | None = None
) -> Combination:
    """An invented combination with these rows."""
    return Combination(
        key(41), "Ferry 125", "Umber", dilution, Agitation("inversion"), "plastic",
        "pour-in to pour-out", "rate", rows, least_ml,
    )  # fmt: skip


def row(number: int, time_s: float = 570.0, temp_c: float = 20.0, index: float = 125.0) -> TimeRow:
    """One leaflet row."""
    return TimeRow(key(number), time_s, temp_c, index, "leaflet", "leaflet", date(2026, 10, 1))


def wanted(number: int, of: Combination, *, precious: bool = False, kind: str = "135-36") -> WantedRoll:
    """One roll to be developed by a combination."""
    film = Format("120") if kind == "120" else Format("135-36")
    roll = Roll(key(number), f"{number:04d}-X", Film("Ferry 125", "cubic"), film, 125.0, precious=precious)
    return WantedRoll(roll, of)


def tankful(
    letter: str, develop_s: float, *, rigid: bool = False, tank: Tank | None = None
) -> PlannedTankful:
    """A tankful by the default method; `rigid` lets no inversion slip."""
    baths = []
    for step in default_method(time_s=develop_s, fix_longer=False).steps:
        pattern = step.agitation
        if pattern is not None and rigid:
            pattern = replace(pattern, soft_s=0.0)
        word = None if step.kind == "wash" else step.kind
        baths.append(
            PlannedBath(
                f"{letter}.{step.kind}", step.kind, word, step.times, step.destination, pattern, step.fills
            )
        )
    sure = Estimate(develop_s, develop_s, develop_s, "s")
    return PlannedTankful(
        letter,
        tank or default_tank(key(31), volume_ml=500.0),
        (PlannedRoll(key(50), "7MPA-4", "Ferry 125", 1.0, False, "cubic"),),
        tuple(baths),
        Development(
            sure, BelievedRate(), 20.0, 20.0, Estimate(106.0, 60.0, 180.0, "min"),
            Estimate(1.7, 1.34, 2.32, "1"), 30.0, "rate", None, "invented-1", "leaflet",
        ),
    )  # fmt: skip
