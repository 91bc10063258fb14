"""One bottle: its level, dates and ledger, and what is done with it at the shelf."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from fastapi import APIRouter, HTTPException
from starlette.requests import Request
from starlette.responses import Response

from tankside.core.quantities.display import temperature_sign, volume_sign
from tankside.core.quantities.entry import read_volume
from tankside.core.quantities.preferences import Preferences, preferences_from
from tankside.core.refusals import Refused
from tankside.core.shelf.bottles import Bottle
from tankside.web.addresses import go_to
from tankside.web.desk import InHouse
from tankside.web.forms import Form, TypedForm, read_all
from tankside.web.shown.bottle import bottle_acts
from tankside.web.shown.shelf import ledger_told
from tankside.web.shown.tonight import tonight_of
from tankside.web.templating import page
from tankside.web.typed.bottle import (
    empties_of,
    keeping_of,
    label_count_of,
    label_typed,
    leader_of,
    typed_of,
    typed_readers,
)
from tankside.workflows.house import House
from tankside.workflows.keep_bottles import contaminate, discard, keep_typed
from tankside.workflows.moments import moment_of
from tankside.workflows.pour_over import decant, filter_bottle, pour_together, top_up
from tankside.workflows.shelf_acts import take_back_act
from tankside.workflows.time_leader import time_leader

router = APIRouter(prefix="/shelf")

FIELDS = ("count", "holds", "other", "ml", "seconds", "temp_c", "full", "part", "price", "words", "label")
LONGEST_WORDS = 120


@router.get("/{code}")
def one(
    request: Request, house: InHouse, code: str, *, new: str = "", into: str = "", tested: str = ""
) -> Response:
    """One bottle and its ledger; `into` names the bottles it was just decanted into."""
    bottle = _known(house, code)
    filled = tuple(each for each in into.split(",") if house.desk.bottles.by_code(each))
    return _screen(request, house, bottle, Form(), new=bool(new), filled=filled, tested=bool(tested))


@router.post("/{code}/discard")
def pour_away(request: Request, house: InHouse, code: str) -> Response:
    """Pour away all that is in it, once this was confirmed."""
    discard(house.desk, house.dice, _known(house, code).code, house.clock.now())
    return go_to(request, "/shelf")


@router.post("/{code}/contaminated")
def spoilt(request: Request, house: InHouse, code: str, form: TypedForm) -> Response:
    """Note that something else got in."""
    words = form.text("words")[:LONGEST_WORDS]
    contaminate(house.desk, house.dice, _known(house, code).code, house.clock.now(), words=words)
    return go_to(request, f"/shelf/{code}")


@router.post("/{code}/decant")
def into_others(request: Request, house: InHouse, code: str, form: TypedForm) -> Response:
    """Fill empty bottles from it; the page then says which codes to write on them."""
    bottle, preferences = _known(house, code), _preferences(house)
    try:
        into = empties_of(form, preferences)
        made = decant(house.desk, house.dice, code, into, house.clock.now(), zone=house.there)
    except Refused as refused:
        return _screen(request, house, bottle, form, refused=refused)
    return go_to(request, f"/shelf/{code}?into={','.join(each.code for each in made)}")


@router.post("/{code}/pour-in")
def together(request: Request, house: InHouse, code: str, form: TypedForm) -> Response:
    """Pour another bottle of the same into it."""
    other = form.text("other")
    return _done(
        request, house, code, form,
        lambda: pour_together(house.desk, house.dice, code, other, house.clock.now(), zone=house.there),
    )  # fmt: skip


@router.post("/{code}/top-up")
def fresh_in(request: Request, house: InHouse, code: str, form: TypedForm) -> Response:
    """Top it up with fresh solution."""

    def act() -> None:
        ml = read_all({"ml": lambda: read_volume(form.text("ml"), _preferences(house))})["ml"]
        top_up(house.desk, house.dice, code, ml, house.clock.now(), zone=house.there)

    return _done(request, house, code, form, act)


@router.post("/{code}/filtered")
def filtered(request: Request, house: InHouse, code: str, form: TypedForm) -> Response:
    """Note that it was filtered."""
    words = form.text("words")[:LONGEST_WORDS]
    return _done(
        request, house, code, form,
        lambda: filter_bottle(
            house.desk, house.dice, code, house.clock.now(), zone=house.there, words=words
        ),
    )  # fmt: skip


@router.post("/{code}/leader")
def leader(request: Request, house: InHouse, code: str, form: TypedForm) -> Response:
    """Note a leader that was timed in it."""

    def act() -> None:
        timed = leader_of(form, _preferences(house))
        time_leader(house.desk, house.dice, code, timed, house.clock.now(), zone=house.there)

    return _done(request, house, code, form, act)


@router.post("/{code}/keeps")
def typed(request: Request, house: InHouse, code: str, form: TypedForm) -> Response:
    """Keep how long its leaflet says it keeps, and what it cost."""

    def act() -> None:
        told = read_all(typed_readers(form))
        keep_typed(house.desk, code, keeping=keeping_of(told), price_minor=told["price"])

    return _done(request, house, code, form, act)


@router.post("/{code}/label")
def by_label(request: Request, house: InHouse, code: str, form: TypedForm) -> Response:
    """Keep how many rolls a litre takes by its label; left empty it is not known."""

    def act() -> None:
        house.desk.bottles.keep(replace(_known(house, code), rolls_per_l=label_count_of(form)))

    return _done(request, house, code, form, act)


@router.post("/{code}/take-back")
def taken_back(request: Request, house: InHouse, code: str, form: TypedForm) -> Response:
    """Take an act at the shelf back; its line stays."""
    act = form.text("act")
    return _done(
        request, house, code, form, lambda: take_back_act(house.desk, house.dice, act, house.clock.now())
    )  # fmt: skip


def _done(request: Request, house: House, code: str, form: Form, act: Callable[[], object]) -> Response:
    """The bottle after one act, or with what refused it."""
    bottle = _known(house, code)
    try:
        act()
    except Refused as refused:
        return _screen(request, house, bottle, form, refused=refused)
    return go_to(request, f"/shelf/{code}")


def _known(house: House, code: str) -> Bottle:
    """The bottle under a code; 404 where there is none."""
    found = house.desk.bottles.by_code(code)
    if found is None:
        raise HTTPException(404)
    return found


def _preferences(house: House) -> Preferences:
    """How this household reads amounts."""
    return preferences_from(house.desk.preferences.all())


def _screen(
    request: Request,
    house: House,
    bottle: Bottle,
    form: Form,
    *,
    new: bool = False,
    filled: tuple[str, ...] = (),
    tested: bool = False,
    refused: Refused | None = None,
) -> Response:
    """The page of a bottle."""
    preferences, batch = _preferences(house), house.desk.batches.by_key(bottle.batch)
    form = Form({**(typed_of(batch) if batch else {}), **label_typed(bottle), **form.typed}, form.refusals)
    now = house.clock.now()
    tonight = tonight_of(house.desk, moment_of(now))
    if refused is not None:
        form = form.refused_by(refused, say=request.app.state.say, fields=FIELDS)
    return page(
        request,
        "shelf/bottle.html",
        status=422 if refused else 200,
        here="Shelf",
        told=ledger_told(house.desk, bottle, preferences, house.zone, tonight=tonight),
        acts=bottle_acts(house.desk, bottle.code, preferences, house.zone, now),
        tested=tested,
        in_plan=bottle.code in tonight.bottles,
        form=form,
        new=new,
        filled=filled,
        signs=(volume_sign(preferences), temperature_sign(preferences)),
    )
