"""Again: the rolls, what the developer reads, and to the sink as last time."""

from __future__ import annotations

from uuid import UUID

from fastapi import APIRouter
from starlette.requests import Request
from starlette.responses import Response

from tankside.core.quantities.display import temperature_sign
from tankside.core.quantities.entry import read_temperature
from tankside.core.quantities.preferences import preferences_from
from tankside.core.refusals import Refused, refuse
from tankside.web.addresses import go_to
from tankside.web.desk import InHouse
from tankside.web.forms import Form, TypedForm, read_all
from tankside.web.shown.again import shown_again
from tankside.web.templating import page
from tankside.workflows.as_last_time import LastTime, last_time, thermometer_of
from tankside.workflows.do_again import BY_HAND, Again, do_again, plan_again
from tankside.workflows.house import House
from tankside.workflows.keep_rolls import find_roll
from tankside.workflows.moments import moment_of
from tankside.workflows.since_last_time import since_last_time

router = APIRouter(prefix="/again")

FIELDS = ("rolls", "reads")
AT = {"temp_c": "reads"}
"""Where the page asks for what a refusal names otherwise."""


@router.get("")
def show(request: Request, house: InHouse) -> Response:
    """What waits and can go as last time; a house without a last time begins first."""
    last = last_time(house.desk, house.live_runs)
    if last is None:
        return go_to(request, "/begin")
    return _screen(request, house, last, Form.filled(key=str(house.dice.key())), chosen=False)


@router.post("")
def go(request: Request, house: InHouse, form: TypedForm) -> Response:
    """Plan, book and open in one go, and on to the sink; a second press leads to the same run."""
    try:
        run = do_again(house.desk, house.dice, house.live_runs, _asked(house, form), house.clock.now())
    except Refused as refused:
        return _refused(request, house, form, refused)
    return go_to(request, f"/sink/{run}")


@router.post("/plan")
def step_by_step(request: Request, house: InHouse, form: TypedForm) -> Response:
    """The ordinary way for the same rolls and reading: to what is held back, or to the liquids."""
    try:
        plan = plan_again(house.desk, house.live_runs, _asked(house, form), house.clock.now())
    except Refused as refused:
        return _refused(request, house, form, refused)
    return go_to(request, "/plan/change" if plan.held else "/plan/ready")


def _asked(house: House, form: Form) -> Again:
    """What was ticked and typed, refused at each field that cannot be read."""
    told = read_all({"rolls": lambda: _rolls(house, form), "reads": lambda: _reads_c(house, form)})
    return Again(_key(form), told["rolls"], told["reads"])


def _key(form: Form) -> UUID:
    """The key that was drawn with the page."""
    try:
        return UUID(form.text("key"))
    except ValueError:
        raise refuse("no-such-plan", ways_on=("plan",)) from None


def _rolls(house: House, form: Form) -> list[UUID]:
    """The rolls that were ticked."""
    codes = form.all("roll")
    if not codes:
        raise refuse("no-rolls-chosen")
    return [find_roll(house.desk, code).key for code in codes]


def _reads_c(house: House, form: Form) -> float:
    """What the developer reads, with what the thermometer is off added."""
    reads_c = read_temperature(form.text("reads"), preferences_from(house.desk.preferences.all()))
    last = last_time(house.desk, house.live_runs)
    return reads_c + (thermometer_of(house.desk, last).offset_c if last else 0.0)


def _refused(request: Request, house: House, form: Form, refused: Refused) -> Response:
    """The page as it was typed, with one sentence at each refused field."""
    last = last_time(house.desk, house.live_runs)
    if last is None:
        raise refused
    placed = Refused(*(one.placed(AT.get(one.at or "", one.at or "")) for one in refused.refusals))
    by_hand = any(BY_HAND[0] in one.ways_on for one in refused.refusals)
    told = form.refused_by(placed, say=request.app.state.say, fields=FIELDS)
    return _screen(request, house, last, told, chosen=True, by_hand=by_hand)


def _screen(
    request: Request, house: House, last: LastTime, form: Form, *, chosen: bool, by_hand: bool = False
) -> Response:
    """The page; `by_hand` offers the ordinary way as the main act."""
    preferences = preferences_from(house.desk.preferences.all())
    since = since_last_time(house.desk, last, moment_of(house.clock.now()))
    return page(
        request,
        "pages/again.html",
        status=422 if form.refusals else 200,
        here="Plan",
        again=shown_again(last, since, preferences, ticked=form.all("roll") if chosen else None),
        form=form,
        by_hand=by_hand,
        sign=temperature_sign(preferences),
        offset=thermometer_of(house.desk, last).offset_c,
    )
