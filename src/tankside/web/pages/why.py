"""Why a number is what it is: its sources on one scale, its doubt in parts, and a time of one's own."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, get_args
from uuid import UUID

from fastapi import APIRouter, Depends, HTTPException
from starlette.requests import Request
from starlette.responses import Response

from tankside.core.development.belief import Evidence
from tankside.core.planning.explain import explain
from tankside.core.planning.plan import Plan
from tankside.core.planning.why import AboutPlan
from tankside.core.quantities.entry import read_time
from tankside.core.quantities.preferences import preferences_from
from tankside.core.refusals import Refused
from tankside.web.addresses import go_to
from tankside.web.desk import InHouse
from tankside.web.forms import Form, TypedForm, read_all
from tankside.web.shown.why import said_of_plan
from tankside.web.why_screen import Back, why_screen
from tankside.web.why_screen import OwnTime as OwnTimeForm
from tankside.workflows.change_plan import OwnTime, change_plan
from tankside.workflows.house import House
from tankside.workflows.read_densities import evidence_on

router = APIRouter(prefix="/plan/why")

BY_STRIPS = ("time", "contrast")
"""Numbers that step strips and answers say something of."""

ABOUT: dict[str, AboutPlan] = {one: one for one in get_args(AboutPlan)}


@dataclass(frozen=True, slots=True)
class Asked:
    """Of which tankful and plan, and which page (of which run) leads back; each may be left out."""

    tankful: str = ""
    back: str = ""
    plan: UUID | None = None
    run: UUID | None = None

    def leads_back(self) -> Back:
        """The page that one came from; the plan unless told."""
        if self.back == "journal" and self.run is not None:
            return Back(f"Back to tankful {self.tankful}", f"/journal/{self.run}/{self.tankful}")
        return BACK.get(self.back, TO_THE_PLAN)


BACK = {
    "ready": Back("Back to Get ready", "/plan/ready"),
    "sink": Back("Back to the sink", "/sink"),
}
TO_THE_PLAN = Back("Back to the plan", "/plan")


@router.get("/{about}")
def show(request: Request, house: InHouse, about: str, asked: Annotated[Asked, Depends()]) -> Response:
    """The working of one number of the plan made last, or of the one named."""
    return _screen(request, house, about, Form(), asked)


@router.post("/time")
def own_time(request: Request, house: InHouse, form: TypedForm) -> Response:
    """Take a time of one's own, or the worked-out one again."""
    asked = Asked(form.text("tankful"))
    try:
        own = (
            read_all({"own": lambda: read_time(form.text("own"))})["own"]
            if form.text("then") == "own"
            else None
        )
        change_plan(house.desk, house.dice, _plan(house, None).key, OwnTime(own), house.clock.now())
    except Refused as refused:
        return _screen(request, house, "time", form, asked, refused=refused)
    return go_to(request, f"/plan/why/time?tankful={asked.tankful}")


def _plan(house: House, key: UUID | None) -> Plan:
    """The plan asked about; 404 where there is none."""
    found = house.desk.plans.latest() if key is None else house.desk.plans.by_key(key)
    if found is None:
        raise HTTPException(404)
    return found


def _evidence(house: House, plan: Plan, letter: str) -> tuple[Evidence, ...]:
    """What step strips and answers have told of the combination of a tankful, the first unless told."""
    one = next((each for each in plan.tankfuls if each.letter == letter), plan.tankfuls[0])
    known = one.combination and house.desk.combinations.by_key(one.combination)
    return evidence_on(house.desk, known.key) if known else ()


def _screen(
    request: Request,
    house: House,
    about: str,
    form: Form,
    asked: Asked,
    *,
    refused: Refused | None = None,
) -> Response:
    """The page, with one sentence at the time that could not be taken."""
    if about not in ABOUT:
        raise HTTPException(404)
    found = _plan(house, asked.plan)
    evidence = _evidence(house, found, asked.tankful) if about in BY_STRIPS else ()
    why = explain(found, ABOUT[about], asked.tankful or None, evidence)
    preferences = preferences_from(house.desk.preferences.all())
    if refused is not None:
        form = form.refused_by(refused, say=request.app.state.say, fields=("own",))
    return why_screen(
        request,
        why,
        preferences,
        here="Plan",
        back=asked.leads_back(),
        say=said_of_plan(why, found),
        own_time=OwnTimeForm(form, found.wish is not None and found.wish.own_time_s is not None)
        if about == "time"
        else None,
        status=422 if refused else 200,
    )
