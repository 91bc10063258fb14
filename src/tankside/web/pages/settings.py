"""Settings: the theme of this device, the units of the household."""

from __future__ import annotations

from fastapi import APIRouter
from starlette.requests import Request
from starlette.responses import Response

from tankside.web.addresses import go_to
from tankside.web.desk import AtDesk
from tankside.web.device import (
    THEME_COOKIE,
    keep,
    read_theme,
    theme_of,
)
from tankside.web.forms import Form, TypedForm
from tankside.web.templating import page
from tankside.web.units import DEGREES, choose_units, chosen_units, read_units

router = APIRouter()

THEMES = (("device", "As the device"), ("light", "Light"), ("dark", "Dark"), ("dim", "Dim"))
TEMPERATURES = tuple(DEGREES.items())
VOLUMES = (
    ("ml", "Millilitres"),
    ("us_fl_oz", "Fluid ounces (US)"),
    ("imperial_fl_oz", "Fluid ounces (imperial)"),
)


@router.get("/settings")
def show(request: Request, desk: AtDesk) -> Response:
    """The theme of this device and the units of the household."""
    units = chosen_units(desk.preferences)
    form = Form.filled(
        theme=theme_of(request) or "device", temperature=units.temperature, volume=units.volume
    )
    return page(
        request,
        "pages/settings.html",
        form=form,
        themes=THEMES,
        temperatures=TEMPERATURES,
        volumes=VOLUMES,
    )


@router.post("/settings/theme")
def choose_theme(request: Request, form: TypedForm) -> Response:
    """Keep the theme on this device; any other word follows the device."""
    answer = go_to(request, "/settings")
    keep(answer, THEME_COOKIE, read_theme(form.text("theme")))
    return answer


@router.post("/settings/units")
def keep_units(request: Request, form: TypedForm, desk: AtDesk) -> Response:
    """Keep the units of the household, both or neither."""
    with desk.together():
        choose_units(desk.preferences, read_units(form.text("temperature"), form.text("volume")))
    return go_to(request, "/settings")
