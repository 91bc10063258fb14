"""Get ready: each liquid made or found, in order, and the way to the sink."""

from __future__ import annotations

from collections.abc import Callable
from urllib.parse import urlencode

from fastapi import APIRouter
from starlette.requests import Request
from starlette.responses import Response

from tankside.core.planning.plan import Plan
from tankside.core.quantities.display import temperature_sign, temperature_text, volume_sign
from tankside.core.quantities.entry import read_temperature, read_volume
from tankside.core.quantities.preferences import Preferences, preferences_from
from tankside.core.refusals import Refused, refuse
from tankside.web.addresses import go_to
from tankside.web.desk import InHouse
from tankside.web.forms import Form, TypedForm, number_of, read_all
from tankside.web.shown.ready import ready
from tankside.web.templating import page
from tankside.workflows.change_plan import AsKeptNow, DeveloperReads, change_plan
from tankside.workflows.get_ready import HaveAlready, Marks, liquid_made
from tankside.workflows.house import House
from tankside.workflows.keep_place import read_taps
from tankside.workflows.open_run import open_run, run_for

router = APIRouter(prefix="/plan/ready")

FIELDS = ("hot", "cold", "jug", "volume", "used", "cap", "place", "reads")


@router.get("")
def show(request: Request, house: InHouse, liquid: str = "", made: str = "", jug: str = "") -> Response:
    """The liquid in hand, the bench with what is made, or the way on to the sink."""
    plan = house.desk.plans.latest()
    if plan is None:
        return go_to(request, "/plan")
    form = Form.filled(jug=jug)
    if not jug:
        return _screen(request, house, plan, form, liquid=liquid, made=made)
    try:
        told = read_all({"jug": lambda: _true_c(form, "jug", plan, _preferences(house))})
    except Refused as refused:
        return _screen(request, house, plan, form, liquid=liquid, refused=refused)
    return _screen(request, house, plan, form, liquid=liquid, jug_c=told["jug"])


@router.post("/taps")
def taps(request: Request, house: InHouse, form: TypedForm) -> Response:
    """Keep what hot and cold water read, and work the plan out with them."""
    plan, preferences = _plan(house), _preferences(house)
    try:
        told = read_all(
            {name: _reader(form, name, plan, preferences) for name in ("hot", "cold")},
        )
        with house.desk.together():
            _read_taps(house, plan, hot_c=told["hot"], cold_c=told["cold"])
            change_plan(house.desk, house.dice, plan.key, AsKeptNow(), house.clock.now())
    except Refused as refused:
        return _screen(request, house, plan, form, liquid=form.text("liquid"), refused=refused)
    return go_to(request, f"/plan/ready?{urlencode({'liquid': form.text('liquid')})}")


@router.post("/made")
def made(request: Request, house: InHouse, form: TypedForm) -> Response:
    """Book the liquid as mixed, or as a bottle that stood there, under a fresh code."""
    plan, preferences, liquid = _plan(house), _preferences(house), form.text("liquid")
    already = None
    try:
        if form.text("how") == "already":
            told = read_all(
                {
                    "volume": lambda: read_volume(form.text("volume"), preferences),
                    "used": lambda: number_of(form, "used"),
                }
            )
            already = HaveAlready(told["volume"], max(0.0, told["used"]))
        marks = Marks(form.text("cap"), form.text("place"))
        liquid_made(house.desk, house.dice, plan.key, liquid, house.clock.now(), already=already, marks=marks)
    except Refused as refused:
        return _screen(request, house, plan, form, liquid=liquid, refused=refused)
    return go_to(request, f"/plan/ready?{urlencode({'made': liquid})}")


@router.post("/sink")
def to_the_sink(request: Request, house: InHouse, form: TypedForm) -> Response:
    """Take what the developer reads, if it was read, and open the run; asked twice it is opened once."""
    plan, preferences = _plan(house), _preferences(house)
    run = run_for(plan.key)
    if house.live_runs.look(run) is not None:
        return go_to(request, f"/sink/{run}")
    try:
        if form.text("reads"):
            told = read_all({"reads": _reader(form, "reads", plan, preferences)})
            reads = DeveloperReads(told["reads"])
            change_plan(house.desk, house.dice, plan.key, reads, house.clock.now())
        if form.text("then") != "look":
            open_run(house.desk, house.live_runs, run, plan.key, house.clock.now())
    except Refused as refused:
        at = refused.refusal.at or "reads"
        return _screen(request, house, plan, form, refused=Refused(refused.refusal.placed(at)))
    return go_to(request, "/plan/ready" if form.text("then") == "look" else f"/sink/{run}")


def _read_taps(house: House, plan: Plan, *, hot_c: float, cold_c: float) -> None:
    """Keep both, refused at the field they were typed in."""
    try:
        read_taps(house.desk, plan.place.key, hot_c=hot_c, cold_c=cold_c)
    except Refused as refused:
        raise Refused(refused.refusal.placed("hot")) from refused


def _plan(house: House) -> Plan:
    """The plan that is got ready for."""
    found = house.desk.plans.latest()
    if found is None:
        raise refuse("no-such-plan", ways_on=("plan",))
    return found


def _preferences(house: House) -> Preferences:
    """How this household reads amounts."""
    return preferences_from(house.desk.preferences.all())


def _reader(form: Form, name: str, plan: Plan, preferences: Preferences) -> Callable[[], float]:
    """How one temperature of the form is read."""
    return lambda: _true_c(form, name, plan, preferences)


def _true_c(form: Form, name: str, plan: Plan, preferences: Preferences) -> float:
    """A temperature as read, with what this thermometer is off added."""
    return read_temperature(form.text(name), preferences) + plan.thermometer.offset_c


def _screen(
    request: Request,
    house: House,
    plan: Plan,
    form: Form,
    *,
    liquid: str = "",
    made: str = "",
    jug_c: float | None = None,
    refused: Refused | None = None,
) -> Response:
    """The screen, with one sentence at each refused field."""
    say, preferences = request.app.state.say, _preferences(house)
    if refused is not None:
        at = {"volume_ml": "volume", "reads_c": "reads"}
        placed = [one.placed(at.get(one.at or "", one.at or "")) for one in refused.refusals]
        form = form.refused_by(Refused(*placed), say=say, fields=FIELDS)
    shown = ready(plan, house.desk.bottles.all(), preferences, wanted=liquid, made=made, jug_c=jug_c)
    place = house.desk.places.by_key(plan.place.key) or plan.place
    return page(
        request,
        "ready/show.html",
        status=422 if refused else 200,
        here="Plan",
        ready=shown,
        form=_with_taps(form, place.hot_c, place.cold_c, preferences),
        cannot=say(shown.hand.cannot) if shown.hand and shown.hand.cannot else "",
        signs=(temperature_sign(preferences), volume_sign(preferences)),
        offset=plan.thermometer.offset_c,
    )


def _with_taps(form: Form, hot_c: float | None, cold_c: float | None, preferences: Preferences) -> Form:
    """The form with what the taps read last in the two fields, unless somebody typed there."""
    known = {"hot": hot_c, "cold": cold_c}
    filled = {
        name: (temperature_text(value, preferences).split()[0],)
        for name, value in known.items()
        if value is not None
    }
    return Form({**filled, **form.typed}, form.refusals)
