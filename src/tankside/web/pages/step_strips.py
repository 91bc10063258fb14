"""One step strip: typed or attached, read again, shown as it was typed; and the tablets to read it with."""

from __future__ import annotations

from typing import Annotated
from uuid import UUID
from zoneinfo import ZoneInfo

from fastapi import APIRouter, Depends
from starlette.requests import Request
from starlette.responses import Response

from tankside.core.doubt.estimate import Estimate
from tankside.core.methods.step_strips import StepStrip, latest
from tankside.core.quantities.display import temperature_sign
from tankside.core.quantities.preferences import preferences_from
from tankside.core.refusals import Refused, refuse
from tankside.web.addresses import go_to
from tankside.web.desk import InHouse
from tankside.web.forms import Form, TypedForm, read_form_and_file
from tankside.web.pages.journal import key_of
from tankside.web.shown.journal import day_words
from tankside.web.templating import page
from tankside.web.typed.step_strip import (
    STRIP,
    TABLET,
    USUAL,
    USUAL_NAME,
    filled_from,
    read_strip,
    read_tablet,
)
from tankside.wording.densities import figures_of, has_speed, name_of
from tankside.workflows.house import House
from tankside.workflows.read_densities import ReadStrip, read_combination
from tankside.workflows.read_journal import Which, run_of
from tankside.workflows.read_step_strip import read_step_strip

router = APIRouter(prefix="/densities/strip")
tablets = APIRouter(prefix="/densities/tablet")

MOST_BYTES = 100_000


async def read_sent(request: Request) -> tuple[Form, bytes]:
    """What was typed, and the file of readings."""
    return await read_form_and_file(request, "file", most_bytes=MOST_BYTES)


Sent = Annotated[tuple[Form, bytes], Depends(read_sent)]


@router.get("/new")
def ask(request: Request, house: InHouse) -> Response:
    """The fields of a strip; of a run, of a known combination, or of neither."""
    given = {name: (value,) for name, value in request.query_params.items()}
    return _ask(request, house, Form({"tablet": (USUAL,), "reading_sd": ("0.02",), **given}))


@router.post("/new")
def keep(request: Request, house: InHouse, sent: Sent) -> Response:
    """Keep a strip, or say at each field why it cannot be."""
    form, attached = sent
    try:
        strip = _kept(house, form, attached)
    except Refused as refused:
        return _ask(request, house, form, refused=refused)
    return go_to(request, f"/densities/{strip.combination}" + ("/control" if strip.control else ""))


@router.get("/{key}")
def one(request: Request, house: InHouse, key: UUID) -> Response:
    """A strip as it was typed, and everything that its curve tells."""
    strip = _known(house, key)
    read = read_combination(house.desk, strip.combination)
    found = next((each for each in read.strips if each.strip.key == key), None)
    older = [each for each in house.desk.step_strips.all() if each.key == strip.replaces]
    stands = strip in latest(house.desk.step_strips.all())
    return page(
        request, "densities/strip.html", here="Densities", strip=strip, name=name_of(read.combination),
        figures=figures_of(found) if found else (), whys=_whys(found), older=older, stands=stands,
        noted=day_words(strip.noted.astimezone(ZoneInfo(house.zone))),
    )  # fmt: skip


def _whys(one: ReadStrip | None) -> dict[str, str]:
    """Which of its figures have a working, by their names."""
    if one is None:
        return {}
    told = {"Contrast index": "curve"} if isinstance(one.found.contrast_index, Estimate) else {}
    return told | ({"Speed": "speed"} if has_speed(one) else {})


@router.get("/{key}/again")
def ask_again(request: Request, house: InHouse, key: UUID) -> Response:
    """The fields as they were typed, to put them right."""
    strip = _known(house, key)
    form = filled_from(strip, house.desk.tablets.all())
    held = {"replaces": (str(key),)}
    if strip.run is not None and strip.tankful is not None:
        held |= {"run": (str(strip.run),), "tankful": (strip.tankful,)}
    else:
        minutes, seconds = divmod(round(strip.time_s or 0), 60)
        held |= {"combination": (str(strip.combination),), "time": (f"{minutes}:{seconds:02d}",),
                 "temp": (f"{strip.temp_c:g}" if strip.temp_c is not None else "",)}  # fmt: skip
    return _ask(request, house, Form({**form.typed, **held}))


@tablets.get("/new")
def ask_tablet(request: Request) -> Response:
    """The fields of a tablet."""
    return page(request, "densities/tablet.html", here="Densities", form=Form.filled(steps="21", step="0.15"))


@tablets.post("/new")
def keep_tablet(request: Request, house: InHouse, form: TypedForm) -> Response:
    """Keep a tablet of one's own."""
    try:
        house.desk.tablets.keep(tablet := read_tablet(form, house))
    except Refused as refused:
        told = form.refused_by(refused, say=request.app.state.say, fields=TABLET)
        return page(request, "densities/tablet.html", status=422, here="Densities", form=told)
    return go_to(request, f"/densities/strip/new?tablet={tablet.key}")


def _kept(house: House, form: Form, attached: bytes) -> StepStrip:
    """The strip that was typed, kept."""
    preferences = preferences_from(house.desk.preferences.all())
    with house.desk.together():
        read = read_strip(form, house, preferences, _which(form), _text(attached))
        of = read.of
        replaces = UUID(form.text("replaces")) if form.text("replaces") else None
        strip, _ = read_step_strip(
            house.desk, house.dice, read.typed, of, house.clock.now(), replaces=replaces
        )
    return strip


def _text(attached: bytes) -> str:
    """The text of a file of readings."""
    if len(attached) > MOST_BYTES:
        raise refuse("file-of-readings-too-long", at="readings", most=MOST_BYTES // 1000)
    try:
        return attached.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise refuse("file-of-readings-no-text", at="readings") from None


def _which(form: Form) -> Which | None:
    """The tankful that the strip was developed in, if it was in one here."""
    return Which(key_of(form.text("run")), form.text("tankful")) if form.text("run") else None


def _known(house: House, key: UUID) -> StepStrip:
    found = house.desk.step_strips.by_key(key)
    if found is None:
        raise refuse("no-such-strip", ways_on=("look-at-densities",))
    return found


def _ask(request: Request, house: House, form: Form, *, refused: Refused | None = None) -> Response:
    """The fields, with one sentence at each that was refused."""
    if refused is not None:
        form = form.refused_by(refused, say=request.app.state.say, fields=STRIP)
    which, preferences = _which(form), preferences_from(house.desk.preferences.all())
    of_run = "" if which is None else _of_run(house, which)
    combination = (
        None
        if not form.text("combination")
        else house.desk.combinations.by_key(key_of(form.text("combination")))
    )
    kept = [(str(one.key), one.name) for one in house.desk.tablets.all()]
    return page(
        request, "densities/new.html", status=422 if refused else 200, here="Densities", form=form,
        of_run=of_run, combination=name_of(combination) if combination else "",
        tablets=[(USUAL, USUAL_NAME), *kept], sign=temperature_sign(preferences),
    )  # fmt: skip


def _of_run(house: House, which: Which) -> str:
    """The rolls that the strip was developed with."""
    plan = run_of(house.desk, which).state.tankful(which.letter).plan
    return ", ".join(roll.code for roll in plan.rolls)
