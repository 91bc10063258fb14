"""The Plan page: one evening worked out, and choosing the rolls for it."""

from __future__ import annotations

from datetime import date
from urllib.parse import urlencode
from zoneinfo import ZoneInfo

from fastapi import APIRouter
from starlette.requests import Request
from starlette.responses import Response

from tankside.core.quantities.preferences import preferences_from
from tankside.core.refusals import Refused
from tankside.web.addresses import go_to
from tankside.web.desk import InHouse
from tankside.web.drawing.graduation import graduation
from tankside.web.drawing.session import clock_words
from tankside.web.drawing.vessel import empty_vessel
from tankside.web.forms import TypedForm
from tankside.web.shown.plan import shown_plan
from tankside.web.templating import page
from tankside.workflows.cost_of_plan import cost_a_roll
from tankside.workflows.house import House
from tankside.workflows.keep_rolls import find_roll
from tankside.workflows.make_plan import Chosen, make_plan, roll_without_time
from tankside.workflows.moments import moment_of
from tankside.workflows.what_changed import what_changed

router = APIRouter()

VESSEL = empty_vessel(graduation(low=20 * 60, high=21 * 60 + 30, unit=1, length_px=396, words=clock_words))


@router.get("/plan")
def show(request: Request, house: InHouse) -> Response:
    """The plan made last, or how one is made."""
    plan = house.desk.plans.latest()
    if plan is None:
        return page(request, "pages/plan.html", here="Plan", vessel=VESSEL)
    preferences = preferences_from(house.desk.preferences.all())
    today = today_at(house, plan.place.zone)
    shown = shown_plan(
        plan,
        preferences,
        today=today,
        learnt=what_changed(house.desk, plan),
        costs=cost_a_roll(house.desk, plan),
    )
    return page(request, "plan/show.html", here="Plan", plan=shown)


@router.post("/plan/rolls")
def choose(request: Request, house: InHouse, form: TypedForm) -> Response:
    """Plan the rolls that were ticked."""
    rolls = [find_roll(house.desk, code) for code in form.all("roll")]
    try:
        make_plan(house.desk, house.dice, Chosen([one.key for one in rolls]), house.clock.now())
    except Refused as refused:
        lacking = roll_without_time(house.desk, rolls)
        if refused.refusal.code not in ("no-time-for-film", "no-time-at-index") or lacking is None:
            raise
        known = [("film", lacking.film.name), ("index", f"{lacking.index:g}")]
        asked = urlencode([*known, *(("roll", one.code) for one in rolls)])
        return go_to(request, f"/leaflets/new?{asked}")
    return go_to(request, "/plan")


def today_at(house: House, zone: str) -> date:
    """The day it is at a place."""
    return moment_of(house.clock.now()).astimezone(ZoneInfo(zone)).date()
