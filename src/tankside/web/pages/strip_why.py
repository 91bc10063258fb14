"""Why a number of a step strip is what it is: its contrast index, its speed."""

from __future__ import annotations

from collections.abc import Callable
from uuid import UUID

from fastapi import APIRouter, HTTPException
from starlette.requests import Request
from starlette.responses import Response

from tankside.core.methods.step_strips import StepStrip
from tankside.core.planning.why import Why
from tankside.core.quantities.preferences import preferences_from
from tankside.web.desk import InHouse
from tankside.web.why_screen import Back, why_screen
from tankside.workflows.why_strip import why_contrast_of, why_speed_of

router = APIRouter(prefix="/densities/strip")

ABOUT: dict[str, Callable[[StepStrip], Why]] = {"curve": why_contrast_of, "speed": why_speed_of}


@router.get("/{key}/why/{about}")
def show(request: Request, house: InHouse, key: UUID, about: str) -> Response:
    """The working of one number of a strip."""
    strip = house.desk.step_strips.by_key(key)
    if strip is None or about not in ABOUT:
        raise HTTPException(404)
    return why_screen(
        request,
        ABOUT[about](strip),
        preferences_from(house.desk.preferences.all()),
        here="Densities",
        back=Back("Back to the strip", f"/densities/strip/{key}"),
    )
