"""The next morning: two answers and a photograph, two densities instead, and the proposal that follows."""

from __future__ import annotations

from math import isfinite
from typing import Annotated, cast, get_args
from uuid import UUID

from fastapi import APIRouter, Depends
from starlette.requests import Request
from starlette.responses import Response

from tankside.core.refusals import Refused, refuse
from tankside.core.review.evidence import Contrast, NextMorning, Shadows, TwoDensities
from tankside.web.addresses import go_to
from tankside.web.desk import AtDesk, InHouse
from tankside.web.forms import Form, TypedForm, read_form_and_file
from tankside.web.pages.journal import key_of
from tankside.web.templating import page
from tankside.workflows.accept_correction import accept_correction, leave_as_it_is
from tankside.workflows.answer_next_morning import answer_next_morning, do_not_ask, keep_photograph
from tankside.workflows.photograph_tags import MOST_BYTES
from tankside.workflows.read_journal import Which, letters, read_run
from tankside.workflows.read_two_densities import read_two_densities

router = APIRouter()

MORNING_FIELDS = ("shadows", "contrast", "photograph")
SHADOWS = (("thin", "Thin"), ("right", "Right"), ("heavy", "Heavy"))
CONTRASTS = (("flat", "Flat"), ("right", "Right"), ("harsh", "Harsh"))
DENSITIES = ("shadow_d", "highlight_d", "shadow_aim_d", "highlight_aim_d", "slope")
USUAL = {"shadow_aim_d": "0.35", "highlight_aim_d": "1.20", "slope": "0.5"}


async def read_morning(request: Request) -> tuple[Form, bytes]:
    """What was chosen, and the photograph."""
    return await read_form_and_file(request, "photograph", most_bytes=MOST_BYTES)


Morning = Annotated[tuple[Form, bytes], Depends(read_morning)]


@router.get("/journal/{run}/morning")
def ask(request: Request, desk: AtDesk, run: str, tankful: str = "") -> Response:
    """How the negatives came out: two questions and one photograph."""
    which = _which(desk, run, tankful)
    return _morning(request, which, Form())


@router.post("/journal/{run}/morning")
def answer(request: Request, house: InHouse, sent: Morning, run: str) -> Response:
    """Keep the answers and the photograph, or never ask again."""
    form, picture = sent
    which, now = _which(house.desk, run, form.text("tankful")), house.clock.now()
    if form.text("do") == "never":
        do_not_ask(house.desk, house.dice, which, now)
        return go_to(request, _address(which))
    try:
        with house.desk.together():
            if picture:
                keep_photograph(house.desk, which, picture, now)
            answers = _answers(form, photographed=bool(picture))
            if answers is not None:
                answer_next_morning(house.desk, house.dice, which, answers, now)
    except Refused as refused:
        told = form.refused_by(refused, say=request.app.state.say, fields=MORNING_FIELDS)
        return _morning(request, which, told, status=422)
    return go_to(request, _address(which))


@router.get("/journal/{run}/densities")
def ask_densities(request: Request, desk: AtDesk, run: str, tankful: str = "") -> Response:
    """Two densities of one pair of places, for whoever has a densitometer."""
    which = _which(desk, run, tankful)
    return _densities(request, which, Form.filled(**USUAL))


@router.post("/journal/{run}/densities")
def answer_densities(request: Request, house: InHouse, form: TypedForm, run: str) -> Response:
    """Keep the two densities."""
    which = _which(house.desk, run, form.text("tankful"))
    try:
        read = TwoDensities(*(_number(form, name) for name in DENSITIES))
        read_two_densities(house.desk, house.dice, which, read, house.clock.now())
    except Refused as refused:
        told = form.refused_by(refused, say=request.app.state.say, fields=DENSITIES)
        return _densities(request, which, told, status=422)
    return go_to(request, _address(which))


@router.post("/journal/{run}/proposal")
def decide(request: Request, house: InHouse, form: TypedForm, run: str) -> Response:
    """Take a proposal, or leave everything as it is."""
    which, key = _which(house.desk, run, form.text("tankful")), _proposal(form)
    if form.text("do") == "take":
        accept_correction(house.desk, house.dice, key, house.clock.now())
    else:
        leave_as_it_is(house.desk, key, house.clock.now())
    return go_to(request, _address(which))


@router.get("/journal/{run}/photograph/{sha256}")
def photograph(house: InHouse, run: str, sha256: str) -> Response:
    """A photograph of this run."""
    kept = next((one for one in house.desk.photographs.of(key_of(run)) if one.sha256 == sha256), None)
    picture = house.desk.photographs.picture(sha256) if kept else None
    if kept is None or picture is None:
        return Response(status_code=404)
    return Response(picture, media_type=kept.media, headers={"cache-control": "private, max-age=31536000"})


def _which(desk: AtDesk, run: str, letter: str) -> Which:
    """The tankful that is meant; with one tankful in the run it need not be named."""
    found = read_run(desk, key_of(run))
    known = letters(found)
    if letter in known or (not letter and len(known) == 1):
        return Which(found.key, letter or known[0])
    raise refuse("no-such-tankful", letter=letter, ways_on=("look-at-the-journal",))


def _answers(form: Form, *, photographed: bool) -> NextMorning | None:
    """Both answers, or none where there is a photograph alone."""
    shadows, contrast = form.text("shadows"), form.text("contrast")
    if photographed and not shadows and not contrast:
        return None
    for name, said, words in (("shadows", shadows, Shadows), ("contrast", contrast, Contrast)):
        if said not in get_args(words):
            raise refuse("answers-missing", at=name)
    return NextMorning(cast(Shadows, shadows), cast(Contrast, contrast))


def _number(form: Form, name: str) -> float:
    """A density as it was typed, with a point or a comma."""
    text = form.text(name)
    try:
        value = float(text.replace(",", "."))
    except ValueError:
        raise refuse("density-not-readable", at=name, text=text) from None
    if not isfinite(value):
        raise refuse("density-not-readable", at=name, text=text)
    return value


def _proposal(form: Form) -> UUID:
    try:
        return UUID(form.text("proposal"))
    except ValueError:
        raise refuse("no-such-proposal", ways_on=("look-at-the-journal",)) from None


def _address(which: Which) -> str:
    return f"/journal/{which.run}/{which.letter}"


def _morning(request: Request, which: Which, form: Form, *, status: int = 200) -> Response:
    return page(
        request, "journal/morning.html", status=status, here="Journal", form=form,
        run=str(which.run), letter=which.letter, shadows=SHADOWS, contrasts=CONTRASTS,
    )  # fmt: skip


def _densities(request: Request, which: Which, form: Form, *, status: int = 200) -> Response:
    return page(
        request, "journal/densities.html", status=status, here="Journal", form=form,
        run=str(which.run), letter=which.letter,
    )  # fmt: skip
