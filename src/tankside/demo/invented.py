"""What there is at Ferry House, Alderwick: invented films, bottles and evenings, nobody in them."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from tankside.core.review.evidence import NextMorning
from tankside.core.rolls.formats import Format
from tankside.core.rolls.roll import Film
from tankside.core.run.commands import (
    Asked,
    NoteAgitation,
    RetimeNote,
    TakeReading,
    TimeTest,
    WriteNote,
)
from tankside.core.run.state import Run
from tankside.core.solutions.notation import Dilution

PLACE = "Ferry House, Alderwick (invented)"
ROOM_C, HOT_C, COLD_C = 17.0, 52.0, 14.0
TANKS = (("small tank", 300.0), ("tall tank", 600.0), ("squat tank", 650.0))
DEVELOPER, PARTS = "Umber", Dilution(1, 1)
LEAST_STOCK_ML = 120.0
BOTTLE_ML = 1500.0
"""Stop bath and fixer each fill one, enough for the two larger tanks at once."""
SOURCE = "invented leaflet"
FERRY, MILL = Film("Ferry 125", "cubic"), Film("Mill Race 400", "tabular")
BOX, SMALL = "black box camera", "small camera"


@dataclass(frozen=True, slots=True)
class Printed:
    """A row of an invented leaflet: how long (s) at what temperature (C) for which index."""

    film: Film
    index: float
    time_s: float
    temp_c: float


LEAFLET = (
    Printed(FERRY, 125.0, 570.0, 20.0),
    Printed(FERRY, 125.0, 495.0, 22.0),
    Printed(MILL, 400.0, 420.0, 20.0),
)


@dataclass(frozen=True, slots=True)
class Exposed:
    """A roll as it came out of its camera, `days_ago` before the day it is laid out for."""

    film: Film
    format: Format
    index: float
    camera: str
    notes: str
    days_ago: int


ROLL = Format("135-36")


@dataclass(frozen=True, slots=True)
class Besides:
    """Something done `after_s` seconds after the first pour, beside what the sink asks for."""

    after_s: float
    asked: Callable[[Run], Asked]


@dataclass(frozen=True, slots=True)
class Evening:
    """A past session: how long ago, its rolls, what the developer read, how late each act was done.

    `came_out` is what was said of the negatives the next morning, None where nobody has said yet. `strip_s`
    is the time at 20 C that a step strip on the roll came out as, None where there was none.
    """

    days_ago: int
    hour: int
    rolls: tuple[Exposed, ...]
    reads_c: float
    late_s: tuple[float, ...]
    besides: tuple[Besides, ...]
    came_out: NextMorning | None = None
    strip_s: float | None = None


def said(words: str) -> Callable[[Run], Asked]:
    """A note in words."""
    return lambda _: WriteNote(words)


def read(tankful: str, raw_c: float) -> Callable[[Run], Asked]:
    """The thermometer dipped into a tank."""
    return lambda _: TakeReading("tank", tankful, raw_c)


def missed(bath: str) -> Callable[[Run], Asked]:
    """One inversion forgotten."""
    return lambda _: NoteAgitation(bath, done=False)


def cleared(seconds: float, temp_c: float) -> Callable[[Run], Asked]:
    """A clearing test of the fixer with a test piece."""

    def asked(run: Run) -> Asked:
        bottle = next(one.bottle for one in run.state.plan.liquids if one.key == "fix")
        return TimeTest(bottle or "", FERRY.name, "clearing", seconds, temp_c)

    return asked


def poured_earlier(bath: str, *, by_s: float, noted_ago_s: float) -> Callable[[Run], Asked]:
    """A pour that was noted late, put right."""

    def asked(run: Run) -> Asked:
        noted = next(
            one for one in run.events if one.kind == "bath-poured" and getattr(one.body, "bath", "") == bath
        )
        return RetimeNote(noted.id, noted_ago_s + by_s, "noted late, hands were wet")

    return asked


SEASON = (
    Evening(
        days_ago=24,
        hour=20,
        rolls=(Exposed(FERRY, ROLL, 125.0, BOX, "harbour wall, low sun", 31),),
        reads_c=20.6,
        late_s=(0.0, 2.0, 1.0, 3.0, 2.0),
        besides=(Besides(62.0, read("A", 20.1)), Besides(1900.0, said("first evening with the new fixer"))),
        came_out=NextMorning("right", "right"),
        strip_s=585.0,
    ),
    Evening(
        days_ago=12,
        hour=19,
        rolls=(
            Exposed(FERRY, ROLL, 125.0, BOX, "reed beds, overcast", 20),
            Exposed(FERRY, ROLL, 125.0, BOX, "reed beds, after rain", 19),
        ),
        reads_c=20.9,
        late_s=(0.0, 4.0, 2.0, 1.0),
        besides=(
            Besides(61.0, read("A", 21.2)),
            Besides(310.0, missed("A.develop")),
            Besides(700.0, cleared(34.0, 19.0)),
        ),
        came_out=NextMorning("thin", "harsh"),
    ),
    Evening(
        days_ago=4,
        hour=21,
        rolls=(Exposed(MILL, ROLL, 400.0, SMALL, "mill race, hand-held", 9),),
        reads_c=20.2,
        late_s=(0.0, 3.0, 5.0, 2.0, 1.0),
        besides=(
            Besides(63.0, read("A", 19.6)),
            Besides(420.0, read("A", 19.2)),
            Besides(1500.0, said("room cold, heater was off")),
        ),
    ),
)
WAITING = (
    Exposed(FERRY, ROLL, 125.0, BOX, "Alderwick ferry, fog", 16),
    Exposed(FERRY, ROLL, 125.0, BOX, "boat sheds", 11),
    Exposed(MILL, ROLL, 400.0, SMALL, "harvest barn, empty", 6),
    Exposed(MILL, ROLL, 400.0, SMALL, "mill race at dusk", 2),
)
