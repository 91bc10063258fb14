"""The Rolls page: what waits and what is done; adding, changing and finding a roll."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from urllib.parse import quote

from fastapi import APIRouter
from starlette.requests import Request
from starlette.responses import Response

from tankside.core.quantities.display import index_text
from tankside.core.refusals import Refused
from tankside.core.rolls.roll import Roll
from tankside.web.addresses import go_to
from tankside.web.desk import InHouse
from tankside.web.drawing.graduation import graduation
from tankside.web.drawing.months import months
from tankside.web.drawing.vessel import empty_vessel
from tankside.web.forms import Form, TypedForm
from tankside.web.templating import page
from tankside.web.typed.roll import FIELDS, filled, new_roll, of_roll, over
from tankside.wording.rolls import said_format
from tankside.workflows.house import House
from tankside.workflows.keep_rolls import add_roll, edit_roll, find_roll, preset
from tankside.workflows.moments import moment_of

router = APIRouter()

OVER = ("done", "lost")
VESSEL = empty_vessel(graduation(low=0, high=12, unit=1, middle=2, long=4, length_px=396))
GRAINS = (("unknown", "Not known"), ("cubic", "Ordinary"), ("tabular", "Tabular"))


@dataclass(frozen=True, slots=True)
class Row:
    """A roll as one reads it in the list."""

    code: str
    film: str
    more: str
    precious: bool


@router.get("/rolls")
def show(request: Request, house: InHouse, which: str = "waiting", find: str | None = None) -> Response:
    """Rolls waiting or done, or the way to the one whose code is typed."""
    if find is None:
        return _list(request, house, "done" if which == "done" else "waiting")
    form = Form.filled(find=find)
    if not find.strip():
        return _list(request, house, "find", form=form)
    try:
        roll = find_roll(house.desk, find)
    except Refused as refused:
        told = form.refused_by(refused, say=request.app.state.say, fields=("find",))
        told = Form(told.typed, {"find": next(iter(told.refusals.values()))})
        return _list(request, house, "find", form=told, status=422)
    return go_to(request, _address(roll))


@router.get("/rolls/add")
def ask_new(request: Request, house: InHouse) -> Response:
    """A roll out of the camera; film and camera are preset to the last."""
    return _form(request, filled(preset(house.desk), today(house)))


@router.post("/rolls/add")
def add(request: Request, house: InHouse, form: TypedForm) -> Response:
    """Keep a new roll and show the code to write on it."""
    try:
        roll = add_roll(house.desk, house.dice, new_roll(form, house.desk), house.clock.now())
    except Refused as refused:
        return _form(request, form, refused=refused)
    return go_to(request, f"{_address(roll)}?new=yes")


@router.get("/rolls/{code}")
def one(request: Request, house: InHouse, code: str, new: str = "") -> Response:
    """One roll: its code large, and everything known of it, to be changed."""
    roll = find_roll(house.desk, code)
    return _form(request, of_roll(roll, house.desk), roll=roll, new=bool(new))


@router.post("/rolls/{code}")
def change(request: Request, house: InHouse, code: str, form: TypedForm) -> Response:
    """Write over what is known of a roll."""
    roll = find_roll(house.desk, code)
    try:
        edit_roll(house.desk, over(roll, new_roll(form, house.desk)))
    except Refused as refused:
        return _form(request, form, roll=roll, refused=refused)
    return go_to(request, "/rolls")


def today(house: House) -> date:
    """The day by the clock of the place worked in last."""
    return moment_of(house.clock.now()).date()


def _address(roll: Roll) -> str:
    return f"/rolls/{quote(roll.code)}"


def _list(
    request: Request, house: House, which: str, *, form: Form | None = None, status: int = 200
) -> Response:
    """The rolls of one standing, oldest first, each joined to its day."""
    every = house.desk.rolls.all()
    waiting = [roll for roll in every if roll.standing not in OVER]
    done = [roll for roll in every if roll.standing in OVER]
    shown = _by_day(done if which == "done" else waiting if which == "waiting" else [])
    margin = months([roll.exposed for roll in shown], chosen=[False for _ in shown], today=today(house))
    return page(
        request,
        "rolls/list.html",
        status=status,
        here="Rolls",
        which=which,
        waiting=len(waiting),
        done=len(done),
        rows=[_row(roll) for roll in shown],
        margin=margin,
        form=form or Form(),
        vessel=VESSEL,
        again=bool(waiting) and house.desk.plans.latest() is not None,
    )


def _by_day(rolls: Sequence[Roll]) -> list[Roll]:
    """Oldest exposure first; those without a day at the end."""
    return sorted(rolls, key=lambda roll: (roll.exposed is None, roll.exposed or date.min, roll.code))


def _row(roll: Roll) -> Row:
    """A roll in two lines under its code."""
    more = [index_text(roll.index), roll.notes.splitlines()[0] if roll.notes else "", roll.camera]
    return Row(
        roll.code,
        f"{roll.film.name}, {said_format(roll.format)}",
        ", ".join(one for one in more if one),
        roll.precious,
    )


def _form(
    request: Request,
    form: Form,
    *,
    roll: Roll | None = None,
    refused: Refused | None = None,
    new: bool = False,
) -> Response:
    """The form of one roll, known or new."""
    if refused is not None:
        form = form.refused_by(refused, say=request.app.state.say, fields=FIELDS)
    return page(
        request,
        "rolls/edit.html",
        status=422 if refused else 200,
        here="Rolls",
        form=form,
        code=roll.code if roll else None,
        new=new,
        grains=GRAINS,
    )
