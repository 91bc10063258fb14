"""The Shelf: every bottle as its vessel, and a bottle put there."""

from __future__ import annotations

from typing import Any, get_args

from fastapi import APIRouter
from starlette.requests import Request
from starlette.responses import Response

from tankside.core.quantities.display import volume_sign
from tankside.core.quantities.entry import read_volume
from tankside.core.quantities.preferences import Preferences, preferences_from
from tankside.core.refusals import Refused, refuse
from tankside.core.solutions.kinds import SolutionKind
from tankside.core.solutions.notation import read_dilution
from tankside.web.addresses import go_to
from tankside.web.desk import InHouse
from tankside.web.drawing.graduation import graduation
from tankside.web.drawing.vessel import empty_vessel
from tankside.web.forms import Form, TypedForm, number_of, read_all
from tankside.web.shown.minded import mixing_by_kind
from tankside.web.shown.shelf import on_shelf
from tankside.web.shown.tonight import shelf_sentence, tonight_of
from tankside.web.templating import page
from tankside.web.typed.bottle import keeping_of, label_count_of, size_of, typed_readers
from tankside.web.typed.first_evening import name_of
from tankside.workflows.get_ready import Marks
from tankside.workflows.house import House
from tankside.workflows.mix_bottle import Mixed, mix_bottle
from tankside.workflows.moments import moment_of

router = APIRouter(prefix="/shelf")

VESSEL = empty_vessel(graduation(low=0, high=1000, unit=50, long=5, middle=5, length_px=380, upward=True))
KIND_NAMES: tuple[SolutionKind, ...] = tuple(kind for kind in get_args(SolutionKind) if kind != "water")
KINDS = tuple((kind, kind.capitalize()) for kind in KIND_NAMES)
FIELDS = (
    "kind",
    "name",
    "parts",
    "volume",
    "used",
    "label",
    "cap",
    "place",
    "holds",
    "full",
    "part",
    "price",
)


@router.get("")
def show(request: Request, house: InHouse) -> Response:
    """What stands there and what is left in it."""
    now = house.clock.now()
    tonight = tonight_of(house.desk, moment_of(now))
    bottles = on_shelf(house.desk, _preferences(house), house.zone, now, tonight=tonight)
    return page(
        request, "pages/shelf.html", here="Shelf", vessel=VESSEL, bottles=bottles,
        spoilt=sum(one.spoilt for one in bottles),
        sentence=shelf_sentence(tonight, [one.doubtful for one in bottles]),
        tanks=house.desk.tanks.all(), signs=_signs(house),
    )  # fmt: skip


@router.get("/mix")
def ask_mix(
    request: Request, house: InHouse, kind: str = "fixer", name: str = "", parts: str = "1+4"
) -> Response:
    """A bottle mixed outside a plan, or one that stands there already."""
    return _ask(request, house, Form.filled(kind=kind, name=name, parts=parts))


@router.post("/mix")
def mix(request: Request, house: InHouse, form: TypedForm) -> Response:
    """Book it under a fresh code."""
    preferences = _preferences(house)
    try:
        told = read_all(
            {
                "kind": lambda: _kind(form),
                "name": lambda: name_of(form, "name"),
                "parts": lambda: read_dilution(form.text("parts")),
                "volume": lambda: read_volume(form.text("volume"), preferences),
                "used": lambda: number_of(form, "used"),
                "label": lambda: label_count_of(form),
                "holds": lambda: size_of(form, preferences),
                **typed_readers(form),
            }
        )
        marks = Marks(form.text("cap"), form.text("place"), told["holds"])
        bottle = mix_bottle(house.desk, house.dice, _mixed(told), marks, house.clock.now())
    except Refused as refused:
        return _ask(request, house, form, refused=refused)
    return go_to(request, f"/shelf/{bottle.code}?new=yes")


def _preferences(house: House) -> Preferences:
    """How this household reads amounts."""
    return preferences_from(house.desk.preferences.all())


def _signs(house: House) -> tuple[str]:
    """The sign of the person's unit of volume."""
    return (volume_sign(_preferences(house)),)


def _kind(form: Form) -> SolutionKind:
    """The kind of liquid chosen."""
    told = form.text("kind")
    for kind in KIND_NAMES:
        if kind == told:
            return kind
    raise refuse("no-such-liquid", liquid=told[:20])


def _mixed(told: dict[str, Any]) -> Mixed:
    """What the form says of a bottle."""
    return Mixed(
        told["kind"], told["name"], told["parts"], told["volume"], told["used"],
        keeping_of(told), told["price"], told["label"],
    )  # fmt: skip


def _ask(request: Request, house: House, form: Form, *, refused: Refused | None = None) -> Response:
    """The form of a bottle."""
    if refused is not None:
        form = form.refused_by(refused, say=request.app.state.say, fields=FIELDS)
    return page(
        request,
        "shelf/mix.html",
        status=422 if refused else 200,
        here="Shelf",
        form=form,
        kinds=KINDS,
        cautions=mixing_by_kind(KIND_NAMES),
        developers=sorted({one.developer for one in house.desk.combinations.all()}),
        signs=_signs(house),
    )
