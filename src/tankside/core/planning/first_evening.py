"""Six answers, and everything else assumed: the shortest way from a roll to a plan."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime
from uuid import UUID

from tankside.core.agitation.patterns import Agitation
from tankside.core.methods.combinations import Combination, TankKind, TimeRow
from tankside.core.methods.default_method import (
    BY_HAND,
    FIX_CUBIC,
    FIX_LONG,
    STOP,
    WASH_FILL,
    WASH_FILLS,
    WETTING,
)
from tankside.core.planning.assumptions import Assumption, AssumptionCode
from tankside.core.planning.equipment import Place, Tank, Thermometer
from tankside.core.planning.wish import FirstUse, Supply, WantedRoll, Wish
from tankside.core.rolls.formats import Format
from tankside.core.rolls.roll import Film, Grain, Roll
from tankside.core.solutions.kinds import SolutionKind
from tankside.core.solutions.notation import Dilution
from tankside.core.thermal.tank import tau_by_volume_min, worth_by_volume_ml

ROOM_C = 20.0
SUPPLIES = (
    Supply("fixer", "Fixer", Dilution(1, 4)),
    Supply("stop bath", "Stop bath", Dilution(1, 19)),
    Supply("wetting agent", "Wetting agent", Dilution(1, 199)),
)
"""Common practice where nobody has read the label yet; the label decides."""

PARTS_OF: dict[SolutionKind, AssumptionCode] = {
    "fixer": "fixer-parts",
    "stop bath": "stop-parts",
    "wetting agent": "wetting-parts",
}
"""The assumption that a bottle, or a dilution of one's own, replaces."""

FIRST_USES: tuple[FirstUse, ...] = ("batch", "combination", "thermometer")


@dataclass(frozen=True, slots=True)
class SixAnswers:
    """What a first evening asks.

    Film and format; exposure index; developer and dilution as printed; time (s) and temperature (C) as
    printed; the tank's volume (mL); what the developer reads now (C; None while it is not mixed).
    `from_leaflet` is false for a time of one's own.
    """

    film: str
    format: Format
    index: float
    developer: str
    dilution: Dilution
    time_s: float
    temp_c: float
    tank_ml: float
    reads_c: float | None
    grain: Grain = "unknown"
    from_leaflet: bool = True
    precious: bool = False
    least_stock_ml: float | None = None


@dataclass(frozen=True, slots=True)
class Keys:
    """Keys and the sticker's code for what a first evening makes."""

    roll: UUID
    code: str
    combination: UUID
    row: UUID
    tank: UUID
    thermometer: UUID
    place: UUID


@dataclass(frozen=True, slots=True)
class FirstEvening:
    """Everything that six answers make, ready to be kept, and the wish for tonight."""

    film: Film
    roll: Roll
    combination: Combination
    tank: Tank
    thermometer: Thermometer
    place: Place
    wish: Wish


def default_tank(key: UUID, *, volume_ml: float, name: str = "tank", kind: TankKind = "plastic") -> Tank:
    """A tank known only by its volume (250-2000 mL) and what it is made of, plastic unless told.

    Own model: plastic is worth 49 + 0.126 V mL of water, time constant 106 to 145 min in proportion
    (docs/science/tank-and-liquid). Doubt: a quarter of the worth; a two-minute test settles it.

    >>> tank = default_tank(UUID(int=1), volume_ml=500.0)
    >>> round(tank.worth_ml), round(tank.tau_min)
    (112, 106)
    """
    worth_ml, tau_min = worth_by_volume_ml(kind, volume_ml), tau_by_volume_min(kind, volume_ml)
    return Tank(key, name, volume_ml, worth_ml, tau_min, kind)


def first_evening(answers: SixAnswers, *, keys: Keys, starts: datetime, zone: str) -> FirstEvening:
    """What is kept of six answers, and the wish that they come to.

    Arguments: `starts` aware, the first pour; `zone` of the place. Result: values only, nothing is written.
    Own model: docs/science/planning. Doubt: what is assumed is listed in the wish.
    """
    film = Film(answers.film, answers.grain)
    roll = Roll(keys.roll, keys.code, film, answers.format, answers.index, precious=answers.precious)
    combination = _combination(answers, keys, starts.date())
    tank = default_tank(keys.tank, volume_ml=answers.tank_ml)
    thermometer = Thermometer(keys.thermometer, "thermometer")
    place = Place(keys.place, "at home", ROOM_C, zone=zone)
    wish = Wish(
        rolls=(WantedRoll(roll, combination),),
        tanks=(tank,),
        place=place,
        thermometer=thermometer,
        supplies=SUPPLIES,
        starts=starts,
        reads_c=answers.reads_c,
        first_uses=FIRST_USES,
        assumed=assumed_for(tank, place, thermometer, fix_longer=answers.grain != "cubic"),
    )
    return FirstEvening(film, roll, combination, tank, thermometer, place, wish)


def assumed_for(
    tank: Tank,
    place: Place,
    thermometer: Thermometer,
    *,
    fix_longer: bool,
    supplies: tuple[Supply, ...] = SUPPLIES,
    agitation: Agitation = BY_HAND,
) -> tuple[Assumption, ...]:
    """What a plan by the default method takes for granted; a tested tank or thermometer is not assumed.

    How a bath is diluted is assumed only while it is still to be mixed: a bottle says it.
    """
    parts = tuple(
        Assumption(PARTS_OF[one.kind], text=str(one.dilution)) for one in supplies if one.bottle is None
    )
    return (
        Assumption("one-shot"),
        *((Assumption("agitation", BY_HAND.first_s),) if agitation == BY_HAND else ()),
        Assumption("stop", STOP.aim_s),
        Assumption("fix", (FIX_LONG if fix_longer else FIX_CUBIC).aim_s),
        Assumption("wash", WASH_FILL.aim_s, str(WASH_FILLS)),
        Assumption("wetting", WETTING.aim_s),
        Assumption("no-presoak"),
        *parts,
        Assumption("room", place.room_c),
        Assumption("tank-at-room"),
        *((Assumption("tank-worth", tank.worth_ml),) if _by_volume_alone(tank) else ()),
        *((Assumption("thermometer-true"),) if thermometer.offset_c == 0 else ()),
    )


def _by_volume_alone(tank: Tank) -> bool:
    """Whether nothing but its volume says what a tank is worth."""
    return tank.worth_ml == worth_by_volume_ml(tank.kind, tank.volume_ml)


def _combination(answers: SixAnswers, keys: Keys, noted: date) -> Combination:
    """The combination with its one row, as printed or as the person's own."""
    row = TimeRow(
        keys.row,
        answers.time_s,
        answers.temp_c,
        answers.index,
        "leaflet" if answers.from_leaflet else "own",
        "leaflet" if answers.from_leaflet else "own time",
        noted,
    )
    return Combination(
        keys.combination,
        answers.film,
        answers.developer,
        answers.dilution,
        BY_HAND,
        "plastic",
        "pour-in to pour-out",
        "rate",
        (row,),
        answers.least_stock_ml,
    )
