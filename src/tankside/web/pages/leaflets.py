"""Leaflets: times as printed or one's own, kept row by row, and the least stock that a leaflet asks for."""

from __future__ import annotations

from typing import Any, get_args
from uuid import UUID

from fastapi import APIRouter, HTTPException
from starlette.requests import Request
from starlette.responses import Response

from tankside.core.agitation.patterns import ROTARY, STAND
from tankside.core.development.rate import TimeRule
from tankside.core.methods.combinations import Combination, RowSource
from tankside.core.methods.default_method import BY_HAND
from tankside.core.quantities.display import temperature_sign, volume_sign
from tankside.core.quantities.entry import read_index, read_temperature, read_time, read_volume
from tankside.core.quantities.preferences import Preferences, preferences_from
from tankside.core.refusals import Refused
from tankside.core.solutions.notation import read_dilution
from tankside.web.addresses import go_to
from tankside.web.desk import InHouse
from tankside.web.forms import Form, TypedForm, read_all
from tankside.web.shown.leaflets import facts_of, leaflet
from tankside.web.templating import page
from tankside.web.typed.first_evening import name_of
from tankside.web.typed.two_readings import as_meant, readings_of
from tankside.workflows.add_leaflet_row import add_leaflet_row, combination_for, facts_told, least_stock_told
from tankside.workflows.house import House
from tankside.workflows.keep_rolls import find_roll
from tankside.workflows.make_plan import Chosen, make_plan

router = APIRouter(prefix="/leaflets")

NEW = ("film", "index", "developer", "dilution", "time", "temp", "least", "words")
PRINTED_FOR = {"inversion": BY_HAND, "rotary": ROTARY, "stand": STAND}
HOLDS = {"yes": True, "no": False}
ROW = ("time", "temp", "index", "words", "least")
LONGEST_WORDS = 80


@router.get("")
def every(request: Request, house: InHouse) -> Response:
    """All that is known of films in developers."""
    preferences = _preferences(house)
    shown = [leaflet(one, preferences) for one in house.desk.combinations.all()]
    return page(request, "leaflets/list.html", here="Plan", leaflets=shown)


@router.get("/new")
def ask_new(request: Request, house: InHouse) -> Response:
    """A film in a developer that nobody has told of yet; what is known stands in its field."""
    known = {name: tuple(request.query_params.getlist(name)) for name in (*NEW, "roll")}
    return _ask(request, house, Form({name: values for name, values in known.items() if values}))


@router.post("/new")
def add_new(request: Request, house: InHouse, form: TypedForm) -> Response:
    """Keep its first row; with rolls named, plan them with it."""
    form, preferences = as_meant(form), _preferences(house)
    try:
        told = read_all(
            {
                "film": lambda: name_of(form, "film"),
                "index": lambda: read_index(form.text("index")),
                "developer": lambda: name_of(form, "developer"),
                "dilution": lambda: read_dilution(form.text("dilution")),
                **_time_readers(form, preferences),
                "least": lambda: _least(form, preferences),
            }
        )
        with house.desk.together():
            kept = combination_for(
                house.desk, house.dice, film=told["film"], developer=told["developer"],
                dilution=told["dilution"], least_stock_ml=told["least"],
                agitation=PRINTED_FOR.get(form.text("moved"), BY_HAND),
            )  # fmt: skip
            kept = _keep_row(house, kept.key, form, told)
            if form.all("roll"):
                _plan(house, form, kept)
    except Refused as refused:
        return _ask(request, house, form, refused=refused)
    return go_to(request, "/plan" if form.all("roll") else f"/leaflets/{kept.key}")


@router.get("/{key}")
def one(request: Request, house: InHouse, key: UUID, kept: str = "") -> Response:
    """One combination, its rows, and the fields for one more."""
    return _one(request, house, _known(house, key), Form(), kept=bool(kept))


@router.post("/{key}/rows")
def add_row(request: Request, house: InHouse, key: UUID, form: TypedForm) -> Response:
    """Keep one more row; the old ones stay."""
    known, preferences = _known(house, key), _preferences(house)
    try:
        told = read_all({**_time_readers(form, preferences), "index": lambda: read_index(form.text("index"))})
        _keep_row(house, known.key, form, told)
    except Refused as refused:
        return _one(request, house, known, form, refused=refused)
    return go_to(request, f"/leaflets/{key}?kept=yes")


