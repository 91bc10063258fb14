"""Where one works and what with: taps, room, tanks, thermometers, preferences."""

from __future__ import annotations

from dataclasses import replace
from uuid import UUID

from tankside.core.methods.combinations import TankKind
from tankside.core.planning.equipment import Place, Tank, Thermometer
from tankside.core.planning.first_evening import default_tank
from tankside.core.quantities.preferences import Preferences
from tankside.core.refusals import refuse
from tankside.core.thermal.tank import worth_from_test
from tankside.workflows.ports import Desk, Dice

LEAST_ROOM_C, MOST_ROOM_C = 5.0, 40.0
MOST_OFFSET_K = 3.0


def read_taps(
    desk: Desk, place: UUID, *, hot_c: float | None, cold_c: float | None, room_c: float | None = None
) -> Place:
    """Note what hot and cold water and the room read here; None leaves what was known."""
    known = desk.places.by_key(place)
    if known is None:
        raise refuse("no-such-place", ways_on=("begin-first-evening",))
    hot = known.hot_c if hot_c is None else hot_c
    cold = known.cold_c if cold_c is None else cold_c
    if hot is not None and cold is not None and hot <= cold:
        raise refuse("hot-not-above-cold", at="hot_c", hot_c=hot, cold_c=cold)
    room = known.room_c if room_c is None else room_c
    if not LEAST_ROOM_C <= room <= MOST_ROOM_C:
        raise refuse("room-out-of-range", at="room_c", temp_c=room)
    kept = replace(known, hot_c=hot, cold_c=cold, room_c=room)
    desk.places.keep(kept)
    return kept


def add_tank(desk: Desk, dice: Dice, *, volume_ml: float, name: str, kind: TankKind = "plastic") -> Tank:
    """A tank by its volume (mL), what it is made of and the person's name for it."""
    tank = default_tank(dice.key(), volume_ml=volume_ml, name=name.strip() or "tank", kind=kind)
    desk.tanks.keep(tank)
    return tank


def tank_is_of(desk: Desk, tank: UUID, kind: TankKind) -> Tank:
    """What a tank is made of; its worth and drift are believed anew by that, a test has to be done again."""
    known = desk.tanks.by_key(tank)
    if known is None:
        raise refuse("no-such-tank", ways_on=("add-a-tank",))
    kept = default_tank(known.key, volume_ml=known.volume_ml, name=known.name, kind=kind)
    desk.tanks.keep(kept)
    return kept


def tank_tested(desk: Desk, tank: UUID, *, liquid_c: float, tank_c: float, read_c: float) -> Tank:
    """What the two-minute test says a tank is worth, kept in the place of what was believed."""
    known = desk.tanks.by_key(tank)
    if known is None:
        raise refuse("no-such-tank", ways_on=("add-a-tank",))
    worth_ml = worth_from_test(liquid_ml=known.volume_ml, liquid_c=liquid_c, tank_c=tank_c, read_c=read_c)
    kept = replace(known, worth_ml=worth_ml)
    desk.tanks.keep(kept)
    return kept


def keep_thermometer(desk: Desk, thermometer: Thermometer) -> None:
    """Write down a thermometer with its offset; one that is further off is not one to trust."""
    if abs(thermometer.offset_c) > MOST_OFFSET_K:
        raise refuse("thermometer-too-far-off", at="offset_k", offset_k=thermometer.offset_c)
    desk.thermometers.keep(thermometer)


def keep_preferences(desk: Desk, preferences: Preferences) -> None:
    """Write down units and language."""
    desk.preferences.keep("temperature", preferences.temperature)
    desk.preferences.keep("volume", preferences.volume)
    desk.preferences.keep("language", preferences.language)
