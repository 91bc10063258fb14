"""An invented evening: one tankful of two rolls, its liquids, bottles and plan."""

from __future__ import annotations

from datetime import UTC, date, datetime
from uuid import UUID

from tankside.core.agitation.patterns import Agitation
from tankside.core.doubt.estimate import Estimate
from tankside.core.methods.baths import Times
from tankside.core.methods.combinations import Combination, TimeRow
from tankside.core.planning.equipment import Place, Tank, Thermometer
from tankside.core.planning.plan import Development, Liquid, Plan, PlannedBath, PlannedRoll, PlannedTankful
from tankside.core.rates import BelievedRate
from tankside.core.rolls.formats import Format
from tankside.core.rolls.roll import Film, Roll
from tankside.core.shelf.bottles import Batch, Bottle
from tankside.core.solutions.notation import Dilution

MADE = datetime(2026, 11, 25, 19, 30, tzinfo=UTC)


def key(number: int) -> UUID:
    """A key that a failing test shows as a small number."""
    return UUID(int=number)


FILM = Film("Ferry 125", "cubic")
ROLLS = (
    Roll(key(1), "7MPA-4", FILM, Format("135-36"), 125.0, camera="black box", exposed=date(2026, 11, 2)),
    Roll(key(2), "R5TN-6", FILM, Format("120"), 125.0, camera="folder", precious=True, notes="harbour"),
)
BATCHES = (
    Batch(key(11), "stop bath", "Stop", "working", "1+19", MADE, 1000.0, True),
    Batch(key(12), "fixer", "Fixer", "working", "1+4", MADE, 1000.0, True),
)
BOTTLES = (
    Bottle(key(21), "K7M4-T", key(11), 1000.0, cap="green", place="left of the tap"),
    Bottle(key(22), "F9QD-2", key(12), 1000.0, cap="white", opened=MADE),
)
TANK = Tank(key(31), "tall tank", 600.0, 124.6, 110.0)
THERMOMETER = Thermometer(key(32), "glass", offset_c=-0.3, step_c=0.5)
PLACE = Place(key(33), "bathroom", 19.5, hot_c=52.0, cold_c=12.0, zone="Europe/Berlin")

COMBINATION = Combination(
    key(41), "Ferry 125", "Umber", Dilution(1, 1), Agitation("inversion"), "plastic",
    "pour-in to pour-out", "rate",
    (TimeRow(key(42), 570.0, 20.0, 125.0, "leaflet", "leaflet, second edition", date(2026, 11, 1)),),
)  # fmt: skip


def estimate(value: float, spread: float, unit: str) -> Estimate:
    """An estimate with the same doubt both ways."""
    return Estimate(value, value - spread, value + spread, unit, "invented")


HANDS = Agitation("inversion")
BATHS = (
    PlannedBath("A.develop", "develop", "develop-A", Times(570.0, 570.0, 570.0), "drain", HANDS),
    PlannedBath("A.stop", "stop", "stop", Times(30.0, 60.0, 120.0), "back", HANDS),
    PlannedBath("A.fix", "fix", "fix", Times(300.0, 300.0, 600.0), "back", HANDS),
    PlannedBath("A.wash", "wash", None, Times(300.0, 300.0, None), "drain", fills=4),
    PlannedBath("A.wetting", "wetting", "wetting", Times(30.0, 60.0, 120.0), "drain"),
)  # fmt: skip

DEVELOPMENT = Development(
    time_s=estimate(570.0, 25.0, "s"), rate=BelievedRate(), start_c=20.0,
    room_c=19.5, tau_min=estimate(110.0, 20.0, "min"), c_inf_over_ci=Estimate(1.7, 1.34, 2.32, "1"),
    induction_s=30.0, time_rule="rate", contrast=0.56, model="invented-1", source="leaflet",
)  # fmt: skip

PLAN = Plan(
    key=key(51),
    number=1,
    made=MADE,
    place=PLACE,
    thermometer=THERMOMETER,
    tankfuls=(
        PlannedTankful(
            "A",
            TANK,
            (
                PlannedRoll(key(1), "7MPA-4", "Ferry 125", 1.0, False, "cubic"),
                PlannedRoll(key(2), "R5TN-6", "Ferry 125", 1.0, True, "cubic", True),
            ),
            BATHS,
            DEVELOPMENT,
            combination=key(41),
            index=125.0,
        ),
    ),
    liquids=(
        Liquid(
            "develop-A", "developer", "Umber", "1+1", 600.0, 300.0, 300.0, False, estimate(20.8, 0.3, "C")
        ),
        Liquid("stop", "stop bath", "Stop", "1+19", 600.0, 30.0, 570.0, True, bottle="K7M4-T"),
        Liquid("fix", "fixer", "Fixer", "1+4", 600.0, 120.0, 480.0, True, bottle="F9QD-2"),
        Liquid("wetting", "wetting agent", "Wetting agent", "1+200", 600.0, 3.0, 597.0, False),
    ),
)
