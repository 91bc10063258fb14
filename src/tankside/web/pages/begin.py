"""First evening: six questions, one to a screen, that end in a plan.

Answers travel in the address until the last is given, so that reload, back and a second phone lose nothing
and nothing half-answered is ever kept.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from urllib.parse import urlencode

from fastapi import APIRouter
from starlette.requests import Request
from starlette.responses import Response

from tankside.core.quantities.display import temperature_sign, volume_sign
from tankside.core.quantities.preferences import Preferences, preferences_from
from tankside.core.refusals import Refused
from tankside.web.addresses import go_to
from tankside.web.desk import AtDesk, InHouse
from tankside.web.forms import Form, TypedForm
from tankside.web.templating import page
from tankside.web.typed.first_evening import FIELDS, QUESTIONS, Question, answers_to, is_answered, six_answers
from tankside.web.typed.two_readings import Readings, as_meant, readings_of
from tankside.workflows.begin_first_evening import begin_first_evening

router = APIRouter()

USUAL_FORMAT = "135-36"


@dataclass(frozen=True, slots=True)
class Step:
    """A question as the scale shows it: `said` once answered, `again` the way back to it."""

    number: int
    name: str
    question: str
    coming: str
    said: str
    again: str


@router.get("/begin")
def ask(request: Request, desk: AtDesk) -> Response:
    """The next question, or the one just answered with what refuses it."""
    preferences = preferences_from(desk.preferences.all())
    form = as_meant(Form({"format": (USUAL_FORMAT,)} | {k: (v,) for k, v in request.query_params.items()}))
    answered = next((one for one in QUESTIONS if one.name == form.text("answered")), None)
    if answered is not None:
        try:
            answers_to(answered, form, preferences)
        except Refused as refused:
            return _refused(request, answered, form, preferences, refused)
    asked = next((one for one in QUESTIONS if one.name == form.text("ask")), None)
    return _screen(request, asked or _next_open(form, preferences), form, preferences)


@router.post("/begin")
def begin(request: Request, house: InHouse, form: TypedForm) -> Response:
    """All six answered: keep roll, leaflet, tank and place, and go to the plan."""
    preferences = preferences_from(house.desk.preferences.all())
    form = as_meant(form)
    for question in QUESTIONS:
        try:
            answers_to(question, form, preferences)
        except Refused as refused:
            return _refused(request, question, form, preferences, refused)
    answers = six_answers(form, preferences, from_leaflet=not form.text("own"))
    try:
        begin_first_evening(house.desk, house.dice, answers, now=house.clock.now(), zone=house.zone)
    except Refused as refused:
        return _refused(request, QUESTIONS[-1], form, preferences, refused)
    return go_to(request, "/plan")


def _next_open(form: Form, preferences: Preferences) -> Question:
    """The first question without a readable answer; the last of all once each has one."""
    return next((one for one in QUESTIONS[:-1] if not _said(one, form, preferences)), QUESTIONS[-1])


def _refused(
    request: Request, question: Question, form: Form, preferences: Preferences, refused: Refused
) -> Response:
    """The same screen with what was typed, one sentence at each field, or both readings to choose from."""
    told = form.refused_by(refused, say=request.app.state.say, fields=question.fields)
    tank = next((one for one in QUESTIONS if one.name == "tank"), question)
    tank_ml = answers_to(tank, form, preferences)["tank"] if _said(tank, form, preferences) else None
    found = [readings_of(one, preferences, tank_ml=tank_ml) for one in refused.refusals]
    readings = next((one for one in found if one is not None), None)
    if readings is not None:
        told = Form(
            told.typed, {name: text for name, text in told.refusals.items() if name != readings.field}
        )
    return _screen(request, question, told, preferences, readings=readings, status=422)


def _screen(
    request: Request,
    question: Question,
    form: Form,
    preferences: Preferences,
    *,
    readings: Readings | None = None,
    status: int = 200,
) -> Response:
    """One question between the answers given and those to come."""
    carried = [
        (name, form.text(name))
        for name in (*FIELDS, "own")
        if name in form.typed and name not in question.fields
    ]
    before = QUESTIONS[max(0, QUESTIONS.index(question) - 1)]
    own = form.text("own")
    return page(
        request,
        "begin/question.html",
        status=status,
        form=form,
        open=question,
        last=question is QUESTIONS[-1],
        steps=[_step(number, one, form, preferences) for number, one in enumerate(QUESTIONS, 1)],
        carried=carried,
        back="/" if question is QUESTIONS[0] else _address(form, before.name),
        no_leaflet=None
        if own or question.name not in ("developer", "time")
        else _address(form, question.name, own="yes"),
        own=bool(own),
        readings=readings,
        signs=(temperature_sign(preferences), volume_sign(preferences)),
    )


def _step(number: int, question: Question, form: Form, preferences: Preferences) -> Step:
    """A question as a mark of the scale."""
    said = _said(question, form, preferences)
    return Step(number, question.name, question.words, question.coming, said, _address(form, question.name))


def _said(question: Question, form: Form, preferences: Preferences) -> str:
    """An answer in one line, nothing while it is open or cannot be read."""
    if not is_answered(question, form):
        return ""
    try:
        return question.say(answers_to(question, form, preferences), preferences)
    except Refused:
        return ""


def _address(form: Form, ask: str, **more: str) -> str:
    """The way to a question with every answer kept."""
    kept: Sequence[tuple[str, str]] = [
        (name, form.text(name)) for name in (*FIELDS, "own") if name in form.typed
    ]
    return "/begin?" + urlencode([*kept, *more.items(), ("ask", ask)])
