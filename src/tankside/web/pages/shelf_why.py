"""Why a number of a bottle is what it is: what it may still take, and until when it is good."""

from __future__ import annotations

from typing import get_args

from fastapi import APIRouter, HTTPException
from starlette.requests import Request
from starlette.responses import Response

from tankside.core.planning.why import AboutBottle
from tankside.core.quantities.preferences import preferences_from
from tankside.web.desk import InHouse
from tankside.web.why_screen import Back, why_screen
from tankside.workflows.why_bottle import why_bottle

router = APIRouter(prefix="/shelf")

ABOUT: dict[str, AboutBottle] = {one: one for one in get_args(AboutBottle)}


@router.get("/{code}/why/{about}")
def show(request: Request, house: InHouse, code: str, about: str) -> Response:
    """The working of one number of a bottle."""
    desk = house.desk
    bottle = desk.bottles.by_code(code)
    if bottle is None or about not in ABOUT:
        raise HTTPException(404)
    return why_screen(
        request,
        why_bottle(desk, bottle, ABOUT[about], zone=house.there),
        preferences_from(desk.preferences.all()),
        here="Shelf",
        back=Back(f"Back to {code}", f"/shelf/{code}"),
    )
