"""The test of one bottle: a test piece of its fixer, the indicator of its stop bath."""

from __future__ import annotations

from fastapi import APIRouter, HTTPException
from starlette.requests import Request
from starlette.responses import Response

from tankside.core.planning.fixer_known import fixer_tests
from tankside.core.quantities.display import temperature_sign
from tankside.core.quantities.preferences import preferences_from
from tankside.core.refusals import Refused
from tankside.core.shelf.accounts import account
from tankside.core.shelf.bottles import Batch, Bottle
from tankside.web.addresses import go_to
from tankside.web.desk import InHouse
from tankside.web.forms import Form, TypedForm
from tankside.web.shown.bath_test import shown_test
from tankside.web.templating import page
from tankside.web.typed.bath_test import FIELDS, FreshAsked, fixer_tests_of, fresh_asked, stop_tests_of
from tankside.workflows.house import House
from tankside.workflows.note_tests import note_tests

router = APIRouter(prefix="/shelf")

TESTED = ("fixer", "stop bath")


@router.get("/{code}/test")
def ask(request: Request, house: InHouse, code: str) -> Response:
    """What to do, and the fields for what it said."""
    bottle, batch = _known(house, code)
    return _ask(request, house, bottle, batch, Form.filled(film=_film_before(house, code)))


@router.post("/{code}/test")
def note(request: Request, house: InHouse, code: str, form: TypedForm) -> Response:
    """Keep what was tested; the bottle's page says what follows."""
    bottle, batch = _known(house, code)
    preferences = preferences_from(house.desk.preferences.all())
    try:
        if batch.kind == "fixer":
            tests = fixer_tests_of(form, preferences, asked=_asked(house, code))
        else:
            tests = stop_tests_of(form)
        note_tests(house.desk, house.dice, code, tests, house.clock.now())
    except Refused as refused:
        return _ask(request, house, bottle, batch, form, refused=refused)
    return go_to(request, f"/shelf/{code}?tested=yes")


def _known(house: House, code: str) -> tuple[Bottle, Batch]:
    """The bottle under a code and what is in it; 404 where there is none that is tested here."""
    bottle = house.desk.bottles.by_code(code)
    batch = house.desk.batches.by_key(bottle.batch) if bottle else None
    if bottle is None or batch is None or batch.kind not in TESTED:
        raise HTTPException(404)
    return bottle, batch


def _asked(house: House, code: str) -> FreshAsked:
    """Whether a fresh time is kept, asked besides, or what is timed tonight."""
    booked = house.desk.ledger.of_bottle(code)
    return fresh_asked(fixer_tests(booked), account(booked).counted_units)


def _film_before(house: House, code: str) -> str:
    """The film of the fresh test piece, which every later one is of."""
    tests = [one for one in fixer_tests(house.desk.ledger.of_bottle(code)) if one.void is None]
    fresh = [one.test.film for one in tests if one.test.fresh]
    return fresh[-1] if fresh else next((one.test.film for one in reversed(tests) if one.test.film), "")


def _ask(
    request: Request,
    house: House,
    bottle: Bottle,
    batch: Batch,
    form: Form,
    *,
    refused: Refused | None = None,
) -> Response:
    """The form of a test."""
    preferences = preferences_from(house.desk.preferences.all())
    if refused is not None:
        form = form.refused_by(refused, say=request.app.state.say, fields=FIELDS)
    return page(
        request,
        "shelf/test.html",
        status=422 if refused else 200,
        here="Shelf",
        form=form,
        test=shown_test(bottle, batch, asked=_asked(house, bottle.code)),
        signs=(temperature_sign(preferences),),
    )