@router.post("/{key}/least")
def least(request: Request, house: InHouse, key: UUID, form: TypedForm) -> Response:
    """Keep the least stock for one roll."""
    known, preferences = _known(house, key), _preferences(house)
    try:
        told = read_all({"least": lambda: read_volume(form.text("least"), preferences)})
        least_stock_told(house.desk, known.key, told["least"])
    except Refused as refused:
        return _one(request, house, known, form, refused=refused)
    return go_to(request, f"/leaflets/{key}?kept=yes")


@router.post("/{key}/facts")
def facts(request: Request, house: InHouse, key: UUID, form: TypedForm) -> Response:
    """Keep how the time goes with temperature, and whether the developer holds hydroquinone."""
    known = _known(house, key)
    rule = next((one for one in get_args(TimeRule) if one == form.text("rule")), known.time_rule)
    facts_told(house.desk, known.key, time_rule=rule, hydroquinone=HOLDS.get(form.text("hydroquinone")))
    return go_to(request, f"/leaflets/{key}?kept=yes")


def _known(house: House, key: UUID) -> Combination:
    """The combination under a key; 404 where there is none."""
    found = house.desk.combinations.by_key(key)
    if found is None:
        raise HTTPException(404)
    return found


def _preferences(house: House) -> Preferences:
    """How this household reads amounts."""
    return preferences_from(house.desk.preferences.all())


def _time_readers(form: Form, preferences: Preferences) -> dict[str, Any]:
    """How a time and its temperature are read."""
    return {
        "time": lambda: read_time(form.text("time")),
        "temp": lambda: read_temperature(form.text("temp"), preferences),
    }


def _least(form: Form, preferences: Preferences) -> float | None:
    """Least stock for one roll, if the leaflet says it."""
    return read_volume(form.text("least"), preferences) if form.text("least") else None


def _keep_row(house: House, key: UUID, form: Form, told: dict[str, Any]) -> Combination:
    """One row with where it comes from."""
    source: RowSource = "own" if form.text("source") == "own" else "leaflet"
    return add_leaflet_row(
        house.desk, house.dice, key, house.clock.now(),
        time_s=told["time"], temp_c=told["temp"], index=told["index"], source=source,
        words=form.text("words")[:LONGEST_WORDS] or ("own time" if source == "own" else "leaflet"),
    )  # fmt: skip


def _plan(house: House, form: Form, kept: Combination) -> None:
    """Plan the rolls that waited for this row; those of its film by it."""
    rolls = [find_roll(house.desk, code) for code in form.all("roll")]
    by = {roll.key: kept.key for roll in rolls if roll.film.name.casefold() == kept.film.casefold()}
    make_plan(house.desk, house.dice, Chosen([one.key for one in rolls], by), house.clock.now())


def _from_leaflet(form: Form) -> Form:
    """The form with 'as the leaflet prints it' and inversion chosen, unless it was said otherwise."""
    return Form({"source": ("leaflet",), "moved": ("inversion",), **form.typed}, form.refusals)


def _ask(request: Request, house: House, form: Form, *, refused: Refused | None = None) -> Response:
    """The questions of developer and time, as on a first evening."""
    preferences, readings = _preferences(house), None
    if refused is not None:
        form = form.refused_by(refused, say=request.app.state.say, fields=NEW)
        found = [readings_of(one, preferences, tank_ml=None) for one in refused.refusals]
        readings = next((one for one in found if one is not None), None)
        if readings is not None:
            others = {name: text for name, text in form.refusals.items() if name != readings.field}
            form = Form(form.typed, others)
    return page(
        request,
        "leaflets/new.html",
        status=422 if refused else 200,
        here="Plan",
        form=_from_leaflet(form),
        readings=readings,
        rolls=form.all("roll"),
        signs=(temperature_sign(preferences), volume_sign(preferences)),
    )


def _one(
    request: Request,
    house: House,
    known: Combination,
    form: Form,
    *,
    kept: bool = False,
    refused: Refused | None = None,
) -> Response:
    """The page of one combination."""
    preferences, latest = _preferences(house), house.desk.plans.latest()
    if refused is not None:
        form = form.refused_by(refused, say=request.app.state.say, fields=ROW)
    elif not form.typed and known.rows:
        form = Form.filled(index=f"{known.rows[-1].index:g}")
    form = Form({**facts_of(known), **form.typed}, form.refusals)
    in_plan = latest is not None and any(one.combination == known.key for one in latest.tankfuls)
    return page(
        request,
        "leaflets/one.html",
        status=422 if refused else 200,
        here="Plan",
        leaflet=leaflet(known, preferences),
        form=_from_leaflet(form),
        kept=kept,
        in_plan=in_plan,
        signs=(temperature_sign(preferences), volume_sign(preferences)),
    )
