"""Where one works: taps and room, tanks with what they are worth, thermometers with what they are off."""

from __future__ import annotations

from dataclasses import replace
from uuid import UUID

from fastapi import APIRouter, HTTPException
from starlette.requests import Request
from starlette.responses import Response

from tankside.core.methods.combinations import TankKind
from tankside.core.planning.equipment import Place, Thermometer
from tankside.core.quantities.display import (
    step_text,
    temperature_sign,
    temperature_text,
    volume_sign,
    volume_text,
)
from tankside.core.quantities.entry import read_temperature, read_volume
from tankside.core.quantities.limits import LIQUID_C, ROOM_C
from tankside.core.quantities.preferences import Preferences, preferences_from
from tankside.core.refusals import Refused, refuse
from tankside.web.addresses import go_to
from tankside.web.desk import InHouse
from tankside.web.forms import Form, TypedForm, read_all
from tankside.web.templating import page
from tankside.workflows.house import House
from tankside.workflows.keep_place import add_tank, keep_thermometer, read_taps, tank_is_of, tank_tested

router = APIRouter(prefix="/place")

FIELDS = ("hot", "cold", "room", "tank_ml", "tank_name", "warm", "empty", "read", "ice")


@router.get("")
def show(request: Request, house: InHouse) -> Response:
    """Everything that is known of the place."""
    return _screen(request, house, Form())


@router.post("/taps")
def taps(request: Request, house: InHouse, form: TypedForm) -> Response:
    """What hot and cold water and the room read; an empty field leaves what was known."""
    preferences, place = _preferences(house), _place(house)
    if place is None:
        raise refuse("no-such-place", ways_on=("begin-first-evening",))
    try:
        told = read_all(
            {
                "hot": lambda: _maybe_c(form, "hot", preferences),
                "cold": lambda: _maybe_c(form, "cold", preferences),
                "room": lambda: _maybe_c(form, "room", preferences),
            }
        )
        read_taps(house.desk, place.key, hot_c=told["hot"], cold_c=told["cold"], room_c=told["room"])
    except Refused as refused:
        return _screen(request, house, form, refused=refused)
    return go_to(request, "/place")


@router.post("/tanks")
def new_tank(request: Request, house: InHouse, form: TypedForm) -> Response:
    """One more tank."""
    try:
        told = read_all({"tank_ml": lambda: read_volume(form.text("tank_ml"), _preferences(house))})
        add_tank(
            house.desk, house.dice, volume_ml=told["tank_ml"], name=form.text("tank_name"), kind=_kind(form)
        )
    except Refused as refused:
        return _screen(request, house, form, refused=refused)
    return go_to(request, "/place")


@router.post("/tanks/{key}")
def test_of_tank(request: Request, house: InHouse, key: UUID, form: TypedForm) -> Response:
    """What the two-minute test says a tank is worth."""
    preferences = _preferences(house)
    try:
        told = read_all(
            {
                "warm": lambda: read_temperature(form.text("warm"), preferences),
                "empty": lambda: read_temperature(form.text("empty"), preferences),
                "read": lambda: read_temperature(form.text("read"), preferences),
            }
        )
        tank_tested(house.desk, key, liquid_c=told["warm"], tank_c=told["empty"], read_c=told["read"])
    except Refused as refused:
        return _screen(request, house, form, refused=refused, tested=str(key))
    return go_to(request, "/place")


@router.post("/tanks/{key}/made-of")
def made_of(request: Request, house: InHouse, key: UUID, form: TypedForm) -> Response:
    """A tank that is of another material than was believed."""
    tank_is_of(house.desk, key, _kind(form))
    return go_to(request, "/place")


@router.post("/thermometers/{key}")
def in_ice(request: Request, house: InHouse, key: UUID, form: TypedForm) -> Response:
    """What a thermometer reads in ice water says what it is off."""
    known = house.desk.thermometers.by_key(key)
    if known is None:
        raise HTTPException(404)
    try:
        told = read_all(
            {"ice": lambda: read_temperature(form.text("ice"), _preferences(house), limits=ROOM_C)}
        )
        keep_thermometer(house.desk, replace(known, offset_c=round(-told["ice"], 6)))
    except Refused as refused:
        return _screen(request, house, form, refused=refused, tested=str(key))
    return go_to(request, "/place")


def _kind(form: Form) -> TankKind:
    """What a tank is made of; plastic unless told."""
    return "steel" if form.text("tank_kind") == "steel" else "plastic"


def _preferences(house: House) -> Preferences:
    """How this household reads amounts."""
    return preferences_from(house.desk.preferences.all())


def _place(house: House) -> Place | None:
    """The place worked in."""
    return next(iter(house.desk.places.all()), None)


def _maybe_c(form: Form, name: str, preferences: Preferences) -> float | None:
    """A temperature, if one was typed."""
    limits = ROOM_C if name == "room" else LIQUID_C
    return read_temperature(form.text(name), preferences, limits=limits) if form.text(name) else None


def _screen(
    request: Request, house: House, form: Form, *, refused: Refused | None = None, tested: str = ""
) -> Response:
    """The page; `tested` is the tank or thermometer whose test was refused, and stays open."""
    preferences, place = _preferences(house), _place(house)
    if refused is not None:
        placed = [one.placed(AT.get(one.at or "", one.at or "")) for one in refused.refusals]
        form = form.refused_by(Refused(*placed), say=request.app.state.say, fields=FIELDS)
    known = {"hot": place.hot_c, "cold": place.cold_c, "room": place.room_c} if place else {}
    filled = {
        name: (temperature_text(value, preferences).split()[0],)
        for name, value in known.items()
        if value is not None
    }
    return page(
        request,
        "place/show.html",
        status=422 if refused else 200,
        here="Shelf",
        place=place,
        tanks=[
            (one, volume_text(one.volume_ml, preferences), volume_text(one.worth_ml, preferences))
            for one in house.desk.tanks.all()
        ],
        thermometers=[(one, _offset(one, preferences)) for one in house.desk.thermometers.all()],
        form=Form({"tank_kind": ("plastic",), **filled, **form.typed}, form.refusals),
        tested=tested,
        signs=(temperature_sign(preferences), volume_sign(preferences)),
    )


AT = {
    "hot_c": "hot", "room_c": "room", "liquid_c": "warm", "read_c": "read", "offset_k": "ice",
    "volume_ml": "tank_ml",
}  # fmt: skip
"""The field of each thing that a workflow refuses."""


def _offset(one: Thermometer, preferences: Preferences) -> str:
    """What a thermometer is off, in words."""
    if one.offset_c == 0:
        return "taken to read true"
    way = "low" if one.offset_c > 0 else "high"
    return (
        f"reads {step_text(abs(one.offset_c), preferences)} too {way}; that is put right wherever it is read"
    )
