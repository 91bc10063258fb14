"""Change the plan: rolls, tanks, when it begins, and everything it takes for granted."""

from __future__ import annotations

from fastapi import APIRouter
from starlette.requests import Request
from starlette.responses import Response

from tankside.core.planning.change import differences
from tankside.core.planning.plan import Plan
from tankside.core.planning.wish import Wish
from tankside.core.quantities.display import temperature_sign, volume_sign
from tankside.core.quantities.preferences import preferences_from
from tankside.core.refusals import Refused, refuse
from tankside.web.addresses import go_to
from tankside.web.desk import InHouse
from tankside.web.forms import Form, TypedForm
from tankside.web.shown.change import No, refusal_with_ways, shown_change
from tankside.web.templating import page
from tankside.web.typed.change import FIELDS, read_change
from tankside.wording.plan_changes import difference_sentence
from tankside.workflows.change_plan import change_plan
from tankside.workflows.house import House

router = APIRouter(prefix="/plan/change")


@router.get("")
def show(request: Request, house: InHouse, since: int | None = None) -> Response:
    """What can be changed, and what the last change did."""
    plan = house.desk.plans.latest()
    if plan is None or plan.wish is None:
        return go_to(request, "/plan")
    before = house.desk.plans.by_key(plan.key, since) if since else None
    preferences = preferences_from(house.desk.preferences.all())
    said = [difference_sentence(one, preferences) for one in differences(before, plan)] if before else []
    return _screen(request, house, plan, plan.wish, Form(), said=said)


@router.post("")
def change(request: Request, house: InHouse, form: TypedForm) -> Response:
    """Carry out one change, or a larger tank and then that change; refused, nothing is kept."""
    plan = house.desk.plans.latest()
    if plan is None or plan.wish is None:
        raise refuse("no-such-plan", ways_on=("plan",))
    preferences = preferences_from(house.desk.preferences.all())
    try:
        with house.desk.together():
            for what in (form.text("before"), form.text("change")):
                if what:
                    asked = Form({**form.typed, "change": (what,)})
                    wanted = read_change(asked, plan, plan.wish, preferences)
                    change_plan(house.desk, house.dice, plan.key, wanted, house.clock.now())
    except Refused as refused:
        return _refused(request, house, plan, form, refused)
    return go_to(request, "/plan" if form.text("back") == "plan" else f"/plan/change?since={plan.number}")


def _refused(request: Request, house: House, plan: Plan, form: Form, refused: Refused) -> Response:
    """At its field where one can be put right, else a plate with its ways on."""
    preferences = preferences_from(house.desk.preferences.all())
    assert plan.wish is not None
    if refused.refusal.at == "room_c":
        refused = Refused(refused.refusal.placed("room"))
    typed = [name for name in FIELDS if name in form.typed]
    told = form.refused_by(refused, say=request.app.state.say, fields=typed)
    if told.first_refused:
        return _screen(request, house, plan, plan.wish, told, status=422)
    no = refusal_with_ways(refused, plan.wish, form.text("change"), preferences)
    return _screen(request, house, plan, plan.wish, form, no=no, status=422)


def _screen(
    request: Request,
    house: House,
    plan: Plan,
    wish: Wish,
    form: Form,
    *,
    said: list[str] | None = None,
    no: No | None = None,
    status: int = 200,
) -> Response:
    """The page."""
    preferences = preferences_from(house.desk.preferences.all())
    return page(
        request,
        "plan/change.html",
        status=status,
        here="Plan",
        change=shown_change(plan, wish, preferences),
        form=Form({"moved": ("inversion",), **form.typed}, form.refusals),
        said=said or (),
        no=no,
        signs=(temperature_sign(preferences), volume_sign(preferences)),
    )
