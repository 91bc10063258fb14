"""Settings of this device: its theme and its units."""

from __future__ import annotations

from fastapi import APIRouter
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from tankside.web.device import (
    THEME_COOKIE,
    UNITS_COOKIE,
    keep,
    read_theme,
    read_units,
    theme_of,
    units_of,
)
from tankside.web.forms import Form, TypedForm
from tankside.web.templating import page

router = APIRouter()

THEMES = (("device", "As the device"), ("light", "Light"), ("dark", "Dark"), ("dim", "Dim"))
TEMPERATURES = (("celsius", "Celsius"), ("fahrenheit", "Fahrenheit"))
VOLUMES = (("ml", "Millilitres"), ("fl-oz", "Fluid ounces (US)"))


@router.get("/settings")
def show(request: Request) -> Response:
    """Theme and units as they stand on this device."""
    units = units_of(request)
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
def choose_theme(form: TypedForm) -> Response:
    """Keep the theme on this device; any other word follows the device."""
    answer = RedirectResponse("/settings", status_code=303)
    keep(answer, THEME_COOKIE, read_theme(form.text("theme")))
    return answer


@router.post("/settings/units")
def choose_units(form: TypedForm) -> Response:
    """Keep the units on this device."""
    answer = RedirectResponse("/settings", status_code=303)
    keep(answer, UNITS_COOKIE, read_units(form.text("temperature"), form.text("volume")).kept)
    return answer
